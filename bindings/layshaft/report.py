# SPDX-License-Identifier: MIT
"""Whole pages: an answer, its numbers with working and picture folded under each, and the cautions, in one HTML file.

A page needs no network, no script and no other file: it can be sent, kept and printed. The same as Markdown can be
pasted as an answer to a rider. All text is escaped.

>>> import layshaft as ls
>>> from layshaft import report
>>> page = report.Page("A loop to check")
>>> loop = ls.ChainLoop("520", 13, 48)
>>> page.number("links", "108.16", loop.explain("links", centre="610 mm"))
>>> page.html().startswith("<!DOCTYPE html>")
True
>>> print(page.markdown())
# A loop to check
<BLANKLINE>
- links: **108.16**
<BLANKLINE>
"""

from __future__ import annotations

import base64
import io
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from html import escape
from os import PathLike
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal, TypeAlias

from . import _core
from ._escape import called, in_short
from ._escape import html as _text
from ._escape import markdown as _markdown

if TYPE_CHECKING:
    from matplotlib.figure import Figure

__all__ = ["Page"]

_Picture: TypeAlias = "str | PathLike[str] | Figure | Mapping[str, Any]"

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
.beside { display: grid; grid-template-columns: minmax(0, 1fr); gap: 0 1.2rem; }
@media (min-width: 60rem) { .beside { grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); margin: 0 -7rem; } }
.beside figure { background: #fff; padding: .4rem; align-self: start; }
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
  figure img { max-width: 62%; margin: 0 auto; }
  .beside { margin: 0; }
}
"""


@dataclass(frozen=True)
class _Part:
    """One thing on a page, in both forms. Numbers in a row make one list in Markdown."""

    html: str
    markdown: str
    in_list: bool = False


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
        self._parts: list[_Part] = []
        self._workings: list[_core.Working] = []

    def answer(self, text: str) -> None:
        """The answer, which a reader should see before all else."""
        self._add(f'<p class="answer-first">{_text(_with_unit(text))}</p>', f"**{_markdown(text)}**")

    def heading(self, text: str) -> None:
        """The heading of what follows."""
        self._add(f"<h2>{_text(text)}</h2>", f"## {_markdown(text)}")

    def paragraph(self, text: str) -> None:
        """A paragraph of plain text."""
        self._add(f"<p>{_text(text)}</p>", _markdown(text))

    def number(
        self,
        label: str,
        value: str,
        working: _core.Working | None = None,
        *,
        picture: _Picture | None = None,
        caption: str = "",
    ) -> None:
        """A number with what it is, and its working folded under it, beside a picture where one explains it.

        :param picture: as `figure` takes it
        :param caption: what the picture shows in words, which a picture must have
        """
        number = _text(_with_unit(value))
        headline = f'<span class="label">{_text(label)}</span><span class="value">{number}</span>'
        line = f"- {_markdown(label)}: **{_markdown(value)}**"
        folded = [] if working is None else [self._folded(working)]
        if picture is not None:
            folded.append(_figure(picture, caption))
        if not folded:
            self._add(f'<div class="number"><div class="headline">{headline}</div></div>', line, in_list=True)
            return
        beside = '<div class="working beside">' if len(folded) > 1 else '<div class="working">'
        shown = "\n".join(folded)
        self._add(
            f'<details class="number"><summary>{headline}</summary>\n{beside}{shown}</div></details>',
            line,
            in_list=True,
        )
        if working is not None:
            self._workings.append(working)

    def table(self, header: Sequence[str], rows: Iterable[Sequence[str]]) -> None:
        """A table; the first cell of each row says what the row is."""
        cells = [list(row) for row in rows]
        for row in cells:
            if len(row) != len(header):
                raise ValueError(f"a row of {len(row)} cells in a table of {len(header)} columns: {in_short(row)}")
        head = "".join(f'<th scope="col">{_text(cell)}</th>' for cell in header)
        body = "\n".join(
            f'<tr><th scope="row">{_text(first)}</th>{"".join(f"<td>{_text(cell)}</td>" for cell in others)}</tr>'
            for first, *others in cells
        )
        lines = [_row(header), "| --- |" + " ---: |" * (len(header) - 1), *map(_row, cells)]
        self._add(
            f'<div class="table"><table>\n<thead><tr>{head}</tr></thead>\n<tbody>\n{body}\n</tbody></table></div>',
            "\n".join(lines),
        )

    def figure(self, picture: _Picture, caption: str) -> None:
        """A picture, which becomes part of the page, and what it shows in words.

        :param picture: an SVG or PNG file, a figure of matplotlib, or what a function of `layshaft.plots` gave back
        :raises ValueError: for any other, and where nothing is said in words
        """
        self._add(_figure(picture, caption), f"*Picture: {_markdown(caption)}*")

    def cautions(self, cautions: Iterable[_core.Caution], heading: str = "Before you ride") -> None:
        """What the rider must be told, in words."""
        sentences = [one.sentence(self._units) for one in cautions]
        items = "\n".join(f"<li>{_text(sentence)}</li>" for sentence in sentences)
        lines = "\n".join(f"- {_markdown(sentence)}" for sentence in sentences)
        self._add(
            f'<section class="cautions"><h2>{_text(heading)}</h2>\n<ul>\n{items}\n</ul></section>',
            f"## {_markdown(heading)}\n\n{lines}",
        )

    def html(self) -> str:
        """The page, whole."""
        body = "\n".join(part.html for part in self._parts)
        return (
            f'<!DOCTYPE html>\n<html lang="{_text(self._language)}">\n<head>\n<meta charset="utf-8">\n'
            '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
            f"<title>{_text(self._title)}</title>\n<style>{_STYLE}</style>\n</head>\n<body>\n"
            f"<h1>{_text(self._title)}</h1>\n{body}\n</body>\n</html>\n"
        )

    def markdown(self, *, workings: bool = False) -> str:
        """The same as text to paste where a rider asked. Of a picture only the words can go along.

        :param workings: whether the steps to each number follow at the end
        """
        text = f"# {_markdown(self._title)}\n"
        before_in_list = False
        for part in self._parts:
            text += ("" if part.in_list and before_in_list else "\n") + part.markdown + "\n"
            before_in_list = part.in_list
        if workings and self._workings:
            text += "\n## How these came about\n"
            for working in self._workings:
                text += "\n" + working.to_markdown(units=self._units, decimal=self._decimal)
        return text

    def write(self, path: str | PathLike[str]) -> Path:
        """Writes the page to a file, whose folder is made if need be, and gives back where it lies.

        A name that ends in .md gets the Markdown, any other the HTML.
        """
        target = Path(path)
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(self.markdown() if target.suffix.lower() == ".md" else self.html(), encoding="utf-8")
        return target

    def _add(self, html: str, markdown: str, *, in_list: bool = False) -> None:
        self._parts.append(_Part(html, markdown, in_list))

    def _folded(self, working: _core.Working) -> str:
        sentence = working.sentence(units=self._units, decimal=self._decimal)
        steps = working.steps_to_html(units=self._units, decimal=self._decimal)
        return (
            f'<div><p>{_text(sentence)}</p>\n<p class="how-sure">How sure: {_text(working.result.certainty)}, as the '
            f"least sure of all it rests on.</p>\n{steps}</div>"
        )

    def _repr_html_(self) -> str:
        return f'<iframe srcdoc="{escape(self.html())}" style="width:100%;height:40rem;border:0"></iframe>'


_KINDS = {".svg": "image/svg+xml", ".png": "image/png"}


def _figure(picture: _Picture, caption: str) -> str:
    if not caption.strip():
        raise ValueError("a picture without a caption; expected what it shows in words, for whoever cannot see it")
    kind, data = _picture_bytes(picture)
    source = f"data:{kind};base64,{base64.b64encode(data).decode('ascii')}"
    return f'<figure><img src="{source}" alt="{_text(caption)}"><figcaption>{_text(caption)}</figcaption></figure>'


def _picture_bytes(picture: _Picture) -> tuple[str, bytes]:
    if isinstance(picture, str | PathLike):
        path = Path(picture)
        kind = _KINDS.get(path.suffix.lower())
        if kind is None:
            raise ValueError(
                f"{in_short(path.name)} is no picture that a page can hold; expected {' or '.join(_KINDS)}"
            )
        return kind, path.read_bytes()
    figure = _figure_of(picture)
    if not hasattr(figure, "savefig"):
        raise ValueError(f"{called(type(picture))} is no picture; expected a file's name, a figure, or its artists")
    import matplotlib

    drawn = io.BytesIO()
    with matplotlib.rc_context({"svg.hashsalt": "layshaft"}):  # the same picture makes the same page
        figure.savefig(drawn, format="svg", metadata={"Date": None})
    return _KINDS[".svg"], drawn.getvalue()


def _figure_of(drawn: Any) -> Any:
    """The figure in which artists were drawn, however deep they lie in lists and mappings."""
    while isinstance(drawn, Mapping | list | tuple):
        inside = list(drawn.values()) if isinstance(drawn, Mapping) else list(drawn)
        if not inside:
            return None
        drawn = next((one for one in inside if not isinstance(one, Mapping | list | tuple) or one), None)
    return drawn if hasattr(drawn, "savefig") else getattr(drawn, "figure", None)


def _row(cells: Sequence[str]) -> str:
    return "| " + " | ".join(map(_markdown, cells)) + " |"


def _with_unit(text: str) -> str:
    """Keeps a unit on the line of its number, and a band's ends on one line."""
    return re.sub(r"(?<=[\d)]) (?=(?:%|mm|in|km/h|mph|rpm|points|kg|lb|N|lbf)(?!\w))", "\u00a0", text)
