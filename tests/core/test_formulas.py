# SPDX-License-Identifier: MIT
"""Every formula's text, read and worked out by an evaluator of its own at fifty digits, against its function."""

from __future__ import annotations

import ast
import math
import random
import re
import zlib
from collections.abc import Iterator
from pathlib import Path

import layshaft as ls
import mpmath
import pytest

ROWS = 2000
BUILD = Path(__file__).resolve().parents[2] / "build"
FORMULAS = {formula.name: formula for formula in ls.formulas()}
UNITS = {
    "m": mpmath.mpf(1), "kmh": mpmath.mpf(1000) / 3600, "mm": mpmath.mpf(1) / 1000, "deg": mpmath.pi / 180, "inch": mpmath.mpf("0.0254"),
    "rpm": mpmath.pi / 30, "kW": mpmath.mpf(1000), "kg": mpmath.mpf(1), "hp": 550 * mpmath.mpf("4.4482216152605") * mpmath.mpf("0.3048"),
}  # fmt: skip

# The whole counts, and what they may be.
COUNTS = {"Teeth": (9, 70), "Links": (80, 200)}

# What a parameter may be, in SI, where its type alone is too wide to be sensible.
SPANS = {
    "Length": (0.001, 3.0), "Speed": (0.1, 80.0), "AngularSpeed": (1.0, 1600.0), "Angle": (-1.2, 1.2), "Force": (1.0, 9000.0),
    "double": (0.05, 40.0), "pitch": (0.004, 0.12), "centre": (0.35, 3.0), "front_pitch_diameter": (0.03, 0.3),
    "rear_pitch_diameter": (0.03, 0.4), "roller_diameter": (0.002, 0.06), "aspect_ratio": (25.0, 110.0), "links": (80.0, 200.0),
    "reading_error": (-0.3, 0.5), "speed_change": (-0.9, 3.0), "distance": (1.0, 1e6), "slack": (0.0, 0.1),
    "overall_diameter": (0.4, 0.9), "rim_diameter": (0.2, 0.6), "rear_added": (-6.0, 6.0), "front_removed": (-3.0, 3.0),
    "tyre_growth": (-0.2, 0.2), "height_factor": (0.9, 1.2), "factor": (0.2, 5.0), "ratio": (0.2, 5.0),
    "elongation": (0.0, 0.05), "links_at_end": (80.0, 200.0), "loop_links": (80.0, 200.0), "spare_length": (0.0, 0.05),
    "layshaft_ahead": (0.02, 0.15), "layshaft_above": (0.0, 0.1), "arm": (0.4, 0.8), "arm_angle": (0.0, 0.6),
    "tread_worn": (0.0, 0.02), "base_efficiency": (0.5, 1.0), "trial_efficiency": (0.5, 1.0),
    "altitude": (-1000.0, 11000.0), "geopotential_height": (-1000.0, 11000.0), "earth_radius": (6.3e6, 6.4e6), "lapse_height": (44e3, 45e3),
    "sea_level_temperature": (285.0, 291.0), "standard_temperature": (216.0, 290.0), "pressure_exponent": (5.0, 5.5),
    "trial_labour": (0.0, 1.0), "worn_out_share": (0.01, 0.99), "rated_power": (1e3, 1e5), "unladen_mass": (50.0, 300.0), "coasting_bend": (-0.9, 5.0), "driving_slip": (0.0, 0.5),
    "climb_share": (0.0, 0.9), "rolling_share": (0.0, 0.1), "grip": (0.1, 1.0), "shift_share": (0.0, 0.6), "wheelbase": (1.2, 1.6), "centre_ahead": (0.4, 0.8), "centre_height": (0.4, 0.9),
}  # fmt: skip


def parameters(formula: ls.Formula) -> list[tuple[str, str]]:
    return [tuple(one.split()) for one in formula.parameters.strip("()").split(",")]


