# SPDX-License-Identifier: MIT
"""Text from outside, made harmless for where it is put."""

from __future__ import annotations

import html as _html
import re

_MARKDOWN = re.compile(r"([\\`*_\[\]<>#|~$])")


def html(text: str) -> str:
    """For HTML and for quoted attributes."""
    return _html.escape("".join(" " if ord(c) < 0x20 or ord(c) == 0x7F else c for c in text))


def markdown(text: str) -> str:
    """For one line of Markdown."""
    return _MARKDOWN.sub(r"\\\1", " ".join(text.split()))
