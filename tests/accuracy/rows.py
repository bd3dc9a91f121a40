# SPDX-License-Identifier: MIT
"""Arguments of every formula by how hard they are, the same on every machine.

ordinary    a motorcycle's or a bicycle's numbers
edge        one argument, or some, at an end of the range or one ulp inside it
cancelling  two terms that leave little of each other, from exactly nothing to a thousandth
wide        magnitudes from 1e-100 to 1e100, as far as every value on the way stays from 1e-290 to 1e290
"""

from __future__ import annotations

import ast
import random
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from math import frexp, ldexp, nextafter

from accuracy.exact import FORMULAS, FUNCTIONS, Exact, Number, body_of, compiled, in_range, mp, parameters, work_out
from accuracy.spans import COUNTS, ENDS_OF_COUNTS, span

CLASSES = ("ordinary", "edge", "cancelling", "wide")
Numbers = dict[str, float]
Draw = Callable[[str, random.Random], Numbers | None]
TRIES = 8  # for each row, before a class of a formula is given up
LEAST_TRIES = 80


@dataclass(frozen=True)
class Row:
    """A row of the table: what is called with what, the exact result as a double and what it lacks, and its scale."""

    function: str
    difficulty: str
    arguments: tuple[float | str, ...]
    head: float
    tail: float
    scale: float


def row_of(function: str, difficulty: str, arguments: tuple[float | str, ...], exact: Exact) -> Row:
    head = float(exact.value)
    return Row(function, difficulty, arguments, head, float(exact.value - mp.mpf(head)), float(exact.scale))


def magnitude(random: random.Random, least: int, greatest: int) -> float:
    """A number of a power of ten between; no power is worked out, which another machine might round otherwise."""
    return random.uniform(1.0, 10.0) * float(f"1e{random.randint(least, greatest)}")


def cut(number: float) -> float:
    """A number of thirty bits, so that no rounding of a library's sine on the way to it shows."""
    fraction, exponent = frexp(number)
    return ldexp(round(ldexp(fraction, 30)), exponent - 30)


# --- A machine's numbers ----------------------------------------------------------------------------------------------


def ordinary(name: str, random: random.Random) -> Numbers:
    numbers: Numbers = {}
    for kind, word in parameters(FORMULAS[name]):
        numbers[word] = random.randint(*COUNTS[kind]) if kind in COUNTS else random.uniform(*span(kind, word))
    return numbers


# --- The ends of the range --------------------------------------------------------------------------------------------


def end_towards(name: str, numbers: Numbers, word: str, target: float) -> float | None:
    """The last number from an argument's own towards a target that is still in range; None where all of them are."""
    inside, outside = numbers[word], target
    if in_range(name, numbers | {word: target}):
        return None
    for _ in range(200):
        middle = inside + 0.5 * (outside - inside)
        if middle in (inside, outside):
            break
        if in_range(name, numbers | {word: middle}):
            inside = middle
        else:
            outside = middle
    return inside


def edge(name: str, random: random.Random) -> Numbers | None:
    numbers = ordinary(name, random)
    if not in_range(name, numbers):
        return None
    words = parameters(FORMULAS[name])
    for kind, word in random.sample(words, random.randint(1, min(2, len(words)))):
        if kind in COUNTS:
            least, greatest = ENDS_OF_COUNTS[kind]
            trial = random.choice((least, least, least + 1, greatest - 1, greatest))
            if in_range(name, numbers | {word: trial}):
                numbers[word] = trial
            continue
        own = numbers[word]
        targets = [0.0, -own, 1e3 * own, -1e3 * own]
        random.shuffle(targets)
        for target in targets:
            end = end_towards(name, numbers, word, target)
            if end is None:
                if target != 0.0:
                    continue
                end = 0.0  # nothing is allowed here
            elif abs(end) < 1e-9 * abs(own):  # above zero, however little
                end = ldexp(own, -random.randint(10, 60))
            if random.random() < 0.5 and in_range(name, numbers | {word: nextafter(end, own)}):
                end = nextafter(end, own)
            numbers[word] = end
            break
    return numbers


# --- Terms that cancel ------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Difference:
    """What comes to nothing somewhere, and the words it depends on."""

    of: Callable[[Mapping[str, Exact]], Exact]
    words: tuple[str, ...]


@cache
def differences(name: str) -> tuple[Difference, ...]:
    """The sums and differences of a body, and what its logarithms are of, less one."""
    body = body_of(FORMULAS[name])
    words = [word for kind, word in parameters(FORMULAS[name]) if kind not in COUNTS]
    found = []
    for node in ast.walk(body):
        one = None
        if isinstance(node, ast.BinOp) and isinstance(node.op, (ast.Add, ast.Sub)):
            one = node
        elif isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            if node.func.id in ("ln", "logarithmic_mean"):
                one = ast.BinOp(node.args[0], ast.Sub(), ast.Constant(1.0))
            elif node.func.id == "arctan_ratio":
                one = ast.BinOp(node.args[0], ast.Sub(), ast.Constant(0.0))
            elif node.func.id not in FUNCTIONS:  # a formula, which may come to one
                one = ast.BinOp(node, ast.Sub(), ast.Constant(1.0))
        if one is None:
            continue
        names = {part.id for part in ast.walk(one) if isinstance(part, ast.Name)}
        free = tuple(word for word in words if word in names)
        if free:
            found.append(Difference(compiled(ast.parse(ast.unparse(one), mode="eval").body), free))
    return tuple(found)


