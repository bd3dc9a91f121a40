# SPDX-License-Identifier: MIT
"""Text from outside, made harmless for where it is put."""

from __future__ import annotations

import html as _html
import re

# What steers a terminal, the line or the direction of writing, and halves of characters, which no file can hold.
_STEERING = re.compile("[\x00-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ud800-\udfff]")
_MARKDOWN = re.compile(r"[\\`*_\[\]<>#|~$]|&(?=#?\w+;)")
# At its beginning a line would become a list, a rule or a heading.
_MARKDOWN_BEGIN = re.compile(r"(?=[-+=]+(?:\s|$))|(?<=\d)(?=[.)](?:\s|$))")


def in_short(value: object) -> str:
    """For an error: its repr, which has no character that steers, and is cut."""
    if isinstance(value, str) and len(value) > 40:
        return repr(value[:40] + "...")
    text = repr(value)
    return text if len(text) <= 60 else text[:60] + "..."


def called(kind: type) -> str:
    """For an error: "an int", "a dict", and "an ndarray", which is said by its letter."""
    vowel = kind.__name__[0] in "AEIOUaeiou" or kind.__name__ == "ndarray"
    return f"{'an' if vowel else 'a'} {kind.__name__}"


def html(text: str) -> str:
    """For HTML and for quoted attributes."""
    return _html.escape(_STEERING.sub(" ", text))


def markdown(text: str) -> str:
    """For one line of Markdown."""
    line = _MARKDOWN.sub(r"\\\g<0>", " ".join(_STEERING.sub(" ", text).split()))
    digits = len(line) - len(line.lstrip("0123456789"))
    begin = _MARKDOWN_BEGIN.match(line, digits)
    return line[:digits] + "\\" + line[digits:] if begin and digits < 10 else line
