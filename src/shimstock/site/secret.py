"""The secret that signs cookies and forms: made once for a shed, kept in its folder."""

import os
import secrets
from pathlib import Path

FILE = "secret.key"


def secret_of(shed: Path) -> str:
    """The shed's secret; made on first use and readable by its owner alone.

    Where the folder is not there yet, one that is good for this program only.
    """
    file = shed / FILE
    if not shed.is_dir():
        return secrets.token_urlsafe(48)
    try:
        made = os.open(file, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    except FileExistsError:
        return _written(file)
    except OSError:  # a shed that can only be read signs nothing that has to last
        return secrets.token_urlsafe(48)
    with os.fdopen(made, "w", encoding="ascii") as out:
        out.write(secrets.token_urlsafe(48))
    return _written(file)


def _written(file: Path) -> str:
    """What the file holds; another program may have made it this moment and not yet filled it."""
    for _ in range(100):
        if text := file.read_text(encoding="ascii").strip():
            return text
    raise RuntimeError(f"{file} is empty: delete it, and everybody signs in again.")
