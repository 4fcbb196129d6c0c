"""Doses in words, the same wherever they are shown."""

from collections.abc import Callable, Sequence
from fractions import Fraction

from setwright.dose.dose import Dose, Group, metres
from setwright.dose.phases import Manner, Phase, phases
from setwright.model.exercise import Exercise
from setwright.model.prescription import Measure
from setwright.model.routine import RoutinePart
from setwright.model.span import Open, Span
from setwright.model.tempo import Tempo
from setwright.wording import loads, times
from setwright.wording.clocks import each_start, open_rounds
from setwright.wording.language import Language


def amount(language: Language, dose: Dose) -> str:
    """Return a set's amount without its sides: 8 reps, 30 s hold, 8 to 12 reps; of sets that differ, 12, 10, 8 reps."""
    return amounts(language, dose.measure, _spans(dose))


def amounts(language: Language, measure: Measure, each: Sequence[Span]) -> str:
    """Return the amounts of several sets: 12, 10, 8 reps."""
    *others, last = each
    return language.listed((*(_number(language, measure, one) for one in others), measured(language, measure, last)))


def numbers(language: Language, measure: Measure, each: Sequence[Span]) -> str:
    """Return the amounts of several sets without the word for what they are: 12, 10, 8; 30 s, 20 s."""
    return language.listed(_number(language, measure, one) for one in each)


def _spans(dose: Dose) -> list[Span]:
    """Return the amount of each set, or the one amount that all have."""
    spans = [one.amount for one in dose.working]
    return spans if len(set(spans)) > 1 else spans[:1]


def _number(language: Language, measure: Measure, span: Span) -> str:
    """Return an amount without the word for what it is: 8, 8 to 12, 30 s, 20."""
    if isinstance(span, Open):
        return language.say("as many as possible")
    ends = [_end(language, measure, end) for end in dict.fromkeys((span.low, span.high))]
    return ends[0] if span.is_one else language.say("%(first)s to %(last)s", first=ends[0], last=ends[1])


def _end(language: Language, measure: Measure, number: int | Fraction) -> str:
    if measure == "distance":
        return language.number(metres(number))
    return str(number) if measure == "reps" else times.duration(language, int(number))


def measured(language: Language, measure: Measure, span: Span) -> str:
    """Return an amount of a measure: reps, seconds, or centimetres, which are said in metres."""
    if isinstance(span, Open):
        return language.say("as many reps as possible (%(end)s)", end=end_of(language, span))
    if span.is_one:
        return _measured(language, measure, span.high)
    low = _end(language, measure, span.low)
    return language.say("%(first)s to %(last)s", first=low, last=_measured(language, measure, span.high))


def end_of(language: Language, span: Open) -> str:
    """Return when a set of as many repetitions as possible ends: leave 2; leave 2, 15 at most."""
    if span.up_to is None:
        return language.say("leave %(number)s", number=span.leave)
    return language.say("leave %(number)s, %(most)s at most", number=span.leave, most=span.up_to)


def _measured(language: Language, measure: Measure, number: int | Fraction) -> str:
    match measure:
        case "reps":
            return language.many("%(num)s rep", "%(num)s reps", int(number))
        case "distance":
            return distance(language, number)
        case "hold":
            return language.say("%(time)s hold", time=times.duration(language, int(number)))
        case "work":
            return language.say("%(time)s work", time=times.duration(language, int(number)))


def distance(language: Language, length_cm: int | Fraction) -> str:
    """Return a distance: 20 m."""
    return language.say("%(number)s m", number=language.number(metres(length_cm)))


def sides(language: Language, dose: Dose) -> str:
    """Return how the sides share the amount; nothing where both work together."""
    if dose.sides == "one at a time":
        return language.say("each side")
    if dose.sides == "alternating":
        return language.say("in all, sides in turn")
    return ""


def dose_in_words(language: Language, dose: Dose, rounds: bool = False) -> str:
    """Return a whole dose: 3 rounds of 8 reps each side, 15 % of body weight, tempo 3-0-1-0.

    Sets that differ in their amount alone are one list of amounts; others are said group by group.
    """
    said, leading = _working(language, dose, rounds), len(dose.ramp)
    if not leading:
        return said
    return language.many("%(num)s warm-up set, then %(of)s", "%(num)s warm-up sets, then %(of)s", leading, of=said)


def _working(language: Language, dose: Dose, rounds: bool) -> str:
    one = dose.first
    if all((other.load, other.tempo) == (one.load, one.tempo) for other in dose.working) and len(_spans(dose)) > 1:
        return _sets_of(language, amount(language, dose), dose, Group(dose.count, one), rounds)
    first, *others = (_group(language, dose, group, rounds) for group in dose.groups)
    return "; ".join((first, *(language.say("then %(sets)s", sets=other) for other in others)))


def _group(language: Language, dose: Dose, group: Group, rounds: bool) -> str:
    return _sets_of(language, measured(language, dose.measure, group.each.amount), dose, group, rounds)


