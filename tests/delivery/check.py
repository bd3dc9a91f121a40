# SPDX-License-Identifier: MIT
"""What is handed out: the source distribution and the wheel. Minutes of compiling, so that it is no part of the short run.

    build/venv/bin/python -m pytest tests/delivery/check.py

It fetches the wheels of the build's requirements once, into build/delivery/wheels; all that follows is done without a
package index. One wheel is built in a clean copy of the tree, by the requirements of one environment; the other by pip,
from the source distribution, somewhere else and in an environment of its own. Both must be the same to the last bit.
"""

from __future__ import annotations

import hashlib
import importlib
import os
import shutil
import subprocess
import sys
import tarfile
import venv
import zipfile
from pathlib import Path

import pytest

TOP = Path(__file__).resolve().parents[2]
WORK = TOP / "build" / "delivery"
EPOCH = "1767225600"  # the start of 2026 in UTC: any moment will do that is the same for both
PROGRAM = """
import layshaft as ls
loop = ls.ChainLoop("520", front=13, rear=50)
assert f"{loop.links('615 mm'):.2f}" == "109.88"
assert ls.Setup.from_json(ls.Setup(front=13, rear=50, tyre="120/80-18").to_json()).front == 13
from layshaft import arrays, report
assert arrays.road_speed_kmh([6000.0], 20.0, 2000.0).shape == (1,)
page = report.Page("x")
print(ls.__version__)
"""


