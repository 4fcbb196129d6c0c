"""What sets of as many repetitions as possible are counted as, step by step."""

from collections.abc import Iterator

from setwright.dose.dose import Dose
from setwright.model.span import Open, Span
from setwright.wording.doses import measured
from setwright.wording.language import Language
from setwright.wording.steps import Step


def of_open_ends(language: Language, dose: Dose) -> Iterator[Step]:
    """Yield what the open sets of a dose are counted as in times and totals, each number once."""
    for low, high in dict.fromkeys(
        (one.amount.low, one.amount.high) for one in dose.working if isinstance(one.amount, Open)
    ):
        reps = measured(language, dose.measure, Span(low, high))
        yield Step(
            language.say("As many as possible is counted as %(reps)s in times and totals.", reps=reps), "open-ended"
        )
