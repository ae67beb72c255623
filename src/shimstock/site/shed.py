import os
from pathlib import Path

VARIABLE = "SHIMSTOCK_SHED"
DATABASE = "workshop.sqlite3"


def shed_folder(given: Path | None = None) -> Path:
    """Folder that holds the workshop's data, whether it exists yet or not.

    The first of these that is there: `given`, what SHIMSTOCK_SHED names, `./shed` if such a
    folder stands here, `shimstock` in the user's home.
    """
    if given is not None:
        return given.expanduser().absolute()
    if named := os.environ.get(VARIABLE):
        return Path(named).expanduser().absolute()
    here = Path("shed").absolute()
    return here if here.is_dir() else Path.home() / "shimstock"
