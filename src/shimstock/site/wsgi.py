"""What the server calls for each page."""

import os
import sys
import threading

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "shimstock.site.settings")

from django.core.wsgi import get_wsgi_application  # after the line above

from shimstock.site.lasting import leave_what_was_replaced
from shimstock.site.server import COLD
from shimstock.site.warming import keep_warm

application = get_wsgi_application()
leave_what_was_replaced()

SHORT_TURN = 0.001
"""Seconds that one thread goes on while others wait: a page waits so long after each look into the
database while another is made, or while machines are looked at beside it; five times as long is
usual."""
sys.setswitchinterval(SHORT_TURN)
if not os.environ.get(COLD):
    threading.Thread(
        target=keep_warm, args=[threading.Event()], name="keeping warm", daemon=True
    ).start()
