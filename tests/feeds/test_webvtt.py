"""A film's chapters and captions: their form after the W3C's WebVTT, and times that never overlap or run backwards."""

import html
import re
from itertools import pairwise

import webvtt

from setwright.feeds.webvtt import captions, chapters, written
from setwright.looking import look
from support.site import ROOT

_TIMES = re.compile(r"^(\d\d):([0-5]\d):([0-5]\d)\.(\d{3}) --> (\d\d):([0-5]\d):([0-5]\d)\.(\d{3})$")


def test_times_never_overlap_and_every_block_has_its_form() -> None:
    """The grammar of a file: the signature, then blocks of a line of times and a line of text, blank lines between."""
    programme = look(ROOT / "program").programme
    assert programme is not None
    (film,) = programme.sessions["foundation-a"].films
    for cues in (chapters(programme, film), captions(programme, film)):
        assert all(0 <= begins < ends <= film.lasts * 1000 for begins, ends, _ in cues)
        assert all(one[1] <= after[0] for one, after in pairwise(cues))
        signature, *blocks = written(cues).decode().rstrip("\n").split("\n\n")
        assert signature == "WEBVTT"
        assert len(blocks) == len(cues)
        assert all(_TIMES.match(block.split("\n")[0]) and len(block.split("\n")) == 2 for block in blocks)


def test_a_page_opens_a_film_where_the_exercise_begins() -> None:
    """W3C Media Fragments 1.0: ``#t=178`` is from second 178 on; 2 min 58 s are 178 s."""
    programme = look(ROOT / "program").programme
    assert programme is not None
    (film,) = programme.sessions["foundation-a"].films
    assert film.address("band-row") == "https://films.example.org/foundation-a#t=178"
    assert film.address("push-up") is None


def test_signs_of_a_text_begin_no_tag_and_end_no_cue() -> None:
    assert written([(0, 1000, "a < b --> c & d")]).endswith(b"a &lt; b --&gt; c &amp; d\n")


def test_another_reader_finds_every_cue_in_its_time() -> None:
    """The library webvtt-py reads as many cues as were written; none begins before the one before it has ended."""
    programme = look(ROOT / "program").programme
    assert programme is not None
    (film,) = programme.sessions["foundation-a"].films
    for cues in (chapters(programme, film), captions(programme, film)):
        read = webvtt.from_string(written(cues).decode()).captions
        assert [(one.start_in_seconds, one.end_in_seconds) for one in read] == [
            (a // 1000, b // 1000) for a, b, _ in cues
        ]
        assert [html.unescape(one.raw_text) for one in read] == [" ".join(text.split()) for *_, text in cues]
        assert all(one.start < one.end for one in read)
        assert all(one.end <= after.start for one, after in pairwise(read))
