"""What a lighter week or a taper leaves of a dose, step by step."""

from collections.abc import Iterator

from setwright.dose.dose import Dose
from setwright.dose.week_kind import Remains
from setwright.wording import loads
from setwright.wording.blocks import rounds as counted_rounds
from setwright.wording.blocks import sets as counted_sets
from setwright.wording.doses import amount
from setwright.wording.language import Language, later
from setwright.wording.steps import Step
from setwright.wording.times import duration


def of_what_remains(
    language: Language, remains: Remains, rounds: bool, before: Dose, left: Dose, after: Dose
) -> Iterator[Step]:
    """Yield what is left of the sets, of the amount of each, and of each load.

    Args:
        language: the language to say it in.
        remains: the share of each number that the week keeps.
        rounds: True in a superset or circuit, where sets are rounds.
        before: the dose as it stood.
        left: the sets of it that the week keeps, each as it was.
        after: what the week leaves of it.
    """
    if before.clock is not None and before.clock.lasts_s is not None and after.clock is not None:
        said = language.say(
            "Time of the rounds: %(percent)s %% of %(before)s, so %(after)s.",
            percent=language.number(remains.sets),
            before=duration(language, before.clock.lasts_s),
            after=duration(language, after.clock.lasts_s or 0),
        )
        yield Step(said, "lighter-week" if remains.kind == "lighter" else "taper")
    elif remains.sets != 100:
        said = later("Sets: %(percent)s %% of %(before)s is %(exact)s, so %(after)s.")
        if rounds:
            said = later("Rounds: %(percent)s %% of %(before)s is %(exact)s, so %(after)s.")
        counted = counted_rounds if rounds else counted_sets
        values = {
            "percent": language.number(remains.sets),
            "before": before.count,
            "exact": language.number(before.count * remains.sets / 100),
            "after": counted(language, after.count),
        }
        which = _left_out(language, rounds, before, left)
        step = f"{language.say(said, **values)} {which}".strip()
        yield Step(step, "lighter-week" if remains.kind == "lighter" else "taper")
    if remains.reps != 100 and after.amount != left.amount:
        values = {
            "percent": language.number(remains.reps),
            "before": amount(language, left),
            "after": amount(language, after),
        }
        yield Step(language.say("Amount: %(percent)s %% of %(before)s leaves %(after)s.", **values), "lighter-week")
    pairs = zip(left.working, after.working, strict=True)
    for was, is_ in dict.fromkeys((one.load, other.load) for one, other in pairs):
        if was == is_ or was is None or is_ is None:
            continue
        values = {
            "percent": language.number(remains.load),
            "before": loads.load(language, was),
            "after": loads.load(language, is_),
        }
        yield Step(language.say("Load: %(percent)s %% of %(before)s leaves %(after)s.", **values), "lighter-week")


def _left_out(language: Language, rounds: bool, before: Dose, left: Dose) -> str:
    """Return which sets are left out; nothing where all are the same."""
    count = before.count - left.count
    if not count or before.same_throughout:
        return ""
    if left == before.of(left.count):
        if rounds:
            return language.many("The last round is left out.", "The last %(num)s rounds are left out.", count)
        return language.many("The last set is left out.", "The last %(num)s sets are left out.", count)
    if rounds:
        return language.many("The lightest round is left out.", "The lightest %(num)s rounds are left out.", count)
    return language.many("The lightest set is left out.", "The lightest %(num)s sets are left out.", count)
