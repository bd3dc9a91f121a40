# SPDX-License-Identifier: MIT
"""The analyst's notebook runs from its tables to its page, and says what is stored in it."""

from __future__ import annotations

import importlib.util
import re
import shutil
from pathlib import Path
from typing import Any

import html5lib
import nbformat

ROOT = Path(__file__).resolve().parents[2]
STUDY = ROOT / "examples/fleet_study/fleet.ipynb"


def notebooks() -> Any:
    specification = importlib.util.spec_from_file_location("notebooks", ROOT / "examples/notebooks.py")
    assert specification is not None and specification.loader is not None
    module = importlib.util.module_from_spec(specification)
    specification.loader.exec_module(module)
    return module


def texts(notebook: Any) -> list[str]:
    """What is printed and shown, but for pictures."""
    shown = []
    for cell in notebook.cells:
        for output in cell.get("outputs", []):
            assert output.output_type != "error" and output.get("name") != "stderr", output
            shown.append(output.get("text") or output.data.get("text/html", ""))
    return shown


def test_the_study_runs_from_its_tables_to_its_page(tmp_path: Path) -> None:
    folder = tmp_path / "examples" / STUDY.parent.name
    shutil.copytree(STUDY.parent, folder)
    shutil.copytree(ROOT / "examples/machines", tmp_path / "examples/machines")
    told = notebooks().run(folder / STUDY.name)
    assert texts(told) == texts(nbformat.read(STUDY, as_version=4))
    assert re.search(r"\n20\d,\d{3} rows", "\n" + "\n".join(texts(told)))

    page = (tmp_path / "build/examples/new_tyres.html").read_text(encoding="utf-8")
    html = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
    rows = [[cell.text for cell in row] for row in html.iter("tr")]
    bought = [row for row in rows[1:] if row[0].isdigit()]
    given = [row for row in rows if row[2] and row[2].endswith("%")]
    assert sum(int(row[1]) for row in bought) == len(given) == 20
    assert {row[1] for row in given} == {row[0] for row in bought}
    assert all(image.get("alt") for image in html.iter("img")) and not list(html.iter("script"))
    markdown = (tmp_path / "build/examples/new_tyres.md").read_text(encoding="utf-8")
    assert markdown.count("\n| ") == len(rows) + 2  # and a line under the head of each table
    assert STUDY.stat().st_size < 400_000
