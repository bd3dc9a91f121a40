# SPDX-License-Identifier: MIT
"""What all pictures have in common: colours, axes, units in labels, and bands in numbers."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, TypeAlias

from .. import _core as ls
from .._escape import called, in_short

if TYPE_CHECKING:
    from collections.abc import Sequence

    from matplotlib.axes import Axes

    from .._core import _Units as Units

Artists: TypeAlias = dict[str, Any]

# Told apart by normal eyes and by those that lack one kind of cone, and dark enough on white, all but GREY for text as
# well: tests/plots computes both.
GREY, RUST, BLUE, PLUM, INK, FAINT = "#868b94", "#b3541e", "#2b6a8c", "#43264f", "#20242a", "#6b6f76"
COLOURS = {"grey": GREY, "rust": RUST, "blue": BLUE, "plum": PLUM, "ink": INK, "faint": FAINT}
PALE_GREY, PALE_RUST, PALE_BLUE = "#e9eaec", "#f0d9cb", "#d3e3ec"  # fills under text in INK
# Set-ups, in the order given; as colour never tells alone, each has a line of its own.
SERIES = (GREY, RUST, PLUM, BLUE)
LINES: tuple[Any, ...] = ("-", "-", (0, (6, 2)), (0, (1.5, 1.5)))
WIDTHS = (1.4, 2.0, 2.0, 2.0)
HATCHES = ("", "", "////", "....")
SMALL = 9  # points: still to be read where a picture of 6.4 inches is shown on a phone

_UNITS: dict[str, dict[str, tuple[str, Any]]] = {
    "metric": {
        "length": ("mm", ls.mm),
        "distance": ("km", ls.km),
        "speed": ("km/h", ls.kmh),
        "force": ("N", ls.N),
        "torque": ("Nm", ls.Nm),
        "power": ("kW", ls.kW),
    },
    "us": {
        "length": ("in", ls.inch),
        "distance": ("miles", ls.mile),
        "speed": ("mph", ls.mph),
        "force": ("lbf", ls.lbf),
        "torque": ("lbf ft", ls.lbf_ft),
        "power": ("hp", ls.hp),
    },
}


def unit_of(kind: str, units: Units) -> tuple[str, Any]:
    """The name and the unit for a kind of number; a RangeError where `units` is neither 'metric' nor 'us'."""
    if units not in _UNITS:
        raise ls.RangeError(f"units is {in_short(units)}; expected 'metric' or 'us'")
    return _UNITS[units][kind]


def axes_for(ax: Axes | None, width: float, height: float) -> Axes:
    """The axes given, or those of a new figure, in inches."""
    if ax is None:
        import matplotlib.pyplot as plt

        ax = plt.subplots(figsize=(width, height), layout="constrained")[1]
    for side in ("top", "right"):
        ax.spines[side].set_visible(False)
    return ax


def title(ax: Axes, text: str, *, over_legend: bool = False) -> Any:
    """The title, word for word: a machine may be called $x$, which is no formula."""
    pad = 20 if over_legend else None
    return ax.set_title(text, loc="left", fontsize="medium", color=INK, pad=pad, parse_math=False)


def expect(what: str, value: object, kind: type, example: str) -> None:
    """A TypeError that names the argument where it is of another kind."""
    if not isinstance(value, kind):
        got = f"{type(value).__name__} {in_short(value)}"
        raise TypeError(f"{what}: expected {called(kind)} such as {example}, got {got}")


def nominal(value: Any) -> Any:
    """The middle of a band, or the number itself."""
    return value.nominal if isinstance(value, ls.Band) else value


def ends(value: Any) -> tuple[Any, Any, Any]:
    """Low, nominal and high; of a number three times itself."""
    return (value.low, value.nominal, value.high) if isinstance(value, ls.Band) else (value,) * 3


def names_of(machine: ls.Machine, setups: Sequence[ls.Setup], labels: Sequence[str] | None) -> list[str]:
    """What the set-ups are called: as asked, or by their teeth, and by the tyre where that differs."""
    if labels is not None:
        if isinstance(labels, str) or len(labels) != len(setups):
            raise ls.RangeError(f"labels is {in_short(labels)}; expected one for each of {len(setups)} set-ups")
        return [str(label) for label in labels]
    tyres = {(one.tyre, one.circumference) for one in setups}
    names = []
    for one in setups:
        name = f"{one.front}/{one.rear}"
        if len(tyres) > 1:
            name += f", {tyre_name(one)}"
        names.append(f"as made, {name}" if one == machine.stock and len(setups) > 1 else name)
    return names


def tyre_name(setup: ls.Setup, units: Units = "metric") -> str:
    if setup.circumference is not None:
        return f"{ls.show(setup.circumference.nominal, units)} round"
    return "no tyre" if setup.tyre is None else setup.tyre.designation


def some_setups(machine: ls.Machine, setups: Sequence[ls.Setup]) -> list[ls.Setup]:
    """The set-ups given, one to four, or the machine's own."""
    expect("machine", machine, ls.Machine, "Machine.from_json(text)")
    for place, one in enumerate(setups, 1):
        expect(f"set-up {place}", one, ls.Setup, "machine.stock")
    if len(setups) > len(SERIES):
        raise ls.RangeError(f"set-ups are {len(setups)}; expected at most {len(SERIES)} in one picture")
    return list(setups) or [machine.stock]


def label_room(ax: Axes, x: float, y: float, text: str, colour: str) -> Any:
    """A word at the right end of a line, outside the axes, where nothing else is."""
    return ax.annotate(text, (x, y), (4, 0), textcoords="offset points", va="center", color=colour, fontsize=SMALL,
                       annotation_clip=False)  # fmt: skip


def legend_above(ax: Axes, **more: Any) -> Any:
    """The legend in a row between the title and the axes, where nothing is drawn."""
    title(ax, ax.get_title(loc="left"), over_legend=True)
    return ax.legend(frameon=False, loc="lower left", bbox_to_anchor=(0, 1), ncols=len(SERIES), fontsize=SMALL,
                     borderaxespad=0.2, borderpad=0, columnspacing=1.4, handlelength=1.6, **more)  # fmt: skip
