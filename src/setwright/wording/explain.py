"""How a number came about, step by step: the same words on a page and on the command line."""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Any, Final

from setwright.dose.bands import choice_at
from setwright.dose.change import changes_between
from setwright.dose.dose import Dose
from setwright.dose.prescribing import lightened, prescribed, rest_at, with_fewer_sets
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.model.load import AddedWeight, HelpShare, HelpWeight, OneRepMaxShare
from setwright.model.prescription import MEASURES, Prescription
from setwright.model.programme import Programme
from setwright.model.progress import Climb, LoadClimb, Progress
from setwright.model.session import Block
from setwright.model.span import Open, Span
from setwright.wording import loads
from setwright.wording.blocks import reason
from setwright.wording.changes import in_a_line
from setwright.wording.doses import amount, distance, dose_in_words
from setwright.wording.explain_clock import of_clock
from setwright.wording.explain_lighter import of_what_remains
from setwright.wording.explain_load import of_loads
from setwright.wording.explain_open import of_open_ends
from setwright.wording.explain_ramp import of_ramp
from setwright.wording.language import Language, later, small
from setwright.wording.steps import Step
from setwright.wording.times import duration


def derivation(
    language: Language,
    programme: Programme,
    session: ResolvedSession,
    item: ResolvedItem,
    body_weight_kg: Fraction | None = None,
) -> tuple[Step, ...]:
    """Return how one exercise's dose in one week came about, for one body weight where it is given."""
    written = programme.sessions[session.session].written(item.slot)
    exercise = programme.exercises[item.exercise]
    return (
        *_from_start(language, programme, written, session, item),
        *of_loads(language, programme, exercise, item, body_weight_kg),
    )


def history(
    language: Language,
    programme: Programme,
    plan: ResolvedPlan,
    session: ResolvedSession,
    item: ResolvedItem,
    body_weight_kg: Fraction | None = None,
) -> Iterator[tuple[int, str]]:
    """Yield every week up to this one in which the session stood in the plan, and what became of the dose.

    With a body weight, each week says the weight in the hand too, and how much heavier it is than the one before.
    """
    before_kg: Fraction | None = None
    rounds = programme.sessions[session.session].blocks[item.slot[0]].kind != "straight"
    for week in plan.weeks[: session.week]:
        for skipped in week.skipped:
            if skipped.session == session.session:
                said = language.say("skipped (%(why)s): the progression does not count this week", why=skipped.why)
                yield week.number, said
        for other in week.sessions:
            if other.session != session.session or other.since_start > session.since_start:
                continue
            same = next(i for i in other.all_items if i.slot == item.slot)
            said = f"{dose_in_words(language, same.dose, rounds)} ({_counting(language, other)})"
            changed = (language.say("changed for this week: %(why)s", why=why) for why in same.reasons)
            taken_kg = _taken_kg(same, body_weight_kg)
            hand = () if taken_kg is None else (_in_hand(language, same, taken_kg, before_kg),)
            before_kg = taken_kg or before_kg
            yield week.number, "; ".join((said, *hand, *changed))


def _taken_kg(item: ResolvedItem, body_weight_kg: Fraction | None) -> Fraction | None:
    """Return the weight that a member takes, in each hand where it is per hand; None where nothing says so."""
    if body_weight_kg is None or isinstance(item.dose.heaviest, OneRepMaxShare):
        return None
    choice = item.choice or choice_at(item.bands, body_weight_kg)
    return choice.weight_kg if choice is not None else None


def _in_hand(language: Language, item: ResolvedItem, taken_kg: Fraction, before_kg: Fraction | None) -> str:
    load, weight = item.dose.heaviest, language.number(taken_kg)
    if isinstance(load, HelpShare | HelpWeight):
        return language.say("%(weight)s kg of help", weight=weight)
    if isinstance(load, AddedWeight):
        return language.say("%(weight)s kg added to the body", weight=weight)
    if load is not None and load.per_hand:
        said = language.say("%(weight)s kg in each hand", weight=weight)
    else:
        said = language.say("%(weight)s kg in the hand", weight=weight)
    if before_kg is None or taken_kg <= before_kg:
        return said
    more = language.number((taken_kg / before_kg - 1) * 100, 0)
    return language.say("%(taken)s, %(percent)s %% more", taken=said, percent=more)


