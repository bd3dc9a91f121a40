# SPDX-License-Identifier: MIT
"""The examples run, C++ and Python say the same, the README's code and output are those of the examples."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import html5lib
import pytest

MATH = "{http://www.w3.org/1998/Math/MathML}math"
ROOT = Path(__file__).resolve().parents[2]
PROGRAMS = Path(os.environ.get("LAYSHAFT_EXAMPLES", ROOT / "build" / "test" / "examples"))
QUESTIONS = {
    "the README's rider": [],
    "in US units": ["--units", "us"],
    "a farm bike": ["examples/machines/farm_bike.json", "--fitted", "3.00-17 M/C 45P TT"],
    "a cargo cycle": ["examples/machines/cargo_cycle.json", "--circumference", "1600 mm"],
    "a rider who recorded a ride": ["--ride", "examples/rides/evening_loop.csv"],
    "more pull on chosen sprockets": ["--thrust", "8", "--fronts", "12,13", "--rears", "50-54", "--bought", "100"],
}


def run(*command: object) -> subprocess.CompletedProcess[str]:
    return subprocess.run([str(part) for part in command], cwd=ROOT, capture_output=True, text=True, check=False)


def python(tmp_path: Path, *arguments: str) -> str:
    done = run(sys.executable, "examples/regear.py", *arguments, "--pictures", tmp_path)
    assert done.returncode == 0, done.stderr
    return done.stdout


@pytest.mark.parametrize("question", QUESTIONS)
def test_regear_says_the_same_in_both_languages(question: str, tmp_path: Path) -> None:
    said = python(tmp_path, *QUESTIONS[question])
    text, files = said.split("\nPictures: ")
    pictures, page = files.split("\nPage: ")
    html5lib.HTMLParser(strict=True).parse(Path(page.strip()).read_text(encoding="utf-8"))
    done = run(PROGRAMS / "regear", *QUESTIONS[question])
    assert done.returncode == 0, done.stderr
    assert text == done.stdout
    for path in pictures.strip().split(", "):
        assert Path(path).stat().st_size > 1000


@pytest.mark.parametrize(
    "number", ["thrust", "centre", "wear room", "engine speed", "highest speed", "indicated ratio"]
)
def test_regear_explains_a_number_the_same_in_both_languages(number: str, tmp_path: Path) -> None:
    done = run(PROGRAMS / "regear", "--explain", number)
    assert done.returncode == 0, done.stderr
    assert done.stdout == python(tmp_path, "--explain", number)
    assert done.stdout.count(" = ") > 5
    for regear in ((PROGRAMS / "regear",), (sys.executable, "examples/regear.py")):
        unknown = run(*regear, "--explain", "weather")
        assert unknown.returncode == 1 and '"wear room"' in unknown.stderr


def test_the_advice_page_has_a_working_under_every_number(tmp_path: Path) -> None:
    python(tmp_path)
    page = html5lib.parse(
        (tmp_path / "trail_bike_advice.html").read_text(encoding="utf-8"), namespaceHTMLElements=False
    )
    numbers = [one for one in page.iter("details") if one.get("class") == "number"]
    assert len(numbers) > 20
    for number in numbers:
        assert len(list(number.iter("ol"))) == 1 and len(list(number.iter(MATH))) > 2
    # One file, no script: nothing is fetched from anywhere.
    assert not list(page.iter("script")) and not list(page.iter("link"))
    assert all(image.get("src", "").startswith("data:image/") for image in page.iter("img"))
    said = "".join(page.itertext())
    assert "from memory" in said and "maker's manual" in said


def test_regear_says_whether_the_tyres_band_covers_the_miss() -> None:
    for arguments in (*QUESTIONS.values(), ["--thrust", "60"], ["--circumference", "2050 mm", "--rears", "51"]):
        said = run(PROGRAMS / "regear", *arguments).stdout
        found = re.search(r"comes within ([\d.]+) points", said)
        if not found:
            assert "gives just that" in said, arguments
            continue
        missed = float(found[1])
        ends = re.search(r"what is left +\S+ \((\S+) to (\S+)\)", said)
        width = float(ends[2]) - float(ends[1]) if ends else 0.0
        assert ("less than the tyre itself leaves open" in said) == (missed <= width / 2), arguments


def test_regear_leads_with_the_decision_and_leaves_nothing_out() -> None:
    said = run(PROGRAMS / "regear").stdout
    assert re.search(r"^Fit \d+/\d+ with \d+ links: thrust in every gear is then", said, re.MULTILINE)
    for part in (
        "What makes up the change", "what is left", "by rule of thumb", "links to cut", "axle", "room rearward",
        "revs at 85.0 km/h", "gear 6", "Speedometer", "correction factor", "odometer", "UN R39", "chain's pull",
        "each front tooth", "Why this one", "Before you ride", "manual",
    ):  # fmt: skip
        assert part in said, part
    assert "nan" not in said and "-0.0" not in said


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["no/such/file.json"], "no/such/file.json"),
        (["--fitted", "120/9O-18"], "position 5"),
        (["--rears", "900"], "none of the candidates' chains closes"),
    ],
)
def test_regear_says_what_is_wrong(arguments: list[str], words: str, tmp_path: Path) -> None:
    for done in (
        run(PROGRAMS / "regear", *arguments),
        run(sys.executable, "examples/regear.py", *arguments, "--pictures", tmp_path),
    ):
        assert done.returncode != 0 and words in done.stderr and "Traceback" not in done.stderr


def test_the_smaller_examples_run() -> None:
    one_turn = run(sys.executable, "examples/one_turn.py")
    assert one_turn.returncode == 0 and "so you move" in one_turn.stdout
    many = run(sys.executable, "examples/many_setups.py")
    assert many.returncode == 0 and "1000 set-ups" in many.stdout


def readme_block(marker: str) -> str:
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    found = re.search(rf"<!-- {re.escape(marker)} -->\n+```\w*\n(.*?)```", text, re.DOTALL)
    assert found, f"the README has no block for {marker}"
    return found[1]


def without_heading(path: Path) -> str:
    lines = path.read_text(encoding="utf-8").splitlines(keepends=True)
    return "".join(line for i, line in enumerate(lines) if not (i < 2 and line.startswith(("//", "#"))))


@pytest.mark.parametrize("name", ["readme.cpp", "readme.py", "working.cpp"])
def test_the_readmes_code_is_that_of_the_examples(name: str) -> None:
    assert readme_block(f"examples/{name}") == without_heading(ROOT / "examples" / name)


def test_the_readmes_code_prints_what_the_readme_shows() -> None:
    shown = readme_block("prints")
    assert run(PROGRAMS / "readme").stdout == shown
    assert run(sys.executable, "examples/readme.py").stdout == shown


def test_the_readmes_working_is_what_the_example_prints() -> None:
    assert run(PROGRAMS / "working").stdout == readme_block("working prints")


def test_the_readmes_comparison_runs(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    names: dict[str, object] = {}
    exec(readme_block("run by a test"), names)
    assert names["comparison"].trial.chain.links == 110  # type: ignore[attr-defined]
    exec(readme_block("run by the same test"), names)
    assert names["top"].limit in ("revs", "power")  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("machine", "rear", "pictures"), [("trail_bike", 50, 4), ("farm_bike", 47, 4), ("cargo_cycle", 21, 2)]
)
def test_chain_drive_answers_and_draws(machine: str, rear: int, pictures: int, tmp_path: Path) -> None:
    file = f"examples/machines/{machine}.json"
    done = run(sys.executable, "examples/chain_drive.py", file, "--rear", str(rear), "--pictures", tmp_path)
    assert done.returncode == 0, done.stderr
    for answer in (
        "chain ",
        "axle ",
        "stretch it can take",
        "chains that close",
        "teeth in mesh",
        "strength over pull",
    ):
        assert f"  {answer}" in done.stdout
    assert ("slack to set at rest" in done.stdout) == (machine != "cargo_cycle")
    assert "The maker's manual, local road law and a qualified technician come first." in done.stdout
    assert len(list(tmp_path.iterdir())) == pictures and all(path.stat().st_size > 4000 for path in tmp_path.iterdir())


@pytest.mark.parametrize(
    ("machine", "more", "pictures"),
    [
        ("trail_bike", ["--rear", 50, "--altitude", "2200 m", "--log", "examples/rides/evening_loop.csv"], 6),
        ("farm_bike", ["--rear", 47, "--cruise", "60 km/h", "--units", "us"], 4),
        ("cargo_cycle", ["--rear", 21], 4),
    ],
)
def test_engine_and_road_answers_and_draws(machine: str, more: list[object], pictures: int, tmp_path: Path) -> None:
    file = f"examples/machines/{machine}.json"
    done = run(sys.executable, "examples/engine_and_road.py", file, *more, "--pictures", tmp_path)
    assert done.returncode == 0, done.stderr
    for answer in ("top speed", "held by", "engine at", "gear 1: steepest hill", "gets away on", "walking pace"):
        assert f"  {answer}" in done.stdout
    if machine == "trail_bike":
        assert "tells 6 gears" in done.stdout
        assert "work at the wheel" in done.stdout
        assert "top speed at 2200" in done.stdout
    assert ("by mass alone" in done.stdout) == (machine == "farm_bike")
    assert "The maker's manual, local road law and a qualified technician come first." in done.stdout
    assert len(list(tmp_path.iterdir())) == pictures and all(path.stat().st_size > 4000 for path in tmp_path.iterdir())


@pytest.mark.parametrize("machine", ["trail_bike", "farm_bike", "cargo_cycle"])
def test_wear_answers_and_draws(machine: str, tmp_path: Path) -> None:
    done = run(sys.executable, "examples/wear.py", f"examples/machines/{machine}.json", "--pictures", tmp_path)
    assert done.returncode == 0, done.stderr
    for answer in (
        "wears its chain less: by", "loses less in the joints: by", "costs less: by", "pulls harder", "grows faster",
        "wears faster", "lasts less far", "lose more", "two measurements tell more", "replace by", "best plan for",
        "out of their own workings", "from memory",
    ):  # fmt: skip
        assert answer in done.stdout
    assert "The maker's manual, local road law and a qualified technician come first." in done.stdout
    assert len(list(tmp_path.iterdir())) == 6 and all(path.stat().st_size > 4000 for path in tmp_path.iterdir())


def test_the_readmes_advice_is_what_regear_says() -> None:
    assert run(PROGRAMS / "regear").stdout.startswith(readme_block("examples/regear"))
