"""What the clock of a block makes of a dose, step by step."""

from collections.abc import Iterator

from setwright.dose.dose import Dose
from setwright.wording.blocks import rounds
from setwright.wording.language import Language
from setwright.wording.steps import Step
from setwright.wording.times import duration, durations


def of_clock(language: Language, dose: Dose) -> Iterator[Step]:
    """Yield what the rest comes to, or what as many rounds as possible are counted as."""
    clock = dose.clock
    if clock is None:
        return
    if clock.every_s is not None:
        values = {"every": duration(language, clock.every_s), "rest": durations(language, dose.rests_s)}
        said = language.say(
            "A set starts every %(every)s: at the written pace, %(rest)s of it are left to rest.", **values
        )
        yield Step(said, "by-the-clock")
    if clock.lasts_s is not None:
        values = {"time": duration(language, clock.lasts_s), "rounds": rounds(language, dose.count)}
        said = language.say("As many rounds as possible in %(time)s are counted as %(rounds)s in totals.", **values)
        yield Step(said, "by-the-clock")
