# SPDX-License-Identifier: MIT
"""The pictures of choose.py: the trade-off of two wishes, and the whole space like a wall of drawers.

In the wall each pair of sprockets is a box, and each count of links a drawer in it. A drawer is shaded by how well the
best set-up in it serves the wishes; where all in it are ruled out, it has the letter of the limit that does so first.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from asking import ends, letter, limit_in_words, measured, number, short_name, tyre_name, unit
from drawing import AFTER, BEFORE, INK, SECOND, save

if TYPE_CHECKING:
    import argparse

    import layshaft as ls
    from asking import Looked
    from matplotlib.axes import Axes

RULED_OUT, FAINT, PALE = "#efeeec", "#77736c", "#b9d8ea"
MOST_NAMED = 16  # members of the trade-off that are named beside the picture
OFFSETS = [(9, 0), (-9, 0), (0, 10), (0, -10), (8, 8), (-8, 8), (8, -8), (-8, -8), (17, 0), (-17, 0), (0, 19), (0, -19)]


def shades() -> Any:
    """One hue from pale to dark, which reads without colours."""
    from matplotlib.colors import LinearSegmentedColormap

    return LinearSegmentedColormap.from_list("shades", [PALE, SECOND, "#0e2f42"])


def label_points(axes: Axes, points: dict[tuple[float, float], str]) -> None:
    """Writes beside each point where neither another point nor another label is."""
    figure = axes.figure
    figure.canvas.draw()
    at = {point: axes.transData.transform(point) for point in points}
    scale = figure.dpi / 72
    taken = [(x, y, 5 * scale, 5 * scale) for x, y in at.values()]
    for point, text in points.items():
        half_width, half_height = 3.2 * len(text) * scale, 5 * scale

        def place(offset: tuple[int, int], x: float = at[point][0], y: float = at[point][1], w: float = half_width,
                  h: float = half_height) -> tuple[float, float, float, float]:  # fmt: skip
            return (
                x + offset[0] * scale + (w if offset[0] > 0 else -w if offset[0] < 0 else 0),
                y + offset[1] * scale,
                w,
                h,
            )

        def crowd(box: tuple[float, float, float, float]) -> int:
            return sum(abs(box[0] - x) < box[2] + w and abs(box[1] - y) < box[3] + h for x, y, w, h in taken)

        offset = min(OFFSETS, key=lambda one: crowd(place(one)))
        taken.append(place(offset))
        side = "left" if offset[0] > 0 else "right" if offset[0] < 0 else "center"
        axes.annotate(text, point, xytext=offset, textcoords="offset points", ha=side, va="center", fontsize=9,
                      color=INK, zorder=5, bbox={"facecolor": "white", "edgecolor": "none", "pad": 0.6})  # fmt: skip


def draw_trade_off(
    asked: argparse.Namespace, machine: ls.Machine, goals: ls.Goals, choice: ls.Choice, present: ls.Setup
) -> None:
    """The first two wishes against each other, the third as shade; what nothing else beats, with its bands."""
    import matplotlib.pyplot as plt

    wishes = list(goals.wishes[:3])

    def numbers(one: ls.Chosen, place: int) -> list[float]:
        return [number(wishes[place].measure, end, asked.units) for end in ends(one.wishes[place])]

    def title(place: int) -> str:
        wish = wishes[place]
        symbol = unit(wish.measure, choice.front[0].wishes[place].nominal, asked.units)
        wanted = f"{wish.want} is better" if wish.want in ("less", "more") else "the wish is dashed"
        return f"{measured(wish, asked.units)}{f', {symbol}' if symbol else ''} ({wanted})"

    figure = plt.figure(figsize=(10.4, 5.2), layout="constrained")
    cells = figure.add_gridspec(2, 2, width_ratios=[2.5, 1], height_ratios=[16, 1])
    axes, names_at, bar_at = (figure.add_subplot(cell) for cell in (cells[:, 0], cells[0, 1], cells[1, 1]))
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)
    names_at.set_axis_off()
    bar_at.set_axis_off()
    axes.grid(color="#e6e6e6", linewidth=0.6)
    axes.set_axisbelow(True)
    across = [numbers(one, 0) for one in choice.front]
    upward = [numbers(one, 1) for one in choice.front]
    for x, y in zip(across, upward, strict=True):
        axes.plot([x[0], x[2]], [y[1], y[1]], color=BEFORE, linewidth=0.8, alpha=0.55, zorder=1)
        axes.plot([x[1], x[1]], [y[0], y[2]], color=BEFORE, linewidth=0.8, alpha=0.55, zorder=1)
    shade = [numbers(one, 2)[1] for one in choice.front] if len(wishes) > 2 else [0.0] * len(choice.front)
    dots = axes.scatter(
        [x[1] for x in across], [y[1] for y in upward], c=shade, cmap=shades(), s=58, edgecolors=INK, linewidths=0.7,
        zorder=3,
    )  # fmt: skip
    axes.scatter([across[0][1]], [upward[0][1]], s=230, facecolors="none", edgecolors=AFTER, linewidths=2.2, zorder=4)
    if len(wishes) > 2:
        bar_at.set_axis_on()
        figure.colorbar(dots, cax=bar_at, orientation="horizontal")
        bar_at.set_title(title(2), loc="left", fontsize=9)
    for place, draw in ((0, axes.axvline), (1, axes.axhline)):
        if wishes[place].want not in ("less", "more"):
            wished = number(wishes[place].measure, wishes[place].want, asked.units)
            draw(wished, color=AFTER, linewidth=1.0, linestyle=(0, (5, 3)), zorder=0)
    axes.set_xlabel(f"{title(0)}; lines: the ends of its band")
    axes.set_ylabel(title(1))
    axes.set_title(f"{machine.name}: what nothing else beats in every wish", loc="left", fontsize=11)
    names = [f"{place}  {short_name(one.setup, present)}" for place, one in enumerate(choice.front[:MOST_NAMED], 1)]
    if len(choice.front) > len(names):
        names.append(f"and {len(choice.front) - len(names)} more")
    names_at.text(0, 1, "ringed: the choice; numbers: rank", va="top", fontsize=9, color=AFTER)
    names_at.text(0, 0.93, "\n".join(names), va="top", fontsize=9, linespacing=1.6, color=INK)
    points: dict[tuple[float, float], str] = {}
    for place, (x, y) in enumerate(zip(across[:MOST_NAMED], upward, strict=False), 1):
        point = (x[1], y[1])
        points[point] = f"{points[point]}, {place}" if point in points else str(place)
    label_points(axes, points)
    save(asked, machine, figure, "trade_off")


def drawer_of(found: list[Looked]) -> tuple[float | None, str]:
    """The best score of what lies in a drawer; or None, and the letter of what rules it out."""
    kept = [one.score for one in found if not one.broken and one.score is not None]
    if kept:
        return min(kept), ""
    if any(not one.broken for one in found):
        return None, "?"
    nearest = min(found, key=lambda one: len(one.broken))
    return None, letter(nearest.broken[0])


def spot(setup: ls.Setup) -> tuple[Any, ...]:
    """Which drawer of the wall a set-up lies in."""
    return setup.tyre, setup.circumference, setup.front, setup.rear, setup.links


def draw_wall(axes: Axes, wheel: tuple[Any, ...], sides: tuple[list[int], ...], drawers: dict[tuple[Any, ...], Any],
              ranks: dict[tuple[Any, ...], str], marked: ls.Setup | None) -> None:  # fmt: skip
    """The boxes of one tyre: `drawers` has the shade (0 best, 1 pale, None) and the text of each."""
    from matplotlib.patches import Rectangle

    fronts, rears, counts = sides
    high = len(counts) + 0.6  # a box and the gap below it
    colours = shades().reversed()
    for row, front in enumerate(fronts):
        for column, rear in enumerate(rears):
            for drawer, links in enumerate(counts):
                at, y = (*wheel, front, rear, links), row * high + drawer
                corner = (column + 0.06, y)
                if at not in drawers:
                    axes.add_patch(Rectangle(corner, 0.88, 1, facecolor="white", edgecolor="#d0d0d0", lw=0.6, zorder=2))
                    continue
                shade, text = drawers[at]
                colour = RULED_OUT if shade is None else colours(shade)
                ink = FAINT if shade is None else "white" if shade < 0.6 else INK
                axes.add_patch(Rectangle(corner, 0.88, 1, facecolor=colour, edgecolor="white", linewidth=1.0))
                weight = "bold" if at in ranks else "normal"
                axes.text(column + 0.5, y + 0.53, ranks.get(at, text), ha="center", va="center", fontsize=8, color=ink,
                          fontweight=weight)  # fmt: skip
                if marked and at == spot(marked):
                    line = "-" if at in ranks else ":"
                    axes.add_patch(
                        Rectangle(corner, 0.88, 1, fill=False, edgecolor=AFTER, linewidth=2.4, linestyle=line, zorder=5)
                    )
        axes.annotate(str(front), (0, row * high + len(counts) / 2), xytext=(-34, 0), textcoords="offset points",
                      ha="right", va="center", fontsize=11, color=INK, annotation_clip=False)  # fmt: skip
    axes.set_xlim(0, len(rears))
    axes.set_ylim(high * len(fronts) - 0.5, -0.15)
    axes.set_xticks([column + 0.5 for column in range(len(rears))], [str(rear) for rear in rears])
    middles = [row * high + drawer + 0.5 for row in range(len(fronts)) for drawer in range(len(counts))]
    axes.set_yticks(middles, [str(links) for links in counts * len(fronts)], fontsize=7, color=FAINT)
    axes.tick_params(length=0)
    for side in axes.spines.values():
        side.set_visible(False)


def draw_space(
    asked: argparse.Namespace, machine: ls.Machine, goals: ls.Goals, choice: ls.Choice, everything: list[Looked]
) -> None:
    """The whole space: a wall for each tyre, that of the choice first."""
    import matplotlib.pyplot as plt
    from matplotlib.cm import ScalarMappable

    advised = choice.ranked or choice.relaxations
    marked = advised[0].setup if advised else None
    by_spot: dict[tuple[Any, ...], list[Looked]] = {}
    for one in everything:
        by_spot.setdefault(spot(one.setup), []).append(one)
    ranks: dict[tuple[Any, ...], str] = {}
    for rank, chosen in enumerate(choice.ranked, 1):
        at = spot(chosen.setup)
        ranks[at] = f"{ranks[at]}, {rank}" if at in ranks else str(rank)
    scores = [one.score for one in choice.front]
    if min(scores, default=0.0) == max(scores, default=0.0):  # nothing to shade by; then all that keeps the limits
        scores += [one.score for one in everything if not one.broken and one.score is not None]
    best, width = min(scores, default=0.0), (max(scores, default=0.0) - min(scores, default=0.0)) or 1.0
    drawers: dict[tuple[Any, ...], Any] = {}
    for at, found in by_spot.items():
        score, text = drawer_of(found)
        drawers[at] = (None if score is None else min(1.0, (score - best) / width), text)

    used = {text for _, text in drawers.values()}
    lines = [
        f"{letter(place)}  {limit_in_words(limit, asked.units)}"
        for place, limit in enumerate(goals.limits)
        if letter(place) in used
    ]
    if "?" in used:
        lines.append("?  a wish that cannot be told")
    sides = tuple(sorted({at[i] for at in by_spot}) for i in (2, 3, 4))
    wheels = {at[:2]: None for at in sorted(by_spot, key=lambda at: marked is not None and at[:2] != spot(marked)[:2])}
    if len(by_spot) < len(wheels) * len(sides[0]) * len(sides[1]) * len(sides[2]):
        lines.append("empty: no such chain to choose, or none that closes")
    if marked:
        shortlist = "1, 2 ..  the shortlist; outlined: the choice"
        lines.append(shortlist if choice.ranked else "dotted: what asks the limits to give way least")

    setups = [one.setup for one in everything]
    half = max(4, (len(lines) + 1) // 2)  # lines of the first column
    inches, legend = 0.22 * (len(sides[2]) + 0.6) * len(sides[0]) + 0.45, 0.45 + 0.21 * half
    figure, grid = plt.subplots(
        len(wheels) + 1, 1, figsize=(max(8.0, 2.4 + 0.72 * len(sides[1])), 0.7 + inches * len(wheels) + legend),
        layout="constrained", height_ratios=[inches] * len(wheels) + [legend],
    )  # fmt: skip
    walls, words = list(grid[:-1]), grid[-1]
    for axes, wheel in zip(walls, wheels, strict=True):
        draw_wall(axes, wheel, sides, drawers, ranks, marked)
        axes.set_title(tyre_name(next(s for s in setups if spot(s)[:2] == wheel)), loc="left", fontsize=10)
    walls[-1].set_xlabel("teeth behind; rows: teeth in front, and links of the chain in small")
    title = f"{machine.name}: where the wishes are met, and what rules out the rest"
    figure.suptitle(title, fontsize=11, x=0.02, ha="left")
    if choice.front:
        bar = figure.colorbar(ScalarMappable(cmap=shades()), ax=walls, location="right", shrink=0.5, aspect=22)
        bar.set_ticks([0.04, 0.96], labels=["as the worst of\nthe trade-off,\nor worse", "serves the\nwishes best"])
        bar.ax.tick_params(length=0, labelsize=8)
    words.set_axis_off()
    note = "Shade: the best that a drawer holds. Letter: the first limit broken, where nothing in it keeps all."
    words.text(0, 1, note, va="top", fontsize=9, color=INK, transform=words.transAxes)
    for x, part in ((0.0, lines[:half]), (0.5, lines[half:])):
        words.text(x, 1 - 0.24 / legend, "\n".join(part), va="top", fontsize=9, linespacing=1.6, color=INK,
                   transform=words.transAxes)  # fmt: skip
    save(asked, machine, figure, "space")