def _sets_of(language: Language, amounts: str, dose: Dose, group: Group, rounds: bool) -> str:
    one = group.each
    whole = f"{amounts} {sides(language, dose)}".strip()
    if dose.clock is not None and dose.clock.lasts_s is not None:
        said = language.say("%(rounds)s: %(amount)s", rounds=open_rounds(language, dose.clock), amount=whole)
    elif rounds:
        said = language.many("%(num)s round of %(amount)s", "%(num)s rounds of %(amount)s", group.count, amount=whole)
    else:
        said = language.many("%(num)s set of %(amount)s", "%(num)s sets of %(amount)s", group.count, amount=whole)
    parts = [said]
    if dose.clock is not None and dose.clock.every_s is not None:
        parts.append(each_start(language, dose.clock, rounds))
    if one.load is not None:
        parts.append(loads.load(language, one.load))
    if one.feels is not None:
        parts.append(loads.load(language, one.feels))
    if one.tempo is not None:
        parts.append(language.say("tempo %(tempo)s", tempo=one.tempo))
    return language.listed(parts)


def part_amount(language: Language, part: RoutinePart, exercise: Exercise | None = None) -> str:
    """Return how much of a warm-up's or cool-down's step: 8 reps each side, 30 s hold, 1 min, 20 m."""
    if part.reps:
        said = _measured(language, "reps", part.reps)
    elif part.hold:
        said = _measured(language, "hold", part.hold)
    elif part.work:
        said = times.duration(language, part.work)
    else:
        said = distance(language, part.distance or 0)
    both = exercise is not None and exercise.sides == "one at a time"
    return f"{said} {language.say('each side')}" if both else said


def tempo_words(language: Language, tempo: Tempo, manner: Manner = "lowers first") -> str:
    """Return a tempo in words, in the order in which it is done: lower 3 s, lift 1 s; or lift 1 s, lower 3 s."""
    return language.listed(_phase(language, tempo, phase) for phase in phases(tempo, manner))


def _phase(language: Language, tempo: Tempo, phase: Phase) -> str:
    match phase.kind:
        case "lower":
            return language.say("lower %(seconds)s s", seconds=phase.seconds)
        case "pause":
            return language.say("pause %(seconds)s s", seconds=phase.seconds)
        case "hold":
            return language.say("hold %(seconds)s s at the top", seconds=phase.seconds)
        case "settle":
            return language.say("settle for %(seconds)s s", seconds=phase.seconds)
    if not phase.fast:
        return language.say("lift %(seconds)s s", seconds=phase.seconds)
    return language.say("lift fast, with control") if tempo.lowering_s else language.say("fast, with control")


def big_amount(language: Language, dose: Dose) -> tuple[str, str]:
    """Return a set's amount as a number and its word, for large type: ('8–12', 'reps'), ('30', 's hold').

    Of sets that differ, the number is a list: ('12, 10, 8', 'reps').
    """
    spans = _spans(dose)
    if opened := next((span for span in spans if isinstance(span, Open)), None):
        return _in_a_row(language, spans, str), language.say("reps (%(end)s)", end=end_of(language, opened))
    ends = [end for span in spans for end in (span.low, span.high)]
    most = int(ends[-1])
    match dose.measure:
        case "reps":
            return _in_a_row(language, spans, str), language.many("rep", "reps", most)
        case "distance":
            return _in_a_row(language, spans, lambda cm: language.number(metres(cm))), language.say("m")
        case measure:
            whole_minutes = all(end >= 120 and end % 60 == 0 for end in ends)
            if measure == "hold":
                word = language.say("min hold") if whole_minutes else language.say("s hold")
            else:
                word = language.say("min work") if whole_minutes else language.say("s work")
            return _in_a_row(language, spans, lambda s: str(int(s) // 60 if whole_minutes else int(s))), word


def _in_a_row(language: Language, spans: list[Span], said: Callable[[int | Fraction], str]) -> str:
    def of(one: Span) -> str:
        if isinstance(one, Open):
            return language.say("as many as possible")
        return said(one.low) if one.is_one else f"{said(one.low)}–{said(one.high)}"

    return language.listed(of(one) for one in spans)


def unit_of_work(language: Language, measure: Measure) -> str:
    """Return what a week's work is counted in: reps, metres, seconds."""
    if measure == "reps":
        return language.say("reps")
    return language.say("metres") if measure == "distance" else language.say("seconds")


def boxes(language: Language, dose: Dose, unit: str) -> list[str]:
    """Return what a member writes down after each set: the amount done, the load taken, the effort felt."""
    if dose.measure == "reps":
        done = language.say("reps")
    else:
        done = language.say("m") if dose.measure == "distance" else language.say("s")
    effort = language.say("effort")
    if dose.heaviest is None:
        return [done, effort]
    return [done, loads.unit(language, dose.heaviest, unit), effort]
