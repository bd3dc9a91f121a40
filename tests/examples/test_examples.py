# SPDX-License-Identifier: MIT
"""The examples run, C++ and Python say the same, the README's code and output are those of the examples."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from collections import Counter
from pathlib import Path
from typing import Any

import html5lib
import layshaft as ls
import pytest

MATH = "{http://www.w3.org/1998/Math/MathML}math"
ROOT = Path(__file__).resolve().parents[2]
PROGRAMS = Path(os.environ.get("LAYSHAFT_EXAMPLES", ROOT / "build" / "test" / "examples"))
DEMO = ROOT / "examples/questions/trail_bike.json"
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


def ask(question: Path, *more: object) -> str:
    done = run(sys.executable, "examples/choose.py", question, *more)
    assert done.returncode == 0, done.stderr
    return done.stdout


def demo_question() -> dict[str, Any]:
    question: dict[str, Any] = json.loads(DEMO.read_text(encoding="utf-8"))
    return question


def test_choose_answers_the_demo_rider_and_draws(tmp_path: Path) -> None:
    said = ask(DEMO, "--pictures", tmp_path)
    decision = " ".join(said.split("\n\n")[1].split())
    assert re.fullmatch(r"(Fit|Keep) .*: of \d+ set-ups that keep all limits, .* best; price .*\.", decision)
    assert re.findall(r"^(\d)\. \d+/\d+ with \d+ links$", said, re.MULTILINE) == ["1", "2", "3"]
    for part in ("price ", "Against the next it", "ure: ", "at the low end", "at the high end", "Before you ride"):
        assert part in said, part
    assert "The maker's manual, local road law and a qualified technician come first." in " ".join(said.split())
    assert "nan" not in said and "-0.0 " not in said
    names = {path.name for path in tmp_path.iterdir()}
    assert names == {f"trail_bike_{what}.{kind}" for what in ("trade_off", "space") for kind in ("png", "svg")}
    assert all(path.stat().st_size > 4000 for path in tmp_path.iterdir())


def test_what_is_ruled_out_and_what_is_kept_makes_up_the_whole_space(tmp_path: Path) -> None:
    said = ask(DEMO, "--pictures", tmp_path)
    examined, kept = (int(n) for n in re.search(r"^(\d+) set-ups examined, (\d+) keep", said, re.MULTILINE).groups())  # type: ignore[union-attr]
    counts = [int(n) for n in re.findall(r"^  [A-Z]  .* (\d+)$", said, re.MULTILINE)]
    assert len(counts) == len(demo_question()["goals"]["limits"])
    assert sum(counts) + kept == examined and 3 <= kept < examined
    # The pictures' letters are those limits: the first that each set-up breaks in the order of the question.
    machine = ls.Machine.from_json((ROOT / "examples/machines/trail_bike.json").read_text(encoding="utf-8"))
    space, goals = ls.question_from_json(DEMO.read_text(encoding="utf-8"))
    first = Counter(broken[0] for *_, broken in ls.survey(machine, space, goals) if broken)
    assert [first[place] for place in range(len(counts))] == counts


def test_choose_gives_the_same_in_both_languages(tmp_path: Path) -> None:
    loose = demo_question()
    loose["goals"]["limits"], loose["goals"]["robust"] = loose["goals"]["limits"][:4], True
    other = tmp_path / "loose.json"
    other.write_text(json.dumps(loose), encoding="utf-8")
    told = []
    for question in (DEMO, other):
        done = run(PROGRAMS / "choose", question)
        assert done.returncode == 0, done.stderr
        lines = done.stdout.splitlines()
        assert len(lines) == 6
        said = " ".join(ask(question, "--pictures", tmp_path).split())
        for line in lines:
            assert " ".join(line.split()) in said
        told.append(lines)
    assert told[0] != told[1]


def test_where_nothing_keeps_all_limits_choose_says_what_would_have_to_give_way(tmp_path: Path) -> None:
    tight = demo_question()
    wear = next(limit for limit in tight["goals"]["limits"] if limit["measure"] == "wear room")
    wear["least"] = 0.06
    question = tmp_path / "tight.json"
    question.write_text(json.dumps(tight), encoding="utf-8")
    said = ask(question, "--pictures", tmp_path / "pictures")
    assert "Nothing of the" in said and "The shortlist" not in said
    eased = re.search(r"Let wear room be down to ([\d.]+) % instead of at least 6.0 %", said)
    assert eased and "- Let wear room" in run(PROGRAMS / "choose", question).stdout
    assert {path.name for path in (tmp_path / "pictures").iterdir()} == {"trail_bike_space.png", "trail_bike_space.svg"}
    wear["least"] = float(eased[1]) / 100 - 0.0005  # as printed, to the digit
    question.write_text(json.dumps(tight), encoding="utf-8")
    assert "The shortlist" in ask(question, "--pictures", tmp_path)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (None, "no/such/question.json"),
        ('{"layshaft": 1, "space": {"fronts": []}}', "fronts: none was given"),
        ("{", "byte"),
    ],
)
def test_choose_says_what_is_wrong(text: str | None, words: str, tmp_path: Path) -> None:
    question = Path("no/such/question.json")
    if text is not None:
        question = tmp_path / "spoilt.json"
        question.write_text(text, encoding="utf-8")
    done = run(sys.executable, "examples/choose.py", question, "--pictures", tmp_path)
    assert done.returncode == 1 and words in done.stderr and "Traceback" not in done.stderr
    in_cpp = run(PROGRAMS / "choose", question)
    assert in_cpp.returncode == 1 and words in in_cpp.stderr


def test_choose_answers_a_small_question_in_us_units(tmp_path: Path) -> None:
    wish = {"measure": "engine speed", "speed": "50 km/h", "target": "6000 rpm"}
    space = {"fronts": [14, 15], "rears": [45, 47]}
    question = tmp_path / "small.json"
    question.write_text(json.dumps({"layshaft": 1, "space": space, "goals": {"wishes": [wish]}}), encoding="utf-8")
    machine = ["--machine", "examples/machines/farm_bike.json", "--units", "us", "--pictures", tmp_path / "pictures"]
    done = run(sys.executable, "examples/choose.py", question, *machine)
    assert done.returncode == 0 and done.stderr == ""
    assert "engine speed at 31.1 mph" in done.stdout and "price not known" in done.stdout
    # With one wish nothing is traded off.
    assert {path.name for path in (tmp_path / "pictures").iterdir()} == {"farm_bike_space.png", "farm_bike_space.svg"}


def test_the_fleet_is_answered_alike_by_processes_and_a_cluster() -> None:
    done = run(sys.executable, "examples/fleet.py")
    assert done.returncode == 0, done.stderr
    lines = done.stdout.splitlines()
    assert len([line for line in lines if re.search(r"\d+/\d+: \d+/\d+ with \d+ links, thrust [+-]", line)]) == 6
    assert lines[-1] == "Two processes and a cluster of two workers give the same answers."


def test_the_readmes_advice_is_what_regear_says() -> None:
    assert run(PROGRAMS / "regear").stdout.startswith(readme_block("examples/regear"))
