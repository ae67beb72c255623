from django.apps import AppConfig


class WebConfig(AppConfig):
    """The pages, as Django knows them."""

    name = "shimstock.faces.web"
    label = "web"
