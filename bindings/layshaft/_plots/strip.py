# SPDX-License-Identifier: MIT
"""One picture four times over, for four values of something: what if?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from .. import _core as ls
from .._escape import in_short
from .common import Artists, title

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from matplotlib.axes import Axes

FOUR = 4
WIDE, HIGH = 7.2, 5.8  # inches


def what_if(
    draw: Callable[[Any, Axes], Any],
    values: Sequence[Any],
    *,
    label: Callable[[Any], str] | None = None,
    axes: Sequence[Axes] | None = None,
    share: bool = True,
) -> Artists:
    """Draws the same picture for four values side by side: four small multiples that the eye compares.

    Args:
        draw: Called as ``draw(value, ax)`` for each value; it draws into ``ax``, as every picture here does.
        values: Exactly four, such as four counts of teeth.
        label: Makes the title over each from its value; ``str`` if left out.
        axes: Four axes to draw into; if left out, those of a new figure, two by two.
        share: Whether all four then have the same limits, so that lengths compare.

    Returns:
        ``"axes"`` and ``"titles"``, four each, and ``"drawn"``, what each call of ``draw`` returned.

    Raises:
        RangeError: The values or the axes are not four.
        TypeError: ``draw`` cannot be called.

    Example:
        >>> import layshaft as ls
        >>> drawn = ls.plots.what_if(
        ...     lambda teeth, ax: ls.plots.chain_loop(ls.ChainLoop("520", 13, teeth), "620 mm", ax=ax),
        ...     [46, 48, 50, 52],
        ...     label=lambda teeth: f"{teeth} teeth behind",
        ... )
        >>> [text.get_text() for text in drawn["titles"]][0]
        '46 teeth behind'
    """
    if not callable(draw):
        raise TypeError(f"draw: expected a function of a value and axes, got {type(draw).__name__} {in_short(draw)}")
    values = list(values)
    if len(values) != FOUR:
        raise ls.RangeError(f"values are {len(values)}; expected exactly four, one for each small picture")
    figure = None
    if axes is None:
        import matplotlib.pyplot as plt

        figure, grid = plt.subplots(2, 2, figsize=(WIDE, HIGH), layout="constrained")
        panels = list(grid.flat)
    else:
        panels = list(getattr(axes, "flat", axes))
        if len(panels) != FOUR:
            raise ls.RangeError(f"axes are {len(panels)}; expected exactly four, one for each value")
    drawn, titles = [], []
    for value, ax in zip(values, panels, strict=True):
        drawn.append(draw(value, ax))
        text = str(value) if label is None else label(value)
        titles.append(title(ax, text, over_legend=ax.get_legend() is not None))
    if share:
        _share(panels)
    if axes is None and share:
        _label_outside(panels)
    if figure is not None and all(ax.get_aspect() != "auto" for ax in panels):
        figure.set_size_inches(WIDE, _height(panels))
    _say_once(panels)
    return {"axes": panels, "titles": titles, "drawn": drawn}


def _share(panels: list[Axes]) -> None:
    """The widest limits of all for each, in the first one's direction."""
    for get, put, first in (("get_xlim", "set_xlim", panels[0].xaxis_inverted()),
                            ("get_ylim", "set_ylim", panels[0].yaxis_inverted())):  # fmt: skip
        ends = [end for ax in panels for end in getattr(ax, get)()]
        limits = (max(ends), min(ends)) if first else (min(ends), max(ends))
        for ax in panels:
            getattr(ax, put)(*limits)


def _label_outside(panels: list[Axes]) -> None:
    """What two axes above or beside each other both say is said by the outer one."""
    for inner, outer in ((panels[0], panels[2]), (panels[1], panels[3])):
        if inner.get_xlabel() == outer.get_xlabel():
            inner.set_xlabel("")
    for inner, outer in ((panels[1], panels[0]), (panels[3], panels[2])):
        if inner.get_ylabel() == outer.get_ylabel():
            inner.set_ylabel("")


def _height(panels: list[Axes]) -> float:
    """As high as pictures to scale need, and their words."""
    flattest = max(abs(ax.get_ylim()[1] - ax.get_ylim()[0]) / abs(ax.get_xlim()[1] - ax.get_xlim()[0]) for ax in panels)
    return min(HIGH, flattest * WIDE + 2 * 1.1)


def _say_once(panels: list[Axes]) -> None:
    """A legend that is the same in all stays in the first alone."""
    legends = [ax.get_legend() for ax in panels]
    texts = [None if one is None else [text.get_text() for text in one.get_texts()] for one in legends]
    if texts[0] is not None and all(one == texts[0] for one in texts):
        for legend in legends[1:]:
            if legend is not None:
                legend.remove()
