# SPDX-License-Identifier: MIT
"""The chain loop to scale."""

from __future__ import annotations

from math import cos, floor, hypot, pi, sin
from typing import TYPE_CHECKING, Any

from .. import _core as ls
from .._escape import in_short
from .common import BLUE, GREY, INK, PALE_BLUE, RUST, SMALL, Artists, axes_for, expect, title, unit_of

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from .._core import _Units as Units

SEEN = 0.005  # links: less is not to be seen
BELOW = -13  # points: from a sprocket down to its words
JOIN = 0.25  # where on the lower run the chain begins, as a share of it from the front sprocket


class _Path:
    """The taut loop as a way that is counted in links: lower run to the rear, round it, upper run to the front, round.

    The front sprocket's axis is at (0, 0), the rear one's on the left: the machine drives to the right.
    """

    def __init__(self, loop: ls.ChainLoop, centre: Any, unit: Any) -> None:
        self.pitch: float = loop.series.pitch / unit
        self.centre: float = centre / unit
        self.teeth = (loop.front, loop.rear)
        self.radii = tuple(ls.Sprocket(loop.series, teeth).pitch_diameter / unit / 2 for teeth in self.teeth)
        self.wraps = (loop.wrap_front(centre) / ls.rad, loop.wrap_rear(centre) / ls.rad)
        self.slope = (pi - self.wraps[0]) / 2  # of a run to the line of centres
        self.run: float = loop.run_length(centre) / unit / self.pitch
        self.on_teeth = tuple(wrap / (2 * pi) * teeth for wrap, teeth in zip(self.wraps, self.teeth, strict=True))
        self.links = loop.links(centre)

    def leaves(self, sprocket: int, upper: bool) -> tuple[float, float]:
        """Where a run leaves a sprocket, 0 the front one and 1 the rear one."""
        turn = (pi / 2 - self.slope) * (1 if upper else -1)
        return self.on(sprocket, turn)

    def on(self, sprocket: int, turn: float) -> tuple[float, float]:
        radius = self.radii[sprocket]
        return (-self.centre * sprocket + radius * cos(turn), radius * sin(turn))

    def arc(self, sprocket: int) -> tuple[float, float]:
        """The angles where the chain lies on a sprocket, in the order of the way."""
        begin = pi / 2 - self.slope
        return (begin, -begin) if sprocket == 0 else (2 * pi - begin, begin)

    def at(self, links: float) -> tuple[float, float]:
        """The place so many links from the join on."""
        way = (links + JOIN * self.run) % self.links
        for piece, length in (("lower", self.run), ("rear", self.on_teeth[1]), ("upper", self.run),
                              ("front", self.on_teeth[0])):  # fmt: skip
            if way <= length or piece == "front":
                return self._piece(piece, min(1.0, way / length))
            way -= length
        raise AssertionError

    def _piece(self, piece: str, share: float) -> tuple[float, float]:
        if piece in ("lower", "upper"):
            upper = piece == "upper"
            (x0, y0), (x1, y1) = (self.leaves(1 if upper else 0, upper), self.leaves(0 if upper else 1, upper))
            return x0 + share * (x1 - x0), y0 + share * (y1 - y0)
        sprocket = 0 if piece == "front" else 1
        begin, end = self.arc(sprocket)
        return self.on(sprocket, begin + share * (end - begin))


def _count(path: _Path, links: int | None) -> str:
    """What the count says, in two short lines."""
    taut = f"{path.links:.2f} links taut"
    if links is None:
        over = path.links - floor(path.links)
        return f"{taut}:\n{over:.2f} of a link is left over" if over > SEEN else f"{taut}:\nit closes"
    spare = links - path.links
    if abs(spare) <= SEEN:
        return f"{taut}:\n{links} close just so"
    return f"{taut},\n{links}: {abs(spare):.2f} too {'many' if spare > 0 else 'few'}"


