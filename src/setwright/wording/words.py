"""Doses and times in words, the same wherever they are shown."""

from datetime import date
from fractions import Fraction
from typing import Final

from setwright.dose.dose import Dose, Group, Set, metres
from setwright.dose.resolved import Reason, ResolvedBlock
from setwright.dose.timing import TimeRange
from setwright.model.exercise import Exercise
from setwright.model.load import Band, BodyWeightShare, Effort, Load, OneRepMaxShare, Reserve, Weight
from setwright.model.routine import RoutinePart
from setwright.model.tempo import Tempo
from setwright.model.units import KG_PER_LB, plain_number

_MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip

KIND_WORDS: Final = {"normal": "", "lighter": "Lighter week", "taper": "Taper"}


def seconds(count: int) -> str:
    """Return a time as people say it: 45 s, 2 min, 1 min 30 s."""
    minutes, rest = divmod(count, 60)
    if not minutes:
        return f"{rest} s"
    return f"{minutes} min" + (f" {rest} s" if rest else "")


def minutes(time: TimeRange) -> str:
    """Return a range in whole minutes, rounded outwards: 28 to 35 min."""
    low, high = time.low_s // 60, -(-time.high_s // 60)
    return f"{low} min" if low == high else f"{low} to {high} min"


def amount(dose: Dose) -> str:
    """Return a set's amount without its sides: 8 reps, 30 s hold, 20 m."""
    return set_amount(dose, dose.first)


def set_amount(dose: Dose, one: Set) -> str:
    """Return the amount of one of a dose's sets, without its sides."""
    low, high = one.amount.low, one.amount.high
    to = "" if one.amount.is_one else f"{plain_number(low)} to "
    match dose.measure:
        case "reps":
            return f"{to}{high} {'rep' if high == 1 else 'reps'}"
        case "distance":
            return f"{'' if one.amount.is_one else f'{plain_number(metres(low))} to '}{plain_number(metres(high))} m"
        case measure:
            return f"{'' if one.amount.is_one else f'{seconds(int(low))} to '}{seconds(int(high))} {measure}"


def sides(dose: Dose) -> str:
    """Return how the sides share the amount; nothing where both work together."""
    if dose.sides == "one at a time":
        return "each side"
    if dose.sides == "alternating":
        return "in all, sides in turn"
    return ""


def dose_in_words(dose: Dose, rounds: bool = False) -> str:
    """Return a whole dose: 3 rounds of 8 reps each side, 15 % of body weight, tempo 3-0-1-0."""
    noun = "round" if rounds else "set"
    return "; then ".join(_group(dose, group, noun) for group in dose.groups)


def _group(dose: Dose, group: Group, noun: str) -> str:
    one = group.each
    parts = [f"{plural(group.count, noun)} of {set_amount(dose, one)} {sides(dose)}".strip()]
    if one.load is not None:
        parts.append(load_in_words(one.load))
    if one.tempo is not None:
        parts.append(f"tempo {one.tempo}")
    return ", ".join(parts)


def load_in_words(load: Load | None) -> str:
    """Return a load for people: 15 % of body weight in each hand, effort 7 of 10; the body alone included."""
    match load:
        case None:
            return "body weight alone"
        case BodyWeightShare():
            return f"{plain_number(load.percent)} % of body weight{_hands(load)}"
        case OneRepMaxShare():
            return f"{plain_number(load.percent)} % of 1RM"
        case Weight():
            return f"{plain_number(load.number)} {load.unit}{_hands(load)}"
        case Effort():
            return f"effort {plain_number(load.rpe)} of 10"
        case Reserve():
            return f"{plural(load.reps, 'rep')} in reserve"
        case Band():
            return f"{load.name} band"


def _hands(load: Load) -> str:
    return " in each hand" if load.per_hand else ""


def reason(why: Reason) -> str:
    """Return why a session is not as planned this week."""
    return f"Moved from {why.moved_from}: {why.why}" if why.moved_from else why.why


_BLOCKS: Final = {"straight": "Straight sets", "superset": "Superset", "circuit": "Circuit"}


def block_name(block: ResolvedBlock) -> str:
    """Return what a block is called: the coach's own name, or its kind, counted where there are several."""
    return block.name or _BLOCKS[block.kind] + (f" {block.number}" if block.number else "")


def part_amount(part: RoutinePart, exercise: Exercise | None = None) -> str:
    """Return how much of a warm-up's or cool-down's step: 8 reps each side, 30 s hold, 1 min, 20 m."""
    if part.reps:
        said = f"{part.reps} {'rep' if part.reps == 1 else 'reps'}"
    elif part.hold:
        said = f"{seconds(part.hold)} hold"
    elif part.work:
        said = seconds(part.work)
    else:
        said = f"{plain_number(Fraction(part.distance or 0) / 100)} m"
    return said + (" each side" if exercise and exercise.sides == "one at a time" else "")


def day_long(day: date) -> str:
    """Return a day in full: Friday 20 August 2027."""
    return f"{day:%A} {day.day} {_MONTHS[day.month - 1]} {day.year}"


def day_plain(day: date) -> str:
    """Return a day without its year: Friday 20 August."""
    return f"{day:%A} {day.day} {_MONTHS[day.month - 1]}"


def day_short(day: date) -> str:
    """Return a day in short: 20 Aug."""
    return f"{day.day} {_MONTHS[day.month - 1][:3]}"


def day_full(day: date) -> str:
    """Return a day with its year: 20 August 2027."""
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


def span_of_days(first: date, last: date) -> str:
    """Return a span of days: 5 to 11 July, 28 June to 4 July."""
    month = _MONTHS[last.month - 1]
    if first.month == last.month:
        return f"{first.day} to {last.day} {month}"
    return f"{first.day} {_MONTHS[first.month - 1]} to {last.day} {month}"


def mass(kg: Fraction, unit: str) -> str:
    """Return a weight in the club's unit: 12 kg, 26.5 lb."""
    return f"{plain_number(kg if unit == 'kg' else kg / KG_PER_LB, 2 if unit == 'kg' else 1)} {unit}"


def tempo_words(tempo: Tempo) -> str:
    """Return a tempo in words: lower 3 s, lift 1 s."""
    parts = []
    if tempo.lowering_s:
        parts.append(f"lower {tempo.lowering_s} s")
    if tempo.pause_low_s:
        parts.append(f"pause {tempo.pause_low_s} s")
    if tempo.lifting_s is None:
        parts.append("lift fast, with control" if tempo.lowering_s else "fast, with control")
    elif tempo.lifting_s:
        parts.append(f"lift {tempo.lifting_s} s")
    if tempo.pause_high_s:
        parts.append(f"hold {tempo.pause_high_s} s at the top")
    return ", ".join(parts)


def plural(count: int, noun: str) -> str:
    """Return a count with its noun: 1 round, 3 rounds."""
    return f"{count} {noun}{'' if count == 1 else 's'}"


def big_amount(dose: Dose) -> tuple[str, str]:
    """Return a set's amount as a number and its word, for large type: ('8', 'reps'), ('30', 's hold')."""
    amount = dose.first.amount.high
    match dose.measure:
        case "reps":
            return str(amount), "rep" if amount == 1 else "reps"
        case "distance":
            return plain_number(metres(amount)), "m"
        case measure:
            seconds = int(amount)
            if seconds >= 120 and seconds % 60 == 0:
                return str(seconds // 60), f"min {measure}"
            return str(seconds), f"s {measure}"
