# SPDX-License-Identifier: MIT
"""Exercises for a class: a question out of a rider's life, its answer, the worked solution, and what often goes wrong.

An exercise is made from a topic and a seed, and is the same wherever it is made. The machine in it is valid, the
working is that of the code that computes, and each slip is the wrong formula worked out with the same numbers.

>>> from layshaft import exercises
>>> one = exercises.exercise("road speed", 7)
>>> one.check(f"{one.answer / one.unit_quantity:.3f} {one.unit}").kind
'right'
>>> exercises.sheet(("gear ratio", "road speed"), 7, count=4).html().startswith("<!DOCTYPE html>")
True
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from os import PathLike
from pathlib import Path
from typing import Any, Final, Literal, TypeAlias, TypeVar

from . import _core as ls
from ._escape import called, in_short
from ._escape import html as _text
from ._escape import markdown as _markdown
from ._exercise_topics import BOOK, BOOK_MAKERS, MAKERS, SLIPS, Answer, BookExample, Draft, Draw, Given, Slip, grade

__all__ = [
    "BOOK",
    "CAUTION",
    "TOPICS",
    "BookExample",
    "Exercise",
    "Given",
    "Sheet",
    "Slip",
    "Verdict",
    "exercise",
    "question",
    "sheet",
]

Seed: TypeAlias = int | str
_Item = TypeVar("_Item")

CAUTION: Final = (
    "These are classroom figures for invented machines. On a real one the maker's manual comes first, and a wrong "
    "chain, tyre or sprocket can throw a rider."
)
TOPICS: Final = tuple(MAKERS)
_LONGEST_TEXT: Final = 200
_LARGEST: Final = 1e12
_NEAR: Final = 0.02  # what still counts as right but for rounding
_MOST_TRIES: Final = 1000
_TENTH: Final = 0.051  # how near to links that are no whole number an answer to one decimal lies


# --- What an exercise is ---------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Verdict:
    """What the checker says of a learner's answer."""

    kind: Literal["right", "right but for rounding", "right but for units", "slip", "wrong", "not understood"]
    slip: Slip | None
    message: str

    def __str__(self) -> str:
        return self.message


@dataclass(frozen=True)
class Exercise:
    """A question with its answer and all that belongs to it. `exercise` makes it."""

    topic: str
    seed: Seed
    question: str
    given: tuple[Given, ...]
    answer: Answer
    unit: str
    digits: int
    working: ls.Working
    slips: tuple[Slip, ...]
    hint: str
    source: str
    _play: float = field(repr=False)  # what rounding in between can do to the answer, in the asked unit

    @property
    def unit_quantity(self) -> Any:
        """The asked unit as a quantity, or 1.0 where a plain number is asked for."""
        return _UNITS[self.unit]

    @property
    def shown(self) -> str:
        """The answer to the digits that are asked for, with its unit."""
        return _shown(self, self.answer)

    def solution(
        self,
        form: Literal["text", "markdown", "latex", "html"] = "text",
        units: Literal["metric", "us"] = "metric",
    ) -> str:
        """The worked solution, step by step, ended by the answer as it was asked for."""
        made = {
            "text": lambda: f"{self.working.to_text(units=units)}\nAs asked: {self.shown}\n",
            "markdown": lambda: f"{self.working.to_markdown(units=units)}\n**As asked: {_markdown(self.shown)}**\n",
            "latex": lambda: f"{self.working.to_latex(units=units)}\n\\par As asked: {self.shown}\n",
            "html": lambda: f"{self.working.to_html(units=units)}\n<p>As asked: {_text(self.shown)}</p>\n",
        }
        return _one_of("form", form, made)()

    def check(self, text: str) -> Verdict:
        """Says whether a learner's answer is right, and if not, which known slip leads to it.

        A bare number counts as given in the asked unit. A comma may be the decimal sign or part thousands.
        """
        if not isinstance(text, str):
            raise TypeError(f"check: text is {called(type(text))}; expected a str such as '12.5 {self.unit}'")
        if len(text) > _LONGEST_TEXT:
            return _not_understood(self, f"an answer of {len(text)} characters")
        verdicts = [_judge(self, reading) for reading in _readings(text)]
        return min(verdicts, key=lambda verdict: _RANKS.index(verdict.kind))

    def _repr_html_(self) -> str:
        """In a notebook: the question, with hint and worked answer folded away."""
        hint = f"<details><summary>hint</summary><p>{_bound(self.hint)}</p></details>\n" if self.hint else ""
        return (
            f"<p>{_bound(self.question)}</p>\n{hint}<details><summary>answer and working</summary>\n"
            f"<p><strong>{_bound(self.shown)}</strong></p>\n{self.working.steps_to_html(fold=False)}</details>\n"
        )


