"""Django's settings: the workshop and its pages, one SQLite file in the shed."""

from tzlocal import get_localzone_name

from shimstock.site.secret import secret_of
from shimstock.site.serving import Serving
from shimstock.site.shed import DATABASE, shed_folder
from shimstock.workshop.people import SEASON

SHED = shed_folder()

INSTALLED_APPS = [
    "django.contrib.sessions",
    "django_htmx",
    "shimstock.workshop",
    "shimstock.faces.web",
]

DATABASES = {
    "default": {
        "ENGINE": "django.db.backends.sqlite3",
        "NAME": SHED / DATABASE,
        "CONN_MAX_AGE": None,  # what is open stays open: see lasting.py
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

# --- the pages ---------------------------------------------------------------------------

SERVING = Serving.from_environment()
SECRET_KEY = secret_of(SHED)
ALLOWED_HOSTS = list(SERVING.hosts)
ROOT_URLCONF = "shimstock.site.urls"
WSGI_APPLICATION = "shimstock.site.wsgi.application"
APPEND_SLASH = True

MIDDLEWARE = [
    "django.middleware.security.SecurityMiddleware",
    "shimstock.faces.web.headers.OnlyFromTheShed",
    "shimstock.faces.web.headers.SmallerText",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "django.contrib.sessions.middleware.SessionMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "django.contrib.messages.middleware.MessageMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
    "shimstock.faces.web.who.WhoIsThere",
    "shimstock.faces.web.headers.NotTooLarge",
    "shimstock.faces.web.wrong.SayWhatIsWrong",
]

TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "APP_DIRS": True,
        "OPTIONS": {
            "context_processors": [
                "django.template.context_processors.request",
                "django.contrib.messages.context_processors.messages",
                "shimstock.faces.web.every_page.every_page",
            ],
            "builtins": ["shimstock.faces.web.templatetags.shed"],
        },
    }
]

STATIC_URL = "/static/"
WHITENOISE_USE_FINDERS = True  # straight from the package: nothing to collect first
WHITENOISE_MAX_AGE = 365 * 24 * 3600  # pages ask for a file by its name and its digest

SESSION_COOKIE_AGE = int(SEASON.total_seconds())
SESSION_COOKIE_NAME = "shed"
SESSION_COOKIE_HTTPONLY = True
SESSION_COOKIE_SAMESITE = "Lax"
SESSION_COOKIE_SECURE = CSRF_COOKIE_SECURE = SERVING.encrypted
CSRF_COOKIE_NAME = "shed_form"
CSRF_COOKIE_SAMESITE = "Lax"
CSRF_FAILURE_VIEW = "shimstock.faces.web.wrong.form_grew_old"
SECURE_REFERRER_POLICY = "same-origin"
SECURE_CONTENT_TYPE_NOSNIFF = True
PASSWORD_HASHERS = ["django.contrib.auth.hashers.ScryptPasswordHasher"]
AUTH_PASSWORD_VALIDATORS = [
    {"NAME": f"django.contrib.auth.password_validation.{name}"}
    for name in ("MinimumLengthValidator", "CommonPasswordValidator")
]
DATA_UPLOAD_MAX_MEMORY_SIZE = 10 * 2**20  # of a form without its files

LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "handlers": {"terminal": {"class": "logging.StreamHandler"}},
    "loggers": {"django": {"handlers": ["terminal"], "level": "ERROR", "propagate": False}},
}
