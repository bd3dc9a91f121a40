# SPDX-License-Identifier: MIT
"""Workings read back from outside: their lines by pint and sympy, their HTML and Markdown by parsers.

Outside check: general libraries (pint, sympy, html5lib, markdown-it) work out and read what layshaft wrote.
"""

from __future__ import annotations

import functools
import math
import re
from pathlib import Path
from xml.etree import ElementTree

import html5lib
import layshaft as ls
import pint
import pytest
import sympy
from markdown_it import MarkdownIt
from sympy.parsing.latex import parse_latex

MACHINES = Path(__file__).resolve().parents[2] / "examples" / "machines"
MATHML = "{http://www.w3.org/1998/Math/MathML}"
UNITS = {  # where pint spells a unit otherwise
    "Nm": "newton * meter", "lbf ft": "lbf * foot", "kg/m": "kilogram / meter", "in": "inch", "%": "percent", "rev": "turn",
    "deg": "degree", "lb": "pound", "s": "second", "m/s2": "m/s**2", "m2": "m**2", "kg/m3": "kg/m**3", "N s/m": "newton*second/meter",
}  # fmt: skip
pint_units = pint.UnitRegistry()


def names_of(explain: object) -> list[str]:
    """Every name there is, as the error of an unknown one lists them."""
    with pytest.raises(ls.ParseError) as error:
        explain("no such number")  # type: ignore[operator]
    return re.findall(r'"([^"]+)"', error.value.expected)


def workings() -> dict[str, ls.Working]:
    found: dict[str, ls.Working] = {}
    for path in sorted(MACHINES.glob("*.json")):
        machine = ls.Machine.from_json(path.read_text(encoding="utf-8"))
        stock = machine.stock
        at = {
            "gear": 2,
            "engine_speed": 0.8 * machine.gearbox.rev_limit,
            "speed": 0.9 * ls.appraise(machine, stock).speed_range(2).highest.low,
        }
        for what in names_of(lambda what, m=machine: ls.explain(m, m.stock, what)):
            found[f"{path.stem}, {what}"] = ls.explain(machine, stock, what, **at)
        trial = ls.Setup(
            front=stock.front, rear=stock.rear + 1, tyre=stock.tyre, circumference=stock.circumference,
            tread_worn="0 mm" if stock.circumference else "3 mm", drive_efficiency=0.96,
        )  # fmt: skip
        base = ls.Setup(
            front=stock.front, rear=stock.rear, tyre=stock.tyre, circumference=stock.circumference,
            drive_efficiency=ls.Band(0.96, 0.97, 0.98),
        )  # fmt: skip
        comparison = ls.compare(machine, base, trial)
        for what in names_of(comparison.explain):
            if "wear" in what and stock.circumference:
                continue  # a measured rollout has its wear in it
            found[f"{path.stem}, change of {what}"] = comparison.explain(what)
    loop = ls.ChainLoop("08B", 21, 63)
    for what in names_of(loop.explain):
        found[f"loop, {what}"] = loop.explain(what, centre="500 mm", links=122)
    sprocket = ls.Sprocket("12B", 17)
    for what in names_of(sprocket.explain):
        found[f"sprocket, {what}"] = sprocket.explain(what)
    made = ls.ChainMade(seal="shaped", pin_diameter="4.45 mm")
    duty = ls.ChainDuty(torque="50 Nm", shaft_speed="1000 rpm", spike=1.5)
    for what in ("pull", "tight tension", "safety", "efficiency"):
        found[f"loads, {what}"] = ls.explain_chain_loads(loop, duty, what, made=made)
    arm = ls.Suspension(
        layshaft_ahead="75 mm", layshaft_above="10 mm", arm="500 mm", droop="18 deg", rest="12 deg", bump="-6 deg"
    )
    travel = ls.slack_through_travel(arm, loop, 142, slack="30 mm")
    for what in ("spare length", "slack"):
        found[f"travel, {what}"] = travel.explain(what, "6 deg")
    form = ls.AnsiToothForm(ls.Sprocket("40", 17))
    for what in names_of(form.explain):
        found[f"ANSI tooth, {what}"] = form.explain(what)
    pair = ls.Interchange("12A", "12B")
    for what in names_of(pair.explain):
        found[f"interchange, {what}"] = pair.explain(what)
    for marking in ("110/90-18", "3.50-10", "MT90-16"):
        tyre = ls.TyreSize(marking, "special")
        for what in names_of(tyre.explain):
            found[f"{marking}, {what}"] = tyre.explain(what)
    gravel = ls.RoadLoad.from_parts(mass="220 kg", surface="gravel", machine="motorcycle", head_wind="15 km/h")
    stated = ls.RoadLoad(constant="40 N", linear="1.5 N s/m", quadratic="0.3 kg/m", mass="190 kg")
    for name, road in {"gravel": gravel, "stated": stated, "table": ls.RoadLoad.by_mass("180 kg")}.items():
        for what in names_of(road.explain):
            found[f"{name}, {what}"] = road.explain(
                what, speed="60 km/h", slope=0.08, mass="225 kg", start="70 km/h", end="30 km/h"
            )
    return found


