# SPDX-License-Identifier: MIT
"""Keeps a pickle of each kind of value and a text of each form, as the present version writes them: with --write.

    build/venv/bin/python tests/kept/keep.py --write

They go to tests/kept/VERSION/, and are read by every later version's tests. A version counts as released once the
repository has the tag vVERSION; what it left is never written again.
"""

from __future__ import annotations

import base64
import json
import pickle
import subprocess
import sys
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parent))

import layshaft as ls
from texts import read, texts
from values import TOP, values

HERE = Path(__file__).resolve().parent
PROTOCOL = 4  # what Python 3.10, the oldest that is served, writes by itself


def is_released(version: str, repository: Path) -> bool:
    """Whether the repository has the version's tag."""
    asked = ["git", "-C", str(repository), "tag", "--list", f"v{version}"]
    return subprocess.run(asked, capture_output=True, text=True, check=True).stdout.strip() != ""


def pickles() -> dict[str, Any]:
    """Every value, and beside them what each text is read as."""
    return values() | {name: read(name, text) for name, text in texts().items()}


def write(folder: Path) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in texts().items():
        (folder / name).write_bytes(text.encode())
    kept = {name: base64.b64encode(pickle.dumps(value, PROTOCOL)).decode("ascii") for name, value in pickles().items()}
    (folder / "pickles.json").write_text(json.dumps(kept, indent=0) + "\n", encoding="utf-8")


def main(arguments: list[str]) -> int:
    if arguments != ["--write"]:
        print("keep.py takes --write and nothing else", file=sys.stderr)
        return 2
    if is_released(ls.__version__, TOP):
        print(f"{ls.__version__} is released: what it left stays. Raise the version first.", file=sys.stderr)
        return 1
    write(HERE / ls.__version__)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
