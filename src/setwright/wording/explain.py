"""How a number came about, step by step: the same words on a page and on the command line."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from setwright.dose.change import changes_between
from setwright.dose.loads import Choice, share_kg
from setwright.dose.resolve import lightened, limit_of, prescribed, rest_at
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession, body_weight_choice
from setwright.model.exercise import Exercise
from setwright.model.load import Band, BodyWeightShare, Effort, OneRepMaxShare, Reserve, Weight
from setwright.model.prescription import MEASURES, Prescription
from setwright.model.programme import Programme
from setwright.model.progress import Climb, LoadClimb, Progress
from setwright.model.session import Block
from setwright.model.units import plain_number
from setwright.wording.words import amount, dose_in_words, seconds


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a derivation, and the id of the rule behind it (see ``rules``); empty for what the coach wrote."""

    says: str
    rule: str = ""


def derivation(
    programme: Programme, session: ResolvedSession, item: ResolvedItem, body_weight_kg: Fraction | None = None
) -> tuple[Step, ...]:
    """Return how one exercise's dose in one week came about, for one body weight where it is given."""
    block = programme.sessions[session.session].blocks[item.slot[0]]
    written = block.exercises[item.slot[1]]
    exercise = programme.exercises[item.exercise]
    steps = [*_from_start(block, written, exercise, session, item), *_load(programme, exercise, item, body_weight_kg)]
    return tuple(steps)


def history(
    programme: Programme, plan: ResolvedPlan, session: ResolvedSession, item: ResolvedItem
) -> Iterator[tuple[int, str]]:
    """Yield every week up to this one in which the session stood in the plan, and what became of the dose."""
    rounds = programme.sessions[session.session].blocks[item.slot[0]].kind != "straight"
    for week in plan.weeks[: session.week]:
        for skipped in week.skipped:
            if skipped.session == session.session:
                yield week.number, f"skipped ({skipped.why}): the progression does not count this week"
        for other in week.sessions:
            if other.session != session.session or other.date > session.date:
                continue
            same = next(i for i in other.items if i.slot == item.slot)
            said = dose_in_words(same.dose, rounds)
            match other.remains.kind:
                case "lighter":
                    said += " (lighter week: the progression waits)"
                case "taper":
                    said += " (taper: the progression waits)"
                case _:
                    said += f" (trained week {other.trained + 1})"
            yield week.number, said + "".join(f"; changed for this week: {why}" for why in same.reasons)


def _from_start(
    block: Block, written: Prescription, exercise: Exercise, session: ResolvedSession, item: ResolvedItem
) -> Iterator[Step]:
    rounds = block.kind != "straight"
    first = prescribed(block, written, exercise, rest_at(block, 0), 0)
    yield Step(f"First dose, as the coach wrote it: {dose_in_words(first, rounds)}.")
    progressed = list(_progressions(block, written))
    yield from progressed
    now = prescribed(block, written, exercise, rest_at(block, session.trained), session.trained)
    if progressed:
        count = f"Trained week {session.trained + 1} of this session gives {dose_in_words(now, rounds)}."
        if session.remains.kind != "normal":
            what = "lighter week" if session.remains.kind == "lighter" else "taper week"
            count = f"This is a {what}, so the progression stands where it was: {dose_in_words(now, rounds)}."
        rest = f" Rest: {seconds(now.rest_s)}." if _rest_climb(block, written) else ""
        yield Step(count + rest, "trained-weeks")
    lighter = lightened(now, session.remains)
    if session.remains.kind != "normal":
        yield from _lightened(session, rounds, now.sets, lighter.sets)
        if lighter.amount != now.amount:
            yield Step(
                f"Amount: {plain_number(session.remains.reps)} % of {amount(now)} leaves {amount(lighter)}.",
                "lighter-week",
            )
        if lighter.load != now.load:
            yield Step(
                f"Load: {plain_number(session.remains.load)} % of {now.load} leaves {lighter.load}.", "lighter-week"
            )
    if item.dose != lighter:
        reasons = "; ".join((*item.reasons, *session.reasons))
        said = ", ".join(changes_between(lighter, item.dose, rounds)) or "other numbers"
        yield Step(f"The coach changed this week alone: {said}. {reasons}".strip(), "change")
    if item.dose.sides != "both together":
        yield Step(f"The exercise works {item.dose.sides}: {amount(item.dose)} {_sides_words(item)}.", "sides")


def _sides_words(item: ResolvedItem) -> str:
    return "on each side" if item.dose.sides == "one at a time" else "in all, half of them on each side"


def _lightened(session: ResolvedSession, rounds: bool, before: int, after: int) -> Iterator[Step]:
    share, noun = session.remains.sets, "rounds" if rounds else "sets"
    if share == 100:
        return
    exact = plain_number(before * share / 100)
    rule = "lighter-week" if session.remains.kind == "lighter" else "taper"
    name = noun[:-1] if after == 1 else noun
    yield Step(f"{noun.capitalize()}: {plain_number(share)} % of {before} is {exact}, so {after} {name}.", rule)


