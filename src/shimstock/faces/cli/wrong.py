"""What is said when something goes wrong: what was typed, what is wrong, what would do."""

import shlex
import textwrap
from collections.abc import Sequence
from dataclasses import dataclass

import typer


@dataclass(frozen=True)
class Wrong:
    """What is wrong and what would do, and whether it was understood at all."""

    wrong: Sequence[str]
    would_do: Sequence[str] = ()
    not_understood: bool = False

    def text(self, typed: Sequence[str], kept: Sequence[str] = ()) -> str:
        """The three parts, each under its name, at 80 columns.

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
    return Wrong([message], [f"{path} --help shows how it is typed."], not_understood=True)


def _not_found(error: Exception) -> Wrong:
    wrong, _, would = str(error).partition(". ")
    return Wrong([f"{wrong}."], [would], not_understood=True)


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
    wrong, _, would = reasons[0].rpartition("; ")
    if len(reasons) == 1 and wrong:
        return Wrong([f"{wrong}."], [would])
    each = ["What stands after each of them; `shimstock machine show` says what to do next."]
    return Wrong(reasons, each if len(reasons) > 1 else [])


def _faults(error: Exception) -> Wrong:
    return Wrong([str(problem) for problem in getattr(error, "problems", ())] or [str(error)])


def _named_wrongly(error: Exception) -> Wrong:
    wrong, _, would = str(error).partition("; ")
    return Wrong([f"{wrong}."], [would] if would else [], not_understood=True)


def _cannot(error: Exception) -> Wrong:
    return Wrong([str(error)])


def _file(error: Exception) -> Wrong:
    assert isinstance(error, OSError)
    return Wrong([f"{error.filename}: {error.strerror}."], ["Name a file that can be read."], True)


# By name, so that saying what is wrong with a line of typing loads neither Django nor the trade.
_SAY = {
    "TyperException": _usage,
    "NotFound": _not_found,
    "SlippedDigit": _slipped,
    "NotUnderstood": _not_understood,
    "Refused": _refused,
    "BookErrors": _faults,
    "CannotStart": _cannot,
    "UnknownName": _named_wrongly,
    "NoWay": _named_wrongly,
    "FileExistsError": _there_already,
    "OSError": _file,
}


def _hung(name: str, text: str) -> str:
    lead = f"{name:<10}"
    return textwrap.fill(
        text,
        80,
        initial_indent=lead,
        subsequent_indent=" " * 10,
        break_long_words=False,
        break_on_hyphens=False,
    )