# --- Units and digits ------------------------------------------------------------------------------------------------

_UNITS: Final[dict[str, Any]] = {
    "": 1.0, "links": 1.0, "mm": ls.mm, "cm": ls.cm, "m": ls.m, "in": ls.inch, "km/h": ls.kmh, "mph": ls.mph,
    "m/s": ls.mps, "rpm": ls.rpm, "rad/s": ls.radps, "turns a second": 60 * ls.rpm, "N": ls.N, "kN": ls.kN,
    "lbf": ls.lbf, "deg": ls.deg, "rad": ls.rad,
}  # fmt: skip
# what a bare number may have been meant in, if not in the asked unit
_OTHERS: Final[dict[type, tuple[str, ...]]] = {
    ls.Length: ("mm", "cm", "m", "in"),
    ls.Speed: ("km/h", "mph", "m/s"),
    ls.AngularSpeed: ("rpm", "rad/s", "turns a second"),
    ls.Force: ("N", "kN", "lbf"),
    ls.Angle: ("deg", "rad"),
}
# in which unit a learner rounds between the steps
_BETWEEN: Final[dict[type, Any]] = {
    ls.Length: ls.mm, ls.Speed: ls.kmh, ls.AngularSpeed: ls.rpm, ls.Force: ls.N, ls.Angle: ls.deg, ls.Torque: ls.Nm,
}  # fmt: skip
# a quantity's own unit, which is what a formula's evaluate() takes and gives
_OWN: Final[dict[type, Any]] = {
    ls.Length: ls.m, ls.Speed: ls.mps, ls.AngularSpeed: ls.radps, ls.Force: ls.N, ls.Angle: ls.rad, ls.Torque: ls.Nm,
    ls.Mass: ls.kg, ls.Acceleration: ls.mps2, ls.LinearDensity: ls.kg_per_m, ls.ForcePerSpeed: ls.N_per_mps,
}  # fmt: skip


def _is_count(answer: Answer) -> bool:
    return isinstance(answer, int)


def _place(value: float, digits: int) -> float:
    """The worth of the last of so many significant digits."""
    return float(10.0 ** (math.floor(math.log10(abs(value))) - digits + 1)) if value else 10.0**-digits


def _rounded(value: float, digits: int) -> float:
    return float(f"{value:.{digits - 1}e}")


def _cut(value: float, digits: int) -> float:
    """Digits beyond the last one dropped, as many pupils do."""
    place = _place(value, digits)
    return math.trunc(value / place * (1 + 1e-12)) * place


def _plain(value: float, digits: int) -> str:
    """A number to so many significant digits, never with an exponent."""
    decimals = max(0, digits - 1 - math.floor(math.log10(abs(value)))) if value else digits
    return f"{_rounded(value, digits):.{decimals}f}"


def _number(exercise: Exercise | Draft, value: Answer) -> float:
    """A value as a number in the asked unit."""
    return float(value / _UNITS[exercise.unit])


def _shown(exercise: Exercise, value: Answer) -> str:
    number = str(value) if isinstance(value, int) else _plain(_number(exercise, value), exercise.digits)
    return f"{number} {exercise.unit}".rstrip()


# --- From a draft to an exercise -------------------------------------------------------------------------------------


def _between(value: Any, digits: int, rounding: Callable[[float, int], float]) -> float:
    """What a learner carries on with who rounds to so many digits in the usual unit; in the quantity's own unit."""
    kind = type(value)
    if kind is int:
        return float(value)
    unit = _BETWEEN.get(kind, _OWN.get(kind, 1.0))
    return float(rounding(value / unit, digits) * (unit / _OWN.get(kind, 1.0)))


