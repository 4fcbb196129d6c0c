"""What single changes do to a week's days: a session moved, left out, or done in the place of another."""

from datetime import date, timedelta

from setwright.dose.resolved import Reason
from setwright.model.plan import Change
from setwright.model.vocabulary import WEEKDAYS, Weekday


def moved(day: Weekday, ident: str, changes: list[Change]) -> tuple[Weekday, str, list[Reason], str | None]:
    """Return the day and session after this week's changes, the reasons, and the reason to skip it, if any."""
    reasons: list[Reason] = []
    written_day = day
    for change in changes:
        if not means(change, written_day, ident):
            continue
        if change.skip:
            return day, ident, reasons, change.why
        if change.move_to is not None:
            reasons.append(Reason(change.why, moved_from=written_day))
            day = change.move_to
        elif change.do_instead is not None:
            ident = change.do_instead
            reasons.append(Reason(change.why))
    return day, ident, reasons, None


def means(change: Change, day: Weekday, ident: str) -> bool:
    """Say whether a change is about that day's session; where it names both day and session, both must fit."""
    return change.day in (None, day) and change.session in (None, ident)


def date_of(day: Weekday, week_starts: date) -> date:
    """Return the date of a day in the week that starts on a date, whatever weekday that is."""
    return week_starts + timedelta(days=(WEEKDAYS.index(day) - week_starts.weekday()) % 7)