class Evaluator(ast.NodeVisitor):
    """The grammar of a formula's body: + - * /, calls, names, numbers with or without a unit."""

    FUNCTIONS = {
        "sin": mpmath.sin, "cos": mpmath.cos, "arcsin": mpmath.asin, "sqrt": mpmath.sqrt, "arctan": mpmath.atan, "to_the": mpmath.power, "ln": mpmath.log,
        "cube_root": mpmath.cbrt,
        "square_root": mpmath.sqrt, "exponential": mpmath.exp, "magnitude": abs,
        "arctan_ratio": lambda z: mpmath.mpf(1) if z == 0 else mpmath.re(mpmath.atan(mpmath.sqrt(z)) / mpmath.sqrt(z)),
        "common_factor": lambda a, b: mpmath.mpf(math.gcd(int(a), int(b))),
        "logarithmic_mean": lambda x: mpmath.mpf(1) if x == 1 else (x - 1) / mpmath.log(x),
    }  # fmt: skip

    def __init__(self, values: dict[str, mpmath.mpf]) -> None:
        self.values = {"pi": +mpmath.pi, "turn": 2 * mpmath.pi, "half_turn": +mpmath.pi} | values

    def visit_Expression(self, node: ast.Expression) -> mpmath.mpf:
        return self.visit(node.body)

    def visit_BinOp(self, node: ast.BinOp) -> mpmath.mpf:
        left, right = self.visit(node.left), self.visit(node.right)
        match node.op:
            case ast.Add():
                return left + right
            case ast.Sub():
                return left - right
            case ast.Mult():
                return left * right
            case ast.Div():
                return left / right
        raise AssertionError(f"a body has the operator {node.op}")

    def visit_Call(self, node: ast.Call) -> mpmath.mpf:
        name, arguments = node.func.id, [self.visit(one) for one in node.args]
        if name in self.FUNCTIONS:
            return self.FUNCTIONS[name](*arguments)
        inner = FORMULAS[name]
        return evaluate(inner, dict(zip((word for _, word in parameters(inner)), arguments, strict=True)))

    def visit_Name(self, node: ast.Name) -> mpmath.mpf:
        return self.values[node.id]

    def visit_Constant(self, node: ast.Constant) -> mpmath.mpf:
        return mpmath.mpf(str(node.value))

    def generic_visit(self, node: ast.AST) -> mpmath.mpf:
        raise AssertionError(f"a body has what no reader reads: {ast.dump(node)}")


def evaluate(formula: ls.Formula, values: dict[str, mpmath.mpf]) -> mpmath.mpf:
    body = re.sub(r"(\d+\.\d+)_(\w+)", r"(\1 * unit_\2)", " ".join(formula.body.split()))
    units = {f"unit_{name}": value for name, value in UNITS.items()}
    return Evaluator(units | values).visit(ast.parse(body, mode="eval"))


def test_every_formula_is_here() -> None:
    assert len(FORMULAS) == len(ls.formulas()) > 60


@pytest.fixture(scope="module")
def accuracy() -> Iterator[dict[str, float]]:
    """The worst error of each formula, which a whole run leaves as a table in build/."""
    table: dict[str, float] = {}
    yield table
    if len(table) == len(FORMULAS) and BUILD.is_dir():
        lines = [f"{name},{ROWS},{worst:.2f}" for name, worst in sorted(table.items())]
        (BUILD / "formula_accuracy.csv").write_text("\n".join(["formula,rows,worst_ulp", *lines, ""]), encoding="utf-8")


@pytest.mark.parametrize("name", FORMULAS)
def test_a_formula_is_what_its_text_says(name: str, accuracy: dict[str, float]) -> None:
    formula = FORMULAS[name]
    row = random.Random(zlib.crc32(name.encode()))
    worst, done, tried = 0.0, 0, 0
    with mpmath.workdps(50):
        while done < ROWS:
            tried += 1
            assert tried < 40 * ROWS, "the spans lie outside the formula's range"
            numbers: dict[str, float] = {}
            for kind, word in parameters(formula):
                if kind in COUNTS:
                    numbers[word] = row.randint(*COUNTS[kind])
                else:
                    numbers[word] = row.uniform(*SPANS.get(word, SPANS.get(kind, (0.2, 3.0))))
            try:
                got = formula.evaluate(*numbers.values())
            except ls.Error:
                continue
            done += 1
            exact = evaluate(formula, {word: mpmath.mpf(value) for word, value in numbers.items()})
            # A difference of two terms is as good as its terms; every other result is good to a few ulp of itself.
            terms = max(abs(exact), 1 if " - " in formula.body else 0)
            worst = max(worst, float(abs(got - exact) / terms) * 2.0**52)
    accuracy[name] = worst
    assert worst <= 8.0, f"{worst:.1f} ulp"
