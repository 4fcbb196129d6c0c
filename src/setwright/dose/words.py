"""Doses and times in words, the same wherever they are shown."""

from fractions import Fraction

from setwright.dose.dose import Dose
from setwright.dose.timing import TimeRange
from setwright.model.exercise import Exercise
from setwright.model.routine import RoutinePart
from setwright.model.units import plain_number


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
    number = dose.amount
    match dose.measure:
        case "reps":
            return f"{number} {'rep' if number == 1 else 'reps'}"
        case "distance":
            return f"{plain_number(Fraction(number) / 100)} m"
        case measure:
            return f"{seconds(int(number))} {measure}"


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
    parts = [f"{dose.sets} {noun}{'' if dose.sets == 1 else 's'} of {amount(dose)} {sides(dose)}".strip()]
    if dose.load is not None:
        parts.append(str(dose.load))
    if dose.tempo is not None:
        parts.append(f"tempo {dose.tempo}")
    return ", ".join(parts)


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
