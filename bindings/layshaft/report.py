# SPDX-License-Identifier: MIT
"""Whole pages: an answer, its numbers with the working folded under each, a picture and the cautions, in one HTML file.

A page needs no network, no script and no other file: it can be sent, kept and printed. All text is escaped.

>>> import layshaft as ls
>>> from layshaft import report
>>> page = report.Page("A loop to check")
>>> loop = ls.ChainLoop("520", 13, 48)
>>> page.number("links", "108.16", loop.explain("links", centre="610 mm"))
>>> page.html().startswith("<!DOCTYPE html>")
True
"""

from __future__ import annotations

import base64
import re
from collections.abc import Iterable, Sequence
from html import escape
from os import PathLike
from pathlib import Path
from typing import Literal

from . import _core

__all__ = ["Page"]

_STYLE = """
:root { --ink: #20242a; --soft: #5d646e; --line: #d9d4ca; --paper: #fbfaf7; --rust: #9a4518; --sea: #245d7a; }
* { box-sizing: border-box; }
html { background: var(--paper); color: var(--ink); font: 16px/1.45 Georgia, "Noto Serif", serif; }
body { max-width: 46rem; margin: 0 auto; padding: 1.2rem 1rem 3rem; overflow-wrap: break-word; }
h1 { font-size: 1.55rem; line-height: 1.2; margin: 0 0 .6rem; }
h2 { font-size: 1.1rem; margin: 1.6rem 0 .35rem; color: var(--sea); }
p { margin: .5rem 0; }
.answer-first { border-left: .3rem solid var(--rust); padding: .2rem 0 .2rem .8rem; font-size: 1.1rem; }
.number { border-bottom: 1px solid var(--line); }
.number > summary, .number > .headline { display: flex; gap: .8rem; justify-content: space-between; padding: .4rem 0; }
.number > summary { cursor: pointer; list-style: none; }
.number > summary::-webkit-details-marker { display: none; }
.number > summary .label::before { content: "+"; position: absolute; left: 0; color: var(--rust); }
.number[open] > summary .label::before { content: "\\2212"; }
.value { text-align: right; font-variant-numeric: tabular-nums; }
.label { flex: 0 1 auto; min-width: 38%; padding-left: 1.1rem; position: relative; }
.working { background: #f2efe8; padding: .3rem .8rem .6rem; margin: 0 0 .6rem; font-size: .92rem; }
.working ol { padding-left: 1.7rem; }
.working li { margin: .25rem 0; }
.working summary { cursor: pointer; }
.step-note, .step-sides, .how-sure { color: var(--soft); font-size: .88rem; margin: .2rem 0; }
.step-lines, .last-line { overflow-x: auto; padding: .3rem 0; }
math { font-size: 1.02em; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
th, td { padding: .25rem .5rem .25rem 0; text-align: right; border-bottom: 1px solid var(--line); }
th:first-child, td:first-child { text-align: left; }
.table { overflow-x: auto; }
figure { margin: 1rem 0; }
figure img { width: 100%; height: auto; display: block; }
figcaption { color: var(--soft); font-size: .88rem; }
.cautions { border: 1px solid var(--rust); padding: .2rem .9rem .5rem; margin-top: 1.6rem; }
.cautions h2 { color: var(--rust); margin-top: .5rem; }
.cautions ul { padding-left: 1.1rem; margin: .3rem 0; }
@page { size: A4; margin: 13mm 15mm; }
@media print {
  html { background: #fff; font-size: 10pt; line-height: 1.3; }
  body { max-width: none; padding: 0; }
  h2 { margin-top: .8rem; break-after: avoid; }
  .number, figure, tr { break-inside: avoid; }
  .number > summary, .number > .headline { padding: .16rem 0; }
  .number:not([open]) > summary .label::before { content: ""; }
  .cautions { margin-top: .8rem; }
  .cautions li { font-size: .9rem; break-inside: avoid; }
  figure img { max-width: 82%; margin: 0 auto; }
}
"""


