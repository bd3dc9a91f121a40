# SPDX-License-Identifier: MIT
"""Thrust over speed, what each gear covers, and road speed over engine speed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from .. import _core as ls
from .common import (
    BLUE,
    GREY,
    HATCHES,
    INK,
    LINES,
    PLUM,
    SERIES,
    SMALL,
    WIDTHS,
    Artists,
    axes_for,
    expect,
    label_room,
    legend_above,
    names_of,
    some_setups,
    title,
    unit_of,
)

if TYPE_CHECKING:
    from collections.abc import Sequence

    from matplotlib.axes import Axes

    from .._core import _Units as Units

STEPS = 60  # of a line that bends


def _laden(machine: ls.Machine, road: ls.RoadLoad) -> ls.RoadLoad:
    """The road with a mass that slopes can pull at: its own, or the machine's."""
    if road.mass is not None or machine.body is None:
        return road
    return ls.RoadLoad(constant=road.constant.nominal, linear=road.linear, quadratic=road.quadratic.nominal,
                       mass=machine.body.mass, head_wind=road.head_wind)  # fmt: skip


def thrust_diagram(
    machine: ls.Machine,
    *setups: ls.Setup,
    road: ls.RoadLoad | None = None,
    slopes: Sequence[float] = (0.0, 0.1, 0.2, 0.3),
    labels: Sequence[str] | None = None,
    ax: Axes | None = None,
    units: Units = "metric",
) -> Artists:
    """Draws the thrust of each gear over road speed, full throttle, and what resists: where lines cross, speed holds.

    Args:
        machine: The machine, which states an engine.
        setups: One to four to hold against each other; the machine's own if left out. The last one's gears are named.
        road: What resists; the machine's own if left out.
        slopes: Rise over way, up to six, such as 0.1 for 10 % uphill.
        labels: What the set-ups are called.
        ax: Axes to draw into; if left out, those of a new figure.
        units: ``"metric"`` (km/h, N) or ``"us"`` (mph, lbf).

    Returns:
        Artists by name: ``"thrusts"`` (for each set-up a list of a line a gear), ``"gears"`` (their numbers),
        ``"resistances"`` (a line a slope), ``"slopes"`` (words of those in view), ``"beyond"`` (words of those that
        are not, or None), ``"limit"`` and ``"limit label"`` (where the
        front wheel lifts or the rear tyre spins on level asphalt; None where the machine does not tell or no gear
        reaches it), ``"legend"`` (None for one set-up), ``"title"``.

    Raises:
        Error: The machine states no engine, no road load, or for slopes no mass.
        RangeError: Too many set-ups or slopes, or labels or units that are not known.
        TypeError: An argument of another kind.

    Example:
        >>> import layshaft as ls
        >>> bike = ls.Machine(
        ...     name="A bike", gearbox=ls.Gearbox(gears=[3.0, 2.0], idle="1000 rpm", rev_limit="9000 rpm"), chain="520",
        ...     adjuster=ls.Adjuster("600 mm", "640 mm"), speedometer="front wheel",
        ...     stock=ls.Setup(front=15, rear=45, circumference="2 m"), road_load=ls.RoadLoad.by_mass("220 kg"),
        ...     engine=ls.EngineCurve(["2000 rpm", "9000 rpm"], ["20 Nm", "24 Nm"]))
        >>> drawn = ls.plots.thrust_diagram(bike, slopes=[0.0, 0.1])
        >>> [text.get_text() for text in drawn["slopes"]]
        ['level', '10 % uphill']
    """
    own = some_setups(machine, setups)
    names = names_of(machine, own, labels)
    road = machine.road_load if road is None else road
    if road is None:
        raise ls.Error(f"{machine.name} states no road load; give road=, such as RoadLoad.by_mass('220 kg')")
    expect("road", road, ls.RoadLoad, "RoadLoad.by_mass('220 kg')")
    if len(slopes) > 6:
        raise ls.RangeError(f"slopes are {len(slopes)}; expected at most 6 in one picture")
    speed_name, speed_unit = unit_of("speed", units)
    force_name, force_unit = unit_of("force", units)
    diagrams = [ls.thrust_diagram(machine, one, road) for one in own]
    ax = axes_for(ax, 6.4, 4.4)
    drawn: Artists = {"thrusts": [], "gears": [], "resistances": [], "slopes": []}
    fastest = top = 0.0
    for i, (diagram, name) in enumerate(zip(diagrams, names, strict=True)):
        # one set-up alone is the subject; of several, the first is what they are held against
        style = i if len(own) > 1 else 1
        lines = []
        for gear, line in enumerate(diagram, 1):
            x = [point.speed / speed_unit for point in line]
            y = [point.thrust.nominal / force_unit for point in line]
            lines += ax.plot(x, y, color=SERIES[style], ls=LINES[style], lw=WIDTHS[style],
                             label=name if gear == 1 else None)  # fmt: skip
            fastest, top = max(fastest, *x), max(top, *y)
            if i == len(own) - 1:
                best = max(range(len(y)), key=y.__getitem__)
                drawn["gears"].append(
                    ax.annotate(str(gear), (x[best], y[best]), (0, 3), textcoords="offset points", ha="center",
                                color=INK, fontsize=SMALL)
                )  # fmt: skip
        drawn["thrusts"].append(lines)
    top *= 1.08
    laden = _laden(machine, road)
    beyond = []
    for slope in slopes:
        words = "level" if slope == 0 else f"{100 * abs(slope):.3g} % {'uphill' if slope > 0 else 'downhill'}"
        x = [fastest * i / STEPS for i in range(STEPS + 1)]
        y = [laden.resistance(one * speed_unit, slope) / force_unit for one in x]
        drawn["resistances"] += ax.plot(x, y, color=BLUE, lw=1.1, ls=(0, (4, 2)))
        in_view = [i for i, resists in enumerate(y) if 0 <= resists < top]
        if not in_view:
            beyond.append(words)
        elif in_view[-1] == STEPS:
            drawn["slopes"].append(label_room(ax, fastest, y[-1], words, BLUE))
        else:  # it leaves through the top; its words go where there is room
            at, early = (x[in_view[-1]], y[in_view[-1]]), in_view[-1] < STEPS / 3
            drawn["slopes"].append(ax.annotate(words, at, (4 if early else -4, 0), ha="left" if early else "right",
                                               textcoords="offset points", va="top", color=BLUE,
                                               fontsize=SMALL))  # fmt: skip
    drawn["beyond"] = None
    if beyond:
        drawn["beyond"] = label_room(ax, fastest, 0.97 * top, "beyond:\n" + "\n".join(beyond), BLUE)
        drawn["beyond"].set_va("top")
    drawn["limit"] = drawn["limit label"] = None
    limit = _limit(machine)
    if limit is not None and limit.thrust.nominal / force_unit < top:
        useless = limit.thrust.nominal / force_unit
        drawn["limit"] = ax.axhline(useless, color=PLUM, lw=1.1, ls=(0, (1, 2)))
        what = (
            "front wheel\nlifts above,\non asphalt"
            if limit.kind == "wheelie"
            else "rear tyre\nspins above,\non asphalt"
        )
        drawn["limit label"] = label_room(ax, fastest, useless, what, PLUM)
    ax.set_xlim(0, fastest)
    ax.set_ylim(0, top)
    ax.set_xlabel(f"road speed, {speed_name}")
    ax.set_ylabel(f"at the ground, {force_name}")
    drawn["legend"] = ax.legend(frameon=False, loc="upper right", fontsize=SMALL) if len(own) > 1 else None
    drawn["title"] = title(ax, f"{machine.name}: thrust of each gear, and what resists")
    return drawn


