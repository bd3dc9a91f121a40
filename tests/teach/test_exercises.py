# SPDX-License-Identifier: MIT
"""Exercises: ten thousand that a class can be asked, solved a second way; slips worked out by hand; the printed sheet."""

from __future__ import annotations

import csv
import hashlib
import importlib.util
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any, Literal

import html5lib
import layshaft as ls
import pytest
from layshaft import exercises

spec = importlib.util.spec_from_file_location("exercise_solver", Path(__file__).with_name("exercise_solver.py"))
assert spec and spec.loader
solver = importlib.util.module_from_spec(spec)
spec.loader.exec_module(solver)
rounding, significant, solved = solver.rounding, solver.significant, solver.solved

ROOT = Path(__file__).resolve().parents[2]
REFERENCE = ROOT / "tests" / "reference"
SEEDS = 720  # of each of the fourteen topics, 10,080 in all
CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")

# What a machine of these kinds does, and a class has an idea of: the least and the most, in the asked unit.
SENSIBLE = {
    "gear ratio": (0.3, 6), "overall ratio": (4, 60), "rollout": (1600, 2300), "engine turns": (140, 25000),
    "road speed": (6, 130), "engine speed": (30, 11000), "thrust": (15, 4500), "hill": (2, 30),
    "top speed by revs": (50, 240), "chain length": (80, 140), "axle position": (400, 670), "chain pull": (250, 7000),
    "tooth contacts": (130, 3000), "speedometer": (7, 130),
}  # fmt: skip


def number(exercise: exercises.Exercise, value: exercises.Answer) -> float:
    return float(value / exercise.unit_quantity)  # type: ignore[operator]


def written(exercise: exercises.Exercise, value: exercises.Answer) -> str:
    """What a learner writes who worked out this value: the asked digits with the asked unit."""
    if isinstance(exercise.answer, int):
        return f"{value} links" if isinstance(value, int) else f"{value:.1f} links"
    return f"{significant(number(exercise, value), exercise.digits)!r} {exercise.unit}"


# --- Ten thousand in a row -------------------------------------------------------------------------------------------


def is_solvable_and_unambiguous(one: exercises.Exercise) -> None:
    right = number(one, one.answer)
    assert solved(one) == pytest.approx(right, rel=1e-9)
    # Another cut of the way into steps, and a learner who rounds on it.
    assert significant(solved(one, rounding(one.digits + 1)), one.digits) == significant(right, one.digits)
    low, high = SENSIBLE[one.topic]
    assert low <= right <= high


def tells_what_it_uses(one: exercises.Exercise) -> None:
    told = re.findall(r"\d+(?:\.\d+)?", one.question.replace("m/s2", ""))
    assert set(told) == {str(given.value) for given in one.given}
    assert all(given.shown in one.question for given in one.given)


def tells_slips_apart(one: exercises.Exercise) -> None:
    assert one.check(one.shown).kind == "right"
    assert len(one.slips) >= 2
    for slip in one.slips:
        verdict = one.check(written(one, slip.value))
        assert (verdict.kind, verdict.slip) == ("slip", slip)
        assert slip.what in verdict.message


