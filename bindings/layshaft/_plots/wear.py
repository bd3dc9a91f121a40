# SPDX-License-Identifier: MIT
"""What wears: the tyre's circumference, weights of wear, the chain's growth, and which link meets which tooth."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING, Any, Literal

from .. import _core as ls
from .._escape import in_short
from .common import (
    BLUE,
    FAINT,
    GREY,
    INK,
    PALE_GREY,
    RUST,
    SMALL,
    Artists,
    axes_for,
    ends,
    expect,
    label_room,
    legend_above,
    title,
    unit_of,
)

if TYPE_CHECKING:
    from collections.abc import Sequence

    from matplotlib.axes import Axes

    from .._core import _Units as Units

STEPS = 40  # of a line that bends
MOST_MEETINGS = 20_000  # dots in a contact map: more are a grey box


def circumference_over_wear(
    tyre: ls.TyreSize | str | ls.Band[ls.Length] | ls.Length,
    tread: ls.Tread,
    *,
    against: ls.TyreSize | str | ls.Band[ls.Length] | ls.Length | None = None,
    construction: Literal["diagonal", "bias-belted", "radial"] | None = None,
    ax: Axes | None = None,
    units: Units = "metric",
) -> Artists:
    """Draws what one turn of the wheel rolls, from a new tread down to the least, and what that does to thrust.

    Args:
        tyre: A marking, or the circumference as measured at the tread's present depth (``Length`` or a ``Band``).
        tread: Its depth when new, its present depth, and the least that is allowed (0 mm where none is stated).
        against: What thrust is held against: a marking or a circumference, such as the tyre as made; the new tyre if
            left out.
        construction: Of the tyre, which is needed where a circumference is given: ``"diagonal"``, ``"bias-belted"`` or
            ``"radial"``.
        ax: Axes to draw into; if left out, those of a new figure.
        units: ``"metric"`` (mm) or ``"us"`` (in).

    Returns:
        Artists by name: ``"line"`` (nominal), ``"band"`` (what the tyre leaves open), ``"ends"`` (words on thrust, new
        and worn), ``"now"`` (a dot at the present depth, None where that is new), ``"against"`` (a line, or None),
        ``"title"``.

    Raises:
        ParseError: The marking cannot be read.
        RangeError: A number is out of range, or the units are not known.
        Error: The construction is missing.
        TypeError: An argument of another kind.

    Example:
        >>> import layshaft as ls
        >>> drawn = ls.plots.circumference_over_wear(
        ...     "120/90-18", ls.Tread(new_depth="10 mm", depth="6 mm", least="1 mm"))
        >>> depths, rolled = drawn["line"].get_data()
        >>> print(f"{depths[0]:.1f} to {depths[-1]:.1f} mm")
        10.0 to 1.0 mm
        >>> bool(rolled[0] > rolled[-1])
        True
    """
    expect("tread", tread, ls.Tread, 'Tread(new_depth="10 mm", depth="6 mm")')
    name, unit = unit_of("length", units)
    if isinstance(tyre, (ls.Length, ls.Band)) and construction is None:
        raise ls.Error("construction is missing; expected that of the tyre whose circumference is given, 'radial'")
    least = tread.least or ls.Length("0 mm")

    def rolls(depth: Any) -> Any:
        asked: Any = ls.circumference_at_depth  # which of its two ways to call holds, it tells itself
        return asked(tyre, tread, depth, construction)

    depths = [tread.new_depth + (least - tread.new_depth) * (i / STEPS) for i in range(STEPS + 1)]
    bands = [ends(rolls(depth)) for depth in depths]
    yardstick = bands[0][1] if against is None else _round(against)
    ax = axes_for(ax, 6.4, 4.0)
    x = [depth / unit for depth in depths]
    low, middle, high = ([band[i] / unit for band in bands] for i in range(3))
    drawn: Artists = {"band": ax.fill_between(x, low, high, color=BLUE, alpha=0.2, lw=0)}
    drawn["line"] = ax.plot(x, middle, color=BLUE, lw=2)[0]
    drawn["ends"] = []
    for place, offset, side, va, when in ((0, (5, 6), "left", "bottom", "new"), (-1, (-4, -9), "right", "top", "worn")):
        change = ls.show_percent(ls.thrust_change(1.0, yardstick, 1.0, bands[place][1]))
        text = when if against is None and place == 0 else f"{when}: thrust {change}"
        drawn["ends"].append(ax.annotate(text, (x[place], middle[place]), offset, textcoords="offset points", ha=side,
                                         va=va, color=INK, fontsize=SMALL))  # fmt: skip
    drawn["now"] = None
    if tread.depth != tread.new_depth:
        rolled = ends(rolls(tread.depth))[1] / unit
        drawn["now"] = ax.plot([tread.depth / unit], [rolled], "o", color=RUST, markersize=7, zorder=4)[0]
        ax.annotate(f"now, {ls.show(tread.depth, units)}", (tread.depth / unit, rolled), (0, -9), ha="center", va="top",
                    textcoords="offset points", color=RUST, fontsize=SMALL)  # fmt: skip
    drawn["against"] = None
    if against is not None:
        drawn["against"] = ax.axhline(yardstick / unit, color=FAINT, lw=1.1, ls=(0, (4, 2)))
        label_room(ax, x[-1], yardstick / unit, "as made", FAINT)
    ax.set_xlim(x[0], x[-1])
    ax.margins(y=0.15)  # for the words above the one end and below the other
    ax.set_xlabel(f"tread left, {name}; shaded: what the tyre leaves open")
    ax.set_ylabel(f"rolled in one turn, {name}")
    called = tyre.designation if isinstance(tyre, ls.TyreSize) else tyre if isinstance(tyre, str) else "A measured tyre"
    drawn["title"] = title(ax, f"{called}: smaller as the tread wears")
    return drawn


def _round(tyre: Any) -> Any:
    """The nominal circumference of a marking, of a band or of a length."""
    is_marking = isinstance(tyre, (ls.TyreSize, str))
    return ends(ls.rolling_circumference(tyre) if is_marking else tyre)[1]


def wear_weights(
    comparison: ls.Comparison,
    *,
    labels: Sequence[str] | None = None,
    ax: Axes | None = None,
    units: Units = "metric",
) -> Artists:
    """Draws how fast each part of the drive wears after a change, that before it being 1.

    Args:
        comparison: From ``compare``.
        labels: What the two set-ups are called; by their teeth if left out.
        ax: Axes to draw into; if left out, those of a new figure.
        units: As everywhere; a weight has none.

    Returns:
        Artists by name: ``"parts"`` (which, a list of str), ``"before"`` and ``"after"`` (bars, one a part),
        ``"bands"`` (the errorbars' lines), ``"legend"``, ``"title"``.

    Raises:
        RangeError: Labels or units that are not known.
        TypeError: An argument of another kind.

    Example:
        >>> import layshaft as ls
        >>> bike = ls.Machine(
        ...     name="A bike", gearbox=ls.Gearbox(gears=[3.0], idle="1000 rpm", rev_limit="9000 rpm"), chain="520",
        ...     adjuster=ls.Adjuster("600 mm", "640 mm"), speedometer="front wheel",
        ...     stock=ls.Setup(front=15, rear=45, circumference="2 m"))
        >>> same = ls.plots.wear_weights(ls.compare(bike, bike.stock, bike.stock))
        >>> {float(bar.get_width()) for bar in same["after"]}
        {1.0}
    """
    expect("comparison", comparison, ls.Comparison, "compare(machine, machine.stock, trial)")
    unit_of("length", units)
    change = comparison.wear
    parts = {
        "chain's pull": change.chain_tension_change, "chain grows": change.chain_stretch_change,
        "front tooth wears": change.front_tooth_change, "rear tooth wears": change.rear_tooth_change,
        "joints lose": change.loss_change,
    }  # fmt: skip
    both = (comparison.base.setup, comparison.trial.setup)
    names = [_with_material(one, both) for one in both] if labels is None else list(labels)
    if isinstance(labels, str) or len(names) != 2:
        raise ls.RangeError(f"labels is {in_short(labels)}; expected two, before and after")
    ax = axes_for(ax, 6.4, 3.8)
    places = range(len(parts))
    weights = [ends(band) for band in parts.values()]
    after = [1 + middle for _, middle, _ in weights]
    errors = [[middle - low for low, middle, _ in weights], [high - middle for _, middle, high in weights]]
    drawn: Artists = {"parts": list(parts)}
    drawn["before"] = list(ax.barh([p - 0.19 for p in places], [1.0] * len(parts), height=0.34, color=GREY,
                                   label=names[0]))  # fmt: skip
    bars = ax.barh([p + 0.19 for p in places], after, height=0.34, color=RUST, xerr=errors, label=names[1],
                   error_kw={"ecolor": INK, "capsize": 3})  # fmt: skip
    drawn["after"], drawn["bands"] = list(bars), bars.errorbar.lines[2][0] if bars.errorbar else None
    reach = max(1.0, *(1 + high for _, _, high in weights))
    for place, weight, (_, _, high) in zip(places, after, weights, strict=True):
        ax.annotate(f"{weight:.2f}", (1 + high, place + 0.19), (5, 0), textcoords="offset points", va="center",
                    color=INK, fontsize=SMALL)  # fmt: skip
    ax.axvline(1.0, color=GREY, lw=0.8, ls=(0, (1, 2)), zorder=0)
    ax.set_xlim(0, 1.16 * reach)
    ax.set_yticks(list(places), list(parts))
    ax.invert_yaxis()
    ax.set_xlabel(f"weight, that of {names[0]} being 1: longer is worse\nlines: what is not known")
    drawn["title"] = title(ax, f"{comparison.base.machine.name}: what wears")
    drawn["legend"] = legend_above(ax)
    return drawn


def _with_material(setup: ls.Setup, both: Sequence[ls.Setup]) -> str:
    """'13/48', and the rear sprocket's material where the two differ in it."""
    differ = len({one.rear_material for one in both}) > 1
    return f"{setup.front}/{setup.rear}" + (f" in {setup.rear_material}" if differ and setup.rear_material else "")


def contact_map(teeth: int, links: int, *, ax: Axes | None = None, units: Units = "metric") -> Artists:
    """Draws which link meets which tooth, a dot for each meeting, until the pattern repeats.

    Few dots in a row are teeth that meet the same few links again and again; inner and outer links wear a tooth
    differently.

    Args:
        teeth: Of the sprocket, 4 to 1000.
        links: Of the chain, an even number.
        ax: Axes to draw into; if left out, those of a new figure.
        units: As everywhere; counts have none.

    Returns:
        Artists by name: ``"inner links"`` and ``"outer links"`` (dots: link, tooth), ``"legend"``, ``"title"``.

    Raises:
        RangeError: A count is out of range, or there are more than 20,000 meetings to draw.
        TypeError: An argument of another kind.

    Example:
        >>> import layshaft as ls
        >>> drawn = ls.plots.contact_map(14, 112)
        >>> len(drawn["inner links"].get_offsets()) + len(drawn["outer links"].get_offsets())
        112
    """
    from matplotlib.ticker import MaxNLocator

    unit_of("length", units)
    hunting = ls.hunting(teeth, links)
    count = hunting.passes * links
    if count > MOST_MEETINGS:
        raise ls.RangeError(f"{count} meetings until the pattern repeats; expected at most {MOST_MEETINGS} to draw")
    ax = axes_for(ax, 6.4, 3.4)
    drawn: Artists = {}
    size = max(3.0, min(14.0, 3000.0 / count))
    for kind, key, colour, marker in ((0, "inner links", RUST, "o"), (1, "outer links", BLUE, "D")):
        met = [k for k in range(count) if k % links % 2 == kind]
        drawn[key] = ax.scatter([k % links + 1 for k in met], [k % teeth + 1 for k in met], s=size, color=colour,
                                marker=marker, lw=0, label=key)  # fmt: skip
    ax.set_xlim(0, links + 1)
    ax.set_ylim(0, teeth + 1)
    ax.yaxis.set_major_locator(MaxNLocator(integer=True))
    ax.set_xlabel("link")
    ax.set_ylabel("tooth")
    again = "each time round" if hunting.passes == 1 else f"again after {hunting.passes} times round"
    drawn["title"] = title(ax, f"Each of {teeth} teeth meets {hunting.distinct_links} of {links} links, {again}")
    drawn["legend"] = legend_above(ax, markerscale=2)
    return drawn


def stretch(
    outlook: ls.WearOutlook,
    fit: ls.StretchFit | None = None,
    *,
    measurements: Sequence[ls.StretchMeasurement] = (),
    pitch: ls.Length | str | None = None,
    ax: Axes | None = None,
    units: Units = "metric",
) -> Artists:
    """Draws how far a chain grows with the way ridden: by table, as measured, and how far it may.

    Args:
        outlook: From ``wear_outlook``: the growth by table and the limit.
        fit: From ``fit_stretch``: the rider's own measurements; drawn ahead from the last of them.
        measurements: Those measurements, as dots; they need the pitch.
        pitch: Of the chain, when new.
        ax: Axes to draw into; if left out, those of a new figure.
        units: ``"metric"`` (km) or ``"us"`` (miles).

    Returns:
        Artists by name: ``"table"`` and ``"table band"``, ``"measured"`` and ``"measured band"`` (or None), ``"dots"``
        (or None), ``"limit"``, ``"limit label"``, ``"legend"``, ``"title"``.

    Raises:
        Error: Measurements without a pitch.
        RangeError: The units are not known.
        TypeError: An argument of another kind.

    Example:
        >>> import layshaft as ls
        >>> bike = ls.Machine(
        ...     name="A bike", gearbox=ls.Gearbox(gears=[3.0], idle="1000 rpm", rev_limit="9000 rpm"), chain="520",
        ...     adjuster=ls.Adjuster("600 mm", "640 mm"), speedometer="front wheel",
        ...     stock=ls.Setup(front=15, rear=45, circumference="2 m", chain_made=ls.ChainMade(pin_diameter="5 mm")))
        >>> drawn = ls.plots.stretch(ls.wear_outlook(bike, bike.stock))
        >>> print(drawn["limit label"].get_text())
        may grow
        so far:
        maker's limit
    """
    expect("outlook", outlook, ls.WearOutlook, "wear_outlook(machine, setup)")
    if fit is not None:
        expect("fit", fit, ls.StretchFit, 'fit_stretch("15.875 mm", measurements)')
    if measurements and pitch is None:
        raise ls.Error("measurements need the chain's pitch; give pitch=, such as '15.875 mm'")
    name, unit = unit_of("distance", units)
    limit = 100 * outlook.limit.elongation
    far = _far(outlook, fit, unit)
    ax = axes_for(ax, 6.4, 4.0)
    low, middle, high = (100 * rate for rate in ends(outlook.stretch_per_1000_km))
    thousand = 1000 * ls.km / unit
    x = [far * i / STEPS for i in range(STEPS + 1)]
    drawn: Artists = {"measured": None, "measured band": None, "dots": None}
    drawn["table band"] = ax.fill_between(x, [low * w / thousand for w in x], [high * w / thousand for w in x], lw=0,
                                          color=PALE_GREY, label="by table, clean oil to mud")  # fmt: skip
    drawn["table"] = ax.plot(x, [middle * w / thousand for w in x], color=GREY, lw=1.6, ls=(0, (4, 2)))[0]
    if fit is not None:
        last = fit.last / unit
        ahead = [last + (far - last) * i / STEPS for i in range(STEPS + 1)]

        def grown(end: int) -> list[float]:
            now, rate = ends(fit.now)[end], ends(fit.per_1000_km)[end]
            return [100 * max(0.0, now + rate * (w - last) / thousand) for w in ahead]

        drawn["measured band"] = ax.fill_between(ahead, grown(0), grown(2), color=RUST, alpha=0.3, lw=0,
                                                 label="as measured, 95 %")  # fmt: skip
        drawn["measured"] = ax.plot(ahead, grown(1), color=RUST, lw=2)[0]
    if measurements:
        new = ls.Length(pitch)  # type: ignore[arg-type]
        dots = [(one.odometer / unit, 100 * (one.length / (one.links * new) - 1)) for one in measurements]
        drawn["dots"] = ax.plot(*zip(*dots, strict=True), "o", color=INK, markersize=4, label="measured")[0]
    drawn["limit"] = ax.axhline(limit, color=INK, lw=1.0, ls=(0, (1, 2)))
    drawn["limit label"] = ax.annotate(f"may grow\nso far:\n{outlook.limit.kind}", (1, limit), (4, 0), va="center",
                                       xycoords=("axes fraction", "data"), textcoords="offset points", color=INK,
                                       fontsize=SMALL, annotation_clip=False)  # fmt: skip
    ax.set_xlim(0, far)
    ax.set_ylim(0, 1.5 * limit)
    ax.set_xlabel(f"{name} since new")
    ax.set_ylabel("growth, per cent")
    drawn["title"] = title(ax, "How far the chain grows")
    drawn["legend"] = legend_above(ax)
    return drawn


def _far(outlook: ls.WearOutlook, fit: ls.StretchFit | None, unit: Any) -> float:
    """A way in whole thousands that shows the end of the chain, or three times what was ridden."""
    if fit is None:
        far: float = outlook.chain_life.nominal / unit
    else:
        ridden: float = fit.last / unit
        far = min(3 * ridden, ridden + fit.distance_left(outlook.limit.elongation).nominal / unit)
    return 1000.0 * max(1, ceil(1.2 * far / 1000))