def _limit(machine: ls.Machine) -> ls.ThrustLimit | None:
    """What the ground takes on level asphalt, where the machine says where its weight is."""
    body = machine.body
    if body is None or body.wheelbase is None or body.centre_ahead is None or body.centre_height is None:
        return None
    return ls.thrust_limit(body, ls.surface("asphalt"))


def gear_ranges(
    machine: ls.Machine,
    *setups: ls.Setup,
    cruise: ls.Speed | str | None = None,
    labels: Sequence[str] | None = None,
    ax: Axes | None = None,
    units: Units = "metric",
) -> Artists:
    """Draws the road speeds that each gear covers, from the lowest engine speed that pulls to the limit.

    Args:
        machine: The machine.
        setups: One to four to hold against each other; the machine's own if left out.
        cruise: A speed that the rider keeps; it is drawn as a line across the gears.
        labels: What the set-ups are called.
        ax: Axes to draw into; if left out, those of a new figure.
        units: ``"metric"`` (km/h) or ``"us"`` (mph).

    Returns:
        Artists by name: ``"bars"`` (for each set-up one a gear), ``"tyre"`` (for each a line a gear over what the
        tyre's band leaves open at the top), ``"top speeds"`` (a line for each on the level, where the machine states
        its engine and road), ``"cruise"`` (or None), ``"legend"`` (None for one set-up), ``"title"``.

    Raises:
        RangeError: Too many set-ups, or labels or units that are not known.
        Error: A set-up does not go with the machine.
        TypeError: An argument of another kind.

    Example:
        >>> import layshaft as ls
        >>> bike = ls.Machine(
        ...     name="A bike", gearbox=ls.Gearbox(gears=[3.0, 2.0], idle="1000 rpm", rev_limit="9000 rpm"), chain="520",
        ...     adjuster=ls.Adjuster("600 mm", "640 mm"), speedometer="front wheel",
        ...     stock=ls.Setup(front=15, rear=45, circumference="2 m"))
        >>> bar = ls.plots.gear_ranges(bike)["bars"][0][1]
        >>> round(bar.get_x() + bar.get_width())
        180
    """
    own = some_setups(machine, setups)
    names = names_of(machine, own, labels)
    name, unit = unit_of("speed", units)
    appraisals = [ls.appraise(machine, one) for one in own]
    count = len(machine.gearbox.gears)
    ax = axes_for(ax, 6.4, 1.2 + count * (0.28 + 0.16 * len(own)))
    drawn: Artists = {"bars": [], "tyre": [], "top speeds": [], "cruise": None}
    high = 0.78 / len(own)
    for i, (one, label) in enumerate(zip(appraisals, names, strict=True)):
        style = i if len(own) > 1 else 1
        places = [gear + (i - (len(own) - 1) / 2) * high for gear in range(1, count + 1)]
        covered = [one.speed_range(gear) for gear in range(1, count + 1)]
        low = [speeds.lowest.nominal / unit for speeds in covered]
        wide = [speeds.highest.nominal / unit - start for speeds, start in zip(covered, low, strict=True)]
        bars = ax.barh(places, wide, left=low, height=0.88 * high, color=SERIES[style], hatch=HATCHES[style],
                       edgecolor="white", linewidth=0, label=label)  # fmt: skip
        drawn["bars"].append(list(bars))
        open_ends = [(speeds.highest.low / unit, speeds.highest.high / unit) for speeds in covered]
        drawn["tyre"].append([ax.plot(ends, [at, at], color=INK, lw=1.4, solid_capstyle="butt")[0]
                              for ends, at in zip(open_ends, places, strict=True)])  # fmt: skip
        if one.road is not None:
            top = one.road.top_speed.speed.nominal / unit
            drawn["top speeds"] += ax.plot([top, top], [0.5, count + 0.5], color=SERIES[style], lw=1.2,
                                           ls=(0, (4, 2)))  # fmt: skip
    if cruise is not None:
        cruise = ls.Speed(cruise)
        drawn["cruise"] = ax.axvline(cruise / unit, color=BLUE, lw=1.2, ls=(0, (1, 1.5)))
        ax.annotate(f"cruise, {ls.show(cruise, units)}", (cruise / unit, 1.0), (4, -2), va="top", color=BLUE,
                    fontsize=SMALL, xycoords=("data", "axes fraction"), textcoords="offset points")  # fmt: skip
    ax.set_yticks(range(1, count + 1), [f"gear {gear}" for gear in range(1, count + 1)])
    ax.set_ylim(count + 0.5, 0.5 - (0.35 if cruise is not None else 0.0))
    ax.set_xlim(left=0)
    box = machine.gearbox
    notes = [f"road speed in {name}, from {ls.show(box.lowest_pull)} to {ls.show(box.rev_limit)}"]
    if any(ends.get_xdata()[0] != ends.get_xdata()[1] for ends in drawn["tyre"][-1]):
        notes.append("dark lines: what the tyre leaves open")
    if drawn["top speeds"]:
        notes.append("dashed: top speed on the level")
    ax.set_xlabel(f"{notes[0]}\n{'; '.join(notes[1:])}" if notes[1:] else notes[0])
    drawn["title"] = title(ax, f"{machine.name}: what each gear covers")
    drawn["legend"] = legend_above(ax) if len(own) > 1 else None
    return drawn