@pytest.mark.parametrize(
    "seeds",
    [range(SEEDS // 10), pytest.param(range(SEEDS // 10, SEEDS), marks=pytest.mark.long)],
    ids=lambda seeds: f"{seeds.start}-{seeds.stop}",
)
@pytest.mark.parametrize("topic", exercises.TOPICS)
def test_ten_thousand_are_solvable_unambiguous_and_sensible(topic: str, seeds: range) -> None:
    for seed in seeds:
        one = exercises.exercise(topic, seed)
        try:
            is_solvable_and_unambiguous(one)
            tells_what_it_uses(one)
            tells_slips_apart(one)
        except AssertionError as error:
            raise AssertionError(f"{topic}, seed {seed}: {one.question} -> {one.shown}") from error


@pytest.mark.parametrize("topic", exercises.TOPICS)
def test_the_question_tells_every_number_that_the_working_starts_from(topic: str) -> None:
    said_in_words = {
        "primary": 1.0, "gear 1": 1.0,  # "there are no other gears"
        "tape error": 0 * ls.mm, "slack": 0 * ls.mm,  # as read; "slack is set afterwards"
        "reading error": 0.0, "true reading error": 0.0,  # "told the truth"
        "distance": ls.km, "height factor": 1.0,  # "in a kilometre"; "nominally"
        "rolling factor": 0.98,  # told as per cent less
        "quadratic resistance": 0 * ls.kg_per_m,  # "the air is left out"
    }  # fmt: skip
    bears_not = {"roller diameter"}  # only on how near the sprockets may stand, which is far nearer than they do
    for seed in range(40):
        one = exercises.exercise(topic, seed)
        plain = {float(given.value) for given in one.given} | {
            given.value / 100 for given in one.given if given.unit == "%"
        }
        for step in one.working.steps:
            name, value = step.name.split(",")[0], step.result
            if step.kind not in ("given", "looked up") or name in bears_not or said_in_words.get(name) == value:
                continue
            if isinstance(value, int | float):
                assert value in plain, (seed, step.name, value)
                continue
            same = [given for given in one.given if _same(given, value)]
            assert same, (seed, step.name, value)


def _same(given: exercises.Given, value: object) -> bool:
    try:
        told = type(value)(given.shown if given.unit else f"{given.value} mm")  # type: ignore[call-arg]
    except (ls.Error, TypeError):
        return False
    return abs(told - value) <= 1e-12 * abs(told)  # type: ignore[operator]


def test_speeds_and_revs_lie_within_what_the_machine_does() -> None:
    for topic in ("thrust", "hill"):
        for seed in range(100):
            one = exercises.exercise(topic, seed)
            told = {given.name: given.shown for given in one.given}
            turning = next(step.result for step in one.working.steps if step.name == "engine speed")
            assert ls.AngularSpeed(told["lowest"]) < turning < ls.AngularSpeed(told["limit"])
            if "crank gives" in one.question:
                assert ls.Torque(told["torque"]) * turning <= 300 * ls.W  # what legs keep up for a while


def test_gravity_is_that_of_the_library() -> None:
    one = exercises.exercise("hill", 0)
    assert {given.name: given.value for given in one.given}["gravity"] * ls.mps2 == next(
        step.result for step in one.working.steps if step.name == "gravity"
    )


# --- The same everywhere ---------------------------------------------------------------------------------------------

_FINGERPRINT = """
import hashlib
from layshaft import exercises
made = [exercises.exercise(topic, seed) for topic in exercises.TOPICS for seed in (0, 1, "a word", -7)]
text = "\\n".join(f"{one.question} {one.shown} {[slip.name for slip in one.slips]}" for one in made)
text += exercises.sheet(exercises.TOPICS, 3).html()
print(hashlib.sha256(text.encode()).hexdigest())
"""


def test_the_same_seed_gives_the_same_exercise_whatever_python_hashes() -> None:
    prints = set()
    for seed in ("0", "1", "4242"):
        environment = os.environ | {"PYTHONHASHSEED": seed}
        done = subprocess.run(
            [sys.executable, "-c", _FINGERPRINT], env=environment, capture_output=True, text=True, check=True
        )
        prints.add(done.stdout)
    assert len(prints) == 1


def test_some_questions_are_pinned() -> None:
    # A change here changes every sheet that was handed out: change it on purpose only.
    pinned = {
        ("gear ratio", 2): "678292f2a25def97",
        ("road speed", 2): "9ff18e86d74eb7d5",
        ("hill", "class B"): "5ff355fff776480e",
    }
    for (topic, seed), digest in pinned.items():
        question = exercises.exercise(topic, seed).question
        assert hashlib.sha256(question.encode()).hexdigest()[:16] == digest, question


def test_seeds_and_topics_are_checked() -> None:
    assert exercises.exercise("hill", 5).question == exercises.exercise("hill", "5").question
    assert len({exercises.exercise("hill", seed).question for seed in range(50)}) == 50
    with pytest.raises(ValueError, match="topic 'weather' is unknown; expected one of 'gear ratio'"):
        exercises.exercise("weather", 1)
    with pytest.raises(TypeError, match="seed is a float; expected an int or a str"):
        exercises.exercise("hill", 1.5)  # type: ignore[arg-type]


# --- Out of books ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("example", exercises.BOOK, ids=lambda example: f"{example.topic}, {example.seed}")
def test_textbook_examples_have_the_books_answer(example: exercises.BookExample) -> None:
    one = exercises.exercise(example.topic, example.seed)
    assert one.source == example.source
    assert significant(number(one, one.answer), one.digits) == significant(example.printed, one.digits)
    assert solved(one) == pytest.approx(number(one, one.answer), rel=1e-9)
    assert one.check(f"{example.printed} {one.unit}").kind == "right"
    tells_slips_apart(one)


def test_what_the_books_print_is_what_the_reference_tables_have() -> None:
    rows = {}
    for name in ("chain_worked_examples", "road_worked_examples"):
        with (REFERENCE / f"{name}.csv").open(encoding="utf-8") as file:
            rows |= {row["id"]: row["printed"] for row in csv.DictReader(file)}
    printed = [example.printed for example in exercises.BOOK]
    chain = [float(rows["B14.3a"].split("->")[1]), float(rows["B14.4c"].split("->")[1]), float(rows["B14.3b"])]
    ratios = [float(part) for part in rows["TB25"].split(";")]
    car = [float(found) for found in re.findall(r"=([\d.]+)", rows["TB01"])]
    assert printed == [*chain, *ratios, *car]


# --- Slips, worked out by hand ---------------------------------------------------------------------------------------

# Topic, seed, what its question tells, what a learner wrote, and the slip that it comes of.
BY_HAND = [
    # 45 teeth in front, 19 behind: right is 19/45.
    ("gear ratio", 2, "45 19", "2.37", "inverted ratio"),  # 45/19 = 2.368
    ("gear ratio", 2, "45 19", "26", "teeth subtracted"),  # 45 - 19
    ("gear ratio", 2, "45 19", "0.297", "share of all teeth"),  # 19/64
    # 77/27 = 2.852, 27/20 = 1.35, 44/16 = 2.75: right is their product.
    ("overall ratio", 2, "16 44 27 77 20 27", "3.71", "primary left out"),  # 1.35 x 2.75 = 3.7125
    ("overall ratio", 2, "16 44 27 77 20 27", "7.84", "gear left out"),  # 2.852 x 2.75
    ("overall ratio", 2, "16 44 27 77 20 27", "5.81", "gear inverted"),  # 2.852 x 2.75 x 20/27
    ("overall ratio", 2, "16 44 27 77 20 27", "6.95", "ratios added"),  # 2.852 + 1.35 + 2.75
    ("overall ratio", 2, "16 44 27 77 20 27", "2.35", "teeth added"),  # (77 + 27 + 44)/(27 + 20 + 16) = 148/63
    # 130/70 on 457 mm, 2 % less: 91 mm high, 639 mm across.
    ("rollout", 2, "130 70 18 2 457", "1687 mm", "one section height"),  # 3.1416 x 548 x 0.98
    ("rollout", 2, "130 70 18 2 457", "1407 mm", "tyre left out"),  # 3.1416 x 457 x 0.98
    ("rollout", 2, "130 70 18 2 457", "2207 mm", "width for height"),  # 3.1416 x (457 + 2 x 130) x 0.98
    ("rollout", 2, "130 70 18 2 457", "98.37 cm", "radius for diameter"),  # 3.1416 x 319.5 x 0.98 = 983.7 mm
    ("rollout", 2, "130 70 18 2 457", "626.2 mm", "stopped at the diameter"),  # 639 x 0.98
    ("rollout", 2, "130 70 18 2 457", "2007 mm", "load left out"),  # 3.1416 x 639
    ("rollout", 2, "130 70 18 2 457", "2048 mm", "rolls more"),  # 3.1416 x 639 x 1.02
    # 12.87 m in 6 turns.
    ("rollout", 7, "12.87 6", "1839 mm", "a turn too many"),  # 12870/7
    ("rollout", 7, "12.87 6", "2574 mm", "a turn too few"),  # 12870/5
    ("rollout", 7, "12.87 6", "12.87 m", "not divided"),
    ("rollout", 7, "12.87 6", "6739 mm", "diameter for circumference"),  # 2145 x 3.1416
    # 1000/1.97 = 507.6 turns of the wheel.
    ("engine turns", 2, "38 22 1970", "508", "final drive left out"),
    ("engine turns", 2, "38 22 1970", "877", "sprockets swapped"),  # 507.6 x 38/22
    # 6900 rpm x 1.89 m is 13041 m a minute, 782.5 km/h; the overall ratio is 2.88 x 1.1364 x 2.3529 = 7.7005.
    ("road speed", 2, "17 40 25 72 22 25 6900 1890", "293 km/h", "primary left out"),  # 101.6 x 2.88
    ("road speed", 2, "17 40 25 72 22 25 6900 1890", "782 km/h", "ratio left out"),
    ("road speed", 2, "17 40 25 72 22 25 6900 1890", "638 km/h", "radius for circumference"),  # 101.6 x 6.283
    ("road speed", 2, "17 40 25 72 22 25 6900 1890", "63.1 km/h", "miles for kilometres"),  # 101.6/1.609
    ("road speed", 2, "17 40 25 72 22 25 6900 1890", "28.2 km/h", "seconds for hours"),  # 101.6/3.6
    ("road speed", 2, "17 40 25 72 22 25 6900 1890", "1694 km/h", "minutes for hours"),  # 13041/7.7005
    ("road speed", 2, "17 40 25 72 22 25 6900 1890", "6100", "minutes for seconds"),  # 101.6 x 60
    # 22000/60/2.1 = 174.6 turns of the wheel a minute.
    ("engine speed", 2, "37 16 22 2100", "175 rpm", "final drive left out"),
    ("engine speed", 2, "37 16 22 2100", "404 rpm", "sprockets swapped"),  # 174.6 x 37/16
    ("engine speed", 2, "37 16 22 2100", "1.26 rpm", "seconds for minutes"),  # 174.6 x 16/37/60
    # 29 Nm x 21.407 x 0.88 = 546.3 Nm at the wheel, whose radius is 0.3024 m.
    ("thrust", 2, "35 29 2500 9500 1900 88 16 45 25 72 14 37", "288 N", "circumference for radius"),  # 546.3/1.9
    ("thrust", 2, "35 29 2500 9500 1900 88 16 45 25 72 14 37", "575 N", "circumference for diameter"),  # 546.3/0.95
    ("thrust", 2, "35 29 2500 9500 1900 88 16 45 25 72 14 37", "0.903 kN", "diameter for radius"),  # 546.3/0.6048
    ("thrust", 2, "35 29 2500 9500 1900 88 16 45 25 72 14 37", "2050 N", "losses left out"),  # 29 x 21.407/0.3024
    ("thrust", 2, "35 29 2500 9500 1900 88 16 45 25 72 14 37", "2333 N", "losses added"),  # 2053/0.88
    ("thrust", 2, "35 29 2500 9500 1900 88 16 45 25 72 14 37", "184 N", "kilograms for newtons"),  # 1806.6/9.80665
    # 50 x 4.833 x 0.9 = 217.5 Nm over 0.3247 m is 669.9 N, less 30 N is 639.9 N, of 175 x 9.80665 = 1716.2 N.
    ("hill", 2, "20 50 300 3000 2040 90 12 58 175 30 9.80665", "20 deg", "tangent for sine"),  # arctan 0.3729
    ("hill", 2, "20 50 300 3000 2040 90 12 58 175 30 9.80665", "10 deg", "diameter for radius"),  # arcsin(304.9/1716.2)
    ("hill", 2, "20 50 300 3000 2040 90 12 58 175 30 9.80665", "40 deg", "per cent for degrees"),  # 100 tan 21.97
    # 38 x 19/41 x 0.94 = 16.55 Nm over 0.3151 m is 52.53 N, of 1176.8 N.
    ("hill", 4, "14 38 30 120 1980 94 41 19 120 5 9.80665", "2.6 deg", "rolling left out"),  # arcsin 0.04464
    # 9500 x 1.96 x 0.06 = 1117.2 km/h over the ratio.
    ("top speed by revs", 2, None, "56.0 km/h", "first for top gear"),  # 1117.2/(2.88 x 34/13 x 45/17 = 19.94)
    ("top speed by revs", 2, None, "147 km/h", "a gear too low"),  # 1117.2/(2.88 x 25/25 x 45/17 = 7.624)
    ("top speed by revs", 2, None, "103 km/h", "miles for kilometres"),  # 165.7/1.609
    # 2 x 635/15.875 = 80, and 29.5 for the teeth, and 0.7 since the sprockets differ: 110.2.
    ("chain length", 2, "15.875 13 46 635", "80 links", "teeth left out"),
    ("chain length", 2, "15.875 13 46 635", "110", "rounded down"),
    ("chain length", 2, "15.875 13 46 635", "111", "odd"),
    ("chain length", 2, "15.875 13 46 635", "110.2", "not rounded"),
    ("chain length", 2, "15.875 13 46 635", "72", "one run"),  # 110.2 - 40 = 70.2
    ("chain length", 2, "15.875 13 46 635", "140", "teeth not halved"),  # 110.2 + 29.5 = 139.7
    ("chain length", 2, "15.875 13 46 635", "104", "one sprocket"),  # 80 + 23 = 103
    ("axle position", 2, "126 12.7 14 57", "800 mm", "teeth left out"),  # 63 x 12.7 = 800.1
    ("axle position", 2, "126 12.7 14 57", "1136 mm", "both runs"),  # 2 x 568
    ("axle position", 2, "126 12.7 14 57", "575 mm", "one size of sprocket"),  # (126 - 35.5) x 6.35 = 574.7
    ("axle position", 2, "126 12.7 14 57", "349 mm", "teeth not halved"),  # (126 - 71) x 6.35 = 349.3
    ("axle position", 2, "126 12.7 14 57", "619 mm", "one sprocket"),  # (126 - 28.5) x 6.35 = 619.1
    # 12.7/sin(180/46) = 186.1 mm across.
    ("chain pull", 2, "32 12.7 46 17", "172 N", "diameter for radius"),  # 32/0.1861
    ("chain pull", 2, "32 12.7 46 17", "926 N", "rear for front"),  # 2 x 32/0.06912
    ("chain pull", 0, "50 15.875 12 50", "1650 N", "corners cut"),  # 100 x 3.1416/(12 x 0.015875) = 1649
    # 1000/2.01 = 497.5 turns of the wheel.
    ("tooth contacts", 2, "39 18 2010", "498", "rear for front"),
    ("tooth contacts", 2, "39 18 2010", "1078", "sprockets swapped"),  # 497.5 x 39/18
    ("tooth contacts", 2, "39 18 2010", "8960", "all teeth"),  # 497.5 x 18 = 8955
    ("tooth contacts", 2, "39 18 2010", "0.230", "metres for kilometres"),  # 18/39/2.01 = 0.2296
    # 95 x 2100/1990 = 100.25 is right; the change is 5.53 %.
    ("speedometer", 2, "95 2100 1990", "90.0 km/h", "before and after swapped"),  # 95 x 1990/2100
    ("speedometer", 2, "95 2100 1990", "95 km/h", "unchanged"),
    ("speedometer", 2, "95 2100 1990", "89.7 km/h", "per cent the wrong way"),  # 95 x 0.9447 = 89.75
    ("speedometer", 2, "95 2100 1990", "106 km/h", "change twice"),  # 100.25 x 1.0553 = 105.8
]


@pytest.mark.parametrize(("topic", "seed", "told", "answer", "name"), BY_HAND)
def test_a_slip_made_by_hand_is_named(topic: str, seed: int, told: str | None, answer: str, name: str) -> None:
    one = exercises.exercise(topic, seed)
    if told is not None:
        assert sorted(told.split()) == sorted(str(given.value) for given in one.given)
    verdict = one.check(answer)
    assert verdict.kind == "slip" and verdict.slip is not None
    assert verdict.slip.name == name
    assert verdict.slip.what in verdict.message


def test_every_slip_is_made_by_hand_and_every_topic_has_two() -> None:
    assert {row[4] for row in BY_HAND} == {
        slip.name for topic in exercises.TOPICS for seed in range(60) for slip in exercises.exercise(topic, seed).slips
    }
    assert all(sum(row[0] == topic for row in BY_HAND) >= 2 for topic in exercises.TOPICS)


# --- The checker -----------------------------------------------------------------------------------------------------

# 101.611 km/h to three digits, which is 28.225 m/s and 63.138 mph.
ROAD_SPEED = {
    "right": ["102 km/h", "102", "101.6", "101,6 km/h", "v = 102 km/h", "102kmh", "102 KM/H", "28.2 m/s", "63.1 mph", "\u2248102"],
    "right but for rounding": ["100 km/h", "103", "103.6", "99.6", "28 m/s", "1e2 km/h"],
    "right but for units": ["28.2", "63.1", "102 mph", "102 m/s", "102 kg", "102 bananas"],
    "slip": ["28.2 km/h", "63.1 km/h", "782", "115 km/h"],
    "wrong": ["103.7", "99.5", "90 km/h", "0", "-102 km/h", "12345 km/h", "12,345", "17 m/s"],
    "not understood": ["", "   ", "fast", "km/h", "nan", "inf km/h", "1e400", "9" * 300, "102 or 103", "1.2.3", "--5", "\x00", "999999999999999 km/h"],
}  # fmt: skip


@pytest.mark.parametrize(
    ("kind", "answer"), [(kind, answer) for kind, answers in ROAD_SPEED.items() for answer in answers]
)
def test_the_checker_reads_units_rounding_and_nonsense(kind: str, answer: str) -> None:
    verdict = exercises.exercise("road speed", 2).check(answer)
    assert verdict.kind == kind, verdict.message
    assert (verdict.slip is not None) == (kind == "slip")
    assert verdict.message and len(verdict.message) < 300 and "\n" not in verdict.message


@pytest.mark.parametrize(
    ("topic", "answer", "kind"),
    [
        ("gear ratio", "0.422", "right"),
        ("gear ratio", "19/45", "right"),
        ("gear ratio", "19 : 45", "right"),
        ("gear ratio", "0,4222", "right"),
        ("gear ratio", "45/19", "slip"),
        ("gear ratio", "19/0", "not understood"),
        ("gear ratio", "0.422 m", "right but for units"),
        ("thrust", "1,807 N", "right"),  # thousands
        ("thrust", "1 807 N", "right"),
        ("thrust", "1.807,0 N", "right"),
        ("thrust", "1.81 kN", "right"),
        ("thrust", "406 lbf", "right"),
        ("thrust", "1.81", "right but for units"),
        ("rollout", "1967", "right"),
        ("rollout", "196.7 cm", "right"),
        ("rollout", "1.967 m", "right"),
        ("rollout", "1.967", "right but for units"),
        ("rollout", "77.45 in", "right"),
        ("rollout", "0.001967 km", "right"),
        ("engine speed", "7.907 rad/s", "right"),
        ("engine speed", "1.26 1/s", "right"),
        ("engine speed", "1.26", "right but for units"),
        ("engine speed", "75.5 1/min", "right"),
        ("hill", "22\u00b0", "right"),
        ("hill", "40 %", "right"),
        ("hill", "40", "right but for units"),
        ("hill", "0.38 rad", "right"),
        ("chain length", "112", "right"),
        ("chain length", "112 links", "right"),
        ("chain length", "112.0", "right"),
        ("chain length", "113", "wrong"),  # two per cent are nothing where links are counted
        ("chain length", "112.4", "wrong"),
        ("chain length", "110.2", "slip"),
    ],
)
def test_the_checker_knows_each_kind_of_answer(topic: str, answer: str, kind: str) -> None:
    verdict = exercises.exercise(topic, 2).check(answer)
    assert verdict.kind == kind, verdict.message


def test_what_is_wrong_is_never_told_the_answer() -> None:
    for topic in exercises.TOPICS:
        one = exercises.exercise(topic, 11)
        shown = one.shown.split()[0]
        for factor in (0.37, 0.9, 1.13, 2.9):
            verdict = one.check(f"{number(one, one.answer) * factor:.5g} {one.unit}")
            assert not re.search(rf"(?<![\d.]){re.escape(shown)}(?![\d.])", verdict.message), verdict
            if verdict.kind == "wrong":
                assert ("too low" if factor < 1 else "too high") in verdict.message


def test_an_answer_is_text() -> None:
    with pytest.raises(TypeError, match="text is a float; expected a str such as"):
        exercises.exercise("hill", 1).check(17.0)  # type: ignore[arg-type]


# --- Solutions -------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("topic", exercises.TOPICS)
def test_the_worked_solution_comes_in_four_forms(topic: str) -> None:
    one = exercises.exercise(topic, 4)
    result = one.working.result.result
    assert one.answer == (result.nominal if isinstance(result, ls.Band) else result)
    for form in ("text", "markdown", "latex", "html"):
        solution = one.solution(form)  # type: ignore[arg-type]
        assert one.shown in solution
        assert (one.working.steps[-1].symbol[0] in solution) and len(solution) > 200
    page = f"<!DOCTYPE html><html><head><title>t</title></head><body>{one.solution('html')}</body></html>"
    html5lib.HTMLParser(strict=True).parse(page)
    with pytest.raises(ValueError, match="form 'pdf' is unknown; expected one of 'text', 'markdown', 'latex', 'html'"):
        one.solution("pdf")  # type: ignore[arg-type]


def test_the_worked_solution_speaks_us_units_as_well() -> None:
    one = exercises.exercise("road speed", 4)
    assert "mph" in one.solution("text", "us") and "mph" not in one.solution("text")


# --- The sheet -------------------------------------------------------------------------------------------------------


def test_a_sheet_takes_every_topic_once_before_any_comes_again() -> None:
    sheet = exercises.sheet(exercises.TOPICS, 1, count=20)
    topics = [one.topic for one in sheet.exercises]
    assert sorted(topics[:14]) == sorted(exercises.TOPICS) and len(set(topics[14:])) == 6
    assert len({one.question for one in sheet.exercises}) == 20
    assert exercises.sheet(exercises.TOPICS, 1) == exercises.sheet(list(exercises.TOPICS), 1)
    assert exercises.sheet(exercises.TOPICS, 2).questions() != exercises.sheet(exercises.TOPICS, 1).questions()
    assert len({one.question for one in exercises.sheet("gear ratio", 1, count=100).exercises}) == 100


def test_a_sheet_says_what_it_cannot_make() -> None:
    with pytest.raises(ValueError, match="no topics; expected some of 'gear ratio'"):
        exercises.sheet([], 1)
    with pytest.raises(ValueError, match="topic 'weather' is unknown"):
        exercises.sheet(["hill", "weather"], 1)
    for count in (0, 101, 2.5, True):
        with pytest.raises(ValueError, match="expected a whole number from 1 to 100"):
            exercises.sheet("hill", 1, count)  # type: ignore[arg-type]


@pytest.mark.parametrize("form", ["text", "markdown"])
def test_questions_and_answers_as_text(form: Literal["text", "markdown"]) -> None:
    sheet = exercises.sheet(exercises.TOPICS, 5)
    questions, answers = sheet.questions(form), sheet.answers(form)
    for count, one in enumerate(sheet.exercises, 1):
        assert f"\n{count}. " in questions and f"\n{count}. " in answers
        assert one.shown in answers and one.question[:40] in questions
    assert exercises.CAUTION in questions and exercises.CAUTION in answers
    marked = exercises.sheet("hill", "x\n# y <b>*z*", 1).questions(form)
    assert "\n# y" not in marked and (form == "text" or "\\<b\\>\\*z\\*" in marked)


@pytest.mark.parametrize("worked", [False, True])
def test_the_page_is_strict_html_that_needs_nothing_else(worked: bool) -> None:
    sheet = exercises.sheet(exercises.TOPICS, 6, count=14)
    text = sheet.html(worked=worked)
    page = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(text)
    names = {element.tag for element in page.iter() if isinstance(element.tag, str)}
    assert not names & {"script", "link", "img", "iframe", "object"}
    assert "http" not in text.replace("http://www.w3.org/1998/Math/MathML", "")
    said = " ".join("".join(page.itertext()).replace("\u00a0", " ").split())
    assert all(one.question in said and one.shown in said for one in sheet.exercises)
    assert said.count(exercises.CAUTION) == 2
    solutions = [element for element in page.iter("details") if element.get("class") == "solution"]
    assert len(solutions) == 14 and all(("open" in element.attrib) == worked for element in solutions)


def test_what_a_user_gives_is_escaped() -> None:
    nasty = "<script>alert('1')</script>\"'&\x01</title></style>"
    sheet = exercises.sheet("rollout", nasty, 1, title=nasty)
    text = sheet.html()
    page = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(text)
    assert "<script" not in text and not list(page.iter("script"))
    assert "<script>alert('1')</script>" in "".join(page.find("body/main/header/h1").itertext())
    verdict = sheet.exercises[0].check(nasty)
    assert verdict.kind == "not understood"


def test_the_page_is_written_where_it_is_asked_for(tmp_path: Path) -> None:
    sheet = exercises.sheet("hill", 1, 2)
    path = sheet.write(tmp_path / "new" / "sheet.html")
    assert path.read_text(encoding="utf-8") == sheet.html()


def test_the_example_writes_a_sheet_with_answers(tmp_path: Path) -> None:
    command = [sys.executable, "examples/exercise_sheet.py", "--sheet", "9", "--pages", str(tmp_path)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True)
    assert "10 exercises" in done.stdout and ": right\n" in done.stdout and ": slip\n" in done.stdout
    page, text = (tmp_path / f"exercise_sheet.{ending}" for ending in ("html", "md"))
    assert page.read_text(encoding="utf-8") == exercises.sheet(exercises.TOPICS, "9").html()
    assert text.read_text(encoding="utf-8").count("sheet 9") == 2
    wrong = subprocess.run([*command, "--topics", "weather"], cwd=ROOT, capture_output=True, text=True, check=False)
    assert wrong.returncode != 0 and "topic 'weather' is unknown" in wrong.stderr and "Traceback" not in wrong.stderr


def pages(text: str, folder: Path) -> int:
    """How many sheets of paper the page takes."""
    (folder / "page.html").write_text(text, encoding="utf-8")
    options = [
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--no-pdf-header-footer",
        f"--user-data-dir={folder / 'user'}",
    ]
    subprocess.run(
        [str(CHROMIUM), *options, f"--print-to-pdf={folder / 'page.pdf'}", (folder / "page.html").as_uri()],
        capture_output=True, check=True, timeout=120,
    )  # fmt: skip
    return len(re.findall(rb"/Type\s*/Page\b", (folder / "page.pdf").read_bytes()))


@pytest.mark.skipif(CHROMIUM is None, reason="no chromium to print with")
def test_printed_answers_begin_on_a_page_of_their_own(tmp_path: Path) -> None:
    text = exercises.sheet("gear ratio", 1, count=1).html()
    for paper in ("A4", "letter"):
        assert pages(text.replace("@page {", f"@page {{ size: {paper};"), tmp_path) == 2
    assert pages(text.replace("break-before: page;", ""), tmp_path) == 1  # so it is the rule that does it


# --- A teacher's own question ----------------------------------------------------------------------------------------


def rolling() -> ls.Working:
    return ls.TyreSize("120/90-18").explain("circumference")


def test_an_own_question_is_answered_by_its_working() -> None:
    """By hand: (457 + 2 x 108) mm x pi x 0.98 = 2072.0 mm, and half of it for whoever takes the radius."""
    half = exercises.Slip("radius for diameter", ls.Length("1036 mm"), "pi goes with the diameter")
    one = exercises.question(
        "How far does it roll?", rolling(), unit="mm", slips=[half], hint="Rim first.", topic="way"
    )
    assert one.shown == "2070 mm" and one.question.endswith("Answer in mm to three significant digits.")
    assert one.check("2.07 m").kind == "right" and one.check("2072").kind == "right"
    assert one.check("1036 mm").slip == half and "pi goes with the diameter" in str(one.check("1036 mm"))
    assert str(one.check("7 mm")) == "7 mm is too low for the way asked for; expected a number in mm. Rim first."
    assert one.solution().rstrip().endswith("As asked: 2070 mm")


def test_an_own_question_may_ask_for_a_number_or_a_count() -> None:
    machine = ls.Machine.from_json((ROOT / "examples/machines/trail_bike.json").read_text(encoding="utf-8"))
    ratio = exercises.question("How many turns?", ls.explain(machine, machine.stock, "overall ratio", gear=3), unit="")
    assert ratio.shown == "16.0" and ratio.check("15.96").kind == "right"  # 71/23 * 28/20 * 48/13 = 15.957
    links = exercises.question("How many links?", ls.explain(machine, machine.stock, "links"), unit="links")
    assert links.shown == "110 links" and links.check("109").kind == "wrong"


@pytest.mark.parametrize(
    ("changed", "sentence"),
    [
        ({"unit": "km/h"}, "unit 'km/h' is none of the working's result; expected one of 'mm', 'cm', 'm', 'in'"),
        ({"digits": 0}, "digits is 0; expected a whole number from 1 to 5"),
        ({"slips": [exercises.Slip("same", ls.Length("2.072 m"), "")]}, "the slip 'same' comes to 2072 mm"),
        ({"slips": [exercises.Slip("none", ls.Length("0 m"), "")]}, "the slip 'none' comes to 0 mm"),
    ],
)
def test_an_own_question_says_what_it_cannot_ask(changed: dict[str, Any], sentence: str) -> None:
    with pytest.raises(ValueError, match=re.escape(sentence)):
        exercises.question("How far does it roll?", rolling(), **({"unit": "mm"} | changed))


def test_a_notebook_shows_the_question_and_folds_the_answer_away() -> None:
    one = exercises.question("Is <b> safe?", rolling(), unit="mm")
    shown = one._repr_html_()
    fragment = html5lib.HTMLParser(strict=True).parseFragment(shown)
    assert "&lt;b&gt;" in shown and "<summary>hint" not in shown
    assert shown.index("<details>") < shown.index("2070\u00a0mm") and fragment is not None
