# SPDX-License-Identifier: MIT
"""What there is to choose from: the trade-off of two wishes, and the whole space, cell by cell."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from .. import _core as ls
from .. import studies
from ..choosing import choose
from .common import (
    BLUE,
    FAINT,
    GREY,
    INK,
    PALE_BLUE,
    PALE_GREY,
    RUST,
    SMALL,
    Artists,
    axes_for,
    ends,
    expect,
    unit_of,
)
from .common import title as write_title

if TYPE_CHECKING:
    from collections.abc import Sequence

    from matplotlib.axes import Axes
    from matplotlib.colors import LinearSegmentedColormap

    from .._core import _Units as Units

DARK = "#0e2f42"
MOST_NAMED = 16  # members of the trade-off that are named under the picture
WIDEST = 43  # letters of a name that has room beside another
LINE = 1.5 * SMALL  # points from line to line
OFFSETS = [(9, 0), (-9, 0), (0, 10), (0, -10), (8, 8), (-8, 8), (8, -8), (-8, -8), (17, 0), (-17, 0), (0, 19), (0, -19)]


def _shades() -> LinearSegmentedColormap:
    """One hue from pale to dark, which reads without colours."""
    from matplotlib.colors import LinearSegmentedColormap

    return LinearSegmentedColormap.from_list("shades", [PALE_BLUE, BLUE, DARK])


def trade_off(
    choice: ls.Choice,
    goals: ls.Goals,
    *,
    present: ls.Setup | None = None,
    ax: Axes | None = None,
    units: Units = "metric",
) -> Artists:
    """Draws the set-ups that nothing else beats in every wish: two wishes against each other, the third as shade.

    Args:
        choice: From ``choose``.
        goals: Those that it was chosen by, with two wishes or more.
        present: What is on the machine now; set-ups are then named by what differs from it, and else by their own.
        ax: Axes to draw into; if left out, those of a new figure.
        units: ``"metric"`` or ``"us"``.

    Returns:
        Artists by name: ``"dots"`` (in the order of rank), ``"bands"`` (for each a line across and one upward),
        ``"ring"`` round the choice, ``"wished"`` (lines where a wish is a number), ``"ranks"``, ``"names"`` (a text),
        ``"bar"`` (the shades' scale, or None), ``"title"``.

    Raises:
        Error: Nothing keeps all limits, or there are fewer than two wishes.
        RangeError: The units are not known.
        TypeError: An argument of another kind.

    Example:
        >>> import layshaft as ls
        >>> bike = ls.Machine(name="A bike", gearbox=ls.Gearbox(gears=[3.0], idle="1000 rpm", rev_limit="9000 rpm"),
        ...                   chain="520", adjuster=ls.Adjuster("600 mm", "640 mm"), speedometer="front wheel",
        ...                   stock=ls.Setup(front=15, rear=45, circumference="2 m"))
        >>> space = ls.Space(fronts=[14, 15], rears=[44, 45])
        >>> goals = ls.Goals(wishes=[ls.Wish("thrust change", 0.05), ls.Wish("parts changed", "less")])
        >>> choice = ls.choose(bike, space, goals)
        >>> drawn = ls.plots.trade_off(choice, goals, present=bike.stock)
        >>> len(drawn["dots"].get_offsets()) == len(choice.front)
        True
    """
    expect("choice", choice, ls.Choice, "choose(machine, space, goals)")
    expect("goals", goals, ls.Goals, "Goals(wishes=[...])")
    unit_of("length", units)
    wishes = list(goals.wishes[:3])
    if len(wishes) < 2:
        raise ls.Error("goals have one wish; expected two or more for a trade-off")
    front = choice.front
    if not front:
        raise ls.Error("nothing keeps all limits, so that there is no trade-off")

    def numbers(one: ls.Chosen, place: int) -> list[float]:
        return [studies.number(wishes[place].measure, end, units) for end in ends(one.wishes[place])]

    def says(place: int) -> str:
        wish = wishes[place]
        symbol = studies.unit(wish.measure, front[0].wishes[place].nominal, units)
        wanted = f"{wish.want} is better" if wish.want in ("less", "more") else "the wish is dashed"
        return f"{studies.measured(wish, units)}{f', {symbol}' if symbol else ''} ({wanted})"

    named = front[:MOST_NAMED]
    ax = axes_for(ax, 6.4, 4.6 + LINE / 72 * ((len(named) + 1) // 2 + 1))
    ax.grid(color=PALE_GREY, linewidth=0.6)
    ax.set_axisbelow(True)
    across, upward = ([numbers(one, place) for one in front] for place in (0, 1))
    drawn: Artists = {"bands": [], "wished": [], "bar": None}
    for x, y in zip(across, upward, strict=True):
        for line in (([x[0], x[2]], [y[1], y[1]]), ([x[1], x[1]], [y[0], y[2]])):
            drawn["bands"] += ax.plot(*line, color=GREY, lw=0.8, alpha=0.6, zorder=1)
    middle = [(x[1], y[1]) for x, y in zip(across, upward, strict=True)]
    shade = [numbers(one, 2)[1] for one in front] if len(wishes) > 2 else BLUE
    drawn["dots"] = ax.scatter(
        [x for x, _ in middle], [y for _, y in middle], c=shade, cmap=_shades() if len(wishes) > 2 else None, s=58,
        edgecolors=INK, linewidths=0.7, zorder=3,
    )  # fmt: skip
    drawn["ring"] = ax.scatter(*middle[0], s=230, facecolors="none", edgecolors=RUST, linewidths=2.2, zorder=4)
    for place, draw in ((0, ax.axvline), (1, ax.axhline)):
        if wishes[place].want not in ("less", "more"):
            wished = studies.number(wishes[place].measure, wishes[place].want, units)
            drawn["wished"].append(draw(wished, color=RUST, lw=1.1, ls=(0, (5, 3)), zorder=0))
    ax.set_xlabel(f"{says(0)}; lines: the ends of its band")
    ax.set_ylabel(says(1))
    drawn["title"] = write_title(ax, "What nothing else beats in every wish")
    if len(wishes) > 2:
        drawn["title"].set_text(f"{drawn['title'].get_text()}\nShade: {says(2)}")
        drawn["bar"] = _bar(ax, drawn["dots"])
    drawn["names"] = _names(ax, [one.setup for one in front], present)
    places: dict[tuple[float, float], str] = {}
    for rank, point in enumerate(middle[:MOST_NAMED], 1):
        places[point] = f"{places[point]}, {rank}" if point in places else str(rank)
    drawn["ranks"] = _label_points(ax, places)
    return drawn


def _bar(ax: Axes, dots: Any) -> Any:
    """The scale of the shades, on top of the axes and part of them."""
    inset = ax.inset_axes((0.0, 1.03, 1.0, 0.03))
    figure = ax.figure
    bar = figure.colorbar(dots, cax=inset, orientation="horizontal", ticklocation="top")
    bar.ax.tick_params(labelsize=SMALL, length=2)
    return bar


def _names(ax: Axes, setups: list[ls.Setup], present: ls.Setup | None) -> list[Any]:
    """What the numbers beside the dots mean, in two columns under the axes."""
    names = [
        f"{rank}  {studies.short_name(one, present) if present else _own_name(one, setups)}"
        for rank, one in enumerate(setups[:MOST_NAMED], 1)
    ]
    if len(setups) > len(names):
        names.append(f"and {len(setups) - len(names)} more")
    half = (len(names) + 1) // 2 if max(map(len, names)) <= WIDEST else len(names)
    head = ax.annotate("Numbers: rank; ringed: the choice", (0, 0), (-40, -42), xycoords="axes fraction", va="top",
                       textcoords="offset points", color=RUST, fontsize=SMALL)  # fmt: skip
    return [head] + [
        ax.annotate("\n".join(part), (x, 0), (-40, -42 - LINE), xycoords="axes fraction", textcoords="offset points",
                    va="top", color=INK, fontsize=SMALL, linespacing=1.35)
        for x, part in ((0.0, names[:half]), (0.53, names[half:])) if part
    ]  # fmt: skip


def _own_name(setup: ls.Setup, setups: list[ls.Setup]) -> str:
    """Teeth and links, and what else differs among them."""
    parts = [f"{setup.front}/{setup.rear}", f"{setup.links} links"]
    if len({one.rear_material for one in setups}) > 1 and setup.rear_material:
        parts.append(str(setup.rear_material))
    if len({(one.tyre, one.circumference) for one in setups}) > 1:
        parts.append(studies.tyre_name(setup).partition(" M/C")[0])
    return ", ".join(parts)


def _label_points(ax: Axes, points: dict[tuple[float, float], str]) -> list[Any]:
    """Writes beside each point where neither another point nor another label is."""
    figure = ax.get_figure()
    assert figure is not None
    figure.canvas.draw()  # only then it is known where the points are
    at = {point: ax.transData.transform(point) for point in points}
    scale = figure.dpi / 72
    taken = [(x, y, 5 * scale, 5 * scale) for x, y in at.values()]
    written = []
    for point, text in points.items():
        wide, high = 3.2 * len(text) * scale, 5 * scale

        def place(offset: tuple[int, int], point: tuple[float, float] = point, wide: float = wide,
                  high: float = high) -> tuple[float, float, float, float]:  # fmt: skip
            aside = (offset[0] > 0) - (offset[0] < 0)
            return at[point][0] + offset[0] * scale + aside * wide, at[point][1] + offset[1] * scale, wide, high

        def crowd(box: tuple[float, float, float, float]) -> int:
            return sum(abs(box[0] - x) < box[2] + w and abs(box[1] - y) < box[3] + h for x, y, w, h in taken)

        offset = min(OFFSETS, key=lambda one: crowd(place(one)))
        taken.append(place(offset))
        side = "left" if offset[0] > 0 else "right" if offset[0] < 0 else "center"
        written.append(
            ax.annotate(text, point, offset, textcoords="offset points", ha=side, va="center", fontsize=SMALL,
                        color=INK, zorder=5, bbox={"facecolor": "white", "edgecolor": "none", "pad": 0.6})
        )  # fmt: skip
    return written


class _Wall:
    """Where the cells of a space are: a wall for each tyre, a box for each pair of sprockets, a cell for each count
    of links."""

    def __init__(self, looked: Sequence[studies.Looked], first: ls.Setup | None) -> None:
        self.cells: dict[tuple[Any, ...], list[studies.Looked]] = {}
        for one in looked:
            self.cells.setdefault(self.spot(one.setup), []).append(one)
        wheels = {spot[:2]: None for spot in self.cells}
        mine = None if first is None else self.spot(first)[:2]
        self.wheels = sorted(wheels, key=lambda wheel: wheel != mine)
        self.fronts, self.rears, self.links = (sorted({spot[i] for spot in self.cells}) for i in (2, 3, 4))
        self.box = len(self.links) + 0.6  # and the gap below it
        self.wall = self.box * len(self.fronts) + 1.5  # and the tyre's name above it

    @staticmethod
    def spot(setup: ls.Setup) -> tuple[Any, ...]:
        return setup.tyre, setup.circumference, setup.front, setup.rear, setup.links

    def corner(self, spot: tuple[Any, ...]) -> tuple[float, float]:
        wheel, front, rear, links = self.wheels.index(spot[:2]), *spot[2:]
        y = self.wall * wheel + 1.0 + self.box * self.fronts.index(front) + self.links.index(links)
        return self.rears.index(rear) + 0.06, y

    def spots(self) -> list[tuple[Any, ...]]:
        return [
            (*wheel, front, rear, links)
            for wheel in self.wheels for front in self.fronts for rear in self.rears for links in self.links
        ]  # fmt: skip


def space(
    machine: ls.Machine,
    space: ls.Space,
    goals: ls.Goals,
    choice: ls.Choice | None = None,
    *,
    looked: Sequence[studies.Looked] | None = None,
    ax: Axes | None = None,
    units: Units = "metric",
) -> Artists:
    """Draws all there is to choose from, cell by cell: where the wishes are met, and what rules out the rest.

    Each pair of sprockets is a box, and each count of links a cell in it. A cell is shaded by how well the best
    set-up in it serves the wishes; where all in it are ruled out, it has the letter of the limit that does so first.

    Args:
        machine: The machine.
        space: What there is to buy.
        goals: Limits and wishes.
        choice: From ``choose``, if it is there already.
        looked: From ``studies.look_at_all``, if it is there already.
        ax: Axes to draw into; if left out, those of a new figure.
        units: ``"metric"`` or ``"us"``.

    Returns:
        Artists by name: ``"cells"`` (a dict from tyre, circumference, front, rear and links to a rectangle),
        ``"words"`` in them (likewise), ``"outline"`` of the choice (or None), ``"key"`` (what letters and shades mean),
        ``"legend"``, ``"title"``.

    Raises:
        Error: The machine does not state what a measure needs, or the space is empty.
        RangeError: The units are not known.
        TypeError: An argument of another kind.

    Example:
        >>> import layshaft as ls
        >>> bike = ls.Machine(name="A bike", gearbox=ls.Gearbox(gears=[3.0], idle="1000 rpm", rev_limit="9000 rpm"),
        ...                   chain="520", adjuster=ls.Adjuster("600 mm", "640 mm"), speedometer="front wheel",
        ...                   stock=ls.Setup(front=15, rear=45, circumference="2 m"))
        >>> there_is = ls.Space(fronts=[14, 15], rears=[44, 45])
        >>> goals = ls.Goals(limits=[ls.Limit("rear teeth", most=44)], wishes=[ls.Wish("thrust change", 0.0)])
        >>> drawn = ls.plots.space(bike, there_is, goals)
        >>> {text.get_text() for spot, text in drawn["words"].items() if spot[3] == 45}
        {'A'}
    """
    from matplotlib.patches import Rectangle

    expect("machine", machine, ls.Machine, "Machine.from_json(text)")
    expect("space", space, ls.Space, "Space(fronts=[13], rears=[48])")
    expect("goals", goals, ls.Goals, "Goals(wishes=[...])")
    unit_of("length", units)
    if choice is None:
        choice = choose(machine, space, goals, progress=False)
    if looked is None:
        looked = studies.look_at_all(machine, space, goals, choice)
    if not looked:
        raise ls.Error("the space has no set-up whose chain closes")
    advised = choice.ranked or choice.relaxations
    marked = advised[0].setup if advised else None
    wall = _Wall(looked, marked)
    ranks: dict[tuple[Any, ...], str] = {}
    for rank, chosen in enumerate(choice.ranked, 1):
        spot = wall.spot(chosen.setup)
        ranks[spot] = f"{ranks[spot]}, {rank}" if spot in ranks else str(rank)

    rows = wall.wall * len(wall.wheels)
    key = _key(goals, wall, choice, marked, units)
    ax = axes_for(ax, max(6.4, 1.6 + 0.52 * len(wall.rears)), 1.7 + 0.2 * rows + LINE / 72 * len(key))
    drawn: Artists = {"cells": {}, "words": {}, "outline": None}
    shade = _scale(choice, looked)
    colours = _shades().reversed()
    for spot in wall.spots():
        corner = wall.corner(spot)
        if spot not in wall.cells:
            ax.add_patch(Rectangle(corner, 0.88, 1, facecolor="white", edgecolor="#d0d0d0", lw=0.6, zorder=2))
            continue
        score, letter = _best(wall.cells[spot])
        at = None if score is None else shade(score)
        colour = PALE_GREY if at is None else colours(at)
        drawn["cells"][spot] = ax.add_patch(Rectangle(corner, 0.88, 1, facecolor=colour, edgecolor="white", lw=1.0))
        ink = FAINT if at is None else "white" if at < 0.6 else INK
        drawn["words"][spot] = ax.text(corner[0] + 0.44, corner[1] + 0.53, ranks.get(spot, letter), ha="center",
                                       va="center", fontsize=SMALL, color=ink,
                                       fontweight="bold" if spot in ranks else "normal")  # fmt: skip
    if marked is not None and wall.spot(marked) in wall.cells:
        line = "-" if choice.ranked else ":"
        drawn["outline"] = ax.add_patch(Rectangle(wall.corner(wall.spot(marked)), 0.88, 1, fill=False, edgecolor=RUST,
                                                  linewidth=2.4, linestyle=line, zorder=5))  # fmt: skip
    _label_wall(ax, wall)
    drawn["key"] = ax.annotate("\n".join(key), (0, 0), (-50, -36), xycoords="axes fraction", va="top",
                               textcoords="offset points", fontsize=SMALL, linespacing=1.35, color=INK)  # fmt: skip
    words = ["serves the wishes best", "as the trade-off's worst, or worse", "ruled out"]
    patches = [Rectangle((0, 0), 1, 1, facecolor=colour) for colour in (DARK, PALE_BLUE, PALE_GREY)]
    if not choice.front:
        words, patches = words[2:], patches[2:]
    drawn["legend"] = ax.legend(patches, words, frameon=False, loc="lower left", bbox_to_anchor=(-0.02, 1.0), ncols=3,
                                fontsize=SMALL, handlelength=1.2, columnspacing=1.2, borderaxespad=0)  # fmt: skip
    drawn["title"] = ax.set_title(f"{machine.name}: where the wishes are met", loc="left", fontsize="medium", color=INK,
                                  pad=22, parse_math=False)  # fmt: skip
    return drawn


def _best(found: list[studies.Looked]) -> tuple[float | None, str]:
    """The best score of what lies in a cell; or None, and the letter of what rules it out."""
    kept = [one.score for one in found if not one.broken and one.score is not None]
    if kept:
        return min(kept), ""
    if any(not one.broken for one in found):
        return None, "?"
    nearest = min(found, key=lambda one: len(one.broken))
    return None, studies.letter(nearest.broken[0])


def _scale(choice: ls.Choice, looked: Sequence[studies.Looked]) -> Any:
    """From a score to a shade: 0 as the best of the trade-off, 1 as its worst or worse."""
    scores = [one.score for one in choice.front]
    if min(scores, default=0.0) == max(scores, default=0.0):  # nothing to shade by; then all that keeps the limits
        scores += [one.score for one in looked if not one.broken and one.score is not None]
    best = min(scores, default=0.0)
    width = (max(scores, default=0.0) - best) or 1.0
    return lambda score: min(1.0, (score - best) / width)


def _key(goals: ls.Goals, wall: _Wall, choice: ls.Choice, marked: ls.Setup | None, units: Units) -> list[str]:
    """What the letters mean, as far as they are used, and what else there is to know."""
    used = {_best(found)[1] for found in wall.cells.values()}
    lines = ["Shade: the best that a cell holds. Letter: the first limit broken, where none in it keeps all."]
    lines += [
        f"{studies.letter(place)}  {studies.limit_in_words(limit, units)}"
        for place, limit in enumerate(goals.limits)
        if studies.letter(place) in used
    ]
    if "?" in used:
        lines.append("?  a wish that cannot be told")
    if len(wall.cells) < len(wall.spots()):
        lines.append("Empty: no such chain to choose, or none that closes.")
    if marked is not None:
        lines.append("1, 2 ..: the shortlist; outlined: the choice." if choice.ranked
                     else "Dotted: what asks the limits to give way least.")  # fmt: skip
    return lines


def _label_wall(ax: Axes, wall: _Wall) -> None:
    ticks, links = [], []
    for i, wheel in enumerate(wall.wheels):
        name = next(studies.tyre_name(one[0].setup) for spot, one in wall.cells.items() if spot[:2] == wheel)
        ax.text(0.06, wall.wall * i + 0.75, name, va="bottom", fontsize=SMALL, color=INK)
        for front in wall.fronts:
            spots = [(*wheel, front, wall.rears[0], count) for count in wall.links]
            middles = [wall.corner(spot)[1] + 0.5 for spot in spots]
            ticks += middles
            links += [str(count) for count in wall.links]
            ax.annotate(str(front), (0, sum(middles) / len(middles)), (-32, 0), textcoords="offset points", ha="right",
                        va="center", fontsize="large", color=INK, annotation_clip=False)  # fmt: skip
    ax.set_xlim(0, len(wall.rears))
    ax.set_ylim(wall.wall * len(wall.wheels) - 1.0, -0.3)
    ax.set_xticks([column + 0.5 for column in range(len(wall.rears))], [str(rear) for rear in wall.rears])
    ax.set_yticks(ticks, links, fontsize=8, color=FAINT)
    ax.tick_params(length=0)
    for side in ax.spines.values():
        side.set_visible(False)
    ax.set_xlabel("teeth behind; rows: teeth in front, and links of the chain in small", fontsize=SMALL)
