"""How the warm-up sets of an exercise came about, step by step."""

from collections.abc import Iterator

from setwright.dose.dose import Dose
from setwright.wording.doses import measured
from setwright.wording.language import Language
from setwright.wording.loads import load
from setwright.wording.steps import Step


def of_ramp(language: Language, dose: Dose) -> Iterator[Step]:
    """Yield the warm-up sets, each with its exact load, where there are any."""
    if not dose.ramp:
        return
    each = language.listed(
        language.say(
            "%(amount)s with %(load)s",
            amount=measured(language, dose.measure, one.amount),
            load=load(language, one.load),
        )
        for one in dose.ramp
        if one.load is not None
    )
    said = language.say("Warm-up sets first, each with a share of the first set's load: %(sets)s.", sets=each)
    yield Step(said, "ramp")