def _replayed(draft: Draft, rounding: Callable[[float, int], float]) -> float:
    """The answer in the asked unit as it comes out when each step on the way is rounded to one digit more."""
    steps = draft.working.steps
    asked = steps.index(draft.working.result)
    values: list[float] = []
    for at, step in enumerate(steps):
        told = step.result.nominal if isinstance(step.result, ls.Band) else step.result
        own = _OWN.get(type(told), 1.0)
        if step.kind == "computed" and step.formula is not None:
            number = step.formula.evaluate(*(values[i] for i in step.from_steps)) * own
            values.append(float(number / own) if at == asked else _between(number, draft.digits + 1, rounding))
        elif step.kind == "chosen" and isinstance(told, int):
            values.append(float(ls.round_links(values[step.from_steps[-1]])))
        elif step.kind == "chosen":
            same = [i for i in step.from_steps if _nominal(steps[i]) == told]
            values.append(values[same[0]] if same else float(told / own))
        else:
            values.append(float(told / own))
    return float(values[asked] * _OWN.get(type(draft.answer), 1.0) / _UNITS[draft.unit])


def _nominal(step: ls.Step) -> Any:
    return step.result.nominal if isinstance(step.result, ls.Band) else step.result


def _half_unit(value: float, digits: int) -> float:
    return 0.5 * _place(value, digits) * (1 + 1e-9)


def _kept_slips(draft: Draft, slips: Iterable[Slip], right: float, play: float) -> tuple[Slip, ...]:
    """Of these slips those that can be told from the right answer, from each other, and from it in another unit."""
    loose = play / abs(right)

    def reach(number: float, value: Answer) -> float:
        """How far from a number a learner may write who means it."""
        if _is_count(draft.answer):
            return 0.0 if _is_count(value) else _TENTH
        return _half_unit(number, draft.digits) + loose * abs(number)

    others = [(number, reach(number, draft.answer)) for _, number in _in_other_units(draft.answer, draft.unit)]
    kept: list[Slip] = []
    taken = [(right, reach(right, draft.answer))]
    for slip in slips:
        number = _number(draft, slip.value)
        if not math.isfinite(number) or number <= 0:
            continue
        here = reach(number, slip.value)
        is_unit = any(math.isclose(number, other, rel_tol=1e-9) for other, _ in others)
        apart = taken if is_unit else [*taken, *others]
        if all(abs(number - other) > here + there for other, there in apart):
            kept.append(slip)
            taken.append((number, here))
    return tuple(kept)


def _finished(topic: str, seed: Seed, draft: Draft) -> Exercise | None:
    """The exercise, or None where a class could be right and yet come to another number."""
    right = _number(draft, draft.answer)
    ways = [_replayed(draft, _rounded), *draft.also]
    off = draft.wandering * 10.0**-draft.digits if _rounds_between(draft) else 0.0
    near = [way * factor for way in (right, *ways) for factor in (1 - off, 1 + off)]
    if any(_rounded(way, draft.digits) != _rounded(right, draft.digits) for way in near):
        return None
    play = _play_of(draft, right, ways)
    slips = _kept_slips(draft, [Slip(name, value, SLIPS[name]) for name, value in draft.slips.items()], right, play)
    return _made(topic, seed, draft, slips, play) if len(slips) >= 2 else None


def _play_of(draft: Draft, right: float, ways: Iterable[float]) -> float:
    """How far from the answer learners come to lie who go any of these ways, or drop digits between the steps."""
    return 0.0 if _is_count(draft.answer) else max(abs(way - right) for way in (*ways, _replayed(draft, _cut)))


def _made(topic: str, seed: Seed, draft: Draft, slips: tuple[Slip, ...], play: float) -> Exercise:
    return Exercise(
        topic=topic,
        seed=seed,
        question=f"{draft.question} {_asked(draft)}",
        given=tuple(draft.given),
        answer=draft.answer,
        unit=draft.unit,
        digits=draft.digits,
        working=draft.working,
        slips=slips,
        hint=draft.hint,
        source=draft.source,
        _play=play,
    )


def _rounds_between(draft: Draft) -> bool:
    """Whether anything is worked out on the way that a learner may round."""
    return not _is_count(draft.answer) and sum(step.kind == "computed" for step in draft.working.steps) > 1


def _asked(draft: Draft) -> str:
    if _is_count(draft.answer):
        return "Answer with a whole number."
    unit = f"in {draft.unit} " if draft.unit else ""
    return f"Answer {unit}to {_COUNTS[draft.digits]} significant digits."


_COUNTS: Final = ("no", "one", "two", "three", "four", "five")


