import os
import shutil
import sys
import tempfile
from pathlib import Path

import pytest
from hypothesis import settings

HOUSE = Path(__file__).parent.parent
WITHOUT_DJANGO = [HOUSE / "tests/trade", HOUSE / "src/shimstock/trade"]


# The same draws each time, so that what passed today passes tomorrow; to look for new ones:
# pytest --hypothesis-profile=default
settings.register_profile("same", derandomize=True, deadline=None)
settings.load_profile("same")


def pytest_configure(config: pytest.Config) -> None:
    """Let Django open an empty shed of its own, unless only the trade is being tested."""
    asked = [Path(str(arg).split("::")[0]).resolve() for arg in config.args]
    if all(any(path.is_relative_to(room) for room in WITHOUT_DJANGO) for path in asked):
        return
    shed = tempfile.mkdtemp(prefix="shed-")
    config.add_cleanup(lambda: shutil.rmtree(shed, ignore_errors=True))
    os.environ["SHIMSTOCK_SHED"] = shed
    os.environ["DJANGO_SETTINGS_MODULE"] = "shimstock.site.settings"


@pytest.fixture(autouse=True)
def nothing_remembered() -> None:
    """Each test has a database of its own, with the same numbers for other things."""
    if looking := sys.modules.get("shimstock.workshop.looking"):
        looking.forget()
