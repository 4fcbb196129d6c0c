"""Judging mutants goes on after a cut: a verdict is kept as it comes, and one of another text does not count."""

from pathlib import Path

import pytest

from benchmarks.mutants.judging import Judged, Module
from benchmarks.mutants.keeping import Kept
from benchmarks.mutants.mutating import mutants

CODE = "def step(a: int, b: int) -> int:\n    return a + a + b if a < b else a - b\n"


def module(file: Path, code: str) -> Module:
    """Return a module with all its mutants."""
    file.write_text(code, "utf-8")
    return Module(file, "setwright.dose.step", ("dose",), tuple(mutants(code, str(file))))


def test_what_was_judged_is_not_judged_again(tmp_path: Path) -> None:
    """Each mutant for itself, twins on one line too; the last line, cut in the middle, says nothing."""
    results, one = tmp_path / "results", module(tmp_path / "step.py", CODE)
    kept = Kept(results, [one], {"seed": "5"})
    kept.keep(Judged(one, one.mutants[0], "killed", "a test"))
    kept.keep(Judged(one, one.mutants[1], "survived"))
    kept.keep(Judged(one, one.mutants[2], "killed", "a test"))
    results.write_text(results.read_text("utf-8")[:-3], "utf-8")
    again = module(tmp_path / "step.py", CODE)
    after = Kept(results, [again], {"seed": "5"})

    assert [(j.mutant.change, j.verdict) for j in after.known([again])] == [
        (one.mutants[0].change, "killed"),
        (one.mutants[1].change, "survived"),
    ]
    (left,) = after.unknown([again])
    assert len(left.mutants) == len(one.mutants) - 2


def test_another_text_or_another_choice_is_judged_anew(tmp_path: Path) -> None:
    """Lines move and tests with them; and a sample of another seed has other mutants."""
    results, one = tmp_path / "results", module(tmp_path / "step.py", CODE)
    Kept(results, [one], {"seed": "5"}).keep(Judged(one, one.mutants[0], "killed", "a test"))
    changed = module(tmp_path / "step.py", f"\n{CODE}")

    assert list(Kept(results, [changed], {"seed": "5"}).known([changed])) == []
    with pytest.raises(SystemExit, match="name another file"):
        Kept(results, [changed], {"seed": "6"})
