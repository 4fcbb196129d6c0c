"""How the weight to take came about, step by step."""

from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import Final

from setwright.dose.bands import choice_at
from setwright.dose.loads import Choice, share_kg
from setwright.dose.resolved import ResolvedItem, Take
from setwright.dose.taking import limit_of
from setwright.model.exercise import Exercise
from setwright.model.load import Band, BodyWeightShare, Effort, HelpShare, HelpWeight, OneRepMaxShare, Reserve, Weight
from setwright.model.programme import Programme
from setwright.wording import loads
from setwright.wording.language import Language
from setwright.wording.steps import Step

_COUNTED_FROM: Final = 7
"""From this effort upwards, ten minus the effort is the number of repetitions left (rule ``effort``)."""


def of_loads(
    language: Language, programme: Programme, exercise: Exercise, item: ResolvedItem, body_weight_kg: Fraction | None
) -> Iterable[Step]:
    """Return how each weight to take came about, for one body weight where it is given."""
    steps = [step for take in item.takes for step in _load(language, programme, exercise, item, take, body_weight_kg)]
    # Without a member's weight, loads of one kind come about in the same words: once is enough.
    return steps if body_weight_kg is not None else dict.fromkeys(steps)


def _load(
    language: Language,
    programme: Programme,
    exercise: Exercise,
    item: ResolvedItem,
    take: Take,
    body_weight_kg: Fraction | None,
) -> Iterator[Step]:
    load = take.load
    match load:
        case BodyWeightShare():
            if body_weight_kg is not None:
                yield from _for_body_weight(language, programme, exercise, item, take, load, body_weight_kg)
                return
            yield Step(language.say("Load in kg: the percentage of your body weight."), "body-weight-share")
            yield Step(
                language.say("From that, the nearest weight that the club owns: the table above."), "owned-weight"
            )
        case OneRepMaxShare(percent=percent):
            said = language.say(
                "Load in kg: %(percent)s %% of your own 1RM in this lift.", percent=language.number(percent)
            )
            yield Step(said, "one-rep-max-share")
        case HelpShare() if body_weight_kg is not None:
            yield from _help(language, programme, take, load.percent, body_weight_kg)
        case HelpShare():
            yield Step(language.say("Help in kg: the percentage of your body weight."), "body-weight-share")
            yield Step(language.say("From that, the nearest help that the club owns: the table above."), "owned-weight")
        case HelpWeight():
            if take.choice is not None:
                yield Step(_set_to(language, take.choice), "owned-weight")
        case Weight():
            if take.choice is not None:
                yield Step(_chosen(language, take.choice, item.kit_name), "owned-weight")
        case Effort() | Reserve():
            effort = loads.load(language, load)
            said = language.say("End each set at %(effort)s.", effort=effort)
            if item.kit:
                said = language.say("Choose the weight so that the last set ends at %(effort)s.", effort=effort)
            yield Step(said, "effort")
            if isinstance(load, Effort) and load.rpe < _COUNTED_FROM:
                yield Step(
                    language.say(
                        "Effort below 7 is not counted in repetitions: about four or more could have followed."
                    ),
                    "effort",
                )
        case Band():
            yield Step(language.say("Take the %(band)s.", band=loads.load(language, load)))


def _for_body_weight(
    language: Language,
    programme: Programme,
    exercise: Exercise,
    item: ResolvedItem,
    take: Take,
    load: BodyWeightShare,
    body_weight_kg: Fraction,
) -> Iterator[Step]:
    exact = share_kg(load.percent, body_weight_kg)
    values = {
        "percent": language.number(load.percent),
        "weight": language.number(body_weight_kg),
        "exact": language.number(exact, 3),
    }
    said = language.say("%(percent)s %% of %(weight)s kg is %(exact)s kg.", **values)
    if load.per_hand:
        said = language.say("%(percent)s %% of %(weight)s kg is %(exact)s kg in each hand.", **values)
    yield Step(said, "body-weight-share")
    choice = choice_at(take.bands, body_weight_kg)
    if item.kit is None or choice is None:
        yield Step(_nothing(language, programme, take), "owned-weight")
        return
    owned = programme.club.weights_kg(item.kit, load.per_hand)
    around = sorted(owned, key=lambda weight: (abs(weight - exact), weight))[:2]
    nearest = language.joined(loads.mass(language, weight, "kg") for weight in sorted(around))
    limit = limit_of(exercise, load.per_hand).at(body_weight_kg)
    bound = language.say("no limit is set")
    if limit is not None:
        bound = language.say("the limit is %(weight)s", weight=loads.mass(language, limit, "kg"))
    values = {"kit": item.kit_name or "", "nearest": nearest, "bound": bound}
    yield Step(language.say("Nearest that the club owns (%(kit)s): %(nearest)s; %(bound)s.", **values), "owned-weight")
    yield Step(_chosen(language, choice, item.kit_name), "owned-weight")


def _help(
    language: Language, programme: Programme, take: Take, percent: Fraction, body_weight_kg: Fraction
) -> Iterator[Step]:
    values = {
        "percent": language.number(percent),
        "weight": language.number(body_weight_kg),
        "exact": language.number(share_kg(percent, body_weight_kg), 3),
    }
    yield Step(language.say("%(percent)s %% of %(weight)s kg is %(exact)s kg.", **values), "body-weight-share")
    choice = choice_at(take.bands, body_weight_kg)
    said = _nothing(language, programme, take) if choice is None else _set_to(language, choice)
    yield Step(said, "owned-weight")


def _set_to(language: Language, choice: Choice) -> str:
    if choice.weight_kg is None:
        return language.say("Nothing that the club owns helps enough: do the easier variation, or ask the coach.")
    weight = loads.mass(language, choice.weight_kg, "kg")
    if choice.fit == "limit":
        return language.say("Set %(weight)s: the physiotherapist's limit rules out less help.", weight=weight)
    return language.say("Set %(weight)s, the nearest help (on a tie, the heavier).", weight=weight)


def _nothing(language: Language, programme: Programme, take: Take) -> str:
    if not take.bands:
        return language.say("No weight is offered: the club owns no weights for it.")
    club = programme.club.body_weight
    return language.say(
        "No weight is offered: bands cover %(low)s to %(high)s kg of body weight.",
        low=language.number(club.from_),
        high=language.number(club.to),
    )


def _chosen(language: Language, choice: Choice, kit: str | None) -> str:
    weight = loads.mass(language, choice.weight_kg or Fraction(0), "kg")
    match choice.fit:
        case "over-limit":
            return language.say("Every %(kit)s is above the physiotherapist's limit: do the easier variation.", kit=kit)
        case "none-light-enough":
            return language.say(
                "Every %(kit)s is clearly heavier than this: do the easier variation, or ask the coach.", kit=kit
            )
        case "limit":
            return language.say("Take %(weight)s: the physiotherapist's limit rules out the next one.", weight=weight)
        case "lighter":
            return language.say(
                "Take %(weight)s, lighter than planned: everything heavier is too heavy or not owned.", weight=weight
            )
        case "near":
            return language.say("Take %(weight)s, the nearest one (on a tie, the lighter).", weight=weight)
