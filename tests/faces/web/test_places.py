"""Every place that the diary names leads to the page that shows it."""

import pytest

from shimstock.faces.web.places import address_of


@pytest.mark.parametrize(
    ("place", "address"),
    [
        ("joint:cover-joint", "/m/grey/joint/cover-joint/"),
        ("piece:pump:left", "/m/grey/part/pump/?piece=left"),
        ("piece:case:", "/m/grey/part/case/"),
        ("reading:bore:1:as found", "/m/grey/reading/bore/?piece=1&stage=as+found"),
        ("verdict:idle::as finished", "/m/grey/reading/idle/?stage=as+finished"),
        ("gate:paint", "/m/grey/gates/paint/"),
        ("bag:12", "/m/grey/bags/"),
        ("note:joint:cover-joint", "/m/grey/joint/cover-joint/"),
        ("note:machine", "/m/grey/"),
        ("machine", "/m/grey/book/"),
        ("answer:degreased", "/m/grey/gates/"),
        ("search:3", "/m/grey/faults/3/"),
        ("search:3:sign:blue-smoke", "/m/grey/faults/3/"),
        ("found:rings-or-bore-worn", "/m/grey/faults/"),
        ("something", ""),
    ],
)
def test_a_place_leads_to_its_page(place, address):
    assert address_of(place, "grey") == address
