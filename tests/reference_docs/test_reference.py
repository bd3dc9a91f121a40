# SPDX-License-Identifier: MIT
"""The reference leaves nothing public out, and every example in a docstring does what it shows. Whether the pages come
out well is for bindings/reference/build, which is part of the long run."""

from __future__ import annotations

import doctest
import importlib
import inspect
import re
import sys
from collections.abc import Iterator
from pathlib import Path
from types import ModuleType
from typing import Any

import layshaft as ls
import pytest

TOP = Path(__file__).resolve().parents[2]
HEADERS = TOP / "include/layshaft"
sys.path.insert(0, str(TOP / "bindings/reference"))
headers = importlib.import_module("headers")
pages = importlib.import_module("pages")
subjects = importlib.import_module("subjects")
sys.path.pop(0)


def modules() -> dict[str, ModuleType]:
    """The package and all modules of it that people import."""
    return {"layshaft": ls} | {
        f"layshaft.{name}": importlib.import_module(f"layshaft.{name}") for name in subjects.MODULES
    }


# --- Nothing is left out ----------------------------------------------------------------------------------------------


def test_every_module_of_the_package_is_on_the_list() -> None:
    # `choosing` holds what layshaft itself shows.
    there = {path.stem for path in Path(ls.__file__).parent.glob("*.py")} - {"__init__", "choosing"}
    assert {name for name in there if not name.startswith("_")} == set(subjects.MODULES)


def test_every_public_python_name_has_its_entry() -> None:
    written = pages.python_pages()
    entries: set[str] = set()
    for name, text in written.items():
        text = re.sub(r"^(\.\. py:\w+:: )([^\n]+)((?:\n {10,}[^\n]+)*)", lambda m: "\n".join(
            m[1] + line.strip() for line in (m[2] + m[3]).split("\n")), text, flags=re.MULTILINE)  # fmt: skip
        inside = f"layshaft.{name.removeprefix('module_')}" if name.startswith("module_") else "layshaft"
        entries |= {f"{inside}.{one}" for one in re.findall(r"^\.\. py:\w+:: (?!layshaft)(\w+)", text, re.MULTILINE)}
        entries |= set(re.findall(r"^\.\. auto\w+:: (\S+)", text, re.MULTILINE))
    wanted = {f"{name}.{one}" for name, module in modules().items() for one in vars(module)["__all__"]}
    assert not wanted - entries


def test_every_public_name_stands_in_one_subject() -> None:
    there = [
        name
        for subject in pages.STUB.subjects("Errors")
        for name in (*subject.classes, *subject.functions, *subject.values)
        if not name.startswith("__")
    ]
    assert len(there) == len(set(there))
    assert set(there) | set(pages.IN_PYTHON) == set(vars(ls)["__all__"])


def test_every_folder_of_headers_is_on_the_list_and_every_header_has_its_page() -> None:
    assert {path.name for path in HEADERS.iterdir() if path.is_dir()} == set(subjects.FOLDERS)
    start = headers.start_page()
    groups = []
    for header in HEADERS.rglob("*.hpp"):
        text = headers.prepared(header)
        group = headers.group_of(header)
        groups.append(group)
        assert f"@defgroup {group} {header.relative_to(HEADERS.parent).as_posix()}\n" in text
        folder = header.relative_to(HEADERS).parts[0]
        assert f"@ingroup folder_{folder}\n" in text or f"@ref {group}" in start
        assert "LAYSHAFT_FORMULA(" not in text or header.name == "formula.hpp"
    assert len(groups) == len(set(groups)) > 150


def test_every_formula_is_in_the_table_of_formulas() -> None:
    there = [name for _, names in pages.in_folders() for name in names]
    assert sorted(there) == sorted(headers.FORMULAS)
    words = pages.glossary()
    for name in there:
        assert {name, *pages.parameters_of(headers.FORMULAS[name])} <= set(words)


def test_the_headers_show_no_code_that_nobody_compiles() -> None:
    # What the C++ pages show is examples/readme.cpp, which is compiled and run.
    for header in HEADERS.rglob("*.hpp"):
        assert not re.search(r"^\s*///.*(@code|@verbatim|```)", header.read_text(encoding="utf-8"), re.MULTILINE), (
            header
        )


# --- Examples ---------------------------------------------------------------------------------------------------------


def docstrings() -> Iterator[tuple[str, str]]:
    """The docstring of every module, and of every public name and member of it."""
    for name, module in modules().items():
        yield name, module.__doc__ or ""
        for one in vars(module)["__all__"]:
            member = getattr(module, one)
            if not (inspect.isclass(member) or inspect.isroutine(member) or type(member).__name__ == "ufunc"):
                continue
            yield f"{name}.{one}", member.__doc__ or ""
            for part, value in vars(member).items() if inspect.isclass(member) else ():
                if not part.startswith("_") and isinstance(getattr(value, "__doc__", None), str):
                    yield f"{name}.{one}.{part}", value.__doc__


EXAMPLES = {name: text for name, text in docstrings() if ">>> " in text}


def run(name: str, names: dict[str, Any]) -> dict[str, Any]:
    """Runs the examples of a docstring; the names that they leave behind."""
    test = doctest.DocTestParser().get_doctest(inspect.cleandoc(EXAMPLES[name]), names, name, None, 0)
    told: list[str] = []
    result = doctest.DocTestRunner(verbose=False).run(test, out=told.append, clear_globs=False)
    assert result.attempted and not result.failed, "".join(told)
    return test.globs


@pytest.fixture(scope="module")
def names() -> dict[str, Any]:
    """What examples may name: the package, and the machine and the set-up that two of them make."""
    return run("layshaft.Setup", run("layshaft.Machine", {"ls": ls}))


@pytest.mark.parametrize("name", EXAMPLES)
def test_an_example_does_what_it_shows(name: str, names: dict[str, Any]) -> None:
    module = next((one for at, one in modules().items() if at != "layshaft" and name.startswith(f"{at}.")), None)
    run(name, names | (vars(module) if module else {}))  # as doctest has it, a module's examples know its names


def test_what_everybody_starts_with_has_an_example() -> None:
    central = (
        "Band TyreSize Tread ChainSeries Sprocket ChainLoop Gearbox Machine Setup RoadLoad Limit Goals rolling_circumference "
        "measured_circumference legal_tread road_speed overall_ratio thrust_change hunting appraise compare explain choose "
        "formulas show"
    )
    assert {f"layshaft.{name}" for name in central.split()} <= set(EXAMPLES)
    assert len(EXAMPLES) >= 30
