"""What the server calls for each page."""

import os

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "shimstock.site.settings")

from django.core.wsgi import get_wsgi_application  # after the line above

application = get_wsgi_application()