def exercise(topic: str, seed: Seed) -> Exercise:
    """The exercise of a topic and a seed: the same whenever and wherever it is made.

    :param topic: one of `TOPICS`
    :param seed: any whole number or text; the seeds of `BOOK` give a textbook's example
    """
    maker = _one_of("topic", topic, MAKERS)
    if isinstance(seed, bool) or not isinstance(seed, int | str):
        raise TypeError(f"exercise: seed is {called(type(seed))}; expected an int or a str")
    book = BOOK_MAKERS.get((topic, str(seed)))
    draw = Draw(f"{topic}:{seed}")
    for _ in range(_MOST_TRIES):
        draft = book() if book else maker(draw)
        made = _finished(topic, seed, draft) if draft else None
        if made:
            return made
    raise RuntimeError(f"exercise: no {topic} a class can be asked came of seed {seed!r} in {_MOST_TRIES} tries")


def question(
    text: str,
    working: ls.Working,
    *,
    unit: str,
    digits: int = 3,
    slips: Iterable[Slip] = (),
    hint: str = "",
    topic: str = "number",
) -> Exercise:
    """A teacher's own question: its answer is the nominal result of a working, whatever machine that is about.

    >>> import layshaft as ls
    >>> one = question("How long is a loop for 14 and 42 teeth at 600 mm, were it to close anywhere?",
    ...                ls.ChainLoop("520", front=14, rear=42).explain("links", centre="600 mm"), unit="links", digits=4)
    >>> one.check("104.1").kind
    'right'

    :param working: as an `explain` gives it
    :param unit: the asked unit; an empty text for a plain number
    :param digits: how many significant digits are asked for, 1 to 5
    :param slips: what often goes wrong, each with the number it leads to, worked out with the same machine
    :param topic: what is asked for, in a word or two, as the checker names it
    :raises ValueError: where the answer has no such unit, is not above zero, or a slip cannot be told from it
    """
    told = _nominal(working.result)
    answer = told if isinstance(told, int) else float(told) if isinstance(told, float) else told
    kind = float if isinstance(answer, int | float) else type(answer)
    if unit not in _UNITS or type(_UNITS[unit]) is not kind:
        there = [repr(name) for name, of in _UNITS.items() if type(of) is kind]
        raise ValueError(
            f"question: unit {in_short(unit)} is none of the working's result; expected "
            + (f"one of {', '.join(there)}" if there else f"a working of another kind than {kind.__name__}")
        )
    if isinstance(digits, bool) or not isinstance(digits, int) or not 1 <= digits < len(_COUNTS):
        raise ValueError(
            f"question: digits is {in_short(digits)}; expected a whole number from 1 to {len(_COUNTS) - 1}"
        )
    draft = Draft(text, [], answer, unit, digits, working, {}, hint)
    right = _number(draft, answer)
    if not right > 0:
        raise ValueError(f"question: the answer is {right:.6g} {unit}".rstrip() + "; expected a number above zero")
    play = _play_of(draft, right, [_replayed(draft, _rounded)])
    stated = tuple(slips)
    kept = _kept_slips(draft, stated, right, play)
    for slip in stated:
        if slip not in kept:
            raise ValueError(
                f"question: the slip {slip.name!r} comes to {_number(draft, slip.value):.6g} {unit}".rstrip()
                + "; expected a number above zero that is neither the answer, in whatever unit, nor another slip's"
            )
    return _made(topic, "own", draft, kept, play)


def _one_of(what: str, name: str, there: dict[str, _Item]) -> _Item:
    if not isinstance(name, str) or name not in there:
        raise ValueError(f"{what} {in_short(name)} is unknown; expected one of {', '.join(map(repr, there))}")
    return there[name]


# --- Checking an answer ----------------------------------------------------------------------------------------------

_RANKS: Final = ("right", "right but for units", "right but for rounding", "slip", "wrong", "not understood")
_ANSWER: Final = re.compile(r"([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*)", re.ASCII | re.DOTALL)
_FRACTION: Final = re.compile(r"(\d+)\s*[/:]\s*(\d+)", re.ASCII)
_LEFT_SIDE: Final = re.compile(r"\s*(?:[A-Za-z]\w*\s*)?[=~\u2248]\s*")
_THOUSANDS: Final = re.compile(r"[+-]?\d{1,3}(?:,\d{3})+(?![\d,])", re.ASCII)
_SPACED: Final = re.compile(r"[+-]?\d{1,3}(?:[ \u00a0\u202f]\d{3})+(?!\d)", re.ASCII)
_ALIASES: Final = {unit.lower(): unit for unit in _UNITS} | {
    "kmh": "km/h", "kph": "km/h", "kmph": "km/h", "miles/h": "mph", "mi/h": "mph", "metres": "m", "inch": "in",
    "inches": "in", '"': "in", "1/min": "rpm", "rev/min": "rpm", "r/min": "rpm", "u/min": "rpm", "min-1": "rpm",
    "rps": "turns a second", "rev/s": "turns a second", "1/s": "turns a second", "newton": "N", "newtons": "N",
    "\u00b0": "deg", "degree": "deg", "degrees": "deg", "radians": "rad", "link": "links",
    "turns": "", "times": "", ":1": "", ": 1": "", "x": "",
}  # fmt: skip


