from django.apps import AppConfig


class WorkshopConfig(AppConfig):
    """The one Django application of the house."""

    name = "shimstock.workshop"
    label = "workshop"
    verbose_name = "Workshop"
    default_auto_field = "django.db.models.BigAutoField"
