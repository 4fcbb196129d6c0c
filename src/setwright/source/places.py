"""Which place of a week a change means, and what is held there."""

from setwright.model.plan import Change, Plan


def missed_place(plan: Plan, change: Change) -> tuple[str, str, str] | None:
    """Return the key of a change that names no place of its week, with what is wrong and the fix; None if it does."""
    week = plan.planned(change.week)
    days = list(dict.fromkeys(one.day for one in week if one.day is not None))
    if change.day is not None and not days:
        said = f"the sessions of week {change.week} are on any day"
        return "day", said, f"write which one: 'number: 1' to 'number: {len(week)}'"
    if change.day is not None and change.day not in days:
        return "day", f"week {change.week} has no session on {change.day}", f"its days are {', '.join(days)}"
    if change.number is not None and change.day is None and days:
        said = f"the sessions of week {change.week} are on weekdays"
        return "number", said, f"write the day, such as 'day: {days[0]}'"
    if change.move_to is not None and not days:
        said = f"the sessions of week {change.week} are on any day already"
        return "move_to", said, "delete this change, or write the phase's sessions with days"
    same = [one for one in week if one.day == change.day]
    if change.number is not None and change.number > len(same):
        where = f"{change.day} of week {change.week}" if change.day else f"week {change.week}"
        many = f"{len(same)} sessions" if len(same) > 1 else "one session"
        return "number", f"{where} has {many}, there is no number {change.number}", f"write 1 to {len(same)}"
    if change.do_instead is not None and change.number is None and change.session is None and len(same) > 1:
        said = f"{change.day} of week {change.week} has {len(same)} sessions: which of them?"
        return "do_instead", said, "write 'number: 1' or 'number: 2' beside the day"
    return None


def sessions_at(plan: Plan, change: Change) -> list[str]:
    """Return the sessions that stand where a change says, each one done instead included, in the order written."""
    if change.day is None and change.number is None:
        return []
    places = [
        one.session
        for one in plan.planned(change.week)
        if one.day == change.day and change.number in (None, one.number)
    ]
    instead = [
        other.do_instead
        for other in plan.changes
        if (other.week, other.day, other.number) == (change.week, change.day, change.number) and other.do_instead
    ]
    return [*places, *instead]
