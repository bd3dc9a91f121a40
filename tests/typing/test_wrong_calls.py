# SPDX-License-Identifier: MIT
"""A wrong call says which argument, what came, and what was expected; and the stubs tell the truth of results."""

from __future__ import annotations

import ast
import datetime
import importlib.util
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import layshaft as ls
import pytest

_spec = importlib.util.spec_from_file_location("wrong_calls", Path(__file__).with_name("wrong_calls.py"))
assert _spec is not None and _spec.loader is not None
calls: Any = importlib.util.module_from_spec(_spec)
sys.modules[_spec.name] = calls
unchecked: Any = ls  # what is called wrongly on purpose
_spec.loader.exec_module(calls)

BY_NAME: dict[str, list[Any]] = {}
for _one in calls.wrong_calls():
    BY_NAME.setdefault(_one.name, []).append(_one)


def _complaint(one: Any) -> str | None:
    """What is wrong with the error of a wrong call; None where nothing is."""
    try:
        result = one.call()
    except (TypeError, ls.Error) as error:
        said = str(error)
    except Exception as error:
        return f"{one}: {type(error).__name__}: {error}"
    else:
        return f"{one}: no error, but {result!r}"
    named = one.parameter in said or "no number of this name" in said
    if one.name in calls.QUANTITIES or one.name in ("TyreSize", "ChainSeries"):
        named = True  # they are called by one argument, and tell by their own name or by its text
    if not named or not any(word in said for word in one.expected):
        return f"{one}: {said}"
    return None


def test_there_are_thousands_of_wrong_calls_over_everything_that_takes_arguments() -> None:
    assert len(BY_NAME) > 400 and sum(map(len, BY_NAME.values())) > 6000


@pytest.mark.parametrize("name", BY_NAME)
def test_a_wrong_call_names_the_argument_and_what_was_expected(name: str) -> None:
    complaints = [complaint for one in BY_NAME[name] if (complaint := _complaint(one))]
    assert not complaints, "\n".join(complaints)


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: unchecked.road_speed(9000, 12.0, "2 m"), "engine_speed: expected an AngularSpeed such as 9500 * rpm or '9500 rpm', got int 9000"),
        (lambda: unchecked.ChainLoop("520", 13.5, 50), "front: expected a number of teeth, an int, got float 13.5"),
        (
            lambda: unchecked.survey(*(calls.instance(name) for name in ("Machine", "Space", "Goals")), 3),
            "visit: expected a function, or None, got int 3",
        ),
        (lambda: unchecked.RideLog(time_s=None, speed_kmh=[20, 21]), "time_s: expected a list or tuple, got None"),
        (lambda: unchecked.ToothShares(teeth=3, rest=0.1), "teeth: expected a list or tuple, got int 3"),
    ],
)  # fmt: skip
def test_such_sentences_read(call: Any, sentence: str) -> None:
    with pytest.raises(TypeError) as caught:
        call()
    assert str(caught.value) == sentence


# --- Results ----------------------------------------------------------------------------------------------------------


def _conforms(value: object, annotation: ast.expr) -> bool:
    """Whether a value is of the type that a stub names."""
    text = ast.unparse(annotation)
    if isinstance(annotation, ast.BinOp):
        return _conforms(value, annotation.left) or _conforms(value, annotation.right)
    if text in ("Any", "_T_co"):
        return True
    if text == "None":
        return value is None
    plain: dict[str, type] = {"float": float, "int": int, "str": str, "bool": bool, "date": datetime.date}
    if text in plain:
        return type(value) is plain[text]
    if not isinstance(annotation, ast.Subscript):
        return type(value) is getattr(ls, text)
    origin = ast.unparse(annotation.value)
    if origin == "Literal":
        return value in calls._words(annotation)
    inner = annotation.slice.elts if isinstance(annotation.slice, ast.Tuple) else [annotation.slice]
    if origin == "tuple":
        if type(value) is not tuple:
            return False
        if len(inner) == 2 and ast.unparse(inner[1]) == "...":
            return all(_conforms(one, inner[0]) for one in value)
        return len(value) == len(inner) and all(map(_conforms, value, inner))
    if origin == "dict":
        return type(value) is dict and all(_conforms(k, inner[0]) and _conforms(v, inner[1]) for k, v in value.items())
    assert origin == "Band", text
    return isinstance(value, ls.Band) and all(
        _conforms(one, inner[0]) for one in (value.low, value.nominal, value.high)
    )


def _results() -> Iterator[tuple[str, object, ast.expr]]:
    """Name, value and stated type of every result that can be had from the arguments at hand."""
    for node in calls.STUB.body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            if len(calls.STUB.functions(node.name)) == 1:
                try:
                    value = getattr(ls, node.name)(**calls.required(node, node.name))
                except ls.Error:
                    continue  # asks for other numbers than those at hand
                yield node.name, value, calls.STUB.written_out(node.returns)
        elif isinstance(node, ast.ClassDef) and hasattr(ls, node.name):
            try:
                owner = calls.instance(node.name)
            except (ls.Error, IndexError):
                continue
            for member in node.body:
                if isinstance(member, ast.FunctionDef) and not member.name.startswith("__"):
                    name = f"{node.name}.{member.name}"
                    value = getattr(owner, member.name)
                    if not any(ast.unparse(one) == "property" for one in member.decorator_list):
                        try:
                            value = value(**calls.required(member, name))
                        except ls.Error:
                            continue
                    yield name, value, calls.STUB.written_out(member.returns)


def test_what_comes_is_of_the_type_that_the_stub_names() -> None:
    told = list(_results())
    assert len(told) > 800
    lies = [f"{name}: {ast.unparse(kind)}, but {value!r}" for name, value, kind in told if not _conforms(value, kind)]
    assert not lies, "\n".join(lies)


def test_the_stub_names_every_measure_there_is() -> None:
    assert calls._words(calls.STUB.written_out(ast.Name("_Measure"))) == list(ls.measures())
