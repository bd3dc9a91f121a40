# SPDX-License-Identifier: MIT
"""Runs the notebooks from top to bottom and writes each as a page to read or print.

examples/notebooks.py [NAME ...] [--pages FOLDER] [--write]

A name is the beginning of a notebook's: 1, 2 and 3 are the lessons, "fleet" is the study. With --write what the cells
print and draw is stored in the notebooks: after a change of one, or of the library.
"""

from __future__ import annotations

import argparse
import base64
import io
import os
import re
from pathlib import Path
from typing import Any

import nbformat
from nbclient import NotebookClient
from nbconvert import HTMLExporter
from PIL import Image

HERE = Path(__file__).resolve().parent
NOTEBOOKS = sorted(HERE.glob("*/*.ipynb"))

STYLE = """
:root { --ink: #1d2430; --soft: #59616d; --rule: #d6d9d2; --paper: #fcfcf9; --moss: #3d5a2f; --clay: #8a3f1d; }
* { box-sizing: border-box; }
html { background: var(--paper); color: var(--ink); font: 17px/1.55 Georgia, "Noto Serif", serif; }
main { max-width: 50rem; margin: 0 auto; padding: 1.5rem 1rem 3rem; overflow-wrap: break-word; }
h1 { font-size: 1.7rem; line-height: 1.2; border-bottom: .2rem solid var(--moss); padding-bottom: .6rem; }
h2 { font-size: 1.25rem; color: var(--moss); margin: 2.2rem 0 .4rem; }
.anchor-link, .prompt { display: none; }
pre, code { font: .82rem/1.45 "DejaVu Sans Mono", Consolas, monospace; }
pre { margin: 0; white-space: pre-wrap; }
.input_area { background: #f1f2ea; border-left: .25rem solid var(--rule); padding: .5rem .8rem; margin: .9rem 0 0; }
.c1 { color: var(--clay); }
.output { border-left: .25rem solid var(--moss); padding: .5rem .8rem; margin: 0 0 .9rem; }
.output h2 { font-size: 1rem; margin: .2rem 0; }
.output p { margin: .4rem 0; }
.output img { max-width: 100%; height: auto; }
details { margin: .3rem 0; }
summary { cursor: pointer; color: var(--moss); }
.step-note, .step-sides { color: var(--soft); font-size: .88rem; margin: .2rem 0; }
.step-lines, .last-line { overflow-x: auto; padding: .2rem 0; }
@page { margin: 15mm 16mm; }
@media print {
  html { background: #fff; font-size: 10.5pt; }
  main { max-width: none; padding: 0; }
  pre { font-size: 8pt; }
  h2 { break-after: avoid; }
  .input_area, .output img { break-inside: avoid; }
}
"""


def run(path: Path, changes: dict[str, str] | None = None) -> Any:
    """The notebook with what its cells print and draw; `changes` are made in the cells' text first, each once."""
    notebook = nbformat.read(path, as_version=4)
    for old, new in (changes or {}).items():
        cells = [cell for cell in notebook.cells if cell.cell_type == "code" and old in cell.source]
        if len(cells) != 1:
            raise ValueError(f"{path.name}: {old!r} stands in {len(cells)} cells; expected one")
        cells[0].source = cells[0].source.replace(old, new)
    environment = {name: value for name, value in os.environ.items() if name != "MPLBACKEND"}  # pictures go inline
    place = {"metadata": {"path": str(path.parent)}}
    client = NotebookClient(notebook, timeout=120, resources=place, record_timing=False, coalesce_streams=True)
    client.extra_arguments = ["--IPKernelApp.log_level=ERROR"]  # not that a kernel on this machine could be overheard
    client.execute(env=environment)
    return notebook


def with_small_pictures(notebook: Any) -> Any:
    """The same with few colours in its pictures, which are lines and flat shades: a third of the bytes."""
    for cell in notebook.cells:
        for output in cell.get("outputs", []):
            if "image/png" in output.get("data", {}):
                drawn = Image.open(io.BytesIO(base64.b64decode(output.data["image/png"]))).convert("RGB")
                small = io.BytesIO()
                drawn.quantize(48, dither=Image.Dither.NONE).save(small, "png", optimize=True)
                output.data["image/png"] = base64.b64encode(small.getvalue()).decode()
    return notebook


def page(notebook: Any) -> str:
    """One page that needs no other file and no script."""
    title = re.sub(r"^#\s*", "", notebook.cells[0].source.split("\n", 1)[0])
    exporter = HTMLExporter(template_name="basic", embed_images=True, anchor_link_text="")
    body, _ = exporter.from_notebook_node(notebook)
    return (
        '<!DOCTYPE html>\n<html lang="en-GB">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{title}</title>\n<style>{STYLE}</style>\n</head>\n<body><main>\n{body}\n</main></body>\n</html>\n"
    )


def notebook(name: str) -> Path:
    """The notebook whose name begins so."""
    found = [path for path in NOTEBOOKS if path.stem.startswith(name)]
    if len(found) != 1:
        there = ", ".join(path.stem for path in NOTEBOOKS)
        raise argparse.ArgumentTypeError(f"{name!r} begins the name of {len(found)} notebooks; there are {there}")
    return found[0]


def options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description="Runs the notebooks and writes each as a page.")
    parser.add_argument("notebooks", nargs="*", type=notebook, metavar="NAME", help="which; all unless told")
    parser.add_argument("--pages", type=Path, default=HERE.parent / "build" / "examples")
    parser.add_argument("--write", action="store_true", help="stores the outputs in the notebooks")
    return parser.parse_args()


def main() -> None:
    asked = options()
    asked.pages.mkdir(parents=True, exist_ok=True)
    for path in asked.notebooks or NOTEBOOKS:
        told = with_small_pictures(run(path))
        if asked.write:
            nbformat.write(told, path)
        target = asked.pages / f"{path.stem}.html"
        target.write_text(page(told), encoding="utf-8")
        print(f"{path.stem}: {target}")


if __name__ == "__main__":
    main()
