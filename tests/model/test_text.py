"""Prose, names and ids: plain words with emphasis and links, and nothing that a browser could run."""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from pydantic_core import PydanticCustomError

from setwright.model.text import (
    LONGEST_NAME,
    LONGEST_PROSE,
    Span,
    exercise_target,
    is_allowed_target,
    parse_id,
    parse_name,
    parse_prose,
    plain,
    spans,
)

TEXT, EM, STRONG = "text", "em", "strong"
SPANS = [
    ("Sit down.", [Span(TEXT, "Sit down.")]),
    ("Sit *slowly*.", [Span(TEXT, "Sit "), Span(EM, "slowly"), Span(TEXT, ".")]),
    ("**Stop** at pain", [Span(STRONG, "Stop"), Span(TEXT, " at pain")]),
    ("[squat](exercise:squat)", [Span("link", "squat", "exercise:squat")]),
    (
        "a [b c](https://d.example/e) f",
        [Span(TEXT, "a "), Span("link", "b c", "https://d.example/e"), Span(TEXT, " f")],
    ),
    ("3 * 4 * 5", [Span(TEXT, "3 * 4 * 5")]),  # an asterisk with spaces round it is one
    ("2*3", [Span(TEXT, "2*3")]),
    ("*a* *b*", [Span(EM, "a"), Span(TEXT, " "), Span(EM, "b")]),
    ("[a] (b)", [Span(TEXT, "[a] (b)")]),
    ("", []),
]


@pytest.mark.parametrize(("text", "expected"), SPANS)
def test_prose_falls_into_words_emphasis_and_links(text: str, expected: list[Span]) -> None:
    """Emphasis, strong emphasis and links are found; everything else is words."""
    assert expected == list(spans(text))


SIGNS = st.text(alphabet="ab *_[]()<>&;:/\\`#\"'é🦵", max_size=40)


@given(SIGNS)
@example("[a](b)(c)")
@example("***a***")
def test_no_word_of_prose_is_lost(text: str) -> None:
    """Joined, the runs hold every letter of the text, in order."""
    letters = [sign for sign in text if sign in "abé🦵"]
    targets = "".join(span.target for span in spans(text))
    found = [sign for sign in plain(text) if sign in "abé🦵"]

    assert sorted(letters) == sorted(found + [sign for sign in targets if sign in "abé🦵"])


ALLOWED = ["https://a.example", "https://a.example:8443/b?c=d#e", "mailto:coach@club.example", "exercise:goblet-squat"]
NOT_ALLOWED = [
    "http://a.example", "javascript:alert", "JavaScript:alert", "data:text/html,x", "vbscript:x", "file:///etc/passwd",
    "//a.example", "/sessions/", "../club.yml", "squat", "https://", "https://a.example/<b>", 'https://a.example/"',
    "https://a.example\\b", "exercise:Squat", "exercise:", "mailto:", "mailto:a", "https://a.example/\n", "ftp://a",
]  # fmt: skip


@pytest.mark.parametrize("target", ALLOWED)
def test_links_lead_to_secure_pages_mail_and_exercises(target: str) -> None:
    """These three kinds of link are followed."""
    assert is_allowed_target(target)
    assert f"[a]({target})" == parse_prose(f"[a]({target})")


@pytest.mark.parametrize("target", NOT_ALLOWED)
def test_no_other_link_is_allowed(target: str) -> None:
    """A link that runs a script, leaves for an insecure page or reaches into files is none (RFC 3986 schemes)."""
    assert not is_allowed_target(target)


@pytest.mark.parametrize(
    ("text", "rule"),
    [
        ("<script>alert(1)</script>", "html-in-text"),
        ("a <b>c</b>", "html-in-text"),
        ("a < b and < / c", "html-in-text"),
        ("<!-- note -->", "html-in-text"),
        ("<?php", "html-in-text"),
        ("x &lt; y", "html-in-text"),
        ("&#106;avascript", "html-in-text"),
        ("&#x6A;avascript", "html-in-text"),
        ("[a](javascript:alert(1))", "link-not-allowed"),
        ("[a](javascript:alert)", "link-not-allowed"),
        ("[a](two words)", "link-not-allowed"),
        ("**[a](two words)**", "link-not-allowed"),
        ("[a][b](https://c.example", "link-not-allowed"),
        ("", "no-value"),
        (" \n ", "no-value"),
        ([], "not-text"),
        ({}, "not-text"),
        ("x" * (LONGEST_PROSE + 1), "text-too-long"),
    ],
)
def test_prose_that_is_more_than_words_is_refused(text: object, rule: str) -> None:
    """No HTML, no character references, no link that cannot be read or followed, no text without an end."""
    with pytest.raises(PydanticCustomError) as refused:
        parse_prose(text)

    assert refused.value.context is not None
    assert rule == refused.value.context["rule"]


@pytest.mark.parametrize("text", ["5 < 6", "a <3 b", "Rest & sleep", "R&D; rest", "3 > 2", "x" * LONGEST_PROSE])
def test_signs_that_people_use_are_words(text: str) -> None:
    """A sign alone makes no HTML, nor does an ampersand with a single letter."""
    assert text == parse_prose(text)


def test_white_space_is_folded() -> None:
    """However a text is wrapped in the file, it is one line of words."""
    assert parse_prose(" a\n  b\t c ") == "a b c"


@pytest.mark.parametrize("name", ["Squat", "Squat, slow (left)", "Übung 3", "x" * LONGEST_NAME])
def test_names_are_plain_words(name: str) -> None:
    """A name may hold any words and the usual signs between them."""
    assert name == parse_name(name)


@pytest.mark.parametrize("name", [*(f"a {sign} b" for sign in "<>{}[]`*\\|"), "", "x" * (LONGEST_NAME + 1), [], {}])
def test_names_hold_no_markup(name: object) -> None:
    """A sign that Markdown, HTML or a template could read is refused in a name, and so is a name without end."""
    with pytest.raises(PydanticCustomError):
        parse_name(name)


@pytest.mark.parametrize("ident", ["squat", "goblet-squat", "squat-2", "2"])
def test_ids_are_small_letters_digits_and_hyphens(ident: str) -> None:
    """An id can be a file's name and an address on every system."""
    assert ident == parse_id(ident)


@pytest.mark.parametrize(
    "ident", ["Squat", "goblet squat", "goblet_squat", "-squat", "squat-", "a--b", "../a", "a/b", "é", "a.yml", "", "٣"]
)
def test_nothing_else_is_an_id(ident: str) -> None:
    """No capitals, spaces, dots or slashes: an id can never lead out of its folder."""
    with pytest.raises(PydanticCustomError):
        parse_id(ident)


def test_an_exercise_link_names_its_exercise() -> None:
    """Only links that begin with exercise: lead to one."""
    assert exercise_target("exercise:squat") == "squat"
    assert exercise_target("https://a.example") is None