def _readings(text: str) -> list[str]:
    """What an answer may mean, with a point for the decimal sign and nothing between thousands."""
    plain = _LEFT_SIDE.sub("", text.strip().replace("\u2212", "-"), count=1)
    spaced = _SPACED.match(plain)
    if spaced:
        plain = re.sub(r"[ \u00a0\u202f]", "", spaced[0]) + plain[spaced.end() :]
    if "," not in plain:
        return [plain]
    thousands = _THOUSANDS.match(plain)
    readings = [thousands[0].replace(",", "") + plain[thousands.end() :]] if thousands else []
    if plain.count(",") == 1:
        head, tail = plain.split(",")
        readings.append(f"{head.replace('.', '')}.{tail}")
    return readings or [plain]


def _in_other_units(answer: Answer, asked: str) -> list[tuple[str, float]]:
    """The answer's number in each usual unit but the asked one."""
    units = [unit for unit in _OTHERS.get(type(answer), ()) if unit != asked]
    numbers = [(unit, float(answer / _UNITS[unit])) for unit in units]
    return [*numbers, ("per cent", grade(answer))] if isinstance(answer, ls.Angle) else numbers


def _judge(exercise: Exercise, reading: str) -> Verdict:
    fraction = _FRACTION.fullmatch(reading)
    if fraction and exercise.unit == "" and len(fraction[2]) < 20 and int(fraction[2]):
        reading = repr(int(fraction[1]) / int(fraction[2]))
    found = _ANSWER.fullmatch(reading)
    if not found:
        return _not_understood(exercise, repr(reading) if reading else "an empty answer")
    number, word = float(found[1]), found[2].strip().removesuffix(".")
    if abs(number) > _LARGEST:
        return _not_understood(exercise, f"{in_short(found[1])}, which is far too large,")
    unit = _ALIASES.get(word.lower(), word)
    if unit in ("", exercise.unit):
        return _judge_asked(exercise, number, bare=unit == "")
    return _judge_other(exercise, number, unit)


def _converted(exercise: Exercise, number: float, unit: str) -> float | None:
    """A number of some unit in the asked one; None where that is no unit of what was asked for."""
    answer = exercise.answer
    if isinstance(answer, int | float):
        return None
    if isinstance(answer, ls.Angle) and unit in ("%", "per cent"):
        return math.atan(number / 100) * (ls.rad / ls.deg)
    if unit in _OTHERS[type(answer)]:
        return float(number * (_UNITS[unit] / _UNITS[exercise.unit]))
    try:
        return float(type(answer)(f"{number!r} {unit}") / _UNITS[exercise.unit])
    except ls.Error:
        return None


def _is_right(exercise: Exercise, number: float, unit: str | None = None) -> bool:
    """Whether a number, in the asked unit or in another one, is the answer to the digits that were asked for."""
    told = number if unit is None else _converted(exercise, number, unit)
    right = _number(exercise, exercise.answer)
    if told is None or _is_count(exercise.answer):
        return told == right
    half = _half_unit(right, exercise.digits)
    if unit is not None and number:  # whoever rounded in that unit is right as well
        half = max(half, _half_unit(number, exercise.digits) * abs(told / number))
    return abs(told - right) <= half + exercise._play


def _judge_asked(exercise: Exercise, number: float, bare: bool) -> Verdict:
    """Judges a number in the asked unit, which was written or is understood."""
    if _is_right(exercise, number):
        return Verdict("right", None, f"Right: {_as_written(exercise, number)} answers the question.")
    others = [
        _units_verdict(exercise, unit)
        for unit, _ in _in_other_units(exercise.answer, exercise.unit)
        if _is_right(exercise, number, unit)
    ]
    slips = _slip_verdicts(exercise, number)
    found = [*others, *slips] if bare else [*slips, *others]
    return found[0] if found else _close_or_wrong(exercise, number)


