# SPDX-License-Identifier: MIT
"""The lessons run from top to bottom, print what is stored in them, and say the same as their C++ programs."""

from __future__ import annotations

import importlib.util
import os
import subprocess
from pathlib import Path
from typing import Any

import html5lib
import nbformat
import pytest

ROOT = Path(__file__).resolve().parents[2]
PROGRAMS = Path(os.environ.get("LAYSHAFT_EXAMPLES", ROOT / "build" / "test" / "examples"))
LESSONS = sorted((ROOT / "examples/lessons").glob("*.ipynb"))
LARGEST = 400_000  # bytes of a notebook with all it shows

# Numbers as a reader may change them, lesson by lesson.
CHANGED = {
    "1": {
        "front, rear = 38, 19": "front, rear = 44, 16",
        "gear, engine_speed = 3, 5000 * ls.rpm": "gear, engine_speed = 5, 7200 * ls.rpm",
        'as_made = ls.TyreSize("120/80-18 M/C 62R TT")': 'as_made = ls.TyreSize("4.10-18 59P")',
        "teeth_behind = (42, 46, 50, 54)": "teeth_behind = (40, 45, 50, 55)",
        "ten_turns = 20.55 * ls.m": "ten_turns = 20.9 * ls.m",
    },
    "2": {
        "gear, engine_speed = 2, 4500 * ls.rpm": "gear, engine_speed = 4, 7000 * ls.rpm",
        "slopes = (0.0, 0.1, 0.22)  # 0.1": "slopes = (0.0, 0.05, 0.3)  # 0.1",
        "uphill = (0.0, 0.1, 0.22)": "uphill = (0.0, 0.15)",
        "teeth_behind = (42, 45, 48, 51)": "teeth_behind = (40, 44, 48, 54)",
        '"fatter tyre, 15/47": sprockets(15, 47)': '"fatter tyre, 16/47": sprockets(16, 47)',
    },
    "3": {
        "front, rear = 13, 48": "front, rear = 14, 44",
        "rears = (46, 48, 50, 52, 54)": "rears = (44, 49, 51)",
        "lengths = (108, 110, 112, 114)": "lengths = (106, 110, 114, 118)",
        "teeth_in_front = (12, 13, 14, 15)": "teeth_in_front = (11, 13, 16, 17)",
    },
}


def module_of(path: Path) -> Any:
    specification = importlib.util.spec_from_file_location(path.stem, path)
    assert specification is not None and specification.loader is not None
    module = importlib.util.module_from_spec(specification)
    specification.loader.exec_module(module)
    return module


notebooks = module_of(ROOT / "examples/notebooks.py")


def said(cell: Any) -> list[str]:
    """What a cell prints, and what it shows as text; of a picture only that there is one."""
    shown = []
    for output in cell.get("outputs", []):
        assert output.output_type != "error" and output.get("name") != "stderr", output
        if output.output_type == "stream":
            shown.append(output.text)
        else:
            shown += [text for kind, text in output.data.items() if kind in ("text/html", "text/markdown")]
            shown += ["a picture"] if "image/png" in output.data else []
    return shown


def named(lesson: Path) -> str:
    return lesson.stem


@pytest.mark.parametrize("lesson", LESSONS, ids=named)
def test_a_lesson_says_what_is_stored_in_it_and_what_its_program_says(lesson: Path) -> None:
    stored, fresh = nbformat.read(lesson, as_version=4), notebooks.run(lesson)
    nbformat.validate(stored)
    for old, new in zip(stored.cells, fresh.cells, strict=True):
        assert said(old) == said(new), new.source
    (numbers,) = [cell for cell in fresh.cells if "numbers" in cell.metadata.get("tags", [])]
    done = subprocess.run([PROGRAMS / lesson.stem], capture_output=True, text=True, check=True)
    assert "".join(said(numbers)) == done.stdout and len(done.stdout.splitlines()) >= 6
    html5lib.HTMLParser(strict=True).parse(notebooks.page(fresh))


@pytest.mark.parametrize("lesson", LESSONS, ids=named)
def test_a_reader_can_change_the_numbers(lesson: Path) -> None:
    stored = nbformat.read(lesson, as_version=4)
    changes = CHANGED[lesson.stem[0]]
    fresh = notebooks.run(lesson, changes)
    assert all(said(cell) or cell.cell_type == "markdown" or "import" in cell.source or "def " in cell.source
               for cell in fresh.cells if cell.cell_type == "code" and cell.source)  # fmt: skip
    different = [
        old.id for old, new in zip(stored.cells, fresh.cells, strict=True) if old.get("outputs") != new.get("outputs")
    ]
    changed = [new.id for old, new in zip(stored.cells, fresh.cells, strict=True) if old.source != new.source]
    assert len(changed) == len(changes) and set(changed) <= set(different)


@pytest.mark.parametrize("lesson", LESSONS, ids=named)
def test_a_lesson_has_all_its_parts(lesson: Path) -> None:
    notebook = nbformat.read(lesson, as_version=4)
    words = [cell.source for cell in notebook.cells if cell.cell_type == "markdown"]
    code = [cell.source for cell in notebook.cells if cell.cell_type == "code"]
    assert words[0].startswith("# ") and "*A rider asks:*" in words[0]
    assert "maker's manual" in words[-1] and "invented" in words[-1]
    assert sum("## Find the mistake" in text for text in words) == 1
    assert sum("**Try it" in text for text in words) >= 1
    assert sum(text.startswith("# Change me") for text in code) >= 4
    assert sum("exercises." in text for text in code) >= 3
    assert sum("plots.what_if" in text for text in code) >= 1
    pictures = [out for cell in notebook.cells for out in cell.get("outputs", []) if "image/png" in out.get("data", {})]
    assert len(pictures) >= 3
    assert lesson.stat().st_size < LARGEST
    assert lesson.with_suffix(".cpp").exists() and f"{lesson.stem}.cpp" in "".join(words)