def speed_over_engine_speed(
    machine: ls.Machine,
    setup: ls.Setup | None = None,
    *,
    ax: Axes | None = None,
    units: Units = "metric",
) -> Artists:
    """Draws road speed over engine speed for each gear, and the drop of engine speed where one shifts up at the limit.

    Args:
        machine: The machine.
        setup: Its sprockets and tyre; the machine's own if left out.
        ax: Axes to draw into; if left out, those of a new figure.
        units: ``"metric"`` (km/h) or ``"us"`` (mph); engine speed is in rpm.

    Returns:
        Artists by name, a list with one for each gear: ``"lines"``, ``"tyre"`` (the tyre's band, where there is one),
        ``"gears"`` (their numbers); ``"shifts"`` (for each step up the way back along one road speed),
        ``"lowest pull"`` (a line where the engine begins to pull), ``"title"``.

    Raises:
        Error: The set-up does not go with the machine.
        RangeError: The units are not known.
        TypeError: An argument of another kind.

    Example:
        >>> import layshaft as ls
        >>> bike = ls.Machine(
        ...     name="A bike", gearbox=ls.Gearbox(gears=[3.0, 2.0], idle="1000 rpm", rev_limit="9000 rpm"), chain="520",
        ...     adjuster=ls.Adjuster("600 mm", "640 mm"), speedometer="front wheel",
        ...     stock=ls.Setup(front=15, rear=45, circumference="2 m"))
        >>> shift = ls.plots.speed_over_engine_speed(bike)["shifts"][0]
        >>> [round(float(x)) for x in shift.get_xdata()]  # rpm before and after
        [9000, 6000]
    """
    expect("machine", machine, ls.Machine, "Machine.from_json(text)")
    setup = machine.stock if setup is None else setup
    expect("setup", setup, ls.Setup, "machine.stock")
    name, unit = unit_of("speed", units)
    appraisal = ls.appraise(machine, setup)
    box = machine.gearbox
    slow, fast = box.idle / ls.rpm, box.rev_limit / ls.rpm
    ax = axes_for(ax, 6.4, 4.2)
    drawn: Artists = {"lines": [], "tyre": [], "gears": [], "shifts": []}
    what = "crank" if machine.kind == "cycle" else "engine"
    for gear in range(1, len(box.gears) + 1):
        at = [appraisal.speed_at(revs * ls.rpm, gear) for revs in (slow, fast)]
        low, middle, high = ([getattr(band, end) / unit for band in at] for end in ("low", "nominal", "high"))
        if low != high:
            drawn["tyre"].append(ax.fill_between([slow, fast], low, high, color=GREY, alpha=0.3, lw=0))
        drawn["lines"] += ax.plot([slow, fast], middle, color=SERIES[1], lw=WIDTHS[1])
        drawn["gears"].append(label_room(ax, fast, middle[1], str(gear), INK))
        if gear < len(box.gears):
            limit = at[1].nominal
            after = appraisal.engine_speed_at(limit, gear + 1).nominal / ls.rpm
            drawn["shifts"] += ax.plot([fast, after], [limit / unit] * 2, color=BLUE, lw=1.1, ls=(0, (4, 2)))
    drawn["lowest pull"] = ax.axvline(box.lowest_pull / ls.rpm, color=PLUM, lw=1.1, ls=(0, (1, 2)))
    if box.lowest_pull > box.idle:
        ax.annotate("pulls from here", (box.lowest_pull / ls.rpm, 1.0), (4, -2), va="top", color=PLUM, fontsize=SMALL,
                    xycoords=("data", "axes fraction"), textcoords="offset points")  # fmt: skip
    ax.set_xlim(slow, fast)
    ax.set_ylim(bottom=0)
    ax.set_xlabel(f"{what} speed, rpm; dashed: shifting up at the limit")
    ax.set_ylabel(f"road speed, {name}")
    drawn["title"] = title(ax, f"{machine.name}: road speed in each gear")
    return drawn