def _judge_other(exercise: Exercise, number: float, unit: str) -> Verdict:
    """Judges a number with another unit than the asked one."""
    told = _converted(exercise, number, unit)
    if told is not None and _is_right(exercise, number, unit):
        same = f"{number:.10g} {unit} is the same as what was asked for in {exercise.unit}"
        return Verdict("right", None, f"Right: {same}.")
    # Digits behind a number that is right are no unit, but a second answer.
    if _is_right(exercise, number) and (told is not None or not any(map(str.isdigit, unit))):
        return _units_verdict(exercise, exercise.unit, told=unit)
    if told is None:
        return _not_understood(exercise, f"the unit {in_short(unit)}")
    slips = _slip_verdicts(exercise, told)
    return slips[0] if slips else _close_or_wrong(exercise, told)


def _slip_verdicts(exercise: Exercise, number: float) -> list[Verdict]:
    right = _number(exercise, exercise.answer)
    found = []
    for slip in exercise.slips:
        value = _number(exercise, slip.value)
        count = _is_count(exercise.answer)
        reach = (0.0 if isinstance(slip.value, int) else _TENTH) if count else _half_unit(value, exercise.digits)
        if abs(number - value) <= reach + exercise._play * abs(value / right):
            message = f"{_as_written(exercise, number)} comes of a slip ({slip.name}): {slip.what}."
            found.append(Verdict("slip", slip, message))
    return found


def _close_or_wrong(exercise: Exercise, number: float) -> Verdict:
    right = _number(exercise, exercise.answer)
    written = _as_written(exercise, number)
    if not _is_count(exercise.answer) and abs(number - right) <= _NEAR * abs(right):
        digits = _COUNTS[exercise.digits]
        message = (
            f"{written} is right but for rounding: expected {digits} significant digits, so carry one more in between."
        )
        return Verdict("right but for rounding", None, message)
    way = "low" if number < right else "high"
    message = (
        f"{written} is too {way} for the {exercise.topic} asked for; expected {_expected(exercise)}. {exercise.hint}"
    )
    return Verdict("wrong", None, message)


def _units_verdict(exercise: Exercise, unit: str, told: str | None = None) -> Verdict:
    if told is not None:
        message = f"The number is right, but not in {told}: expected {_expected(exercise)}."
    else:
        message = f"The number is right in {unit}, but it was asked for in {exercise.unit}: write the unit or convert."
    return Verdict("right but for units", None, message)


def _not_understood(exercise: Exercise, what: str) -> Verdict:
    shown = what if len(what) <= 60 else f"{what[:57]}..."
    return Verdict(
        "not understood",
        None,
        f"Cannot read {shown} as the {exercise.topic} asked for; expected {_expected(exercise)}.",
    )


def _expected(exercise: Exercise) -> str:
    if _is_count(exercise.answer):
        return "a whole number of links"
    return f"a number in {exercise.unit}" if exercise.unit else "a plain number without unit"


def _as_written(exercise: Exercise, number: float) -> str:
    return f"{number:.10g} {exercise.unit}".rstrip()


# --- A sheet for a class ---------------------------------------------------------------------------------------------

