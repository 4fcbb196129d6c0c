"""Solved figures are kept from run to run: nothing else comes out, and what is damaged is solved again."""

import json
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from setwright import looking
from setwright.figure import kept, motion
from setwright.figure.picture import animated, thumbnail
from setwright.model.exercise import Exercise
from setwright.model.programme import Programme
from support.figures import figure
from support.small import small_project

SQUAT = "poses: [{trunk: 2}, {trunk: 30, knee: 110}]"
STRAINED = "poses: [{touch: {hands: floor, feet: {to: floor, at: 0 cm}}, trunk: 0, knee: 0}]"


@pytest.fixture(autouse=True)
def solving(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """What the solver is asked for, in a process that has solved nothing yet."""
    asked: list[str] = []
    settle, solve = motion.settle, motion.solve
    monkeypatch.setattr(motion, "settle", lambda problem: asked.append("pose") or settle(problem))
    monkeypatch.setattr(motion, "solve", lambda *given: asked.append("way") or solve(*given))
    monkeypatch.setattr(motion, "_solved", lru_cache(motion._solved.__wrapped__))
    return asked


def run(tree: Path, *written: str) -> list[motion.Motion]:
    """Solve figures as a run of its own does."""
    motion._solved.cache_clear()
    with kept.beside(tree):
        return [motion.solved(figure(words)) for words in written]


def test_an_unchanged_figure_is_not_solved_again(solving: list[str], tmp_path: Path) -> None:
    """A second run has the first one's states, contacts and frames, to the last digit."""
    (first,) = run(tmp_path, SQUAT)
    assert solving == ["pose", "pose", "way"]
    solving.clear()
    (second,) = run(tmp_path, SQUAT)

    assert solving == []
    assert np.array_equal(first.states, second.states)
    assert [f.contacts for f in second.frames] == [f.contacts for f in first.frames]
    assert (second.stops, second.heights_cm, second.turns) == (first.stops, first.heights_cm, first.turns)


def test_the_pictures_of_the_example_are_the_same_from_kept_states(
    solving: list[str], tmp_path: Path, example: Programme
) -> None:
    """Small and moving pictures, byte for byte, without anything solved."""
    some = dict(sorted(example.exercises.items())[::5])
    with kept.beside(tmp_path):
        fresh = pictures(some)
    solving.clear()
    motion._solved.cache_clear()
    with kept.beside(tmp_path):
        again = pictures(some)

    assert solving == []
    assert again == fresh


def pictures(exercises: dict[str, Exercise]) -> dict[str, object]:
    return {ident: (thumbnail(one), animated(one, ident)) for ident, one in exercises.items() if one.figure}


def test_only_a_new_figure_is_solved(solving: list[str], tmp_path: Path) -> None:
    """Another bend is another figure; the one beside it stays."""
    run(tmp_path, SQUAT, STRAINED)
    solving.clear()
    run(tmp_path, SQUAT.replace("110", "100"), STRAINED)

    assert solving == ["pose", "pose", "way"]


def test_what_does_not_fit_is_said_of_a_kept_figure_too(tmp_path: Path) -> None:
    """A pose that no body can take is refused in every run, not only in the one that solved it."""
    (first,), (second,) = run(tmp_path, STRAINED), run(tmp_path, STRAINED)

    assert first.misfits
    assert second.misfits == first.misfits


def _entry(file: dict[str, Any]) -> dict[str, Any]:
    return next(iter(file["figures"].values()))


HARMS: dict[str, Any] = {
    "another solver": lambda file: file.update({"solved by": "another"}),
    "a number changed": lambda file: _entry(file)["states"][0].__setitem__(3, 20.0),
    "a number missing": lambda file: _entry(file)["states"][0].pop(),
    "a state missing": lambda file: _entry(file)["states"].pop(),
    "no number": lambda file: _entry(file)["states"][0].__setitem__(3, float("nan")),
    "a word": lambda file: _entry(file)["states"][0].__setitem__(3, "far"),
    "beyond all numbers": lambda file: _entry(file)["states"][0].__setitem__(3, 10**400),
    "no digest": lambda file: _entry(file).pop("digest"),
    "no entry": lambda file: file["figures"].update(dict.fromkeys(file["figures"], 7)),
    "no figures": lambda file: file.update(figures=[1]),
    "a list": lambda file: file.clear(),
}


@pytest.mark.parametrize("harm", HARMS)
def test_a_damaged_or_foreign_file_is_solved_again_and_mended(solving: list[str], tmp_path: Path, harm: str) -> None:
    """Nothing of it reaches a page; the next run finds a good one."""
    (good,) = run(tmp_path, SQUAT)
    path = tmp_path / kept.FILE
    raw = path.read_bytes()
    file = json.loads(raw)
    HARMS[harm](file)
    path.write_text(json.dumps(file), "utf-8")
    solving.clear()
    (again,) = run(tmp_path, SQUAT)

    assert solving == ["pose", "pose", "way"]
    assert np.array_equal(again.states, good.states)
    assert path.read_bytes() == raw


@pytest.mark.parametrize("raw", [b"", b"{", b"\xff\xfe", b"[" * 100_000, b"null"])
def test_a_file_that_is_no_file_of_ours_is_nothing(raw: bytes) -> None:
    """Half a file, another encoding, a nest without end: all are as good as none."""
    assert kept.from_bytes(raw) == {}


def test_states_of_another_figure_are_not_taken(solving: list[str], tmp_path: Path) -> None:
    """States under a wrong digest, which have another count than the figure asks for, are left alone."""
    (right,) = run(tmp_path, SQUAT)
    (other,) = run(tmp_path / "elsewhere", STRAINED)
    ident = next(iter(json.loads((tmp_path / kept.FILE).read_bytes())["figures"]))
    for wrong in (other.states, np.vstack([right.states, right.states])):
        (tmp_path / kept.FILE).write_bytes(kept.as_bytes({ident: wrong}))
        solving.clear()
        (again,) = run(tmp_path, SQUAT)

        assert solving == ["pose", "pose", "way"]
        assert np.array_equal(again.states, right.states)


def test_a_link_to_elsewhere_is_not_followed(tmp_path: Path) -> None:
    """A folder that is a link into another one is neither read nor written."""
    (tmp_path / "tree").mkdir()
    (tmp_path / "private").mkdir()
    (tmp_path / "tree" / ".figures").symlink_to(tmp_path / "private")
    run(tmp_path / "tree", SQUAT)

    assert list((tmp_path / "private").iterdir()) == []


def test_a_place_that_cannot_be_written_costs_no_more_than_time(tmp_path: Path) -> None:
    """Where a file stands in the way of the folder, figures are solved as ever."""
    (tmp_path / ".figures").write_text("mine", "utf-8")
    (found,) = run(tmp_path, SQUAT)

    assert len(found.frames) > 2
    assert (tmp_path / ".figures").read_text("utf-8") == "mine"


def test_a_check_keeps_its_figures_in_the_tree_that_is_there(solving: list[str], tmp_path: Path) -> None:
    """The second check of a project solves nothing; a programme without a project around it gets no folder."""
    project = small_project(tmp_path / "club")
    squat = project / "program" / "exercises" / "row.yml"
    squat.write_text(squat.read_text("utf-8") + f"\nfigure: {{{SQUAT}}}\n", "utf-8")
    first = looking.look(project / "program")
    assert solving
    solving.clear()
    motion._solved.cache_clear()
    second = looking.look(project / "program")

    assert solving == []
    assert second.findings == first.findings
    (project / "program").rename(tmp_path / "alone")
    looking.look(tmp_path / "alone")
    assert sorted(path.name for path in tmp_path.iterdir()) == ["alone", "club"]
