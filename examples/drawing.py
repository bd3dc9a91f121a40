# SPDX-License-Identifier: MIT
"""Where the examples' pictures go, as SVG and PNG."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import layshaft as ls

HERE = Path(__file__).resolve().parent


def save(folder: Path, name: str, drawn: dict[str, Any]) -> list[Path]:
    """Writes a picture of layshaft.plots; the same picture is the same file."""
    import matplotlib.pyplot as plt

    figure = drawn["title"].figure
    folder.mkdir(parents=True, exist_ok=True)
    paths = [folder / f"{name}.{kind}" for kind in ("svg", "png")]
    with plt.rc_context({"svg.hashsalt": name}):
        for path in paths:
            figure.savefig(path, dpi=160, metadata={"Date": None} if path.suffix == ".svg" else None)
    plt.close(figure)
    return paths


def save_and_say(folder: Path, name: str, drawn: dict[str, Any]) -> None:
    for path in save(folder, name, drawn):
        print(f"picture: {path.relative_to(HERE.parent) if path.is_relative_to(HERE.parent) else path}")


def held_against_stock(machine: ls.Machine, trial: ls.Setup) -> tuple[ls.Setup, ...]:
    """What a picture shows: as made and then, or once where nothing differs."""
    return (machine.stock,) if trial == machine.stock else (machine.stock, trial)
