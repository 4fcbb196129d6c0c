"""A small fixed share of the fuzzing: ``python -m fuzz.run`` does more, with any seed."""

from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from hypothesis import given, settings

from fuzz import builds, reads
from fuzz.faults import of_findings, tried
from fuzz.keeping import opened
from fuzz.mutations import MUTATIONS
from setwright import publish
from setwright.source.finding import Finding, Position
from setwright.source.read import Places
from setwright.source.tree import read_tree
from support.any_programme import written
from support.reading import GOOD

ENOUGH_S = 600
"""CPU seconds that no run takes: here, a hang is for the person who waits, and time is not asserted."""


def test_mutated_files_are_read_without_a_fault(tmp_path: Path) -> None:
    """Whatever a slip makes of a file, it is accepted, or refused with findings that have a place and clear words."""
    last = list(reads.runs(tmp_path, 7, range(150), ENOUGH_S))[-1]

    assert last.faults == []
    assert set(last.runs) == set(MUTATIONS)
    assert 0 < last.accepted < 150


def test_a_random_programme_builds_without_a_fault(tmp_path: Path) -> None:
    """Read from its files, resolved, checked, printed, built by the engine, and every link followed."""
    (tally,) = builds.runs(tmp_path, 7, 1, ENOUGH_S)

    assert tally.faults == []
    assert tally.accepted == 1


def test_runs_go_on_after_a_cut(tmp_path: Path) -> None:
    """Cut after any run, they come to what they come to in one go; a file of other runs is refused."""
    *_, whole = reads.runs(tmp_path / "whole", 7, range(12), ENOUGH_S)
    cut = opened(tmp_path / "tally.json", seed=7)
    for tally in reads.runs(tmp_path / "cut", 7, range(5), ENOUGH_S):
        cut.keep("reader", tally)
    before = opened(tmp_path / "tally.json", seed=7).tallies["reader"]
    assert before.runs.total() == 5
    *_, gone_on = reads.runs(tmp_path / "gone on", 7, range(12), ENOUGH_S, before=before)

    assert (gone_on.runs, gone_on.accepted, gone_on.rules) == (whole.runs, whole.accepted, whole.rules)
    with pytest.raises(SystemExit, match="name another file"):
        opened(tmp_path / "tally.json", seed=8)


@settings(max_examples=20)
@given(written())
def test_a_drawn_programme_may_be_published(files: dict[str, Any]) -> None:
    """A programme that is refused would make a hollow build: nothing is printed, and no link is followed."""
    with TemporaryDirectory() as folder:
        builds.write(Path(folder), files)
        looked = publish.look(Path(folder))

    assert [f for f in looked.findings if f.severity == "error"] == []
    assert looked.publishable


@pytest.mark.parametrize("kind", MUTATIONS)
def test_a_mutation_is_told_by_its_seed(kind: str) -> None:
    """The same seed gives the same bytes; some seed of ten changes the file."""
    raw = (GOOD / "plans/regatta.yml").read_bytes()
    twice = [[MUTATIONS[kind](Random(n), raw) for n in range(10)] for _ in range(2)]  # noqa: S311

    assert twice[0] == twice[1]
    assert any(changed != raw for changed in twice[0])


def test_a_crash_and_a_hang_are_faults() -> None:
    """Neither stops the runs; what never ends is ended by its CPU seconds."""

    def never_ends() -> None:
        while True:
            pass

    _, _, crash = tried("1", "bytes", ENOUGH_S, lambda: [][1])
    _, _, hang = tried("2", "bytes", 0.05, never_ends)
    answer, _, none = tried("3", "bytes", ENOUGH_S, lambda: "an answer")

    assert "IndexError" in crash[0].what
    assert hang[0].what.startswith("hang")
    assert (answer, none) == ("an answer", [])


@pytest.mark.parametrize(
    ("finding", "wrong"),
    [
        (Finding(Position("p/a.yml", 1, 1), "a-rule", "something is wrong", "mend it"), []),
        (Finding(Position("p/a.yml", 3, 1), "a-rule", "something is wrong", "mend it"), ["outside its file"]),
        (Finding(Position("p/a.yml", 1, 40), "a-rule", "something is wrong", "mend it"), ["outside its file"]),
        (Finding(Position("", 1, 1), "a-rule", "something is wrong", "mend it"), ["without a place"]),
        (Finding(Position("p/a.yml", 1, 1), "not-valid", "something is wrong", "mend it"), ["an unknown rule"]),
        (Finding(Position("p/a.yml", 1, 1), "a-rule", " ", "mend it"), ["no message"]),
        (Finding(Position("p/a.yml", 1, 1), "a-rule", "wrong\x1b[31m", "mend it"), ["signs that do not print"]),
        (Finding(Position("p/a.yml", 1, 1), "a-rule", "wrong " * 60, "mend it"), ["a text that is too long"]),
        (Finding(Position("p/a.yml", 1, 1), "a-rule", "Input should be a str", ""), ["words of the machinery"]),
    ],
)
def test_a_finding_without_place_or_clear_words_is_a_fault(finding: Finding, wrong: list[str]) -> None:
    """Each thing that may be wrong with a finding is seen, and nothing is seen on a sound one."""
    places = Places("p", {"a.yml": read_tree("p/a.yml", b"name: x\n")})

    assert [what.split(":")[0] for what in of_findings((finding,), places)] == wrong


def test_the_same_said_twice_is_a_fault() -> None:
    """The same words at one place, with two hints that contradict each other."""
    one, other = (
        Finding(Position("p/a.yml"), "a-rule", "something is wrong", f"mend {what}") for what in ("it", "that")
    )

    assert len(list(of_findings((one, other), Places("p")))) == 1
