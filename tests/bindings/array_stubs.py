# SPDX-License-Identifier: MIT
"""Writes the stub of layshaft._arrays from the list that its functions are made of.

    python tests/bindings/array_stubs.py > bindings/layshaft/_arrays.pyi

A test holds the kept stub against what this makes.
"""

from __future__ import annotations

from collections.abc import Iterator

from layshaft import _arrays

HEAD = """# SPDX-License-Identifier: MIT
# Made by tests/bindings/array_stubs.py of the list in bindings/array_formulas.cpp.
# NumPy says of its ufunc that it is final; and one number is one of the sequences' cases too, with another result.
# mypy: disable-error-code="overload-overlap"
# pyright: reportGeneralTypeIssues=false, reportIncompatibleMethodOverride=false, reportOverlappingOverload=false
from collections.abc import Callable, Sequence
from typing import Any, Final, Protocol, TypeAlias, overload, type_check_only

import numpy as np
from numpy.typing import ArrayLike, NDArray

@type_check_only
class _TakesUfuncs(Protocol):
    def __array_ufunc__(self, ufunc: Any, method: Any, /, *inputs: Any, **kwargs: Any) -> Any: ...

_Number: TypeAlias = float | np.bool | np.integer[Any] | np.floating[Any]
_Plain: TypeAlias = (
    _Number
    | NDArray[np.bool | np.integer[Any] | np.floating[Any]]
    | Sequence[_Number]
    | Sequence[Sequence[_Number]]
    | Sequence[Sequence[Sequence[_Number]]]
)
_Other: TypeAlias = ArrayLike | _TakesUfuncs

# Every function is a real numpy.ufunc of one output. Arguments go by position; whatever NumPy's own ufuncs take by
# keyword (out, where, casting, order, dtype, subok) these take too. Numbers give a number, arrays and sequences an array,
# and whatever answers for itself (a Series, a lazy array, an expression) what it likes.
"""
LETTERS = "abcdefgh"


def class_of(inputs: int) -> str:
    def call(kind: str, result: str) -> str:
        arguments = "".join(f"        {letter}: {kind},\n" for letter in LETTERS[:inputs])
        return (
            f"    @overload\n    def __call__(\n        self,\n{arguments}        /,\n        out: Any = None,\n"
            f"        *,\n        where: Any = True,\n        **options: Any,\n    ) -> {result}: ...\n"
        )

    return (
        f"\n@type_check_only\nclass _Ufunc{inputs}(np.ufunc):  # type: ignore[misc]\n"
        + call("_Number", "np.float64")
        + call("_Plain", "NDArray[np.float64]")
        + call("_Other", "Any")
    )


def lines() -> Iterator[str]:
    formulas = sorted(_arrays._formulas())
    yield HEAD
    for inputs in sorted({len(arguments) for _, _, arguments, _ in formulas}):
        yield class_of(inputs)
    yield "\n"
    for name, _, arguments, _ in formulas:
        says = getattr(_arrays, name).__doc__.split("\n\n")[1]  # behind the line that NumPy puts before
        yield f'{name}: Final[_Ufunc{len(arguments)}]\n"""{says}"""\n'
    yield """
def _formulas() -> list[tuple[str, str, tuple[tuple[str, str, str, str], ...], tuple[str, str, str, str]]]: ...
def _left_out() -> list[str]: ...
def _mind(looks_before: Callable[..., Any], looks_after: Callable[..., Any], /) -> None: ...
"""


if __name__ == "__main__":
    print("".join(lines()), end="")
