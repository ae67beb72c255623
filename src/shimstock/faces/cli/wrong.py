"""What is said when something goes wrong: what was typed, what is wrong, what would do."""

import errno
import re
import shlex
import shutil
import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import typer


@dataclass(frozen=True)
class Wrong:
    """What is wrong and what would do, and whether it was understood at all."""

    wrong: Sequence[str]
    would_do: Sequence[str] = ()
    not_understood: bool = False

    def text(self, typed: Sequence[str], kept: Sequence[str] = ()) -> str:
        """The three parts, each under its name, at 80 columns or as many as the terminal has.

        kept: what had been done and written down before it went wrong.
        """
        parts = [("Typed", [shlex.join(["shimstock", *typed])])]
        parts.append(("Wrong", list(self.wrong)))
        if kept:
            parts.append(("Kept", list(kept)))
        if self.would_do:
            parts.append(("Would do", list(self.would_do)))
        return "\n".join(
            _hung(f"{name}:" if first else "", line)
            for name, lines in parts
            for first, line in zip([True] + [False] * len(lines), lines, strict=False)
        )


def explain(error: Exception) -> Wrong | None:
    """Say in words what an error means; None for one that nobody foresaw."""
    names = {kind.__name__ for kind in type(error).__mro__}
    for name, say in _SAY.items():
        if name in names:
            return say(error)
    return None


def _usage(error: Exception) -> Wrong:
    ctx = getattr(error, "ctx", None)
    path = ctx.command_path if ctx else "shimstock"
    message = error.format_message() if isinstance(error, typer.TyperException) else str(error)
    message = message.removeprefix("Invalid value: ")
    message = re.sub(r"Input should be a valid integer.*", "a whole number is wanted.", message)
    example = _example(ctx) if message.startswith("Missing") else []
    return Wrong(
        [message], [*example, f"{path} --help shows how it is typed."], not_understood=True
    )


def _example(ctx: Any) -> list[str]:
    """The line that the command's help shows as its example, where there is one."""
    said = ctx.command.epilog or "" if ctx else ""
    found = re.search(r"Example:\n  (.*)", said)
    return [f"for example: {found[1]}"] if found else []


def _not_found(error: Exception) -> Wrong:
    wrong, _, would = str(error).partition(". ")
    near = [would] if getattr(error, "near", True) else []
    all_ = _NAMES if wrong.endswith("in this machine's book") else ""
    lists = _LISTS.get(getattr(error, "what", ""), all_)
    return Wrong([f"{wrong}."], [*near, *([lists] if lists else [])] or [would], True)


def _not_understood(error: Exception) -> Wrong:
    typed, wrong = getattr(error, "typed", ""), getattr(error, "wrong", "")
    would = " or ".join(getattr(error, "would_do", ()))
    return Wrong([f"{typed.strip() or '(nothing)'} {wrong}."], [would] if would else [], True)


def _slipped(error: Exception) -> Wrong:
    wrong = _not_understood(error)
    return Wrong(wrong.wrong, [*wrong.would_do, "--meant keeps it as it was typed."], True)


def _there_already(error: Exception) -> Wrong:
    assert isinstance(error, OSError)
    return Wrong([f"{error.filename} is there already; nothing was overwritten."],
                 ["Name another file."])  # fmt: skip


def _refused(error: Exception) -> Wrong:
    reasons = list(getattr(error, "reasons", (str(error),)))
    parted = [_parted(reason) for reason in reasons]
    if len(parted) == 1:
        [(wrong, would)] = parted
        stop = "." if would and not wrong.endswith("?") else ""
        return Wrong([f"{wrong}{stop}"], [would] if would else [])
    shown = parted if len(parted) <= MANY else parted[:FEW]
    left = len(parted) - len(shown)
    more = [f"and {left} more: shimstock gate, or machine show --all, lists them."] if left else []
    return Wrong(
        [*(f"{n}. {wrong}" for n, (wrong, _) in enumerate(shown, start=1)), *more],
        [f"{n}. {would}" for n, (_, would) in enumerate(shown, start=1) if would],
    )


def _parted(reason: str) -> tuple[str, str]:
    """What is wrong and what would do; an alternative ("; or ...") belongs to what would do."""
    found = re.fullmatch(r"(.+?); ((?:(?!; ).)+(?:; or\b.+)?)", reason)
    return (found[1], found[2]) if found else (reason, "")


def _faults(error: Exception) -> Wrong:
    problems = [str(problem) for problem in getattr(error, "problems", ())]
    mend = "mend these lines of the book; shimstock book check FILE says when it is right"
    return Wrong(problems or [str(error)], [mend] if problems else [])


def _named_wrongly(error: Exception) -> Wrong:
    wrong, _, would = str(error).partition("; ")
    return Wrong([f"{wrong}."], [would] if would else [], not_understood=True)


def _not_possible(error: Exception) -> Wrong:
    what, rule = getattr(error, "what", ""), getattr(error, "rule", "")
    would = getattr(error, "would_do", "")
    return Wrong([f"{what} {rule}."], [would] if would else [], not_understood=True)


def _cannot(error: Exception) -> Wrong:
    return Wrong([str(error)])


def _file(error: Exception) -> Wrong:
    assert isinstance(error, OSError)
    say = {
        errno.ENOENT: ("There is no file or folder", "look at its spelling, and where it lies"),
        errno.EACCES: ("You may not read or write", "name a file that can be read or written"),
        errno.EROFS: ("Nothing can be written at", "name a file on a disk that can be written"),
        errno.EISDIR: ("A folder, not a file:", "name a file in it"),
        errno.ENOTDIR: ("A file stands where a folder is wanted:", "name another folder"),
        errno.ENOSPC: ("The disk is full; nothing more can be written at", "make room first"),
    }
    wrong, would = say.get(error.errno or 0, (f"{error.strerror}:", "name another file"))
    return Wrong([f"{wrong} {error.filename or 'this disk'}."], [would], True)


def _not_text(error: Exception) -> Wrong:
    would = "name a book, saved as plain text (UTF-8)"
    return Wrong(["The file is not plain text."], [would], not_understood=True)


_NAMES = "shimstock machine names MACHINE WORD finds what its book calls a thing."
_LISTS = {
    "machine": "shimstock machine list shows them all.",
    "starter": "shimstock book starters shows them all.",
    "file or starter": "shimstock book starters shows the starters.",
    "entry in the diary": "shimstock diary MACHINE shows the numbers.",
    "search": "shimstock searches MACHINE shows them all.",
    "label of counts": "shimstock counts shows them all.",
}
"""Where names of a kind are listed."""
MANY, FEW = 12, 8
"""Up to how many reasons are all shown, and how many of more."""


# By name, so that saying what is wrong with a line of typing loads neither Django nor the trade.
_SAY = {
    "TyperException": _usage,
    "NotFound": _not_found,
    "HardlyMeant": _slipped,
    "NotUnderstood": _not_understood,
    "NotPossible": _not_possible,
    "Refused": _refused,
    "BookErrors": _faults,
    "CannotStart": _cannot,
    "UnknownName": _named_wrongly,
    "NoWay": _named_wrongly,
    "FileExistsError": _there_already,
    "OSError": _file,
    "UnicodeDecodeError": _not_text,
}


def _hung(name: str, text: str) -> str:
    lead = f"{name:<10}"
    return textwrap.fill(
        text,
        min(80, shutil.get_terminal_size((80, 24)).columns),
        initial_indent=lead,
        subsequent_indent=" " * 10,
        break_long_words=False,
        break_on_hyphens=False,
    )
