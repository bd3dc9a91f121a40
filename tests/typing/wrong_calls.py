# SPDX-License-Identifier: MIT
"""Calls with one wrong argument each, made from the type stubs: every parameter of every public function, constructor
and method gets what its type does not take, beside arguments that are right. And what is right, to hold the types of
results against what comes."""

from __future__ import annotations

import ast
import datetime
import importlib.util
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any

import layshaft as ls

TOP = Path(__file__).resolve().parents[2]
_spec = importlib.util.spec_from_file_location("reference_stubs", TOP / "bindings/reference/stubs.py")
assert _spec is not None and _spec.loader is not None
_stubs = importlib.util.module_from_spec(_spec)
sys.modules[_spec.name] = _stubs
_spec.loader.exec_module(_stubs)
STUB = _stubs.Stub(TOP / "bindings/layshaft/_core.pyi")

QUANTITIES = {
    "Length": "612 mm", "Area": "0.6 m2", "Mass": "220 kg", "Duration": "2 s", "Speed": "50 km/h",
    "Acceleration": "2 m/s2", "Force": "300 N", "Torque": "20 Nm", "Power": "15 kW", "Energy": "900 J",
    "Pressure": "20 MPa", "Density": "1.2 kg/m3", "LinearDensity": "1.1 kg/m", "ForcePerSpeed": "2 N s/m",
    "Angle": "30 deg", "AngularSpeed": "4000 rpm", "MomentOfInertia": "0.6 kg m2", "Temperature": "290 K",
}  # fmt: skip


def _machine() -> ls.Machine:
    return ls.Machine.from_json((TOP / "examples/machines/trail_bike.json").read_text(encoding="utf-8"))


def _trial() -> ls.Setup:
    return ls.Setup(front=13, rear=50, tyre="120/90-18")


def _on_road() -> ls.OnRoad:
    road = ls.appraise(_machine(), _trial()).road
    assert road is not None
    return road


# What types alone do not tell: objects that only functions make, and arguments that are right.
INSTANCES: dict[str, Callable[[], Any]] = {
    "Appraisal": lambda: ls.appraise(_machine(), _trial()),
    "Body": lambda: _machine().body,
    "Caution": lambda: ls.compare(_machine(), _machine().stock, _trial()).cautions[0],
    "Chosen": lambda: ls.choose(_machine(), instance("Space"), instance("Goals")).ranked[0],
    "CoastDownFit": lambda: ls.fit_coast_down(
        [f"{n} s" for n in range(0, 24, 2)], [f"{90 - 2.4 * n + 0.02 * n * n} km/h" for n in range(0, 24, 2)], "230 kg"
    ),
    "Comparison": lambda: ls.compare(_machine(), _machine().stock, _trial()),
    "CostPart": lambda: ls.CostPart(price=60.0, life="15000 km"),
    "EngineCurve": lambda: ls.EngineCurve(
        [f"{n}000 rpm" for n in range(2, 8)], [f"{torque} Nm" for torque in (12, 16, 19, 20, 19, 16)]
    ),
    "Formula": lambda: ls.formulas()[0],
    "GearOnRoad": lambda: _on_road().gears[0],
    "LegalTread": lambda: ls.legal_tread("DE"),
    "Machine": _machine,
    "RideProfile": lambda: ls.RideProfile([instance("RideShare")]),
    "RideLog": lambda: ls.RideLog(time_s=[0, 1], speed_kmh=[20, 21]),
    "RoadLoad": lambda: ls.RoadLoad.by_mass("220 kg"),
    "Setup": _trial,
    "ShiftRule": lambda: ls.ShiftRule(["20 km/h"], ["10 km/h"]),
    "Space": lambda: ls.Space(fronts=[13], rears=[48, 50], tyres=["120/90-18"]),
    "Surface": lambda: ls.surface("gravel"),
    "Tread": lambda: ls.Tread(new_depth="9 mm", depth="5 mm"),
    "TyreFitness": lambda: ls.tyre_fitness("120/90-18", ls.TyreAsked(axle_load="150 kg")),
    "Working": lambda: ls.TyreSize("120/90-18").explain("circumference"),
}
RIGHT: dict[str, Any] = {
    "TyreSize.text": "120/90-18",
    "ChainSeries.name": "520",
    "Suspension.layshaft_ahead": "70 mm",
    "Suspension.layshaft_above": "10 mm",
    "Suspension.droop": "25 deg",
    "Suspension.rest": "15 deg",
    "Suspension.bump": "-5 deg",
    "SlackThroughTravel.links": 110,
    "Wish.want": 0.0,
    "RoadLoad.from_parts.rolling_coefficient": 0.02,
    "RoadLoad.from_parts.drag_area": "0.6 m2",
    "RideShare.share": 1.0,
    "SlackThroughTravel.explain.angle": "5 deg",
    "show.value": ls.mm,
    "symbol": "H",
    "region": "DE",
    "Gearbox.gears": [2.5, 1.5],
}
COUNTS = {"front": 13, "rear": 48, "links": 110, "gear": 2, "driven": 40, "index": 65}
# What may only be given without another, which is then left out.
INSTEAD = {
    "RoadLoad.from_parts.surface": "rolling_coefficient",
    "RoadLoad.from_parts.machine": "drag_area",
}


