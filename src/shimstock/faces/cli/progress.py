"""Progress on a terminal, and Ctrl-C that stops between two machines."""

import signal
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any


@contextmanager
def progress_until_stopped(what: str) -> Iterator[Callable[[int, int], bool]]:
    """Show how far it is, on stderr; Ctrl-C asks it to stop at the next good place."""
    from rich.console import Console
    from rich.progress import Progress

    asked: list[Any] = []
    before = signal.signal(signal.SIGINT, lambda *interrupt: asked.append(interrupt))
    console = Console(stderr=True)
    try:
        with Progress(console=console, disable=not sys.stderr.isatty(), transient=True) as bar:
            task = bar.add_task(what, total=None)

            def progress(done: int, total: int) -> bool:
                bar.update(task, completed=done, total=total)
                return not asked

            yield progress
    finally:
        signal.signal(signal.SIGINT, before)
