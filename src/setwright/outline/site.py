"""What everything that is published is made from."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from setwright.checks.registry import Accepted
from setwright.dose.contacts import is_jump
from setwright.dose.phases import Manner
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.figure.motion import solved
from setwright.model.load import Band
from setwright.model.programme import Programme
from setwright.review.parts import Line
from setwright.review.status import Review, reviews
from setwright.review.words import Where, sayings, words_about
from setwright.wording.language import ENGLISH, Language

Seen = Mapping[str, Mapping[str, tuple[Line, ...]]]
"""By exercise and part: the lines that a reviewer saw."""


@dataclass(frozen=True)
class Site:
    """What every page kind is made from.

    ``accepted`` are the warnings that the coach stands by; ``seen`` holds, by exercise and part, what a reviewer saw
    where that has changed since. ``language`` is what members read. ``committed`` says, by place among the sign-offs,
    who committed the line of each, where git knows. ``reviewed`` is where each exercise stands, where that has been
    worked out; ``on_paper`` says whether there are sheets for pages to lead to. ``edited_at`` is the address
    below which the files of the programme can be changed, where the club has one.
    """

    programme: Programme
    plans: tuple[ResolvedPlan, ...]
    accepted: tuple[Accepted, ...] = ()
    seen: Seen = field(default_factory=dict)
    language: Language = ENGLISH
    committed: Mapping[int, str] = field(default_factory=dict)
    reviewed: Mapping[str, Review] | None = None
    on_paper: bool = True
    edited_at: str | None = None

    @cached_property
    def uses(self) -> dict[str, list[tuple[ResolvedPlan, ResolvedSession, ResolvedItem]]]:
        """Every place where an exercise stands, by exercise, in order of plan and date."""
        found: dict[str, list[tuple[ResolvedPlan, ResolvedSession, ResolvedItem]]] = {}
        for plan in self.plans:
            for session in plan.sessions:
                for item in session.all_items:
                    found.setdefault(item.exercise, []).append((plan, session, item))
        return found

    @cached_property
    def reviews(self) -> Mapping[str, Review]:
        """Where each exercise stands with its reviewers."""
        return reviews(self.programme, self.plans) if self.reviewed is None else self.reviewed

    @cached_property
    def words_about(self) -> Mapping[str, tuple[Line, ...]]:
        """What sessions and warm-ups say of each exercise under limits in words and kit of their own."""
        return words_about(self.programme)

    @cached_property
    def not_reviewed(self) -> frozenset[Where]:
        """The places of words and kit about an exercise under limits that its newest sign-off did not see."""
        return frozenset(
            saying.where
            for saying in sayings(self.programme)
            if any(not self.reviews[ident].words_seen for ident in saying.about)
        )

    @cached_property
    def reasons_not_reviewed(self) -> frozenset[str]:
        """The reasons of changes that speak of an exercise under limits and that its newest sign-off did not see."""
        plans = self.programme.plans
        changed = (where for where in self.not_reviewed if where[0] == "plan")
        return frozenset(plans[str(where[1])].changes[int(where[2])].why for where in changed)

    def kit_of(self, session: ResolvedSession) -> list[str]:
        """Return the kit that a session needs that week, in order of first use."""
        kit: dict[str, None] = {}
        for item in session.all_items:
            written = self.programme.sessions[session.session].written(item.slot)
            kit.update(dict.fromkeys(written.kit or self.programme.exercises[item.exercise].kit))
            for load in item.dose.loads:
                club = self.programme.club
                fitting = [k for k in club.kit if isinstance(load, Band) and load.name in club.names(k)]
                if kit.keys().isdisjoint(fitting):
                    kit.update(dict.fromkeys(fitting[:1]))
        return list(kit)

    def kit_of_easier_ways(self, session: ResolvedSession) -> list[str]:
        """Return the kit that the easier ways of a session's exercises need beside the session's own."""
        exercises, own = self.programme.exercises, self.kit_of(session)
        ways = (way.exercise for item in session.all_items for way in exercises[item.exercise].easier if way.exercise)
        kit = dict.fromkeys(name for ident in ways for name in exercises[ident].kit)
        return [name for name in kit if name not in own]

    def manner(self, exercise: str) -> Manner:
        """Return how a repetition goes: a jump by its pattern, else as the figure shows it; without one, down first."""
        whole = self.programme.exercises[exercise]
        if is_jump(whole):
            return "jumps"
        return "lowers first" if whole.figure is None or solved(whole.figure).lowers_first else "lifts first"
