# SPDX-License-Identifier: MIT
"""Every source file says its licence in the form that tools read, and the package does."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

TOP = Path(__file__).resolve().parents[2]
LINE = "SPDX-License-Identifier: MIT"
#: What holds data or prose, which LICENSE covers: a line there would be read as part of it.
DATA = {".csv", ".dict", ".gpx", ".ipynb", ".json", ".md", ".sha256", ".svg", ".typed"}


def files() -> list[Path]:
    listed = subprocess.run(["git", "-C", str(TOP), "ls-files", "-z"], capture_output=True, text=True, check=True)
    return [TOP / name for name in listed.stdout.split("\0") if name and (TOP / name).is_file()]


def test_every_source_file_says_its_licence_at_its_top() -> None:
    sources = [
        path
        for path in files()
        if path.suffix not in DATA and path.name != "LICENSE" and not {"corpus", "failures"} & set(path.parts)
    ]
    assert len(sources) > 500
    silent = [path for path in sources if LINE not in "".join(path.read_text(encoding="utf-8").splitlines()[:3])]
    assert [str(path.relative_to(TOP)) for path in silent] == []


def test_the_package_says_the_same() -> None:
    project = (TOP / "pyproject.toml").read_text(encoding="utf-8")
    assert re.search(r'^license = "MIT"$', project, re.MULTILINE)  # an expression of SPDX, not a table or a classifier
    assert re.search(r'^license-files = \["LICENSE"\]$', project, re.MULTILINE)
    assert "License ::" not in project
    assert (TOP / "LICENSE").read_text(encoding="utf-8").startswith("MIT License\n")
