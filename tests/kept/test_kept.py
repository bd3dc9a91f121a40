# SPDX-License-Identifier: MIT
"""What every version wrote is read by this one, and means the same: pickles, JSON, ride logs and tracks."""

from __future__ import annotations

import base64
import importlib.util
import inspect
import json
import math
import pickle
import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import layshaft as ls
import layshaft._core as core
import pytest

HERE = Path(__file__).resolve().parent
VERSIONS = sorted(path.name for path in HERE.iterdir() if re.fullmatch(r"\d+\.\d+\.\d+", path.name))
#: Of a version: what has since come to mean something else, and why. (Nothing so far.)
CHANGED: dict[str, dict[str, str]] = {}
NUMBER = re.compile(r"[-+]?\d+\.?\d*(?:e[-+]?\d+)?")


def _keeper() -> Any:
    spec = importlib.util.spec_from_file_location("layshaft_keeper", HERE / "keep.py")
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    path = list(sys.path)
    spec.loader.exec_module(module)
    sys.path[:] = path
    return module


keep = _keeper()
TODAY = keep.pickles()


def kept(version: str) -> dict[str, Any]:
    texts = json.loads((HERE / version / "pickles.json").read_text(encoding="utf-8"))
    return {name: pickle.loads(base64.b64decode(text)) for name, text in texts.items()}


def parts(value: Any) -> Any:
    """A value down to numbers and texts, whether or not its class can be compared."""
    if isinstance(value, tuple | list):
        return [parts(one) for one in value]
    if isinstance(value, dict):
        return [[parts(key), parts(one)] for key, one in value.items()]
    if type(value).__module__.startswith("layshaft"):
        return [type(value), *map(parts, value.__reduce_ex__(keep.PROTOCOL)[1:])]
    return value


def alike(one: Any, other: Any) -> bool:
    """Equal but for the last digits of numbers, which another machine's mathematics may give otherwise."""
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(map(alike, one, other))
    if isinstance(one, float) and isinstance(other, float):
        return math.isclose(one, other, rel_tol=1e-12, abs_tol=1e-12)
    if isinstance(one, str) and isinstance(other, str) and NUMBER.sub("0", one) == NUMBER.sub("0", other):
        return all(
            math.isclose(float(a), float(b), rel_tol=1e-12, abs_tol=1e-12)
            for a, b in zip(NUMBER.findall(one), NUMBER.findall(other), strict=True)
        )
    return bool(one == other)


def test_the_present_version_has_left_something() -> None:
    assert ls.__version__ in VERSIONS, "run tests/kept/keep.py --write"


@pytest.mark.parametrize("version", VERSIONS)
def test_a_pickle_of_every_version_is_what_its_name_says_today(version: str) -> None:
    changed = CHANGED.get(version, {})
    for name, value in kept(version).items():
        assert type(value) is type(TODAY[name]) and repr(value), name
        if name not in changed:
            assert alike(parts(value), parts(TODAY[name])), (
                f"{name} of {version} is no longer {TODAY[name]!r}; if {version} is not released, and that is wanted, "
                "run tests/kept/keep.py --write"
            )


@pytest.mark.parametrize("version", VERSIONS)
def test_a_text_of_every_version_reads_as_it_did(version: str) -> None:
    values = kept(version)
    names = [path.name for path in (HERE / version).iterdir() if path.name != "pickles.json"]
    assert len(names) >= 19
    for name in names:
        text = (HERE / version / name).read_bytes().decode()
        assert alike(parts(keep.read(name, text)), parts(values[name])), name


def test_every_class_that_pickles_is_kept() -> None:
    pickled = {
        name
        for name, one in vars(core).items()
        if inspect.isclass(one) and (issubclass(one, Exception) or {"__reduce__", "__getstate__"} & vars(one).keys())
    }
    assert len(pickled) > 100
    assert pickled <= {type(value).__name__ for value in TODAY.values()}
    assert TODAY.keys() <= kept(ls.__version__).keys(), "run tests/kept/keep.py --write"
    for name in ("Formula", "Source"):  # of the library's own tables: they are asked for again
        assert name not in pickled


def test_every_key_of_the_json_forms_is_kept() -> None:
    headers = (HERE.parents[1] / "include" / "layshaft" / "io").glob("*_json.hpp")
    code = "".join(path.read_text() for path in [*headers, HERE.parents[1] / "include/layshaft/io/json.hpp"])
    keys = set(re.findall(r'\b(?:find|at)\("(\w+)"\)', code))
    assert len(keys) > 80
    said = "".join(path.read_text(encoding="utf-8") for path in (HERE / ls.__version__).glob("*.json"))
    assert {key for key in keys if f'"{key}"' not in said} == set()


