# SPDX-License-Identifier: MIT
"""Works out the text of a formula at fifty digits, and beside it how large the numbers are that rounding touches.

An error is measured in units of the last place (ulp) of the result or, where terms cancel, of the largest value on the
way: each operation may round its own value by half an ulp, and what that does to the result follows from the derivatives
of what comes after. Arguments are exact, and so is a number that a double holds.
"""

from __future__ import annotations

import ast
import math
import re
from collections.abc import Callable, Mapping
from functools import cache
from typing import Any

import layshaft as ls
from mpmath import MPContext  # type: ignore[import-untyped]

Number = Any  # mpmath's, which has no types

DIGITS = 50
mp = MPContext()
mp.dps = DIGITS
HALF_ULP_OF_ONE = mp.mpf(2) ** -53
GREATEST_POWER = 964  # of two: values on the way stay from 1e-290 to 1e290

FORMULAS = {formula.name: formula for formula in ls.formulas()}
# What the units that formulas' texts use are, by definition.
UNITS = {
    "m": mp.mpf(1), "kmh": mp.mpf(1000) / 3600, "mm": mp.mpf(1) / 1000, "deg": mp.pi / 180, "inch": mp.mpf("0.0254"),
    "rpm": mp.pi / 30, "kW": mp.mpf(1000), "kg": mp.mpf(1), "hp": 550 * mp.mpf("4.4482216152605") * mp.mpf("0.3048"),
}  # fmt: skip


class Exact:
    """A number, and the largest value that rounding has touched, carried on to this number."""

    __slots__ = ("touched", "value")

    def __init__(self, value: Number, touched: Number = 0) -> None:
        if isinstance(value, mp.mpc):
            raise ValueError("no real number")
        _, mantissa, exponent, bits = value._mpf_
        if mantissa and not -GREATEST_POWER < exponent + bits < GREATEST_POWER:
            raise OverflowError("a value that a double hardly holds")
        self.value = value
        self.touched = touched

    @property
    def scale(self) -> Number:
        return max(abs(self.value), self.touched)

    def __add__(self, other: Exact) -> Exact:
        value = self.value + other.value
        return Exact(value, max(abs(value), self.touched, other.touched))

    def __sub__(self, other: Exact) -> Exact:
        value = self.value - other.value
        return Exact(value, max(abs(value), self.touched, other.touched))

    def __mul__(self, other: Exact) -> Exact:
        value = self.value * other.value
        return Exact(value, max(abs(value), self.touched * abs(other.value), abs(self.value) * other.touched))

    def __truediv__(self, other: Exact) -> Exact:
        value, below = self.value / other.value, abs(other.value)
        return Exact(value, max(abs(value), self.touched / below, abs(value) / below * other.touched))


def by_slope(
    function: Callable[[Number], Number], slope: Callable[[Number, Number], Number]
) -> Callable[[Exact], Exact]:
    """A function of one number, with its derivative, which is told argument and value."""

    def applied(of: Exact) -> Exact:
        value = function(of.value)
        carried = abs(slope(of.value, value)) * of.touched if of.touched else 0
        return Exact(value, max(abs(value), carried))

    return applied


def arcsin(of: Exact) -> Exact:
    # The range is asked in doubles, which lets a sine through that is above one by less than they can tell.
    sine = of.value if abs(of.value) > 1 + 8 * HALF_ULP_OF_ONE else max(-mp.one, min(mp.one, of.value))
    value = mp.asin(sine)
    # Near one the slope has no end, but the sine has been rounded there.
    room = max(1 - sine**2, HALF_ULP_OF_ONE * of.touched)
    return Exact(value, max(abs(value), of.touched / mp.sqrt(room) if of.touched else 0))


def root(of: Exact) -> Exact:
    value = mp.sqrt(of.value)
    least = max(value, mp.sqrt(HALF_ULP_OF_ONE * of.touched))
    return Exact(value, max(value, of.touched / (2 * least) if of.touched else 0))


def to_the(base: Exact, exponent: Exact) -> Exact:
    value = mp.power(base.value, exponent.value)
    by_base = abs(value * exponent.value / base.value) * base.touched
    return Exact(value, max(value, by_base, abs(value * mp.log(base.value)) * exponent.touched))


def arctan_over_root(square: Number) -> Number:
    if square == 0:
        return mp.mpf(1)
    side = mp.sqrt(abs(square))
    return (mp.atan(side) if square > 0 else mp.atanh(side)) / side


def slope_of_arctan_over_root(square: Number, value: Number) -> Number:
    return (1 / (1 + square) - value) / (2 * square) if abs(square) > 1e-9 else mp.mpf(-1) / 3


def logarithmic_mean(ratio: Number) -> Number:
    return mp.mpf(1) if ratio == 1 else (ratio - 1) / mp.log(ratio)


def slope_of_logarithmic_mean(ratio: Number, value: Number) -> Number:
    return (1 - value / ratio) / mp.log(ratio) if abs(ratio - 1) > 1e-9 else mp.mpf(1) / 2