_STYLE: Final = """
:root { --ink: #1d2430; --soft: #59616d; --rule: #cfd4d8; --paper: #fcfcf9; --moss: #3d5a2f; --clay: #8a3f1d; }
* { box-sizing: border-box; }
html { background: var(--paper); color: var(--ink); font: 16px/1.5 Georgia, "Noto Serif", serif; }
body { max-width: 45rem; margin: 0 auto; padding: 1.4rem 1rem 3rem; overflow-wrap: break-word; }
header { border-bottom: .2rem solid var(--moss); margin-bottom: 1rem; }
h1 { font-size: 1.5rem; line-height: 1.2; margin: 0 0 .3rem; }
h2 { font-size: 1.25rem; margin: 0; color: var(--moss); }
h3 { font-size: .95rem; margin: 0; color: var(--moss); font-weight: normal; font-style: italic; }
.for-name { color: var(--soft); margin: .6rem 0 .8rem; display: flex; gap: 1rem; }
.for-name span { flex: 1; border-bottom: 1px solid var(--soft); }
ol.exercises { list-style: none; margin: 0; padding: 0; }
ol.exercises > li { display: grid; grid-template-columns: 2.3rem minmax(0, 1fr); margin: 0 0 1.1rem; }
ol.exercises > li { break-inside: avoid; }
.count { font-size: 1.3rem; line-height: 1.1; color: var(--clay); font-variant-numeric: oldstyle-nums; }
li p { margin: .1rem 0 .5rem; }
.blank { text-align: right; color: var(--soft); }
.blank span { display: inline-block; width: 9rem; border-bottom: 1px solid var(--soft); margin-right: .4rem; }
.answers { border-top: .2rem solid var(--clay); margin-top: 3rem; padding-top: 1rem; }
.right { display: flex; gap: 1rem; align-items: baseline; justify-content: space-between; font-size: 1.1rem; }
table { border-collapse: collapse; font-size: .88rem; color: var(--soft); margin: .2rem 0 .4rem; }
td { vertical-align: top; padding: .05rem .8rem .05rem 0; }
td.number { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; color: var(--ink); }
details { font-size: .92rem; }
summary { cursor: pointer; color: var(--moss); }
.working { background: #f1f2ea; padding: .2rem .8rem .5rem; overflow-x: auto; }
.working ol { padding-left: 1.7rem; }
.step-note, .step-sides { color: var(--soft); font-size: .88rem; margin: .2rem 0; }
.step-lines, .last-line { overflow-x: auto; padding: .2rem 0; }
.caution { color: var(--clay); border-left: .25rem solid var(--clay); padding-left: .7rem; font-size: .92rem; }
@page { margin: 15mm 16mm; }
@media print {
  html { background: #fff; font-size: 10.5pt; line-height: 1.38; }
  body { max-width: none; padding: 0; }
  .answers { break-before: page; border-top: 0; margin-top: 0; padding-top: 0; }
  .answers ol.exercises > li { margin-bottom: .35rem; }
  .answers table { font-size: .8rem; line-height: 1.25; }
  .solution:not([open]), .solution > summary { display: none; }
  .working, .step-lines, .last-line { overflow: visible; }
  .working li { break-inside: avoid; }
  .answers ol.exercises > li:has(.solution[open]) { break-inside: auto; }
}
"""


@dataclass(frozen=True)
class Sheet:
    """Exercises for a class, and their answers. `sheet` makes it."""

    title: str
    seed: Seed
    exercises: tuple[Exercise, ...]

    def questions(self, form: Literal["text", "markdown"] = "text") -> str:
        """The questions, numbered."""
        mark = _one_of("form", form, _MARKS)
        lines = [mark.heading(f"{self.title}, sheet {self.seed}"), ""]
        for count, one in enumerate(self.exercises, 1):
            lines += [f"{count}. {mark.text(one.question)}", ""]
        return "\n".join([*lines, mark.text(CAUTION), ""])

    def answers(self, form: Literal["text", "markdown"] = "text") -> str:
        """The answers, each with the numbers that slips lead to and what went wrong."""
        mark = _one_of("form", form, _MARKS)
        lines = [mark.heading(f"{self.title}, sheet {self.seed}: answers"), ""]
        for count, one in enumerate(self.exercises, 1):
            lines += [f"{count}. {mark.strong(one.shown)} ({mark.text(one.topic)})", ""]
            lines += [f"   - {mark.text(f'{_shown_slip(one, slip)}: {slip.what}')}" for slip in one.slips]
            lines.append("")
        return "\n".join([*lines, mark.text(CAUTION), ""])

    def html(self, *, worked: bool = False) -> str:
        """One page that needs no other file and no script; printed, the answers begin on a page of their own.

        The paper is the printer's, A4 or letter. A working that is opened on the screen is printed with its answer.

        :param worked: opens every working, so that all are printed
        """
        head = f"{_text(self.title)}, sheet {_text(str(self.seed))}"
        asked = "\n".join(_question_item(count, one) for count, one in enumerate(self.exercises, 1))
        answered = "\n".join(_answer_item(count, one, worked) for count, one in enumerate(self.exercises, 1))
        return (
            '<!DOCTYPE html>\n<html lang="en-GB">\n<head>\n<meta charset="utf-8">\n'
            '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
            f"<title>{head}</title>\n<style>{_STYLE}</style>\n</head>\n<body>\n"
            f'<main>\n<header><h1>{head}</h1>\n<p class="for-name">Name <span></span> Date <span></span></p></header>\n'
            f'<ol class="exercises">\n{asked}\n</ol>\n<p class="caution">{_text(CAUTION)}</p>\n</main>\n'
            f'<section class="answers"><header><h2>Answers to {head}</h2></header>\n'
            f'<ol class="exercises">\n{answered}\n</ol>\n<p class="caution">{_text(CAUTION)}</p></section>\n'
            "</body>\n</html>\n"
        )

    def write(self, path: str | PathLike[str], *, worked: bool = False) -> Path:
        """Writes the page to a file, whose folder is made if need be, and gives back where it lies."""
        target = Path(path)
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(self.html(worked=worked), encoding="utf-8")
        return target


