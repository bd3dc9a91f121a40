# SPDX-License-Identifier: MIT
"""GPX texts that were kept, that once failed, and some thousand that are mutated."""

from __future__ import annotations

from itertools import islice

from fuzz import gpx_texts


def test_every_text_of_the_corpus_is_a_ride() -> None:
    corpus = gpx_texts.corpus()
    assert len(corpus) >= 3
    assert all(gpx_texts.attempt(text) for text in corpus)


def test_what_once_failed_holds() -> None:
    for text in gpx_texts.once_failed():
        gpx_texts.attempt(text)


def test_mutated_texts_are_refused_in_a_line_or_read_as_they_stand() -> None:
    rides = [gpx_texts.attempt(text) for text in islice(gpx_texts.mutations(), 3000)]
    assert sum(rides) > 300
