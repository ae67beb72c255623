"""Every address of the pages."""

from django.urls import include, path

urlpatterns = [path("", include("shimstock.faces.web.urls"))]

handler404 = "shimstock.faces.web.wrong.not_there"
handler500 = "shimstock.faces.web.wrong.broke"
handler403 = "shimstock.faces.web.wrong.not_allowed"
handler400 = "shimstock.faces.web.wrong.not_asked_well"
