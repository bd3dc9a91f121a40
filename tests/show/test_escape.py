# SPDX-License-Identifier: MIT
"""Text from outside stays text: in pages, in Markdown, in pictures, and in what a terminal shows."""

from __future__ import annotations

import io
import unicodedata
from pathlib import Path

import html5lib
import layshaft as ls
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from layshaft import plots, report
from layshaft._escape import html, in_short, markdown
from markdown_it import MarkdownIt
from matplotlib.figure import Figure

MACHINE = (Path(__file__).resolve().parents[2] / "examples/machines/trail_bike.json").read_text(encoding="utf-8")
EVIL = [
    "<script>alert(1)</script>",
    "</title></style><script src=//example.org></script>",
    '"><img src=x onerror=alert(1)>',
    "' onmouseover='alert(1)",
    "[now](javascript:alert(1))",
    "<javascript:alert(1)>",
    "![x](https://example.org/x.png)",
    "[x]: https://example.org",
    "&lt;script&gt; &#60;b&#62; &colon;",
    "a|b | c",
    "`code` ``` ~~~",
    "**bold** __x__ ~~gone~~ $x$",
    "# heading",
    "- item",
    "+ item",
    "* item",
    "1. item",
    "12) item",
    "123456789. item",
    "> said",
    "---",
    "===",
    "- - -",
    "    indented",
    "line\n\n# heading",
    "line\r- item",
    "ends in a backslash\\",
    "<!-- comment -->",
    "\x1b[2J\x9b31m\u202eexe\u2066\x00\x7f",
    "half a character \ud800",
    "line\u2028end",
    "=HYPERLINK(1)",
    "",
]
RENDERER = MarkdownIt("commonmark").enable(["table", "strikethrough"])
TEXT = st.text(st.sampled_from(list("ab 1.)-+=*_`~#<>[]()!|\\&;:$\"'\n\t\x1b\u202e")), max_size=30)


def words(text: str) -> str:
    """What should be seen of a text: its characters, but for those that steer, one space between words."""
    steers = {"Cc", "Cs", "Zl", "Zp"}
    kept = (
        " " if unicodedata.category(c) in steers or c in "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069" else c
        for c in text
    )
    return " ".join("".join(kept).split())


def shown_by_markdown(text: str) -> str:
    """What a page made of the Markdown shows; that it is one paragraph of nothing but text is checked here."""
    page = html5lib.parseFragment(RENDERER.render(text), namespaceHTMLElements=False)
    assert [element.tag for element in page.iter()] in (["DOCUMENT_FRAGMENT", "p"], ["DOCUMENT_FRAGMENT"]), text
    return "".join(page.itertext()).strip()


@pytest.mark.parametrize("evil", EVIL)
def test_what_is_put_into_html_is_seen_and_does_nothing(evil: str) -> None:
    page = html5lib.HTMLParser(namespaceHTMLElements=False).parse(f'<body><p title="{html(evil)}">{html(evil)}</p>')
    assert [element.tag for element in page.iter()] == ["html", "head", "body", "p"]
    (paragraph,) = page.iter("p")
    assert list(paragraph.attrib) == ["title"]
    assert words(paragraph.text or "") == words(paragraph.attrib["title"]) == words(evil)
    html(evil).encode()


@pytest.mark.parametrize("evil", EVIL)
def test_what_is_put_into_markdown_is_seen_and_does_nothing(evil: str) -> None:
    assert shown_by_markdown(markdown(evil)) == words(evil)
    cells = RENDERER.render(f"| {markdown(evil)} | b |\n| --- | --- |\n| {markdown(evil)} | d |\n")
    table = html5lib.parseFragment(cells, namespaceHTMLElements=False)
    assert ["".join(cell.itertext()) for cell in table.iter() if cell.tag in ("th", "td")] == [
        words(evil),
        "b",
        words(evil),
        "d",
    ]
    markdown(evil).encode()


@settings(max_examples=500)
@given(TEXT)
def test_no_text_becomes_markdown(text: str) -> None:
    assert shown_by_markdown(markdown(text)) == words(text)


def test_what_means_nothing_to_markdown_stays_as_it_is() -> None:
    for text in (
        "-3.6 (-8.0 to -0.6) %",
        "+0.5 %",
        "13/50 & 110 links",
        "1.5 mm",
        "2",
        "a - b",
        "a. b",
        "AT&T",
    ):
        assert markdown(text) == text


def test_a_whole_page_of_it_holds_no_script_no_handler_and_no_address() -> None:
    page = report.Page(EVIL[0], language='en" onload="x')
    for evil in EVIL:
        page.answer(evil)
        page.heading(evil)
        page.paragraph(evil)
        page.number(evil, evil)
        page.table([evil, evil], [[evil, evil]])
        page.figure(Figure(), evil or "x")
    page.cautions([], heading=EVIL[1])
    for document in (page.html(), page._repr_html_()):
        parsed = html5lib.HTMLParser(namespaceHTMLElements=False).parse(document)
        for element in parsed.iter():
            assert element.tag != "script"
            for name, value in getattr(element, "attrib", {}).items():
                assert not name.startswith("on") and name != "href", (element.tag, name)
                assert name != "src" or value.startswith("data:image/")


def test_a_machines_name_stays_text_in_every_form_of_a_working() -> None:
    for evil in EVIL:
        name = words(evil) or "x"
        machine = ls.Machine.from_json(MACHINE)
        named = ls.Machine(name=name, gearbox=machine.gearbox, adjuster=machine.adjuster, chain=machine.chain,
                           speedometer=machine.speedometer, stock=machine.stock)  # fmt: skip
        working = ls.explain(named, named.stock, "overall ratio", gear=1)
        page = html5lib.parseFragment(working.to_html(), namespaceHTMLElements=False)
        assert name in " ".join("".join(page.itertext()).split())
        assert not {element.tag for element in page.iter()} & {"script", "img", "a", "b"}
        rendered = html5lib.parseFragment(RENDERER.render(working.to_markdown()), namespaceHTMLElements=False)
        assert not {element.tag for element in rendered.iter()} & {"script", "img", "a", "b"}
        assert name in " ".join("".join(rendered.itertext()).split())


def test_a_machine_called_like_a_formula_is_drawn() -> None:
    """2026-11-26: matplotlib takes $...$ for mathematics, and stopped at a machine of that name."""
    machine = ls.Machine.from_json(MACHINE.replace("Bramble 310 trail bike", "$\\\\frac{$ bike"))
    for draw in (plots.gear_ranges, plots.thrust_diagram):
        figure = Figure()
        title = draw(machine, ax=figure.subplots())["title"]
        figure.savefig(io.BytesIO(), format="svg")
        assert title.get_text().startswith("$\\frac{$ bike: ")


def test_an_error_shows_little_of_a_value_and_nothing_that_steers() -> None:
    assert in_short("mm") == "'mm'" and in_short(3) == "3"
    assert in_short("x" * 1000) == repr("x" * 40 + "...")
    assert in_short("\x1b[2J\u202e") == r"'\x1b[2J\u202e'"
    assert len(in_short(list(range(1000)))) == 63
