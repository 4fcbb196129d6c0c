"""Looking at a programme: read, resolved and checked, and nothing published."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from setwright.checks.registry import Accepted, run
from setwright.checks.rule import Subject
from setwright.dose.resolve import resolve
from setwright.dose.resolved import ResolvedPlan
from setwright.figure import kept
from setwright.model.programme import Programme
from setwright.review.status import Review
from setwright.source.finding import Finding
from setwright.source.read import Cache, Places, read


@dataclass(frozen=True)
class Looked:
    """A programme that was read, resolved and checked. ``programme`` is None where it cannot be published."""

    programme: Programme | None
    plans: tuple[ResolvedPlan, ...]
    findings: tuple[Finding, ...]
    accepted: tuple[Accepted, ...]
    places: Places
    folder: Path
    reviews: Mapping[str, Review] = field(default_factory=dict)
    """Where each exercise stands with its reviewers."""

    @property
    def publishable(self) -> bool:
        """Whether nothing stands against publishing."""
        return self.programme is not None and not any(f.severity == "error" for f in self.findings)


def look(program: Path, label: str | None = None, cache: Cache | None = None, docs_build: Path | None = None) -> Looked:
    """Read, resolve and check a programme, publishing nothing.

    Args:
        program: the programme's folder.
        label: how messages name that folder.
        cache: what was read before, for a run that looks again.
        docs_build: the folder of the tree, where solved figures are kept from run to run; the one beside the programme
            where none is given.
    """
    reading = read(program, label, cache)
    if reading.programme is None:
        return Looked(None, (), reading.findings, (), reading.places, program)
    plans = resolve(reading.programme)
    with kept.beside(docs_build or program.resolve().parent / "docs_build"):
        subject = Subject(reading.programme, plans, reading.places)
        verdict = run(subject)
    findings = tuple(sorted((*reading.findings, *verdict.findings)))
    return Looked(reading.programme, plans, findings, verdict.accepted, reading.places, program, subject.reviews)
