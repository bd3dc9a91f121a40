# SPDX-License-Identifier: MIT
"""Formulas as TeX and MathML, read by general libraries; their plain text, worked out, is the formula again."""

from __future__ import annotations

import math
import re
from xml.etree import ElementTree

import layshaft as ls
import mpmath
import pytest
from matplotlib.mathtext import MathTextParser

FORMULAS = {formula.name: formula for formula in ls.formulas()}


@pytest.mark.parametrize("name", FORMULAS)
def test_the_tex_is_read_by_a_tex_reader(name: str) -> None:
    parser = MathTextParser("path")
    width, height, *_ = parser.parse(FORMULAS[name]._repr_latex_())
    assert width > 10 and height > 4


@pytest.mark.parametrize("name", FORMULAS)
def test_the_mathml_is_well_formed(name: str) -> None:
    root = ElementTree.fromstring(FORMULAS[name].to_mathml())
    assert root.tag == "{http://www.w3.org/1998/Math/MathML}math"
    for fraction in root.iter("{http://www.w3.org/1998/Math/MathML}mfrac"):
        assert len(fraction) == 2
    for name_ in ("msub", "msubsup"):
        for index in root.iter(f"{{http://www.w3.org/1998/Math/MathML}}{name_}"):
            assert len(index) == (2 if name_ == "msub" else 3)


def test_a_line_of_symbols_works_out_to_the_functions_value() -> None:
    """Source: the function itself; the line is put into numbers by an evaluator of its own."""
    cases = {
        "road_speed": ({"n": 600.0, "i": 20.0, "U": 2.0}, (600.0, 20.0, 2.0)),
        "turns_ratio": ({"i0": 3.0, "U0": 2.0, "i1": 3.3, "U1": 2.1}, (3.0, 2.0, 3.3, 2.1)),
        "links_approximate": ({"p": 0.0127, "z1": 21, "z2": 63, "C": 0.5}, (0.0127, 21, 63, 0.5)),
        "centre_approximate": ({"p": 0.0127, "z1": 21, "z2": 63, "X": 122.0}, (0.0127, 21, 63, 122.0)),
        "pitch_diameter": ({"p": 0.015875, "z": 14}, (0.015875, 14)),
        "equivalent_rear": ({"z1": 14, "z2": 40, "z1,1": 13}, (14, 40, 13)),
        "loop_links": ({"p": 0.0127, "z1": 14, "z2": 40, "C": 0.5, "phi": 0.1}, (0.0127, 14, 40, 0.5, 0.1)),
        "worn_diameter": ({"D": 0.65, "w": 0.004}, (0.65, 0.004)),
        "wear_factor": ({"U0": 2.0, "U_new,0": 2.1, "U1": 2.05, "U_new,1": 2.2}, (2.0, 2.1, 2.05, 2.2)),
        "contribution": ({"F": 1.06, "f": 1.125}, (1.06, 1.125)),
        "loss_factor": ({"eta0": 0.95, "eta1": 0.9}, (0.95, 0.9)),
        "wear_room": ({"x_end": 110.3, "X": 108, "epsilon": 0.001}, (110.3, 108, 0.001)),
        "passes": ({"z": 14, "X": 108}, (14, 108)),
        "highest_lawful_reading": ({"V2": 25.0}, (25.0,)),
    }  # fmt: skip
    for name, (values, numbers) in cases.items():
        line = FORMULAS[name].to_text().split(" = ", 1)[1]
        line = re.sub(r"([\d.]+) rev", r"(\1 * 2 * pi)", line)
        line = re.sub(r"([\d.]+) deg", r"(\1 * pi / 180)", line)
        line = re.sub(r"([\d.]+) km/h", r"(\1 / 3.6)", line)
        for symbol in sorted(values, key=len, reverse=True):
            line = re.sub(rf"(?<![\w']){re.escape(symbol)}(?![\w'])", f"({values[symbol]})", line)
        functions = {
            "pi": mpmath.pi,
            "sin": mpmath.sin,
            "cos": mpmath.cos,
            "ln": mpmath.log,
            "sqrt": mpmath.sqrt,
            "gcd": math.gcd,
        }
        assert float(eval(line, functions)) == pytest.approx(FORMULAS[name].evaluate(*numbers), rel=1e-14)