def _plates(pins: list[tuple[float, float]], half: float) -> list[list[tuple[float, float]]]:
    """Every second link as a box from pin to pin: an outer link lies over the inner ones beside it."""
    boxes = []
    for (x0, y0), (x1, y1) in zip(pins[1::2], pins[2::2], strict=False):
        along = hypot(x1 - x0, y1 - y0)
        dx, dy = half * (y0 - y1) / along, half * (x1 - x0) / along
        boxes.append([(x0 + dx, y0 + dy), (x1 + dx, y1 + dy), (x1 - dx, y1 - dy), (x0 - dx, y0 - dy)])
    return boxes


def chain_loop(
    loop: ls.ChainLoop,
    centre: ls.Length | str,
    *,
    adjuster: ls.Adjuster | None = None,
    links: int | None = None,
    ax: Axes | None = None,
    units: Units = "metric",
) -> Artists:
    """Draws a chain loop to scale: sprockets, runs, angles of wrap, and every link, so that one sees if it closes.

    Args:
        loop: The chain series on its two sprockets.
        centre: From the front sprocket's axis to the rear one's, a Length or text such as ``"615 mm"``; from where the
            sprockets touch to 5000 links.
        adjuster: Where the rear axle may stand; it is drawn as a bar, with the room that is left.
        links: Of the chain to lay round, 1 to 10,000. If left out, as many whole links as lie taut; what is over then
            keeps it from closing.
        ax: Axes to draw into; if left out, those of a new figure.
        units: ``"metric"`` (mm) or ``"us"`` (in).

    Returns:
        Artists by name: ``"pitch circles"`` (front, rear), ``"axes"`` of the shafts, ``"runs"`` (lower, upper),
        ``"wraps"`` (front, rear), ``"wrap labels"``, ``"rollers"``, ``"outer links"``, ``"join"`` (what is too much or
        too little, or None), ``"note"`` (the count), ``"adjuster"`` (or None), ``"room"`` (where the axle is
        with these links taut, and how far it may go; or None), ``"title"``. Rollers and
        sprockets are to scale; only the adjuster's bar has a width of its own.

    Raises:
        RangeError: The centre or the links are out of range, or the units are not known.
        TypeError: An argument of another kind.

    Example:
        >>> import layshaft as ls
        >>> drawn = ls.plots.chain_loop(ls.ChainLoop("520", 13, 50), "615 mm", links=110)
        >>> print(drawn["note"].get_text())
        109.88 links taut,
        110: 0.12 too many
    """
    from matplotlib.collections import EllipseCollection, PolyCollection

    expect("loop", loop, ls.ChainLoop, 'ChainLoop("520", 13, 50)')
    if adjuster is not None:
        expect("adjuster", adjuster, ls.Adjuster, 'Adjuster("612 mm", "648 mm")')
    if links is not None and (isinstance(links, bool) or not isinstance(links, int)):
        raise TypeError(f"links: expected a whole number such as 110, got {type(links).__name__} {in_short(links)}")
    unit = unit_of("length", units)[1]
    centre = ls.Length(centre)
    path = _Path(loop, centre, unit)
    if links is not None:
        loop.centre(links)  # refuses a count that no such loop has
    ax = axes_for(ax, 6.4, 3.2)
    drawn: Artists = {"pitch circles": [], "axes": [], "runs": [], "wraps": [], "wrap labels": []}

    for sprocket, teeth in enumerate(path.teeth):
        x, radius = -path.centre * sprocket, path.radii[sprocket]
        circle = [path.on(sprocket, 2 * pi * i / 180) for i in range(181)]
        drawn["pitch circles"] += ax.plot(*zip(*circle, strict=True), color=GREY, lw=0.9, ls=(0, (5, 3)), zorder=2)
        drawn["axes"] += ax.plot([x], [0], "+", color=INK, markersize=9, zorder=4)
        begin, end = path.arc(sprocket)
        arc = [path.on(sprocket, begin + (end - begin) * i / 120) for i in range(121)]
        drawn["wraps"] += ax.plot(*zip(*arc, strict=True), color=RUST, lw=1.4, zorder=2.5)
        for turn in (begin, end):
            (px, py) = path.on(sprocket, turn)
            ax.plot([x, px], [0, py], color=GREY, lw=0.7, zorder=1)
        wrap = path.wraps[sprocket] * ls.rad / ls.deg
        label = f"{teeth} teeth\nwraps {wrap:.0f}°: {path.on_teeth[sprocket]:.1f} links"
        drawn["wrap labels"].append(
            ax.annotate(label, (x, -radius), (0, BELOW), textcoords="offset points", ha="center", va="top", color=INK,
                        fontsize=SMALL)
        )  # fmt: skip
    for upper in (False, True):
        run = [path.leaves(0, upper), path.leaves(1, upper)]
        drawn["runs"] += ax.plot(*zip(*run, strict=True), color=RUST, lw=1.4, zorder=2.5)

    count = floor(path.links) if links is None else links
    pins = [path.at(k) for k in range(count + 1)]
    plates = PolyCollection(_plates(pins, 0.3 * path.pitch), facecolors=RUST, edgecolors="none", zorder=3)
    drawn["outer links"] = ax.add_collection(plates)
    across = loop.series.roller_diameter / unit
    rollers = EllipseCollection(
        across, across, 0, units="xy", offsets=pins[:count], offset_transform=ax.transData, facecolors=INK,
        edgecolors="white", linewidths=0.3, zorder=3.5,
    )  # fmt: skip
    drawn["rollers"] = ax.add_collection(rollers)
    drawn["join"] = None
    if abs(count - path.links) > SEEN:
        between = [path.at(count + (path.links - count) * i / 20) for i in range(21)]
        drawn["join"] = ax.plot(*zip(*between, strict=True), color=BLUE, lw=6, solid_capstyle="butt", zorder=3.2)[0]
    big = int(path.radii[1] > path.radii[0])  # beside the larger sprocket the runs are widest apart
    beside, towards = -path.centre * big, 1 if big else -1
    drawn["note"] = ax.annotate(
        _count(path, links), (beside + towards * path.radii[big], 0), (towards * 8, 0),
        textcoords="offset points", ha="left" if big else "right", va="center", color=INK, fontsize=SMALL,
    )  # fmt: skip
    drawn["adjuster"] = None if adjuster is None else _bar(ax, adjuster, unit)
    words = [] if links is None else [f"{links} links taut: axle at {ls.show(loop.centre(links), units)}"]
    if adjuster is not None:
        words.append(_room(adjuster, centre, units))
    drawn["room"] = None
    if words:
        below = (0, BELOW - 2.6 * SMALL)
        drawn["room"] = ax.annotate("\n".join(words), (-path.centre, -path.radii[1]), below, ha="center", va="top",
                                    textcoords="offset points", color=BLUE, fontsize=SMALL)  # fmt: skip
    ax.set_aspect("equal")
    ax.margins(0.03)
    ax.set_axis_off()
    apart = ls.show(centre, units)
    drawn["title"] = title(ax, f"{loop.series.name} chain, {loop.front} and {loop.rear} teeth {apart} apart, to scale")
    return drawn


def _bar(ax: Axes, adjuster: ls.Adjuster, unit: Any) -> Any:
    """Where the axle may stand."""
    ends = [-adjuster.centre_min / unit, -adjuster.centre_max / unit]
    ax.plot(ends, [0, 0], ls="none", marker="|", color=BLUE, markersize=9, zorder=1.6)
    return ax.plot(ends, [0, 0], color=PALE_BLUE, lw=8, solid_capstyle="butt", zorder=1.5)[0]


def _room(adjuster: ls.Adjuster, centre: Any, units: Units) -> str:
    """How far the axle may go from here."""
    if not adjuster.centre_min <= centre <= adjuster.centre_max:
        return "the adjuster does\nnot reach so far"
    ahead, behind = centre - adjuster.centre_min, adjuster.centre_max - centre
    return f"room: {ls.show(ahead, units)} forward,\n{ls.show(behind, units)} to the rear"