def run(*command: str | Path, cwd: Path | None = None, **environment: str) -> str:
    """What a program says; its errors, where it fails, are the test's."""
    inherited = {name: value for name, value in os.environ.items() if not name.startswith(("PYTHON", "PIP_"))}
    done = subprocess.run(
        [str(part) for part in command],
        cwd=cwd,
        env={**inherited, "PIP_DISABLE_PIP_VERSION_CHECK": "1", "SOURCE_DATE_EPOCH": EPOCH, **environment},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, f"{command}: {done.stdout[-3000:]}\n{done.stderr[-3000:]}"
    return done.stdout


def requirements() -> list[str]:
    toml = importlib.import_module("tomllib" if sys.version_info >= (3, 11) else "pip._vendor.tomli")
    asked = toml.loads((TOP / "pyproject.toml").read_text(encoding="utf-8"))["build-system"]["requires"]
    return list(asked) + [tool for tool in ("cmake", "ninja") if shutil.which(tool) is None]


def sources() -> list[str]:
    """What git keeps, and what it would."""
    listed = run("git", "-C", TOP, "ls-files", "-z", "--cached", "--others", "--exclude-standard").split("\0")
    return sorted(name for name in listed if name and (TOP / name).is_file())


def copy_to(folder: Path) -> Path:
    shutil.rmtree(folder, ignore_errors=True)
    for name in sources():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(TOP / name, folder / name)  # with today's date: none of the dates may count
    return folder


def environment(folder: Path) -> Path:
    shutil.rmtree(folder, ignore_errors=True)
    venv.create(folder, with_pip=True)
    return folder / "bin" / "python"


def build_by(python: Path, tree: Path, kind: str, into: Path) -> Path:
    """By the build backend itself, in the tree."""
    shutil.rmtree(into, ignore_errors=True)
    into.mkdir(parents=True)
    code = f"import sys, scikit_build_core.build as b; b.build_{kind}(sys.argv[1])"
    run(python, "-c", code, into, cwd=tree)
    (made,) = into.iterdir()
    return made


def digests(archive: Path) -> dict[str, str]:
    """Of each file inside."""
    if archive.suffix == ".whl":
        with zipfile.ZipFile(archive) as wheel:
            return {name: hashlib.sha256(wheel.read(name)).hexdigest() for name in wheel.namelist()}
    with tarfile.open(archive) as sdist:
        files = (one for one in sdist.getmembers() if one.isfile())
        return {one.name: hashlib.sha256(sdist.extractfile(one).read()).hexdigest() for one in files}  # type: ignore[union-attr]


def assert_same(one: Path, other: Path) -> None:
    assert one.name == other.name
    first, second = digests(one), digests(other)
    assert list(first) == list(second)
    assert {name for name in first if first[name] != second[name]} == set()
    assert one.read_bytes() == other.read_bytes(), "the files inside are the same, their wrapping is not"


@pytest.fixture(scope="session")
def wheels() -> Path:
    folder = WORK / "wheels"
    asked, kept = "\n".join([sys.version, *requirements()]), WORK / "wheels.txt"
    if not kept.exists() or kept.read_text() != asked:
        shutil.rmtree(folder, ignore_errors=True)
        run(sys.executable, "-m", "pip", "download", "-q", "--only-binary", ":all:", "-d", folder, *requirements())
        kept.write_text(asked)
    return folder


@pytest.fixture(scope="session")
def builder(wheels: Path) -> Path:
    python = environment(WORK / "builder")
    run(python, "-m", "pip", "install", "-q", "--no-index", "--find-links", wheels, *requirements())
    return python


@pytest.fixture(scope="session")
def sdist(builder: Path) -> Path:
    return build_by(builder, copy_to(WORK / "one" / "tree"), "sdist", WORK / "one" / "sdist")


@pytest.fixture(scope="session")
def wheel(builder: Path) -> Path:
    return build_by(builder, copy_to(WORK / "one" / "tree"), "wheel", WORK / "one" / "wheel")


@pytest.fixture(scope="session")
def wheel_of_sdist(sdist: Path, wheels: Path) -> Path:
    """By pip from the source distribution, with no index to ask; and away from the tree, in a path of another length."""
    apart = WORK / "another place, with blanks"
    shutil.rmtree(apart, ignore_errors=True)
    (apart / "tmp").mkdir(parents=True)
    python = environment(apart / "installer")
    run(python, "-m", "pip", "wheel", "-q", "--no-index", "--find-links", wheels, "--no-deps", "-w", apart / "out", sdist,
        cwd=apart, TMPDIR=str(apart / "tmp"), https_proxy="http://127.0.0.1:9", http_proxy="http://127.0.0.1:9")  # fmt: skip
    (made,) = (apart / "out").iterdir()
    return made


def test_two_source_distributions_are_the_same(builder: Path, sdist: Path) -> None:
    assert_same(sdist, build_by(builder, copy_to(WORK / "the second place" / "t"), "sdist", WORK / "second sdist"))


def test_the_source_distribution_holds_what_is_needed_and_nothing_else(sdist: Path) -> None:
    root = sdist.name.removesuffix(".tar.gz") + "/"
    held = {name.removeprefix(root) for name in digests(sdist)}
    own = {name for name in sources() if name.startswith(("include/", "bindings/"))}
    own -= {name for name in own if name.startswith("bindings/reference/")}
    others = {"CMakeLists.txt", "pyproject.toml", "README.md", "LICENSE", "PKG-INFO"}
    assert held == own | others, held ^ (own | others)
    with tarfile.open(sdist) as archive:
        for one in archive.getmembers():
            assert one.name.startswith(root) and ".." not in one.name and (one.isfile() or one.isdir()), one.name
            assert one.uid == one.gid == 0 and one.uname == one.gname == "" and one.mtime == int(EPOCH), one.name


def test_a_wheel_is_the_same_wherever_it_is_built(wheel: Path, wheel_of_sdist: Path) -> None:
    assert_same(wheel, wheel_of_sdist)


def test_the_wheel_holds_the_package_its_licence_and_no_header(wheel: Path) -> None:
    held = digests(wheel)
    package = {name.removeprefix("bindings/") for name in sources() if name.startswith("bindings/layshaft/")}
    inside = {name for name in held if name.startswith("layshaft/")}
    modules = {name for name in inside if name.endswith(".so")}
    assert len(modules) == 2 and inside - modules == package
    info = {name.partition("/")[2] for name in held if name not in inside}
    assert info == {"METADATA", "WHEEL", "RECORD", "licenses/LICENSE"}
    with zipfile.ZipFile(wheel) as archive:
        told = archive.read(next(name for name in held if name.endswith("/METADATA"))).decode()
        for name in modules:
            code = archive.read(name)
            for place in (str(TOP), str(Path.home()) + "/", "boost_headers", "/overlay/"):
                assert place.encode() not in code, (name, place)
    head = told.partition("\n\n")[0].splitlines()
    assert "License-Expression: MIT" in head and "License-File: LICENSE" in head
    assert not [line for line in head if line.startswith(("Classifier: License", "License:"))]
    assert wheel.stat().st_size < 1_600_000


def test_the_source_distribution_installs_without_a_network(wheel_of_sdist: Path) -> None:
    """With NumPy alone beside it, which the program uses, and run away from the tree."""
    apart = WORK / "another place, with blanks"
    python = apart / "installer" / "bin" / "python"
    run(python, "-m", "pip", "install", "-q", "--no-index", "--find-links", WORK / "wheels", wheel_of_sdist, "numpy")
    assert run(python, "-c", PROGRAM, cwd=apart).strip() == wheel_of_sdist.name.split("-")[1]
    assert "boost" not in run(python, "-m", "pip", "list").lower()