def _progressions(block: Block, written: Prescription) -> Iterator[Step]:
    progress = written.progress or Progress()
    for key in ("sets", "rounds"):
        climb = getattr(block.progress, key, None)
        # An exercise's own sets, or its own progression of them, go before the block's.
        if climb is not None and written.sets is None and progress.sets is None:
            yield Step(_climb(key.capitalize(), climb, str), _rule(climb))
    then = progress.then.load if progress.then else None
    for key in ("sets", *MEASURES):
        climb = getattr(progress, key)
        if climb is None:
            continue
        said = _climb(key.capitalize(), climb, _writer(key))
        if then is not None and climb.add is not None:
            yield Step(f"{said[:-1]}; then {_then(then)}, and {key} start again.", "double")
        else:
            yield Step(said, _rule(climb))
    if (climb := _rest_climb(block, written)) is not None:
        yield Step(_climb("Rest", climb, seconds), _rule(climb))
    if progress.load is not None:
        yield Step(_climb("Load", progress.load, str), _rule(progress.load))
    if progress.tempo is not None:
        yield Step(f"Tempo by trained week: {', '.join(map(str, progress.tempo.weeks))}, then it stays.", "listed")


def _rest_climb(block: Block, written: Prescription) -> Climb[int] | None:
    own = written.progress.rest if written.progress else None
    of_block = block.progress.rest if block.progress and written.rest is None else None
    return own or of_block


def _then(climb: LoadClimb) -> str:
    if climb.add is not None:
        return f"the load rises by {climb.add} (to {climb.up_to} at most)"
    return f"the load falls by {climb.take} (to {climb.down_to} at least)"


def _rule(climb: Climb[Any]) -> str:
    return "listed" if climb.weeks is not None else "linear"


def _writer(key: str) -> Any:
    if key in ("hold", "work", "rest"):
        return seconds
    if key == "distance":
        return lambda cm: f"{plain_number(Fraction(cm) / 100)} m"
    return str


def _climb(name: str, climb: Climb[Any], write: Any) -> str:
    if climb.weeks is not None:
        return f"{name} by trained week: {', '.join(write(value) for value in climb.weeks)}, then it stays."
    every = "every trained week" if climb.every == 1 else f"every {climb.every} trained weeks"
    if climb.add is not None:
        return f"{name}: {write(climb.add)} more {every}, up to {write(climb.up_to)}."
    return f"{name}: {write(climb.take)} less {every}, down to {write(climb.down_to)}."


def _load(
    programme: Programme, exercise: Exercise, item: ResolvedItem, body_weight_kg: Fraction | None
) -> Iterator[Step]:
    load = item.dose.load
    match load:
        case BodyWeightShare(percent=percent):
            if body_weight_kg is None:
                yield Step("Load in kg: the percentage of your body weight.", "body-weight-share")
                yield Step("From that, the nearest weight that the club owns: the table above.", "owned-weight")
                return
            exact = share_kg(percent, body_weight_kg)
            hand = " in each hand" if load.per_hand else ""
            yield Step(
                f"{plain_number(percent)} % of {plain_number(body_weight_kg)} kg is {plain_number(exact, 3)} kg{hand}.",
                "body-weight-share",
            )
            yield from _choice(programme, exercise, item, load, exact, body_weight_kg)
        case OneRepMaxShare(percent=percent):
            yield Step(f"Load in kg: {plain_number(percent)} % of your own 1RM in this lift.", "one-rep-max-share")
        case Weight():
            if item.choice is not None:
                yield Step(f"{_chosen(item.choice, item.kit)}", "owned-weight")
        case Effort() | Reserve():
            how = "Choose the weight so that the last set ends at" if item.kit else "End each set at"
            yield Step(f"{how} {load}.", "effort")
        case Band():
            yield Step(f"Take the {load}.")
        case None:
            return


def _choice(
    programme: Programme,
    exercise: Exercise,
    item: ResolvedItem,
    load: BodyWeightShare,
    exact: Fraction,
    body_weight_kg: Fraction,
) -> Iterator[Step]:
    choice = body_weight_choice(item, body_weight_kg)
    if item.kit is None or choice is None:
        club = programme.club.body_weight
        span = f"{plain_number(club.from_)} to {plain_number(club.to)} kg"
        said = f"bands cover {span} of body weight" if item.bands else "the club owns no weights for it"
        yield Step(f"No weight is offered: {said}.", "owned-weight")
        return
    owned = programme.club.weights_kg(item.kit, load.per_hand)
    around = sorted(owned, key=lambda weight: (abs(weight - exact), weight))[:2]
    nearest = " and ".join(f"{plain_number(weight)} kg" for weight in sorted(around))
    limit = limit_of(exercise, load.per_hand).at(body_weight_kg)
    bound = f"the limit is {plain_number(limit)} kg" if limit is not None else "no limit is set"
    yield Step(f"Nearest that the club owns ({item.kit}): {nearest}; {bound}.", "owned-weight")
    yield Step(_chosen(choice, item.kit), "owned-weight")


def _chosen(choice: Choice, kit: str | None) -> str:
    match choice.fit:
        case "over-limit":
            return f"Every {kit} is above the physiotherapist's limit: do the easier variation."
        case "none-light-enough":
            return f"Every {kit} is clearly heavier than this: do the easier variation, or ask the coach."
    weight = plain_number(choice.weight_kg or 0)
    match choice.fit:
        case "limit":
            return f"Take {weight} kg: the physiotherapist's limit rules out the next one."
        case "lighter":
            return f"Take {weight} kg, lighter than planned: everything heavier is too heavy or not owned."
    return f"Take {weight} kg, the nearest one (on a tie, the lighter)."