def test_the_comparison_sees_a_difference() -> None:
    assert alike(parts(ls.Length("3.25 inch")), parts(ls.Length("3.25 inch")))
    assert not alike(parts(ls.Length("3.25 inch")), parts(ls.Length("3.2500001 inch")))
    assert not alike(parts(ls.Slack("30 mm")), parts(ls.Slack("30 mm", "gap")))
    assert not alike(parts(TODAY["Choice"]), parts(TODAY["Choice of none"]))


NEWER = [
    ("0.99.0", "version of the pickle is '0.99.0'; expected that of a layshaft no newer than the one that reads it, "),
    ("7.0.0", "version of the pickle is '7.0.0'"),
    ("tomorrow", "version of the pickle is 'tomorrow'"),
    ("0.1x", "version of the pickle is '0.1x'"),
    ("9" * 40 + ".0", "version of the pickle is '999"),
    ("", "version of the pickle is ''"),
]


def of_another_version(value: Any, version: str) -> bytes:
    """The pickle that a layshaft of that version would write. (Protocol 3 counts no bytes but those of its texts.)"""

    def text(one: str) -> bytes:
        return b"X" + len(one).to_bytes(4, "little") + one.encode()

    written = pickle.dumps(value, 3)
    assert text(ls.__version__) in written
    return written.replace(text(ls.__version__), text(version))


@pytest.mark.parametrize("name", ["Setup", "RoadLoad by mass", "Working", "Caution", "Choice", "RideLog", "RideUse"])
def test_a_pickle_of_a_newer_version_is_refused_in_words(name: str) -> None:
    value = TODAY[name]
    for version, words in NEWER:
        with pytest.raises(ls.RangeError, match=re.escape(words)):
            pickle.loads(of_another_version(value, version))


@pytest.mark.parametrize("name", ["Setup", "RoadLoad by mass", "Working", "Caution", "Choice", "RideLog", "RideUse"])
def test_a_pickle_of_an_older_version_or_of_a_later_patch_is_read(name: str) -> None:
    major, minor, patch = ls.__version__.split(".")
    for version in ("0.0.1", ls.__version__, f"{major}.{minor}.{int(patch) + 7}"):
        assert parts(pickle.loads(of_another_version(TODAY[name], version))) == parts(TODAY[name])


@pytest.mark.parametrize("name", ["Caution", "Choice", "Chosen", "Relaxation", "RideLog"])
def test_a_state_that_no_layshaft_wrote_is_refused(name: str) -> None:
    value = TODAY[name]
    made = value.__reduce_ex__(keep.PROTOCOL)
    good = made[2]
    assert good[0] == ls.__version__
    for state in (
        None,
        3,
        (),
        (1,),
        good[1],
        (ls.__version__,),
        (ls.__version__, 3),
        (ls.__version__, ()),
        (3, good[1]),
    ):
        with pytest.raises((TypeError, IndexError, ls.Error)):
            made[0](*made[1]).__setstate__(state)
    for place in range(len(good[1])):
        spoilt = (*good[1][:place], object(), *good[1][place + 1 :])
        with pytest.raises((TypeError, RuntimeError, ls.Error)):
            made[0](*made[1]).__setstate__((ls.__version__, spoilt))


def test_a_caution_that_is_not_known_is_refused() -> None:
    made = TODAY["Caution"].__reduce_ex__(keep.PROTOCOL)
    code, *amounts = made[2][1]
    for state, words in (
        ((code + "_x", *amounts), "code is 'chain"),
        ((code, amounts[0], 1000, *amounts[2:]), "dimension is 1000"),
        ((code, amounts[0], -1, *amounts[2:]), "dimension is -1"),
    ):
        with pytest.raises(ls.RangeError, match=words):
            made[0](*made[1]).__setstate__((ls.__version__, state))


def test_what_a_released_version_left_is_not_written_again(tmp_path: Path) -> None:
    def git(*arguments: str) -> None:
        subprocess.run(["git", "-C", str(tmp_path), *arguments], check=True, capture_output=True)

    git("init", "-q")
    git("-c", "user.name=a", "-c", "user.email=a@example.org", "commit", "-q", "--allow-empty", "-m", "x")
    assert not keep.is_released("0.1.0", tmp_path)
    git("tag", "v0.1.0")
    assert keep.is_released("0.1.0", tmp_path) and not keep.is_released("0.1.1", tmp_path)
    assert keep.main([]) == 2 and keep.main(["--write", "more"]) == 2
    keep.write(tmp_path / "kept")
    assert (tmp_path / "kept" / "pickles.json").stat().st_size > 1000
