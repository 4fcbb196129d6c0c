"""What single changes do to a week's places: a session moved, left out, or done in the place of another."""

from collections.abc import Sequence
from dataclasses import dataclass

from setwright.dose.resolved import Reason
from setwright.model.plan import Change
from setwright.model.vocabulary import Weekday
from setwright.model.weekly import Planned


@dataclass(frozen=True, slots=True)
class Placed:
    """A session in its week after single changes; ``left_out`` is the reason to skip it, if any."""

    planned: Planned
    day: Weekday | None
    session: str
    reasons: tuple[Reason, ...]
    left_out: str | None = None


def placed(planned: Planned, changes: Sequence[Change]) -> Placed:
    """Return where and as what a planned session is done after this week's changes, with the reasons."""
    reasons: list[Reason] = []
    day, ident = planned.day, planned.session
    for change in changes:
        if not means(change, planned, ident):
            continue
        if change.skip:
            return Placed(planned, day, ident, tuple(reasons), change.why)
        if change.move_to is not None:
            reasons.append(Reason(change.why, moved_from=planned.day))
            day = change.move_to
        elif change.do_instead is not None:
            ident = change.do_instead
            reasons.append(Reason(change.why))
    return Placed(planned, day, ident, tuple(reasons))


def means(change: Change, planned: Planned, ident: str) -> bool:
    """Say whether a change is about a planned session; what it names of day, number and session must all fit."""
    at = change.day in (None, planned.day) and change.number in (None, planned.number)
    return at and change.session in (None, ident)
