"""Django's settings: one application, one SQLite file in the shed."""

from tzlocal import get_localzone_name

from shimstock.site.shed import DATABASE, shed_folder

SHED = shed_folder()

INSTALLED_APPS = ["shimstock.workshop"]

DATABASES = {
    "default": {
        "ENGINE": "django.db.backends.sqlite3",
        "NAME": SHED / DATABASE,
        "OPTIONS": {
            # A reading that the screen called kept survives a pulled plug: FULL waits for the
            # disk. WAL lets one read while another writes. (Django itself turns foreign keys on.)
            "init_command": "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL;",
            # An act takes the write lock as it begins, so that it never fails half-way on it.
            "transaction_mode": "IMMEDIATE",
            "timeout": 20,  # seconds that an act waits for another one to end
        },
    }
}

# Times are stored in UTC and shown as the clock in the shed shows them.
USE_TZ = True
TIME_ZONE = get_localzone_name() or "UTC"
USE_I18N = False
