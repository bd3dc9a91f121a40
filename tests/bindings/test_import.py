# SPDX-License-Identifier: MIT
"""What `import layshaft` loads, and what the installed package weighs."""

from __future__ import annotations

import gc
import importlib.metadata
import io
import subprocess
import sys
import zipfile
from pathlib import Path

import layshaft as ls

PACKAGE = Path(ls.__file__).parent
# What may be loaded besides what the interpreter itself has loaded: the package, and its compiled part.
OWN = {"layshaft", "layshaft._core"}
SLOW = {"numpy", "pandas", "matplotlib", "typing", "re", "dataclasses", "hypothesis"}
WHEEL_LIMIT = 1_500_000  # bytes


def loaded(code: str) -> set[str]:
    """The modules in an interpreter of its own, without what the files of a site load at its start."""
    script = f"import sys; sys.path[:0] = [{str(PACKAGE.parent)!r}]\n{code}\nprint(*sys.modules)"
    told = subprocess.run([sys.executable, "-I", "-S", "-c", script], capture_output=True, text=True, check=True)
    return set(told.stdout.split())


def test_import_loads_the_package_alone() -> None:
    new = loaded("import layshaft") - loaded("")
    assert new == OWN
    assert not new & SLOW


def test_what_is_loaded_late_is_loaded_when_asked_for() -> None:
    """The test above would not see a module that it cannot see: this one must."""
    assert "dataclasses" in loaded("import layshaft, dataclasses") - loaded("")
    assert "layshaft.choosing" in loaded("import layshaft; layshaft.choose") - loaded("")


def test_import_leaves_the_garbage_collector_as_it_was() -> None:
    told = "import gc; {before}(); import layshaft; assert gc.isenabled() is {was}"
    for before, was in (("gc.enable", True), ("gc.disable", False)):
        loaded(told.format(before=before, was=was))
    assert gc.isenabled()


def test_the_package_is_small() -> None:
    """Every file of the installed distribution, packed as a wheel is; what Python itself puts beside them is none of it."""
    packed = io.BytesIO()
    files = importlib.metadata.files("layshaft") or []
    assert len(files) > 40
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as archive:
        for file in files:
            if file.suffix != ".pyc":
                archive.write(file.locate(), str(file))
    assert packed.tell() < WHEEL_LIMIT, f"{packed.tell()} bytes"