@dataclass(frozen=True)
class _Mark:
    """How headings and text are written in a form."""

    heading: Callable[[str], str]
    text: Callable[[str], str]
    strong: Callable[[str], str]


def _one_line(text: str) -> str:
    return " ".join(text.split())


_MARKS: Final = {
    "text": _Mark(_one_line, _one_line, _one_line),
    "markdown": _Mark(lambda text: f"# {_markdown(text)}", _markdown, lambda text: f"**{_markdown(text)}**"),
}


def _shown_slip(one: Exercise, slip: Slip) -> str:
    if isinstance(slip.value, float) and _is_count(one.answer):
        return f"{slip.value:.1f} {one.unit}"
    return _shown(one, slip.value)


def _question_item(count: int, one: Exercise) -> str:
    unit = _text(one.unit or "\u00a0")
    return (
        f'<li><span class="count">{count}</span><div><p>{_bound(one.question)}</p>\n'
        f'<p class="blank"><span></span>{unit}</p></div></li>'
    )


def _answer_item(count: int, one: Exercise, worked: bool) -> str:
    rows = "\n".join(
        f'<tr><td class="number">{_bound(_shown_slip(one, slip))}</td><td>{_text(slip.what)}</td></tr>'
        for slip in one.slips
    )
    source = "" if one.source == "made up" else f"<p>Source: {_text(one.source)}</p>\n"
    fold = 'class="solution" open' if worked else 'class="solution"'
    steps = one.working.steps_to_html(fold=False)
    return (
        f'<li><span class="count">{count}</span><div><div class="right"><strong>{_bound(one.shown)}</strong>\n'
        f"<h3>{_text(one.topic)}</h3></div>\n{source}<table>\n<tbody>\n{rows}\n</tbody></table>\n"
        f'<details {fold}><summary>working</summary>\n<div class="working">{steps}</div></details>'
        "</div></li>"
    )


def _bound(text: str) -> str:
    """Text for HTML whose units stay on the line of their numbers."""
    return _text(re.sub(r"(?<=\d) (?=(?:%|mm|m|m/s2|km/h|rpm|Nm|N|kg|deg|links|teeth)(?![\w/]))", "\u00a0", text))


def sheet(
    topics: str | Iterable[str], seed: Seed, count: int = 10, *, title: str = "Exercises on the final drive"
) -> Sheet:
    """A sheet of different exercises: every topic once before any comes again.

    :param topics: a topic, or several; `TOPICS` are all there are
    :param seed: any whole number or text, which the sheet bears
    :param count: how many exercises, 1 to 100
    :param title: what the page is headed with
    """
    asked = [topics] if isinstance(topics, str) else list(topics)
    if not asked:
        raise ValueError(f"sheet: no topics; expected some of {', '.join(map(repr, TOPICS))}")
    if isinstance(count, bool) or not isinstance(count, int) or not 1 <= count <= 100:
        raise ValueError(f"sheet: count is {in_short(count)}; expected a whole number from 1 to 100")
    draw = Draw(f"sheet:{seed}")
    made: list[Exercise] = []
    while len(made) < count:
        for topic in draw.shuffled(asked)[: count - len(made)]:
            made.append(_another(topic, seed, made))
    return Sheet(title, seed, tuple(made))


def _another(topic: str, seed: Seed, made: Sequence[Exercise]) -> Exercise:
    """An exercise that asks nothing which another of the sheet asks already."""
    there = {one.question for one in made}
    for turn in range(_MOST_TRIES):
        one = exercise(topic, f"{seed}, {len(made) + 1}.{turn}")
        if one.question not in there:
            return one
    raise RuntimeError(f"sheet: no other exercise on {topic} came of seed {seed!r}")