@dataclass
class Wrong:
    """One wrong call: `parameter` got `value`, and the error has to say that one of the words in `expected` was."""

    name: str
    parameter: str
    value: Any
    expected: tuple[str, ...]
    call: Callable[[], object]

    def __str__(self) -> str:
        return f"{self.name}({self.parameter}={self.value!r})"


def _members(annotation: ast.expr) -> list[ast.expr]:
    """The types that a union is made of."""
    if isinstance(annotation, ast.BinOp):
        return [*_members(annotation.left), *_members(annotation.right)]
    return [annotation]


def _words(annotation: ast.expr) -> list[Any]:
    """The words of a Literal."""
    if not (isinstance(annotation, ast.Subscript) and ast.unparse(annotation.value) == "Literal"):
        return []
    inner = annotation.slice
    return [ast.literal_eval(one) for one in (inner.elts if isinstance(inner, ast.Tuple) else [inner])]


def _right(annotation: ast.expr, place: str) -> Any:
    """An argument that is right by its type, or by what is said of it above."""
    for key in (place, place.split(".")[-1]):
        if key in RIGHT:
            return RIGHT[key]
    first = _members(annotation)[0]
    text = ast.unparse(first)
    if text == "str" and place.endswith(".what"):
        return "circumference"
    if text == "int" and place.split(".")[-1] in COUNTS:
        return COUNTS[place.split(".")[-1]]
    if words := _words(first):
        return words[0]
    if text in QUANTITIES:
        return QUANTITIES[text]
    if text.startswith("Callable"):
        return lambda *told: None
    if text in ("TyreSize", "ChainSeries"):
        return {"TyreSize": "120/90-18", "ChainSeries": "520"}[text]
    if text.startswith("Sequence"):
        assert isinstance(first, ast.Subscript)
        return [_right(first.slice, place + "[0]")]
    if text.startswith("Band"):
        assert isinstance(first, ast.Subscript)
        return _right(first.slice, place)
    plain: dict[str, Any] = {
        "float": 1.5, "int": 20, "bool": True, "str": "words", "date": datetime.date(2026, 5, 30), "None": None,
        "Any": None,
    }  # fmt: skip
    return plain[text] if text in plain else instance(text)


def instance(name: str) -> Any:
    """One of a class, made with what its constructor must have."""
    if name in INSTANCES:
        return INSTANCES[name]()
    return getattr(ls, name)(**required(STUB.functions(f"{name}.__init__")[0], name))


def _parameters(definition: ast.FunctionDef) -> list[tuple[str, ast.expr, bool]]:
    """Name, type and whether it must be given, of each parameter."""
    arguments = definition.args
    positional = [*arguments.posonlyargs, *arguments.args]
    need = len(positional) - len(arguments.defaults)
    all_of_them = [(one, place < need) for place, one in enumerate(positional)]
    all_of_them += [
        (one, default is None) for one, default in zip(arguments.kwonlyargs, arguments.kw_defaults, strict=True)
    ]
    return [
        (one.arg, STUB.written_out(one.annotation), must)
        for one, must in all_of_them
        if one.annotation is not None and one.arg not in ("self", "cls")
    ]


def required(definition: ast.FunctionDef, shown: str) -> dict[str, Any]:
    """Arguments that are right, for all that must be given."""
    return {
        name: _right(kind, f"{shown}.{name}")
        for name, kind, must in _parameters(definition)
        if must or f"{shown}.{name}" in RIGHT
    }