WORKINGS = workings()


def quantity(number: str, unit: str) -> pint.Quantity:
    return pint_units.Quantity(float(number), UNITS.get(unit, unit))


def worked_out(line: str) -> pint.Quantity:
    """A line of numbers, functions and units, by pint: '5000 rpm * 2054 mm / (1 rev * 16.4)'."""
    number = r"(?<![\w.])(\d+(?:\.\d+)?)"
    units = r"(rpm|rev|deg|mm|in|km/h|mph|km|mile|lbf ft|lbf|lb|Nm|kN|kW|hp|kg/m3|kg/m|kg|m/s2|m2|N s/m|N|s|m|MPa|bar|J|%)(?![\w/])"
    line = re.sub(rf"{number} {units}", r"quantity('\1', '\2')", line)

    def of_angle(function: object) -> object:
        return lambda angle: function(pint_units.Quantity(angle).m_as("radian"))  # type: ignore[operator]

    def of_number(function: object) -> object:
        return lambda number: function(pint_units.Quantity(number).m_as(""))  # type: ignore[operator]

    names = {
        "quantity": quantity, "pi": math.pi, "sin": of_angle(math.sin), "cos": of_angle(math.cos), "ln": of_number(math.log),
        "arcsin": lambda sine: pint_units.Quantity(of_number(math.asin)(sine), "radian"),  # type: ignore[operator]
        "arctan": of_number(math.atan), "abs": abs,
        "sqrt": lambda square: square**0.5, "gcd": math.gcd, "cbrt": of_number(lambda cube: cube ** (1 / 3)),
    }  # fmt: skip
    return pint_units.Quantity(eval(line, {"__builtins__": {}}, names))


def assert_shown(numbers: str, shown: str) -> None:
    """The line of numbers comes to the result to half of its last digit."""
    digits, _, unit = shown.partition(" ")
    last = 10.0 ** -len(digits.partition(".")[2])
    value = worked_out(numbers).m_as(UNITS.get(unit, unit) or "dimensionless")
    assert abs(value - float(digits)) <= 0.5 * last * (1 + 1e-9), f"{numbers} = {value}, shown {shown}"


@pytest.mark.parametrize("units", ["metric", "us"])
@pytest.mark.parametrize("name", WORKINGS)
def test_every_line_of_numbers_comes_to_its_result(name: str, units: str) -> None:
    text = WORKINGS[name].to_text(units=units)
    lines = re.findall(r"^ +\S+ = .*\n +  = (.*)\n +  = ([^\n(]*?)(?:  \((?:low|high|nominal)\))?$", text, re.MULTILINE)
    computed = sum(step.kind == "computed" for step in WORKINGS[name].steps)
    assert len(lines) >= computed
    for numbers, shown in lines:
        assert_shown(numbers, shown)


@pytest.mark.parametrize("name", WORKINGS)
def test_the_last_line_of_the_text_is_the_result(name: str) -> None:
    working = WORKINGS[name]
    *_, last = working.to_text().rstrip("\n").split("\n")
    parts = last.split(" = ")
    digits, _, unit = parts[-1].partition(" ")
    result = working.result.runs["nominal"]
    if isinstance(result, (int, float)):
        value = float(result) * (100.0 if unit == "%" else 1.0)
    else:
        value = result / getattr(
            ls, {"km/h": "kmh", "in": "inch", "lbf ft": "lbf_ft", "kg/m": "kg_per_m"}.get(unit, unit)
        )
    assert abs(value - float(digits)) <= 0.5 * 10.0 ** -len(digits.partition(".")[2]) * (1 + 1e-9)
    if len(parts) == 4:
        assert_shown(parts[2], parts[3])


def factor(unit: str) -> float:
    """A unit's size in SI, by pint."""
    return float(pint_units.Quantity(1.0, UNITS.get(unit, unit)).to_base_units().magnitude)


@functools.cache  # Markdown and LaTeX hold the same
def by_sympy(tex: str) -> float:
    """A piece of TeX with numbers and units, read and worked out by sympy, in SI."""
    tex = tex.replace(r"^{\circ}", r"\cdot{" + repr(math.pi / 180) + "}").replace(r"\,\%", r"\cdot{0.01}")
    tex = re.sub(r"\\,\\mathrm\{([^}]+)\}", lambda unit: r"\cdot{" + f"{factor(unit[1]):.17f}" + "}", tex)
    return float(parse_latex(tex).subs(sympy.Symbol("pi"), sympy.pi))