FUNCTIONS: dict[str, Callable[..., Exact]] = {
    "sin": by_slope(mp.sin, lambda x, y: mp.cos(x)),
    "cos": by_slope(mp.cos, lambda x, y: mp.sin(x)),
    "arcsin": arcsin,
    "arctan": by_slope(mp.atan, lambda x, y: 1 / (1 + x * x)),
    "sqrt": root,
    "square_root": root,
    "cube_root": by_slope(mp.cbrt, lambda x, y: y / (3 * x)),
    "exponential": by_slope(mp.exp, lambda x, y: y),
    "ln": by_slope(mp.log, lambda x, y: 1 / x),
    "magnitude": by_slope(abs, lambda x, y: 1),
    "to_the": to_the,
    "arctan_ratio": by_slope(arctan_over_root, slope_of_arctan_over_root),
    "logarithmic_mean": by_slope(logarithmic_mean, slope_of_logarithmic_mean),
    "common_factor": lambda a, b: Exact(mp.mpf(math.gcd(int(a.value), int(b.value)))),
}


def constant(number: Number) -> Exact:
    return Exact(number, 0 if mp.mpf(float(number)) == number else abs(number))


CONSTANTS = {"pi": constant(+mp.pi), "turn": constant(2 * mp.pi), "half_turn": constant(+mp.pi)}
CONSTANTS |= {f"unit_{name}": constant(value) for name, value in UNITS.items()}


def parameters(formula: ls.Formula) -> list[tuple[str, str]]:
    """The type and the word of each."""
    return [(kind, word) for kind, word in (one.split() for one in formula.parameters.strip("()").split(","))]


def with_units(text: str) -> str:
    """0.1_kW becomes (0.1 * unit_kW)."""
    return re.sub(r"(\d+\.\d+)_(\w+)", r"(\1 * unit_\2)", " ".join(text.split()))


class Reader(ast.NodeTransformer):
    """The grammar of a body: + - * /, calls, names and numbers. A number becomes a name of the exact one."""

    def __init__(self) -> None:
        self.numbers: dict[str, Exact] = {}

    def visit_Constant(self, node: ast.Constant) -> ast.Name:
        name = f"number_{len(self.numbers)}"
        self.numbers[name] = constant(mp.mpf(str(node.value)))
        return ast.copy_location(ast.Name(name, ast.Load()), node)

    def generic_visit(self, node: ast.AST) -> ast.AST:
        allowed = (ast.Expression, ast.BinOp, ast.Add, ast.Sub, ast.Mult, ast.Div, ast.Call, ast.Name, ast.Load)
        assert isinstance(node, allowed), f"a body has what no reader reads: {ast.dump(node)}"
        return super().generic_visit(node)


Worked = Callable[[Mapping[str, Exact]], Exact]


def compiled(tree: ast.expr) -> Worked:
    """An expression of a body, ready to be worked out again and again."""
    reader = Reader()
    read = ast.fix_missing_locations(ast.Expression(reader.visit(tree)))
    code = compile(read, "formula", "eval")
    inner = {node.func.id for node in ast.walk(read) if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)}
    calls = {name: FUNCTIONS[name] if name in FUNCTIONS else called(name) for name in inner}
    known: dict[str, Any] = {"__builtins__": {}} | CONSTANTS | reader.numbers | calls
    return lambda values: eval(code, known, dict(values))


def body_of(formula: ls.Formula) -> ast.expr:
    return ast.parse(with_units(formula.body), mode="eval").body


@cache
def worker(name: str) -> Worked:
    return compiled(body_of(FORMULAS[name]))


def called(name: str) -> Callable[..., Exact]:
    """A formula that is called by another."""
    words = [word for _, word in parameters(FORMULAS[name])]
    work = worker(name)
    return lambda *arguments: work(dict(zip(words, arguments, strict=True)))


def work_out(name: str, numbers: Mapping[str, float]) -> Exact:
    """A formula of arguments that are doubles."""
    return worker(name)({word: Exact(mp.mpf(number)) for word, number in numbers.items()})


# --- The range, in doubles as the code asks it ------------------------------------------------------------------------


def rounded(function: Callable[[Number], Number]) -> Callable[[float], float]:
    """The double that is nearest, the same on every machine."""
    return lambda x: float(function(mp.mpf(x)))


RANGE_WORDS: dict[str, Any] = {
    "__builtins__": {}, "true": True, "pi": math.pi, "turn": 2 * math.pi, "half_turn": math.pi, "is_finite": math.isfinite,
    "positive": lambda x: math.isfinite(x) and x > 0, "cos": rounded(mp.cos), "sin": rounded(mp.sin),
} | {f"unit_{name}": float(value) for name, value in UNITS.items()}  # fmt: skip


@cache
def range_code(name: str) -> Any:
    text = FORMULAS[name].range.replace("&&", " and ").replace(".count()", "")
    return compile(with_units(text), "range", "eval")


def in_range(name: str, numbers: Mapping[str, float]) -> bool:
    try:
        return bool(eval(range_code(name), RANGE_WORDS, dict(numbers)))
    except (OverflowError, ZeroDivisionError):
        return False
