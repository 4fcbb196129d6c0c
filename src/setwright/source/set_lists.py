"""How many sets a week may hold, as far as the files alone say it: a list in a change of one week is as long."""

from collections.abc import Iterator

from setwright.model.plan import Change, Plan
from setwright.model.prescription import Prescription
from setwright.model.progress import CountClimb
from setwright.model.session import Block, Session


def misfit(plan: Plan, change: Change, session: Session) -> tuple[str, str, str] | None:
    """Return the key of a list in a change that fits no number of sets of its week, with what is wrong and the fix.

    Args:
        plan: the plan that holds the change.
        change: the change, of an exercise that the session holds.
        session: the session that changes.
    """
    alike = [other for other in plan.changes if other.week == change.week]
    if any(other.sets is not None and other.exercise in (None, change.exercise) for other in alike):
        return None  # 'sets' beside the list, or in a change of the whole session, says how many there are
    fewer = _is_lighter(plan, change.week)
    for block, written in _of(session, change.exercise):
        counts = _counts(block, written)
        what = "sets" if block.kind == "straight" else "rounds"
        for key, count in change.listed.items():
            # How many a lighter week or a taper leaves is not decided here; it is never more than a week in full.
            if not counts or count in counts or (fewer and count <= max(counts)):
                continue
            least, most = min(counts), max(counts)
            wanted = str(least) if least == most else f"{least} to {most}"
            said = f"this list has {count} entries, '{change.exercise}' has {wanted} {what} in that week"
            beside = f", or 'sets: {count}' beside the list" if what == "sets" else ""
            return key, said, f"write one entry for each of the {wanted} {what}{beside}"
    return None


def _is_lighter(plan: Plan, week: int) -> bool:
    """Say whether a week of a plan is a lighter one or of a taper."""
    for phase in plan.phases:
        if week <= phase.weeks:
            return phase.taper is not None or (phase.lighter is not None and week in phase.lighter.weeks)
        week -= phase.weeks
    return False


def _of(session: Session, exercise: str | None) -> Iterator[tuple[Block, Prescription]]:
    for block in session.blocks:
        yield from ((block, written) for _, written in block.prescriptions() if written.exercise == exercise)


def _counts(block: Block, written: Prescription) -> set[int]:
    """Return every number of sets or rounds that the weeks of a plan may come to, lighter weeks and tapers apart."""
    if written.listed_sets is not None:
        return {written.listed_sets}
    of_block, own = block.progress, written.progress.sets if written.progress else None
    if block.kind != "straight":
        return _way(block.counted_rounds, of_block.rounds if of_block else None)
    if written.sets is not None:
        return _way(written.sets, own)
    return _way(block.sets, own or (of_block.sets if of_block else None))


def _way(start: int | None, climb: CountClimb | None) -> set[int]:
    if climb is not None and climb.weeks is not None:
        return set(climb.weeks)
    ends = [number for number in (start, climb.up_to if climb else None, climb.down_to if climb else None) if number]
    return set(range(min(ends), max(ends) + 1)) if ends else set()
