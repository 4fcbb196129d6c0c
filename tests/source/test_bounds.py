"""How large things may be: the largest that passes, and the first that does not."""

from pathlib import Path

import pytest

from setwright.source.extent import MOST_DAYS, extent_findings
from setwright.source.finding import MOST_FINDINGS, Finding, Position, first_of
from setwright.source.media import MOST_BYTES
from setwright.source.read import Places, read
from setwright.source.suggest import closest, did_you_mean
from setwright.source.tree import MAX_BYTES, MAX_DEPTH, MAX_VALUES, read_tree
from support import make
from support.reading import GOOD, LABEL, good_programme

JPEG = b"\xff\xd8\xff\xe0"  # how a JPEG file begins: ISO/IEC 10918-1 and -5


def rules(text: str) -> list[str]:
    """Return the rules that a file breaks."""
    return [found.rule for found in read_tree("file.yml", text.encode()).findings]


def test_bytes() -> None:
    """A file of 256 KB is read, one byte more is not, and the message says how large a file may be."""
    head = "a: b\n#"
    fits = head + "x" * (256 * 1024 - len(head))
    (found,) = read_tree("file.yml", f"{fits}x".encode()).findings

    assert len(fits) == MAX_BYTES
    assert rules(fits) == []
    assert (found.rule, found.message) == ("file-too-large", "this file is larger than 256 KB")


@pytest.mark.parametrize("style", ["list", "mapping"])
def test_values(style: str) -> None:
    """20,000 values pass, the list or mapping that holds them and keys included."""
    # a mapping of n keys holds n keys and n values; a list of n items n values; either is one value itself
    fits = MAX_VALUES - 1 if style == "list" else (MAX_VALUES - 1) // 2

    def text(count: int) -> str:
        return "".join("- a\n" if style == "list" else f"k{n}: a\n" for n in range(count))

    assert rules(text(fits)) == []
    assert rules(text(fits + 1)) == ["too-many-values"]


def test_values_of_what_is_repeated() -> None:
    """A list of 99 values counts 100 each time that it is repeated."""
    hundred = f"one: &a [{', '.join(['x'] * 99)}]\nmany: ["

    assert rules(hundred + ", ".join(["*a"] * 198) + "]") == []
    assert rules(hundred + ", ".join(["*a"] * 199) + "]") == ["too-many-values"]


def test_levels() -> None:
    """24 lists inside each other pass; the levels of what is repeated count where it is repeated."""
    deep = "[" * 20 + "a" + "]" * 20

    assert rules("[" * MAX_DEPTH + "a" + "]" * MAX_DEPTH) == []
    assert rules("[" * (MAX_DEPTH + 1) + "a" + "]" * (MAX_DEPTH + 1)) == ["too-deep"]
    assert rules(f"- &deep {deep}\n- [[[*deep]]]\n") == []
    assert rules(f"- &deep {deep}\n- [[[[*deep]]]]\n") == ["too-deep"]


def test_mistakes_of_a_file() -> None:
    """200 mistakes are told one by one; of more, the first 200 and that there are more."""
    mistakes = [Finding(Position("file.yml", line), "rule", "message") for line in range(MOST_FINDINGS + 1)]

    assert list(first_of(mistakes[:-1], "file.yml")) == mistakes[:-1]
    assert [f.rule for f in first_of(mistakes, "file.yml")] == ["rule"] * 200 + ["too-many-mistakes"]


@pytest.mark.parametrize(("keys", "more"), [(200, 0), (201, 1), (500, 1)])
def test_mistakes_of_a_read_file(tmp_path: Path, keys: int, more: int) -> None:
    """Of 201 unknown keys, 200 are told, and that there are more."""
    squat = (GOOD / "exercises/squat.yml").read_text("utf-8")
    text = squat + "".join(f"key-{number}: x\n" for number in range(keys))
    found = [f.rule for f in read(good_programme(tmp_path, {"exercises/squat.yml": text}), LABEL).findings]

    assert (found.count("unknown-key"), found.count("too-many-mistakes")) == (200, more)


def test_training_days_of_all_plans() -> None:
    """6000 days pass: 100 plans of 12 weeks with five days a week."""
    days = "{monday: only, tuesday: only, wednesday: only, thursday: only, friday: only}"
    year = make.plan(f"phases: [{{name: All, aim: To go on., weeks: 12, sessions: {days}}}]")
    one_day = make.plan("phases: [{name: All, aim: To go on., weeks: 1, sessions: {monday: only}}]")

    assert MOST_DAYS == 6000
    assert list(extent_findings([year] * 100, Position("plans"))) == []
    (found,) = extent_findings([*[year] * 100, one_day], Position("plans"))
    assert found.message == "the plans hold 6001 training days together, 6000 are the most"


@pytest.mark.parametrize(("more", "said"), [(0, []), (1, ["squat.jpg is larger than 600 KB"])])
def test_bytes_of_a_photo(tmp_path: Path, more: int, said: list[str]) -> None:
    """A photo of 600 KB is taken, a byte more is too much."""
    squat = (GOOD / "exercises/squat.yml").read_text("utf-8")
    program = good_programme(
        tmp_path, {"exercises/squat.yml": f"{squat}media: [{{photo: squat.jpg, alt: A member squats.}}]\n"}
    )
    (program / "media").mkdir()
    (program / "media" / "squat.jpg").write_bytes(JPEG + b"x" * (MOST_BYTES - len(JPEG) + more))

    assert [found.message for found in read(program, LABEL).findings] == said


NAMES = [f"name-{letter}" for letter in "abcdefghijklm"]
HINTS = [
    # what is written, what is there, the other words, the hint
    ("zzz", NAMES[:12], "", f"one of: {', '.join(NAMES[:12])}"),
    ("zzz", NAMES, "", f"one of: {', '.join(NAMES[:12])}, ..."),
    ("zzz", [], "", "there is none yet"),
    ("zzz", NAMES, "add it", "add it"),
    ("Squat", ["squat", "squats"], "add it", "did you mean 'squat'?"),
    ("sqaut", ["squad", "squat"], "", "did you mean 'squat'?"),  # swapped letters first
]


@pytest.mark.parametrize(("written", "known", "otherwise", "hint"), HINTS)
def test_names_that_may_be_meant(written: str, known: list[str], otherwise: str, hint: str) -> None:
    """The closest name; else the other words; else the first twelve names."""
    assert did_you_mean(written, known, otherwise) == hint


def test_nothing_is_like_nothing() -> None:
    """Where no name comes near, none is named."""
    assert closest("squat", ["bench", "row"]) is None


def test_a_line_of_a_file() -> None:
    """The first and the last line can be shown; a line behind the end, or of a file that is not there, is none."""
    places = Places(LABEL, {"club.yml": read_tree("club.yml", b"name: A\nkit: {}")})

    assert [places.line(Position(f"{LABEL}/club.yml", line)) for line in (1, 2, 3)] == ["name: A", "kit: {}", None]
    assert places.line(Position(f"{LABEL}/plans/x.yml")) is None
