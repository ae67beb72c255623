"""An evening at the machine, as a person walks it who has read nothing."""

import json

import pytest

from e2e.conftest import LAPTOP, PATIENT, PHONE, shimstock, watched
from e2e.evening import evening


@pytest.mark.parametrize("size", [PHONE, LAPTOP], ids=["phone", "laptop"])
def test_an_evening_from_opening_a_joint_to_finding_it_dry(size, browser, served):
    context = browser.new_context(viewport=size, base_url=served.address)
    context.set_default_timeout(PATIENT)
    faults = watched(context)

    evening(context.new_page())

    context.close()
    refusals = "status of 422"  # the browser's own line, where a form was refused
    assert [line for line in faults.said if refusals not in line] == []
    told = json.loads(shimstock(served.shed, "diary", "brackwater", "--last", "7", "--json"))
    says = [entry["says"] for entry in told["entries"]]
    assert {entry["who"] for entry in told["entries"]} == {"Ida"}
    for said, expected in zip(
        says,
        ("Opened Primary filter bowl", "half a cup", "12", "Read Liner bore", "Made ready",
         "torqued", "standing, engine not run, found dry"),
        strict=True,
    ):  # fmt: skip
        assert expected in said


def test_the_same_evening_without_script(browser, served):
    """Everything is there with plain links and forms."""
    context = browser.new_context(
        viewport=PHONE, base_url=served.address, java_script_enabled=False
    )
    context.set_default_timeout(PATIENT)

    evening(context.new_page())

    context.close()
    assert "found dry" in shimstock(served.shed, "diary", "brackwater", "--last", "1")
