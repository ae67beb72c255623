"""What the server calls for each page."""

import os
import threading

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "shimstock.site.settings")

from django.core.wsgi import get_wsgi_application  # after the line above

from shimstock.site.server import COLD
from shimstock.site.warming import keep_warm

application = get_wsgi_application()
if not os.environ.get(COLD):
    threading.Thread(
        target=keep_warm, args=[threading.Event()], name="keeping warm", daemon=True
    ).start()
