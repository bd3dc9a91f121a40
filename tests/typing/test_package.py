# SPDX-License-Identifier: MIT
"""Two type checkers find nothing wrong in the package itself."""

from __future__ import annotations

import importlib.util
import subprocess
import sys
from pathlib import Path

import pytest

TOP = Path(__file__).resolve().parents[2]
# The second is there in the long run alone; its settings stand in pyproject.toml.
COMMANDS = {
    "mypy": ["--strict", "-p", "layshaft", "--cache-dir", str(TOP / "build/mypy")],
    "basedpyright": ["--level", "error", "--project", str(TOP), "--pythonpath", sys.executable],
}


@pytest.mark.parametrize("checker", [name for name in COMMANDS if importlib.util.find_spec(name)])
def test_a_type_checker_finds_nothing_wrong_in_the_package(checker: str, tmp_path: Path) -> None:
    told = subprocess.run(
        [sys.executable, "-m", checker, *COMMANDS[checker]], capture_output=True, text=True, cwd=tmp_path
    )
    assert told.returncode == 0, told.stdout + told.stderr