def _wrong_values(annotation: ast.expr) -> Iterator[tuple[Any, tuple[str, ...]]]:
    """What the type does not take, and words one of which the error has to hold."""
    kinds = _members(annotation)
    texts = [ast.unparse(kind) for kind in kinds]
    inner = [text.removeprefix("Band[").removesuffix("]") for text in texts]
    if texts in (["Any"], ["None"]) or "_T_co" in texts:
        return
    if any(text.startswith("Callable") for text in texts):
        yield from ((value, ("a function",)) for value in (object(), 1.5, "nonsense"))
        return
    quantities = [text for text in inner if text in QUANTITIES]
    words = [word for kind in kinds for word in _words(kind)]
    takes_number = "float" in inner or "int" in inner
    expected: list[str] = []
    for quantity in quantities:
        expected += [quantity]
    if takes_number:
        expected += ["a number", "an int", "number"]
    if words:
        expected += ["one of", "a str", *words]
    if "str" in texts and not quantities:
        expected += ["a str", "name", "such as", "one of", "marking", "JSON text"]
    if "bool" in texts:
        expected += ["True or False"]
    if "date" in texts:
        expected += ["date"]
    for text in inner:
        if text.startswith("Sequence"):
            expected += ["list or tuple", "list", "tuple", "sequence"]
        elif text[0].isupper():
            expected += [text.split("[")[0]]
    said = tuple(expected)
    yield object(), said
    if "None" not in texts:
        yield None, said
    if not takes_number:
        yield 1.5, said
    if quantities and not takes_number and len(set(quantities)) == 1:
        yield ("3 mm" if "Mass" in quantities else "3 kg"), said
        yield "3", said
        yield (ls.mm if "Mass" in quantities else ls.kg), said
    elif "str" not in texts:
        yield "nonsense", said
    if words:
        yield "nonsense", said
    if texts[0] == "float" or inner[0] == "float":
        yield float("nan"), ("finite",)
    if texts == ["int"] or texts == ["int", "None"]:
        yield 2.5, said
        yield True, said
    for kind in kinds:
        if ast.unparse(kind).startswith("Sequence"):
            assert isinstance(kind, ast.Subscript)
            for value, words_inside in _wrong_values(kind.slice):
                if type(value) is object:
                    yield [value], words_inside


def wrong_calls() -> Iterator[Wrong]:
    """All of them."""

    def of(qualified: str, shown: str, target: Callable[[], Callable[..., object]]) -> Iterator[Wrong]:
        may_be_none = {
            name
            for definition in STUB.functions(qualified)
            for name, kind, _ in _parameters(definition)
            if "None" in [ast.unparse(one) for one in _members(kind)]
        }
        for definition in STUB.functions(qualified):
            for name, kind, _ in _parameters(definition):
                for value, expected in _wrong_values(kind):
                    if value is None and name in may_be_none:
                        continue

                    def call(name: str = name, value: Any = value, definition: ast.FunctionDef = definition) -> object:
                        given = required(definition, shown) | {name: value}
                        given.pop(INSTEAD.get(f"{shown}.{name}", ""), None)
                        return target()(**given)

                    yield Wrong(shown, name, value, expected, call)

    def target_of(qualified: str, shown: str) -> Callable[..., object]:
        owner, _, last = shown.rpartition(".")
        decorators = [ast.unparse(one) for one in STUB.functions(qualified)[0].decorator_list]
        on: Any = ls if not owner else getattr(ls, owner) if "staticmethod" in decorators else instance(owner)
        target: Callable[..., object] = getattr(on, last)
        return target

    for qualified, shown in callables():
        yield from of(qualified, shown, partial(target_of, qualified, shown))


def callables() -> Iterator[tuple[str, str]]:
    """Every public function, constructor and method: its name in the stub, and as it is called."""
    seen = set()
    for node in STUB.body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_") and node.name not in seen:
            seen.add(node.name)
            yield node.name, node.name
        elif isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            for member in node.body:
                name = f"{node.name}.{getattr(member, 'name', '')}"
                if not isinstance(member, ast.FunctionDef) or name in seen:
                    continue
                seen.add(name)
                if member.name == "__init__":
                    yield name, node.name
                elif not member.name.startswith("_") and "property" not in map(ast.unparse, member.decorator_list):
                    yield name, name