class Page:
    """A page that is written from top to bottom; every method adds to its end.

    :param title: what the page is about
    :param units: 'metric' or 'us', for the workings and the cautions
    :param decimal: '.' or ',', for the workings
    :param language: the language of the text that is put in, for readers aloud and for hyphens
    """

    def __init__(
        self,
        title: str,
        *,
        units: Literal["metric", "us"] = "metric",
        decimal: Literal[".", ","] = ".",
        language: str = "en",
    ) -> None:
        self._title = title
        self._units: Literal["metric", "us"] = units
        self._decimal: Literal[".", ","] = decimal
        self._language = language
        self._parts: list[str] = []

    def answer(self, text: str) -> None:
        """The answer, which a reader should see before all else."""
        self._parts.append(f'<p class="answer-first">{_text(_with_unit(text))}</p>')

    def heading(self, text: str) -> None:
        """The heading of what follows."""
        self._parts.append(f"<h2>{_text(text)}</h2>")

    def paragraph(self, text: str) -> None:
        """A paragraph of plain text."""
        self._parts.append(f"<p>{_text(text)}</p>")

    def number(self, label: str, value: str, working: _core.Working | None = None) -> None:
        """A number with what it is, and its working folded under it."""
        number = _text(_with_unit(value))
        headline = f'<span class="label">{_text(label)}</span><span class="value">{number}</span>'
        if working is None:
            self._parts.append(f'<div class="number"><div class="headline">{headline}</div></div>')
            return
        sentence = working.sentence(units=self._units, decimal=self._decimal)
        steps = working.steps_to_html(units=self._units, decimal=self._decimal)
        self._parts.append(
            f'<details class="number"><summary>{headline}</summary>\n<div class="working">'
            f'<p>{_text(sentence)}</p>\n<p class="how-sure">How sure: {_text(working.result.certainty)}, as the least '
            f"sure of all it rests on.</p>\n{steps}</div></details>"
        )

    def table(self, header: Sequence[str], rows: Iterable[Sequence[str]]) -> None:
        """A table; the first cell of each row says what the row is."""
        head = "".join(f'<th scope="col">{_text(cell)}</th>' for cell in header)
        lines = []
        for row in rows:
            if len(row) != len(header):
                raise ValueError(f"a row of {len(row)} cells in a table of {len(header)} columns: {list(row)!r}")
            first, *others = row
            cells = "".join(f"<td>{_text(cell)}</td>" for cell in others)
            lines.append(f'<tr><th scope="row">{_text(first)}</th>{cells}</tr>')
        body = "\n".join(lines)
        self._parts.append(
            f'<div class="table"><table>\n<thead><tr>{head}</tr></thead>\n<tbody>\n{body}\n</tbody></table></div>'
        )

    def figure(self, picture: str | PathLike[str], caption: str) -> None:
        """A picture (an SVG or PNG file), which becomes part of the page, and what it shows in words."""
        path = Path(picture)
        kinds = {".svg": "image/svg+xml", ".png": "image/png"}
        if path.suffix.lower() not in kinds:
            raise ValueError(f"{path.name!r} is no picture that a page can hold; expected {' or '.join(kinds)}")
        data = base64.b64encode(path.read_bytes()).decode("ascii")
        source = f"data:{kinds[path.suffix.lower()]};base64,{data}"
        self._parts.append(
            f'<figure><img src="{source}" alt="{_text(caption)}"><figcaption>{_text(caption)}</figcaption></figure>'
        )

    def cautions(self, cautions: Iterable[_core.Caution], heading: str = "Before you ride") -> None:
        """What the rider must be told, in words."""
        items = "\n".join(f"<li>{_text(one.sentence(self._units))}</li>" for one in cautions)
        self._parts.append(f'<section class="cautions"><h2>{_text(heading)}</h2>\n<ul>\n{items}\n</ul></section>')

    def html(self) -> str:
        """The page, whole."""
        body = "\n".join(self._parts)
        return (
            f'<!DOCTYPE html>\n<html lang="{_text(self._language)}">\n<head>\n<meta charset="utf-8">\n'
            '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
            f"<title>{_text(self._title)}</title>\n<style>{_STYLE}</style>\n</head>\n<body>\n"
            f"<h1>{_text(self._title)}</h1>\n{body}\n</body>\n</html>\n"
        )

    def write(self, path: str | PathLike[str]) -> Path:
        """Writes the page to a file, whose folder is made if need be, and gives back where it lies."""
        target = Path(path)
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(self.html(), encoding="utf-8")
        return target

    def _repr_html_(self) -> str:
        return f'<iframe srcdoc="{escape(self.html())}" style="width:100%;height:40rem;border:0"></iframe>'


def _with_unit(text: str) -> str:
    """Keeps a unit on the line of its number, and a band's ends on one line."""
    return re.sub(r"(?<=[\d)]) (?=(?:%|mm|in|km/h|mph|rpm|points|kg|lb|N|lbf)(?!\w))", "\u00a0", text)


def _text(text: str) -> str:
    """Text from outside, made harmless for HTML and for quoted attributes."""
    return escape("".join(" " if ord(c) < 0x20 or ord(c) == 0x7F else c for c in text))
