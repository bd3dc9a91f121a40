# SPDX-License-Identifier: MIT
"""The same study for many machines: one after another, in several processes, or as tasks of a Dask cluster.

A question is a machine, a Space and Goals. Answers come back in the order of the questions. A study that outgrows one
machine goes to a cluster by ``delayed``: each chunk is a task that knows nothing of the others.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, Any, Literal, TypeAlias

from ._core import Choice, Error, Goals, Machine, Space
from ._escape import in_short
from .choosing import choose

if TYPE_CHECKING:
    from dask.delayed import Delayed

__all__ = ["Answer", "Question", "choose_each", "delayed"]

Question: TypeAlias = tuple[Machine, Space, Goals]
Answer: TypeAlias = Choice | Error


def _chunks(questions: Iterable[Question], size: int) -> Iterator[list[Question]]:
    if size < 1:
        raise ValueError(f"chunk is {size}; expected at least 1")
    chunk: list[Question] = []
    for question in questions:
        chunk.append(question)
        if len(chunk) == size:
            yield chunk
            chunk = []
    if chunk:
        yield chunk


def _answer(questions: Sequence[Question], shortlist: int, errors: Literal["raise", "keep"]) -> list[Answer]:
    answers: list[Answer] = []
    for machine, space, goals in questions:
        try:
            answers.append(choose(machine, space, goals, shortlist=shortlist, progress=False))
        except Error as error:
            if errors == "raise":
                raise
            answers.append(error)
    return answers


def _check(errors: str) -> None:
    if errors not in ("raise", "keep"):
        raise ValueError(f"errors is {in_short(errors)}; expected 'raise' or 'keep'")


def choose_each(
    questions: Iterable[Question],
    *,
    processes: int = 1,
    chunk: int = 8,
    shortlist: int = 3,
    errors: Literal["raise", "keep"] = "raise",
) -> list[Answer]:
    """Answers every question: a list of Choice. With ``errors="keep"`` a question that cannot be asked stands there as
    its Error, and the others are answered; else it is raised. ``chunk`` questions go to a process at a time."""
    _check(errors)
    if processes < 1:
        raise ValueError(f"processes is {processes}; expected at least 1")
    if processes == 1:
        return [answer for part in _chunks(questions, chunk) for answer in _answer(part, shortlist, errors)]
    from concurrent.futures import ProcessPoolExecutor
    from multiprocessing import get_context

    # Started anew, not forked: a fork would copy locks that threads of this process hold.
    with ProcessPoolExecutor(processes, mp_context=get_context("spawn")) as pool:
        parts = [pool.submit(_answer, part, shortlist, errors) for part in _chunks(questions, chunk)]
        return [answer for part in parts for answer in part.result()]


def delayed(
    questions: Iterable[Question], *, chunk: int = 8, shortlist: int = 3, errors: Literal["raise", "keep"] = "raise"
) -> list[Delayed]:
    """The same as tasks of Dask, one a chunk: ``dask.compute(*tasks)`` gives a list of answers for each of them, on
    whatever cluster is connected. Needs Dask (``pip install layshaft[fleet]``)."""
    _check(errors)
    from dask.delayed import delayed as as_task

    task: Any = as_task(_answer, pure=True)
    return [task(part, shortlist, errors) for part in _chunks(questions, chunk)]