def _counting(language: Language, session: ResolvedSession) -> str:
    match session.remains.kind:
        case "lighter":
            return language.say("lighter week: the progression waits")
        case "taper":
            return language.say("taper: the progression waits")
        case _:
            return language.say("trained week %(number)s", number=session.trained + 1)


def _from_start(
    language: Language, programme: Programme, written: Prescription, session: ResolvedSession, item: ResolvedItem
) -> Iterator[Step]:
    block, exercise = programme.sessions[session.session].blocks[item.slot[0]], programme.exercises[item.exercise]
    rounds = block.kind != "straight"
    first = prescribed(block, written, exercise, rest_at(block, 0), 0)
    said = dose_in_words(language, first, rounds)
    yield Step(language.say("First dose, as the coach wrote it: %(dose)s.", dose=said))
    progressed = list(_progressions(language, block, written))
    yield from progressed
    now = prescribed(block, written, exercise, rest_at(block, session.trained), session.trained)
    if progressed:
        rest = ""
        if _rest_climb(block, written):
            rest = " " + language.say("Rest: %(time)s.", time=duration(language, now.first.rest_s))
        yield Step(_now(language, session, dose_in_words(language, now, rounds)) + rest, "trained-weeks")
    lighter = lightened(now, session.remains, programme.club.bands)
    if session.remains.kind != "normal":
        left = with_fewer_sets(now, session.remains, programme.club.bands)
        yield from of_what_remains(language, session.remains, rounds, now, left, lighter)
    if _as_written(item.dose) != _as_written(lighter):
        changed = in_a_line(language, changes_between(lighter, item.dose, rounds)) or language.say("other numbers")
        reasons = "; ".join((*item.reasons, *(reason(language, why) for why in session.reasons)))
        said = language.say("The coach changed this week alone: %(changes)s.", changes=changed)
        yield Step(f"{said} {reasons}".strip(), "change")
    yield from of_open_ends(language, item.dose)
    yield from of_clock(language, item.dose)
    yield from of_ramp(language, item.dose)
    if item.dose.sides != "both together":
        yield Step(_sides(language, item), "sides")


def _as_written(dose: Dose) -> Dose:
    """Return a dose without what is worked out behind the coach's numbers: warm-up sets, and what a clock leaves."""
    written = dose.without_ramp
    if dose.clock is None:
        return written
    return (written.of(1) if dose.open_rounds else written).with_sets(rest_s=0)


def _now(language: Language, session: ResolvedSession, dose: str) -> str:
    match session.remains.kind:
        case "normal":
            number = session.trained + 1
            return language.say("Trained week %(number)s of this session gives %(dose)s.", number=number, dose=dose)
        case "lighter":
            return language.say("This is a lighter week, so the progression stands where it was: %(dose)s.", dose=dose)
        case "taper":
            return language.say("This is a taper week, so the progression stands where it was: %(dose)s.", dose=dose)


def _sides(language: Language, item: ResolvedItem) -> str:
    said = amount(language, item.dose)
    if item.dose.sides == "one at a time":
        return language.say("The exercise works one at a time: %(amount)s on each side.", amount=said)
    return language.say("The exercise works alternating: %(amount)s in all, half of them on each side.", amount=said)


_NAMES: Final[Mapping[str, str]] = {
    "sets": later("Sets"),
    "rounds": later("Rounds"),
    "reps": later("Reps"),
    "hold": later("Hold"),
    "work": later("Work"),
    "distance": later("Distance"),
    "rest": later("Rest"),
    "lasts": later("Time of the rounds"),
    "load": later("Load"),
}
"""What can climb, by its key in the language."""


