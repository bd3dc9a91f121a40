# SPDX-License-Identifier: MIT
"""The C++ parser against the reference grammar, text by text: both read it to the same canonical form, or both refuse."""

from __future__ import annotations

import importlib.util
import itertools
import os
import random
import re
import subprocess
from collections.abc import Iterable
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
TESTS = Path(os.environ.get("LAYSHAFT_TESTS", ROOT / "build" / "test" / "tests"))
HEADER = ROOT / "include" / "layshaft" / "tyre" / "designation.hpp"

spec = importlib.util.spec_from_file_location("reference_grammar", Path(__file__).with_name("reference_grammar.py"))
assert spec and spec.loader
reference = importlib.util.module_from_spec(spec)
spec.loader.exec_module(reference)

ALPHABET = "0123456789-/.X* ()+&ABCDEFGHIJKLMNOPQRSTUVWYZ"


def parse(texts: list[str]) -> list[str | None]:
    """What the C++ parser makes of each text: its canonical form, or None."""
    program = TESTS / "fuzz" / "read_markings"
    done = subprocess.run([program], input="\n".join(texts) + "\n", capture_output=True, text=True, check=True)
    answers = done.stdout.split("\n")[:-1]
    assert len(answers) == len(texts)
    return [None if answer.startswith("!") else answer for answer in answers]


def agree(texts: Iterable[str]) -> tuple[int, int]:
    """Holds the two against each other; gives how many texts were tried and how many of them are markings."""
    tried = legal = 0
    iterator = iter(texts)
    while batch := list(itertools.islice(iterator, 500_000)):
        for text, answer in zip(batch, parse(batch), strict=True):
            expected = reference.read(text)
            assert answer == expected, f"{text!r}: the parser says {answer!r}, the reference {expected!r}"
            legal += answer is not None
        tried += len(batch)
    return tried, legal


def examples(heading: str) -> list[tuple[str, str]]:
    """A list of the header, as text and outcome, as far as it is in ASCII and on one line."""
    lines = HEADER.read_text(encoding="utf-8").split("\n")
    start = next(i for i, line in enumerate(lines) if line.startswith(f"/// {heading},")) + 2
    found = []
    for line in itertools.takewhile(lambda line: line.startswith("///     "), lines[start:]):
        match = re.fullmatch(r'(?:"([^"]*)"|(.*?))(?:  +)(.*?)(?:  .*)?', line[8:])
        assert match, line
        text = match[1] if match[1] is not None else match[2]
        if text.isascii() and "\\" not in text and "bytes" not in text:
            found.append((text, match[3]))
    return found


LEGAL = examples("LEGAL")
# Where one part of the grammar runs into another: P and REINF, PR and REINF, the letter D and DOT, R and REINF, ...
CROWDED = [
    "4.00-8 6PREINF", "4.00-8 6PRREINF", "4.00-8 6 PR 6PREINF", "200x50DOT2319", "700x28DDOT2319", "700x28DOT2319",
    "26x2.00REINF", "25x8R12REINF", "26x1REINF", "8x2 4PRREINF", "110/90-18MSTTL", "110/90-18MSTL", "110/90-18MS TL",
    "205/65R16C107/105T", "31x10.50R15LTTL", "110/90-18MCM+SMST", "110/90-18DOT231961R", "26x1 3/8DOT2319", "110/90ZR18(61W)TL",
    "28x1 5/8x1 3/8TT", "12 1/2x1.75TL", "24x1 - 3 / 8", "25 x 8 - 12", "AT 25 * 8 - 12", "3-104", "3-90", "3-30", "90-90",
]  # fmt: skip


def one_edit(text: str, characters: str = ALPHABET) -> set[str]:
    edited = {text[:i] + c + text[i:] for i in range(len(text) + 1) for c in characters}
    edited |= {text[:i] + c + text[i + 1 :] for i in range(len(text)) for c in characters}
    edited |= {text[:i] + text[i + 1 :] for i in range(len(text))}
    edited |= {text[:i] + text[i + 1] + text[i] + text[i + 2 :] for i in range(len(text) - 1)}
    return edited


def edit(row: random.Random, text: str, characters: str) -> str:
    i = row.randrange(len(text) + 1)
    match row.randrange(4):
        case 0:
            return text[:i] + row.choice(characters) + text[i:]
        case 1:
            return text[:i] + row.choice(characters) + text[i + 1 :]
        case 2:
            return text[:i] + text[i + 1 :]
    return text[:i] + text[i + 1 : i + 2] + text[i : i + 1] + text[i + 2 :]


def test_both_read_the_legal_list() -> None:
    assert len(LEGAL) > 55
    for text, canonical in LEGAL:
        assert reference.read(text) == canonical, text
    assert parse([text for text, _ in LEGAL]) == [canonical for _, canonical in LEGAL]


def test_both_refuse_the_illegal_list() -> None:
    texts = [text for text, _ in examples("ILLEGAL")]
    assert len(texts) > 90
    assert [reference.read(text) for text in texts] == [None] * len(texts)
    assert parse(texts) == [None] * len(texts)


def test_they_agree_on_every_text_of_up_to_four_characters() -> None:
    texts = ("".join(letters) for length in range(5) for letters in itertools.product(ALPHABET, repeat=length))
    tried, legal = agree(texts)
    assert tried == sum(len(ALPHABET) ** length for length in range(5))
    assert legal > 100  # 3-10, 2B12, 8X2, ...


def test_they_agree_one_edit_away_from_every_legal_marking() -> None:
    texts = set().union(*(one_edit(text) | one_edit(canonical) for text, canonical in LEGAL))
    texts |= set(CROWDED).union(*map(one_edit, CROWDED))
    tried, legal = agree(sorted(texts))
    assert tried > 60_000 and legal > 3_000


@pytest.mark.long
@pytest.mark.parametrize("text", sorted({canonical for _, canonical in LEGAL}))
def test_they_agree_two_edits_away_from_a_legal_marking(text: str) -> None:
    rough = "0258-/.XRCTP "
    if len(text) <= 10:
        texts = set().union(*(one_edit(once, rough) for once in one_edit(text, rough)))
        tried, legal = agree(sorted(texts))
        assert tried > 5_000
    else:  # longer ones by chance, with every character
        row = random.Random(text)
        tried, legal = agree(edit(row, edit(row, text, some), some) for some in (ALPHABET, rough) for _ in range(8_000))
        assert tried == 16_000
    assert legal > 0


@pytest.mark.long
def test_they_agree_on_numbers_in_every_form() -> None:
    texts = [f"{a}{sign}{b}" for a in range(1, 180) for b in range(1, 800) for sign in ("-", "x")]
    texts += [f"{a}x{b}{letter}" for a in range(100, 1000, 10) for b in range(10, 140) for letter in "ABCDE"]
    texts += [f"{a}x{b / 100:.2f}" for a in (*range(5, 40), "27.5", "12 1/2", "8 1/2", "12.5") for b in range(50, 520)]
    texts += [
        f"{a}x{b} {above}/{below}"
        for a in (*range(5, 40), "12 1/2", "8 1/2")
        for b in range(1, 6)
        for below in range(1, 10)
        for above in range(1, 10)
    ]
    texts += [f"28x1 5/8x{b} {above}/8" for b in range(1, 6) for above in range(1, 8)]
    texts += [
        f"{a}x{b / 4}{c}{rim}"
        for a in (7, 8, 16, 18.5, 25, 31, 60, 61)
        for b in range(4, 130)
        for c in "-BR"
        for rim in range(4, 31)
    ]
    tried, legal = agree(texts)
    assert tried > 300_000 and legal > 10_000
