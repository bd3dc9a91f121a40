# SPDX-License-Identifier: MIT
"""The chain's slack over the suspension's travel."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from .. import _core as ls
from .common import (
    BLUE,
    LINES,
    SERIES,
    SMALL,
    WIDTHS,
    Artists,
    axes_for,
    names_of,
    some_setups,
    title,
    unit_of,
)

if TYPE_CHECKING:
    from collections.abc import Sequence

    from matplotlib.axes import Axes

    from .._core import _Units as Units

STEPS = 80  # of the travel


def _at_rest(machine: ls.Machine, appraisal: ls.Appraisal) -> Any:
    """The slack to set by hand: what leaves as much at the tight point as the manual's does on the stock parts."""
    slack = appraisal.drive.slack
    if appraisal.setup == machine.stock or slack is None or slack.slack_to_set is None:
        return machine.adjuster.slack
    return slack.slack_to_set


def slack_over_travel(
    machine: ls.Machine,
    *setups: ls.Setup,
    slack: ls.Length | str | None = None,
    labels: Sequence[str] | None = None,
    ax: Axes | None = None,
    units: Units = "metric",
) -> Artists:
    """Draws how much slack the chain has, by hand, while the wheel moves from hanging to right up.

    Args:
        machine: The machine, which states its suspension.
        setups: One to four to hold against each other; the machine's own if left out.
        slack: Set at rest on every one. If left out, the manual's on the stock parts, and on others what leaves as much
            at the tight point.
        labels: What the set-ups are called.
        ax: Axes to draw into; if left out, those of a new figure.
        units: ``"metric"`` (mm) or ``"us"`` (in); angles are in degrees.

    Returns:
        Artists by name: ``"lines"`` and ``"tight points"`` (dots), one a set-up; ``"rest"`` (a line where the slack is
        set), ``"legend"``, ``"title"``.

    Raises:
        Error: The machine states no suspension, or the chain cannot be laid.
        RangeError: Too many set-ups, or labels or units that are not known.
        TypeError: An argument of another kind.

    Example:
        >>> import layshaft as ls
        >>> bike = ls.Machine(
        ...     name="A bike", gearbox=ls.Gearbox(gears=[3.0], idle="1000 rpm", rev_limit="9000 rpm"), chain="520",
        ...     adjuster=ls.Adjuster("600 mm", "640 mm", slack="35 mm"), speedometer="front wheel",
        ...     stock=ls.Setup(front=15, rear=45, circumference="2 m"),
        ...     suspension=ls.Suspension(layshaft_ahead="70 mm", layshaft_above="20 mm", arm="540 mm", droop="18 deg",
        ...                              rest="13 deg", bump="-5 deg"))
        >>> drawn = ls.plots.slack_over_travel(bike)
        >>> [line.get_label() for line in drawn["lines"]]
        ['15/45, 35.0 mm at rest']
    """
    own = some_setups(machine, setups)
    names = names_of(machine, own, labels)
    name, unit = unit_of("length", units)
    suspension = machine.suspension
    if suspension is None:
        raise ls.Error(f"{machine.name} states no suspension, so its chain's slack does not change")
    travels, rests = [], []
    for one in own:
        appraisal = ls.appraise(machine, one)
        at_rest = _at_rest(machine, appraisal) if slack is None else ls.Length(slack)
        loop = ls.ChainLoop(one.chain or machine.chain, one.front, one.rear)
        travels.append(ls.slack_through_travel(suspension, loop, appraisal.chain.links, slack=at_rest))
        rests.append(at_rest)
    ax = axes_for(ax, 6.4, 4.0)
    drawn: Artists = {"lines": [], "tight points": []}
    angles = [suspension.bump + (suspension.droop - suspension.bump) * (i / STEPS) for i in range(STEPS + 1)]
    for i, (travel, at_rest, label) in enumerate(zip(travels, rests, names, strict=True)):
        style = i if len(own) > 1 else 1
        drawn["lines"] += ax.plot(
            [angle / ls.deg for angle in angles], [travel.at(angle).slack / unit for angle in angles],
            color=SERIES[style], ls=LINES[style], lw=WIDTHS[style], label=f"{label}, {ls.show(at_rest, units)} at rest",
        )  # fmt: skip
        tight = travel.tight_point()
        drawn["tight points"] += ax.plot([tight.angle / ls.deg], [tight.slack / unit], "osD^"[i], color=SERIES[style],
                                         markersize=6)  # fmt: skip
    rest = suspension.rest / ls.deg
    drawn["rest"] = ax.axvline(rest, color=BLUE, lw=1.1, ls=(0, (4, 2)))
    ax.annotate("at rest", (rest, 0), (4, 4), xycoords=("data", "axes fraction"), textcoords="offset points",
                color=BLUE, fontsize=SMALL)  # fmt: skip
    ax.set_ylim(bottom=0)
    ax.set_xlim(suspension.droop / ls.deg, suspension.bump / ls.deg)
    ax.set_xlabel("swingarm below level, degrees: wheel hanging to wheel right up\nmarks: the tight point")
    ax.set_ylabel(f"slack by hand, {name}")
    drawn["legend"] = ax.legend(frameon=False, fontsize=SMALL, loc="best")
    drawn["title"] = title(ax, f"{machine.name}: slack through the travel")
    return drawn