def _progressions(language: Language, block: Block, written: Prescription) -> Iterator[Step]:
    progress = written.progress or Progress()
    for key in ("sets", "rounds"):
        climb = getattr(block.progress, key, None)
        # An exercise's own sets, or its own progression of them, go before the block's.
        if climb is not None and written.sets is None and progress.sets is None:
            yield Step(_climb(language, key, climb) + ".", _rule(climb))
    if block.progress is not None and block.progress.lasts is not None:
        yield Step(_climb(language, "lasts", block.progress.lasts) + ".", _rule(block.progress.lasts))
    then = progress.then.load if progress.then else None
    for key in ("sets", *MEASURES):
        climb = getattr(progress, key)
        if climb is None:
            continue
        said = _climb(language, key, climb)
        if then is not None and climb.add is not None:
            yield Step(_double(language, key, said, then), "double")
        else:
            yield Step(said + ".", _rule(climb))
    if (climb := _rest_climb(block, written)) is not None:
        yield Step(_climb(language, "rest", climb) + ".", _rule(climb))
    if progress.load is not None:
        yield Step(_climb(language, "load", progress.load) + ".", _rule(progress.load))
    if progress.tempo is not None:
        tempos = language.listed(map(str, progress.tempo.weeks))
        yield Step(language.say("Tempo by trained week: %(values)s, then it stays.", values=tempos), "listed")


def _rest_climb(block: Block, written: Prescription) -> Climb[int, int] | None:
    own = written.progress.rest if written.progress else None
    of_block = block.progress.rest if block.progress and written.rest is None else None
    return own or of_block


def _double(language: Language, key: str, climb: str, then: LoadClimb) -> str:
    if then.add is not None and then.up_to is not None:
        values = {"by": loads.load(language, then.add), "end": loads.load(language, then.up_to)}
        after = language.say("the load rises by %(by)s (to %(end)s at most)", **values)
    elif then.take is not None and then.down_to is not None:
        values = {"by": loads.load(language, then.take), "end": loads.load(language, then.down_to)}
        after = language.say("the load falls by %(by)s (to %(end)s at least)", **values)
    else:
        raise ValueError("a load that follows another climb has no list of weeks")
    again = small(language.say(_NAMES[key]))
    return language.say("%(climb)s; then %(then)s, and %(what)s start again.", climb=climb, then=after, what=again)


def _rule(climb: Climb[Any, Any]) -> str:
    return "listed" if climb.weeks is not None else "linear"


def _value(language: Language, key: str, value: Any) -> str:
    """Return a step, an end, or what a week of a list says: of every set, or of each in brackets."""
    if isinstance(value, tuple):
        each = [_value(language, key, one) for one in value]
        return each[0] if len(each) == 1 else f"({language.listed(each)})"
    if isinstance(value, Open):
        return language.say("as many as possible")
    if isinstance(value, Span):
        ends = [_value(language, key, end) for end in dict.fromkeys((value.low, value.high))]
        return ends[0] if len(ends) == 1 else language.say("%(first)s to %(last)s", first=ends[0], last=ends[1])
    if key == "load":
        return loads.load(language, value)
    if key in ("hold", "work", "rest", "lasts"):
        return duration(language, value)
    return distance(language, value) if key == "distance" else str(value)


def _climb(language: Language, key: str, climb: Climb[Any, Any]) -> str:
    """Return how something climbs, without the full stop."""
    name = language.say(_NAMES[key])
    if climb.weeks is not None:
        values = language.listed(_value(language, key, value) for value in climb.weeks)
        if climb.again:
            return language.say("%(name)s by trained week: %(values)s, then from the start", name=name, values=values)
        return language.say("%(name)s by trained week: %(values)s, then it stays", name=name, values=values)
    every = language.many("every trained week", "every %(num)s trained weeks", climb.every)
    if climb.add is not None:
        by, end = _value(language, key, climb.add), _value(language, key, climb.up_to)
        return language.say("%(name)s: %(by)s more %(every)s, up to %(end)s", name=name, by=by, every=every, end=end)
    by, end = _value(language, key, climb.take), _value(language, key, climb.down_to)
    return language.say("%(name)s: %(by)s less %(every)s, down to %(end)s", name=name, by=by, every=every, end=end)
