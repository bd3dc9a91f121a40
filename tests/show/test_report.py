# SPDX-License-Identifier: MIT
"""Pages: whole and strict as HTML, ready to paste as Markdown, the same on each run, and safe whatever is put in."""

from __future__ import annotations

import re
from pathlib import Path

import html5lib
import layshaft as ls
import pytest
from layshaft import exercises, report
from markdown_it import MarkdownIt
from matplotlib.figure import Figure

EVIL = '<script>alert("1")</script> & *bold* [x](javascript:1) `c` | $y$ #'


def a_figure() -> Figure:
    figure = Figure(figsize=(3, 2))
    figure.add_subplot().plot([0, 1], [0, 2])
    return figure


def a_page() -> report.Page:
    loop = ls.ChainLoop("520", 13, 48)
    page = report.Page("A loop to check")
    page.answer("Take 110 links.")
    page.heading("The chain")
    page.number("pitch", "15.875 mm")
    page.number("links", "108.16", loop.explain("links", centre="610 mm"))
    page.number("axle", "616 mm", loop.explain("centre", links=110), picture=a_figure(), caption="a line that rises")
    page.paragraph("Set the slack afterwards.")
    page.table(["links", "axle"], [["108", "600 mm"], ["110", "616 mm"]])
    page.figure(a_figure(), "another line")
    page.cautions(ls.compare(MACHINE, MACHINE.stock, ls.Setup(front=12, rear=48, tyre="120/90-18")).cautions)
    return page


MACHINE = ls.Machine.from_json(
    (Path(__file__).resolve().parents[2] / "examples/machines/trail_bike.json").read_text(encoding="utf-8")
)


def test_a_page_is_strict_html_without_script_or_other_file() -> None:
    page = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(a_page().html())
    assert not list(page.iter("script")) and not list(page.iter("link"))
    images = list(page.iter("img"))
    assert [image.get("alt") for image in images] == ["a line that rises", "another line"]
    assert all(image.get("src").startswith("data:image/svg+xml;base64,") for image in images)
    (beside,) = [one for one in page.iter("div") if "beside" in (one.get("class") or "")]
    assert len(list(beside.iter("ol"))) == 1 and len(list(beside.iter("img"))) == 1
    headings = [one.tag for one in page.iter() if one.tag in ("h1", "h2", "h3")]
    assert headings == ["h1", "h2", "h2"]  # none skipped, so that whoever listens finds the way


def test_the_same_page_is_made_on_each_run() -> None:
    assert a_page().html() == a_page().html()


def test_as_markdown_it_says_the_same() -> None:
    text = a_page().markdown()
    tokens = MarkdownIt("commonmark").enable("table").parse(text)
    assert [token.tag for token in tokens if token.type == "heading_open"] == ["h1", "h2", "h2"]
    assert "- pitch: **15.875 mm**\n- links: **108.16**\n- axle: **616 mm**\n\nSet the slack" in text
    assert "| 108 | 600 mm |" in text and sum(token.type == "td_open" for token in tokens) == 4
    assert "*Picture: another line*" in text
    assert "Steps" not in text and "108.1" in a_page().markdown(workings=True).split("How these came about")[1]


def test_what_is_put_in_stays_text() -> None:
    page = report.Page(EVIL)
    page.answer(EVIL)
    page.heading(EVIL)
    page.paragraph(EVIL)
    page.number(EVIL, EVIL, picture=a_figure(), caption=EVIL)
    page.table([EVIL, EVIL], [[EVIL, EVIL]])
    page.figure(a_figure(), EVIL)
    parsed = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page.html())
    assert not list(parsed.iter("script")) and "".join(parsed.find("body").find("h1").itertext()) == EVIL
    kinds = {
        child.type for token in MarkdownIt("commonmark").enable("table").parse(page.markdown())
        for child in [token, *(token.children or [])]
    }  # fmt: skip
    assert not kinds & {"html_inline", "html_block", "link_open", "code_inline", "image"}


def test_a_file_gets_the_form_of_its_name(tmp_path: Path) -> None:
    page = a_page()
    assert page.write(tmp_path / "deep" / "page.html").read_text(encoding="utf-8").startswith("<!DOCTYPE html>")
    assert page.write(tmp_path / "page.md").read_text(encoding="utf-8") == page.markdown()
    drawn = tmp_path / "picture.png"
    a_figure().savefig(drawn)
    page.figure(drawn, "from a file")
    page.figure({"gears": [a_figure().axes[0].lines[0]], "none": []}, "from its artists")
    assert len(re.findall("data:image/png", page.html())) == 1


@pytest.mark.parametrize(
    ("picture", "caption", "sentence"),
    [
        ("page.pdf", "x", "'page.pdf' is no picture that a page can hold; expected .svg or .png"),
        (3, "x", "an int is no picture; expected a file's name, a figure, or its artists"),
        ({}, "x", "a dict is no picture"),
        (a_figure(), " ", "a picture without a caption"),
    ],
)
def test_a_wrong_picture_says_so(picture: object, caption: str, sentence: str) -> None:
    with pytest.raises(ValueError, match=re.escape(sentence)):
        report.Page("p").figure(picture, caption)


def test_a_row_that_is_too_short_leaves_the_page_as_it_was() -> None:
    page = a_page()
    before = page.html()
    with pytest.raises(ValueError, match="a row of 1 cells in a table of 2 columns"):
        page.table(["a", "b"], [["1", "2"], ["3"]])
    assert page.html() == before


def luminance(colour: str) -> float:
    """Relative luminance by WCAG 2.2, of '#rrggbb'."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("style", [report._STYLE, exercises._STYLE], ids=["report", "exercises"])
def test_every_word_of_a_page_stands_out_from_its_ground(style: str) -> None:
    """At least 4.5 to 1, which WCAG 2.2 (1.4.3) asks of text of ordinary size."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)
    colours = dict(re.findall(r"--(\w+): (#[0-9a-f]{6})", style))
    words = {colours[name] for name in re.findall(r"[ {;]color: var\(--(\w+)\)", style)}
    grounds = {colours["paper"], "#ffffff", *re.findall(r"background: (#[0-9a-f]{6})", style)}
    assert len(words) >= 3 and len(grounds) >= 3
    for word in words:
        for ground in grounds:
            assert contrast(word, ground) >= 4.5, (word, ground)
