"""What a check is made of: the thing looked at, the doubt it may raise, and who may accept it."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property
from typing import Final

from setwright.checks.example import Example
from setwright.checks.threshold import Threshold
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.model.acceptance import Acceptance
from setwright.model.programme import Programme
from setwright.model.session import Slot, path_in_block
from setwright.review.status import Review, reviews
from setwright.source.finding import Finding, Position, Severity
from setwright.source.read import Places

COMMON: Final = "Common practice, no source."


@dataclass(frozen=True)
class Subject:
    """A programme, resolved, with the places of everything in it."""

    programme: Programme
    plans: tuple[ResolvedPlan, ...]
    places: Places

    def at(self, file: str, *path: str | int, key: bool = False) -> Position:
        """Return a place in one of the programme's files."""
        return self.places.of(file, *path, key=key)

    def value(self, threshold: Threshold) -> Fraction:
        """Return a threshold as the club set it, or its default."""
        return threshold.set_by(self.programme.club.checks)

    @cached_property
    def reviews(self) -> Mapping[str, Review]:
        """Where each exercise stands with its reviewers."""
        return reviews(self.programme, self.plans)

    @cached_property
    def slots(self) -> dict[tuple[str, Slot], list[tuple[ResolvedPlan, ResolvedSession, ResolvedItem]]]:
        """Every exercise of every session and what may be done instead, with all its weeks in order, plan by plan."""
        found: dict[tuple[str, Slot], list[tuple[ResolvedPlan, ResolvedSession, ResolvedItem]]] = {}
        for plan in self.plans:
            for session in plan.sessions:
                for item in session.all_items:
                    found.setdefault((session.session, item.slot), []).append((plan, session, item))
        return found

    def main_regions(self, exercise: str) -> tuple[str, ...]:
        """Return the regions that do most of the work of an exercise, as they are counted."""
        return self.programme.club.counted(self.programme.exercises[exercise].regions.main)

    def accepted_at(self, session: str, slot: Slot) -> list[Acceptance]:
        """Return what the coach accepts for one exercise of one session: there, on the session, on the exercise."""
        whole = self.programme.sessions[session]
        written = whole.written(slot)
        return [*written.accept, *whole.accept, *self.programme.exercises[written.exercise].accept]


def place_in_session(session: str, slot: Slot) -> tuple[str, *tuple[str | int, ...]]:
    """Return file and path of one exercise of a session."""
    path: tuple[str | int, ...] = ("blocks", slot[0], *path_in_block(slot[1:]))
    return (f"sessions/{session}.yml", *path)


@dataclass(frozen=True)
class Doubt:
    """What a rule found, before anyone accepted it; ``severity`` where it is not the rule's usual one."""

    position: Position
    message: str
    hint: str
    accept: Sequence[Acceptance] = ()
    severity: Severity | None = None


@dataclass(frozen=True)
class Rule:
    """One check. Its module's docstring is its page in the docs."""

    ident: str
    severity: Severity
    source: str
    check: Callable[[Subject], Iterator[Doubt]]
    about: str
    thresholds: tuple[Threshold, ...] = ()
    bad: Example = field(default_factory=dict)
    good: Example = field(default_factory=dict)

    @property
    def title(self) -> str:
        """What the rule looks for, as a heading."""
        return self.about.strip().split("\n")[0].rstrip(".")

    @property
    def paragraphs(self) -> tuple[str, ...]:
        """The rest of its page, paragraph by paragraph."""
        return tuple(" ".join(part.split()) for part in self.about.strip().split("\n\n")[1:])

    def finding(self, doubt: Doubt) -> Finding:
        """Return a doubt as a finding under this rule's name."""
        return Finding(doubt.position, self.ident, doubt.message, doubt.hint, doubt.severity or self.severity)