def zero_of(difference: Difference, numbers: Numbers, word: str, low: float, high: float) -> float | None:
    """Where a difference comes to nothing as one word goes from low to high: a straight line's cut, made better."""
    exact = {name: Exact(mp.mpf(number)) for name, number in numbers.items()}

    def at(number: Number) -> Number:
        return difference.of(exact | {word: Exact(mp.mpf(number))}).value

    try:
        a, b = mp.mpf(low), mp.mpf(high)
        at_a, at_b = at(a), at(b)
        if not at_a * at_b < 0:
            return None
        for _ in range(40):
            if abs(b - a) <= 1e-18 * abs(b) or at_b == at_a:
                break
            c = b - at_b * (b - a) / (at_b - at_a)
            at_c = at(c)
            if at_c == 0:
                return float(c)
            if at_c * at_b < 0:
                a, at_a = b, at_b
            else:
                at_a /= 2
            b, at_b = c, at_c
        return float(b)
    except (ZeroDivisionError, ValueError, TypeError, OverflowError):
        return None


def cancelling(name: str, random: random.Random) -> Numbers | None:
    found = differences(name)
    if not found:
        return None
    numbers = ordinary(name, random)
    difference = random.choice(found)
    word = random.choice(difference.words)
    kind = dict((word, kind) for kind, word in parameters(FORMULAS[name]))[word]
    low, high = span(kind, word)
    points = [low, low + 0.37 * (high - low), high, 8.0 * high, 1000.0 * high]
    if in_range(name, numbers | {word: -high}):
        points = [-8.0 * high, -high, *points]
    first = random.randrange(len(points) - 1)
    zero: float | None = None
    for i in [*range(first, len(points) - 1), *range(first)]:
        zero = zero_of(difference, numbers, word, points[i], points[i + 1])
        if zero is not None:
            break
    else:
        return None
    away = random.choice((0.0, ldexp(random.uniform(-1.0, 1.0), -random.randint(10, 51))))
    numbers[word] = zero * (1.0 + away) if zero else away
    return numbers


# --- Any magnitude ----------------------------------------------------------------------------------------------------


@cache
def negative_allowed(name: str) -> frozenset[str]:
    draw = random.Random(1)
    for _ in range(1000):
        numbers = ordinary(name, draw)
        if in_range(name, numbers):
            return frozenset(word for word in numbers if in_range(name, numbers | {word: -abs(numbers[word])}))
    return frozenset()


def wide_within(reach: float) -> Callable[[str, random.Random], Numbers]:
    def wide(name: str, random: random.Random) -> Numbers:
        together = random.random() < 0.5
        middle: dict[str, float] = {}
        numbers: Numbers = {}
        for kind, word in parameters(FORMULAS[name]):
            if kind in COUNTS:
                numbers[word] = random.randint(*ENDS_OF_COUNTS[kind])
                continue
            least, greatest = (-30.0, 6.0) if kind == "Angle" else (-reach, reach)
            exponent = random.uniform(least, greatest)
            if together:  # lengths near one another, and so on
                exponent = middle.setdefault(kind, exponent) + random.uniform(-2.0, 2.0)
            number = round(random.uniform(1.0, 10.0), 15) * float(f"1e{round(exponent)}")
            numbers[word] = -number if word in negative_allowed(name) and random.random() < 0.5 else number
        return numbers

    return wide


# --- All of them ------------------------------------------------------------------------------------------------------


def rows_of(name: str, difficulty: str, count: int, seed: int = 0) -> Iterator[Row]:
    """So many rows of a formula in one class, or none where it has no such class."""
    draw = random.Random(f"{name} {difficulty} {seed}")
    ways_by_class: dict[str, list[Draw]] = {
        "ordinary": [ordinary],
        "edge": [edge],
        "cancelling": [cancelling],
        "wide": [wide_within(reach) for reach in (100.0, 50.0, 25.0, 12.0, 6.0, 3.0)],
    }
    made = 0
    for way in ways_by_class[difficulty]:
        for tried in range(TRIES * count + LEAST_TRIES):
            if made == count or (tried == LEAST_TRIES and made == 0):
                break
            numbers = way(name, draw)
            if numbers is None or not in_range(name, numbers):
                continue
            try:
                exact = work_out(name, numbers)
            except (ZeroDivisionError, ValueError, TypeError, OverflowError):
                continue  # beyond what doubles hold, or where it ends in a pole
            made += 1
            yield row_of(name, difficulty, tuple(float(number) for number in numbers.values()), exact)
