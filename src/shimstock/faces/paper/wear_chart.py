"""How a bore is worn: depth down the page against diameter; reads in black and white."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from io import StringIO
from typing import TYPE_CHECKING, Any

from shimstock.faces.paper.lettering import FONT, width_of
from shimstock.faces.paper.signs import BLUE, INK, RED

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

BAND, LINE = "#d9d9d9", 1.3
SIZE = 7.0  # of the type, in points
MARKS = {False: ("o", "s", "^"), True: ("D", "v", "P")}
DASHES = ("-", (0, (5, 2)), (0, (1, 1.5)))
SETTINGS: dict[Any, Any] = {
    "svg.fonttype": "none",  # letters stay letters
    "svg.hashsalt": "wear chart",  # the same data give the same file
    "font.family": [FONT],
    "font.size": SIZE,
    "axes.linewidth": 0.6,
}


@dataclass(frozen=True)
class Trace:
    """What was read down the bore in one direction, at one stage."""

    label: str
    direction: int
    finished: bool
    values: tuple[float | None, ...]


@dataclass(frozen=True)
class Mark:
    """A size that the bore is held against."""

    label: str
    value: float


@dataclass(frozen=True)
class Bore:
    """Everything that one chart shows; values in `unit`, depths from the top down."""

    title: str
    along: str
    """What the places follow: down the bore, or along a shaft."""
    unit: str
    decimals: int
    depths: tuple[str, ...]
    traces: tuple[Trace, ...]
    new: tuple[float, float] | None
    limits: tuple[Mark, ...]
    next_size: Mark | None


def wear_chart(bore: Bore, *, width: float, height: float) -> str:
    """The chart as SVG text.

    width, height: in points. What was finished to another size gets a pane of its own beside what
    was found, so that the wear is not squeezed flat.
    """
    import matplotlib
    from matplotlib.figure import Figure

    with matplotlib.rc_context(SETTINGS):
        figure = Figure(figsize=(width / 72, height / 72))
        _fill(figure, bore)
        out = StringIO()
        figure.savefig(out, format="svg", metadata={"Date": None})
    return out.getvalue()


def _fill(figure: Figure, bore: Bore) -> None:
    found = [trace for trace in bore.traces if not trace.finished]
    finished = [trace for trace in bore.traces if trace.finished]
    if not (found and finished) or _near(bore, found, finished):
        axes = figure.subplots()
        _pane(axes, bore, bore.traces, worn=True)
        axes.set_xlabel(bore.unit)
    else:
        axes, right = figure.subplots(1, 2, sharey=True, width_ratios=(3, 2))
        _pane(axes, bore, found, worn=True)
        _pane(right, bore, finished, worn=False)
        right.tick_params(labelleft=False)
        axes.set_xlabel(f"as found, {bore.unit}")
        right.set_xlabel(f"as finished, {bore.unit}")
    axes.set_ylabel(bore.along)
    figure.subplots_adjust(
        left=_room(figure, bore.depths),
        right=_right_end(figure, bore),
        top=0.9,
        bottom=0.24,
        wspace=0.08,
    )
    figure.suptitle(bore.title, fontsize=8, fontweight="bold", y=0.98)
    figure.legend(loc="lower center", ncols=2, frameon=False, fontsize=6.5, handlelength=4)


def _room(figure: Figure, depths: Sequence[str]) -> float:
    """The share of the width that the names of the depths take up on the left."""
    widest = max(width_of(depth, SIZE) for depth in depths)
    return float((widest + 24) / (figure.get_figwidth() * 72))


def _right_end(figure: Figure, bore: Bore) -> float:
    """Where the panes end, so that half of a number below the very end still has room."""
    sizes = [*_values(bore.traces), *(mark.value for mark in bore.limits), *(bore.new or ())]
    widest = max(width_of(f"{size:.{bore.decimals}f}", SIZE) for size in sizes)
    return 1 - float((widest / 2 + 3) / (figure.get_figwidth() * 72))


def _values(traces: Iterable[Trace]) -> list[float]:
    return [value for trace in traces for value in trace.values if value is not None]


def _near(bore: Bore, found: Sequence[Trace], finished: Sequence[Trace]) -> bool:
    """Whether one pane can show both without squeezing what was found."""
    seen = [*_values(found), *(mark.value for mark in bore.limits), *(bore.new or ())]
    spread = max(seen) - min(seen)
    everything = [*seen, *_values(finished)]
    return bool(max(everything) - min(everything) <= 1.3 * spread)


def _pane(axes: Axes, bore: Bore, traces: Sequence[Trace], *, worn: bool) -> None:
    """One pane. worn: with the new band and the wear limits, where wear is to be seen."""
    if worn and bore.new is not None:
        axes.axvspan(*bore.new, facecolor=BAND, edgecolor="none", zorder=0)
        _say(axes, sum(bore.new) / 2, "new", aside=0)
    for limit in bore.limits if worn else ():
        axes.axvline(limit.value, color=RED, linewidth=1.8, zorder=1)
        _say(axes, limit.value, limit.label)
    if bore.next_size is not None and (_shows_finished(traces) or not _shows_finished(bore.traces)):
        axes.axvline(bore.next_size.value, color=BLUE, linewidth=1.1, linestyle="-.", zorder=1)
        _say(axes, bore.next_size.value, bore.next_size.label)
    for trace in traces:
        _trace(axes, trace)
    _frame(axes, bore)


def _shows_finished(traces: Iterable[Trace]) -> bool:
    return any(trace.finished for trace in traces)


def _trace(axes: Axes, trace: Trace) -> None:
    colour = BLUE if trace.finished else INK
    read = [(value, at) for at, value in enumerate(trace.values) if value is not None]
    style: dict[str, Any] = {
        "color": colour,
        "marker": MARKS[trace.finished][trace.direction % 3],
        "linestyle": DASHES[trace.direction % 3],
        "markerfacecolor": colour if trace.direction % 2 == 0 else "white",
    }
    values, places = [value for value, _ in read], [at for _, at in read]
    size: dict[str, Any] = {"linewidth": LINE, "markersize": 4.5, "zorder": 3}
    axes.plot(values, places, label=trace.label, **size, **style)


def _say(axes: Axes, x: float, text: str, *, aside: float = 5) -> None:
    """Words up along a line, beside it on the left. aside: how far, in points."""
    axes.annotate(
        text,
        (x, 0.02),
        xycoords=("data", "axes fraction"),
        xytext=(-aside, 0),
        textcoords="offset points",
        rotation=90,
        fontsize=6,
        ha="center",
        va="bottom",
        color=INK,
        zorder=2,
    )


def _frame(axes: Axes, bore: Bore) -> None:
    from matplotlib.ticker import FormatStrFormatter, MaxNLocator

    axes.set_yticks(range(len(bore.depths)), bore.depths)
    axes.set_ylim(len(bore.depths) - 0.6, -0.4)
    _widen(axes, 20 * 10.0**-bore.decimals)
    axes.xaxis.set_major_locator(MaxNLocator(3, steps=[1, 2, 5, 10]))
    axes.xaxis.set_major_formatter(FormatStrFormatter(f"%.{bore.decimals}f"))
    axes.grid(axis="x", color="#e2e2e2", linewidth=0.4)
    axes.set_axisbelow(True)
    axes.tick_params(width=0.5, length=2.5)
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)


def _widen(axes: Axes, least: float) -> None:
    """Leave room beside the lines, and never so little that one step of the gauge looks large."""
    axes.margins(x=0.12)
    low, high = axes.get_xlim()
    missing = least - (high - low)
    if missing > 0:
        axes.set_xlim(low - missing / 2, high + missing / 2)