@pytest.mark.parametrize("name", [name for name in WORKINGS if "passes" not in name and "distinct" not in name])
def test_the_last_line_of_markdown_and_latex_is_the_result_by_sympy(name: str) -> None:
    working = WORKINGS[name]
    for text, mark in ((working.to_markdown(), "$$"), (working.to_latex(), r"\[")):
        *_, last = text.rstrip().split("\n")
        line = last.removeprefix(mark).removesuffix(mark.replace("[", "]")).strip()
        parts = line.split(" = ")
        digits = re.match(r"-?[\d.]+", parts[-1])
        assert digits
        size = by_sympy(parts[-1].replace(digits[0], "1.0", 1)) if parts[-1] != digits[0] else 1.0
        tolerance = 0.5 * 10.0 ** -len(digits[0].partition(".")[2]) * size * (1 + 1e-9)
        if len(parts) == 4:
            assert abs(by_sympy(parts[2]) - float(digits[0]) * size) <= tolerance, line


def of_mathml(element: ElementTree.Element) -> str:
    """Presentation MathML as an expression that pint works out."""
    inner = "".join(of_mathml(child) for child in element)
    match element.tag.removeprefix(MATHML):
        case "mfrac":
            return f"(({of_mathml(element[0])})/({of_mathml(element[1])}))"
        case "msqrt":
            return f"sqrt({inner})"
        case "mroot":
            return f"cbrt({of_mathml(element[0])})"
        case "mo":
            signs = {
                "\u2212": "-",
                "\u00b7": "*",
                "\u2061": "",
                "\u2032": "",
                "+": "+",
                "=": " = ",
                "(": "(",
                ")": ")",
                ",": ",",
            }
            return signs[element.text or ""]
        case "mn":
            return element.text or ""
        case "mi":
            text = {"\u03c0": "pi", "\u00b0": " deg"}.get(element.text or "", element.text or "")
            normal = element.get("mathvariant") == "normal"  # a unit is, a symbol or a function is not
            return f" {text}" if normal and not text.startswith(" ") else text
        case "msub" | "msubsup":
            return "symbol"
        case "mspace":
            return ""
    return inner


@pytest.mark.parametrize("name", WORKINGS)
def test_the_html_is_html_and_its_last_line_is_the_result(name: str) -> None:
    html = WORKINGS[name].to_html()
    html5lib.HTMLParser(strict=True).parseFragment(html)
    root = ElementTree.fromstring(html.replace("&nbsp;", " "))  # and well-formed XML as well
    last = root.findall(".//div[@class='last-line']")[-1]
    parts = of_mathml(last[0]).split(" = ")
    if len(parts) == 4:
        assert_shown(parts[2], parts[3].strip())
    assert "<script" not in html


HOSTILE = (
    "</h3><script>alert(1)</script><img src=x onerror=alert(2)> & \"q\" 'a' $x$ \\input{a} `c` *b* [d](javascript:e)"
)


def hostile_working() -> ls.Working:
    machine = ls.Machine.from_json((MACHINES / "trail_bike.json").read_text(encoding="utf-8"))
    named = ls.Machine(
        name=HOSTILE, gearbox=machine.gearbox, adjuster=machine.adjuster, chain=machine.chain,
        speedometer=machine.speedometer, stock=machine.stock,
    )  # fmt: skip
    return ls.explain(named, named.stock, "highest speed", gear=4)


def test_text_from_outside_cannot_act_in_html() -> None:
    tree = html5lib.parseFragment(hostile_working().to_html(), namespaceHTMLElements=False)
    tags = {element.tag for element in tree.iter() if isinstance(element.tag, str)}
    assert not tags & {"script", "img"}
    assert not [name for element in tree.iter() for name in element.attrib if str(name).startswith("on")]
    assert HOSTILE in "".join(tree.itertext())


def test_text_from_outside_cannot_act_in_markdown() -> None:
    html = MarkdownIt("commonmark", {"html": True}).render(hostile_working().to_markdown(fold=False))
    tree = html5lib.parseFragment(html, namespaceHTMLElements=False)
    tags = {element.tag for element in tree.iter() if isinstance(element.tag, str)}
    assert not tags & {"script", "img", "a"}
    (heading,) = tree.iter("h3")
    assert HOSTILE in "".join(heading.itertext())
    assert not list(heading)


def test_text_from_outside_cannot_act_in_latex() -> None:
    heading = hostile_working().to_latex().split("\n", 1)[0]
    plain = heading.replace(r"\textbackslash{}", "").replace(r"\textless{}", "").replace(r"\textgreater{}", "")
    assert r"\input" not in plain and not re.search(r"(?<!\\)[$&#%_]", plain.removeprefix(r"\subsection*{"))


def test_a_decimal_comma_goes_everywhere() -> None:
    working = WORKINGS["loop, links"]
    text = working.to_text(decimal=",").rstrip().split("\n")[-1]
    assert not re.search(r"\d\.\d", text) and re.search(r"\d,\d", text)
    assert "{,}" in working.to_latex(decimal=",") and "{,}" in working.to_markdown(decimal=",")
    assert not re.search(r"<mn>\d*\.\d*</mn>", working.to_html(decimal=","))
