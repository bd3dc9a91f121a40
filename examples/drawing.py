# SPDX-License-Identifier: MIT
"""What the examples' pictures have in common: colours, axes, files."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse

    import layshaft as ls
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

HERE = Path(__file__).parent
BEFORE, AFTER, INK, SECOND = "#8a8f98", "#b3541e", "#20242a", "#2b6a8c"


def new_figure(width: float, height: float) -> tuple[Figure, Axes]:
    import matplotlib.pyplot as plt

    figure, axes = plt.subplots(figsize=(width, height), layout="constrained")
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)
    return figure, axes


def save(asked: argparse.Namespace, machine: ls.Machine, figure: Figure, what: str) -> None:
    import matplotlib.pyplot as plt

    asked.pictures.mkdir(parents=True, exist_ok=True)
    for kind in ("svg", "png"):
        path = asked.pictures / f"{asked.machine.stem}_{what}.{kind}"
        with plt.rc_context({"svg.hashsalt": machine.name}):
            figure.savefig(path, dpi=160, metadata={"Date": None} if kind == "svg" else None)
        print(f"picture: {path.relative_to(HERE.parent) if path.is_relative_to(HERE.parent) else path}")
    plt.close(figure)
