"""How the numbers are made: every rule with its source, the published tables, and worked examples computed here."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from setwright.dose.bands import LoadBand, load_bands
from setwright.dose.loads import share_kg
from setwright.dose.one_rep_max import FORMULAS, MOST_REPS, Estimate, estimate_range
from setwright.dose.repetitions import FROM_MEMORY, PERCENT_AT_REPS
from setwright.dose.rules import RULES
from setwright.model.club import Club, WeightList, WeightSteps
from setwright.outline.addresses import NUMBERS
from setwright.outline.site import Site
from setwright.pages.page import Page

EXAMPLE_WEIGHT_KG, EXAMPLE_REPS = 40, 8


@dataclass(frozen=True)
class BandExample:
    """A worked example of load bands with the club's own weights."""

    kit: str
    percent: int
    body_weight_kg: int
    exact_kg: Fraction
    bands: tuple[LoadBand, ...]
    per_hand: bool


def pages(site: Site) -> Iterator[Page]:
    """Yield the page."""
    say = site.language.say
    estimates = [(f, f.estimate_kg(EXAMPLE_WEIGHT_KG, EXAMPLE_REPS)) for f in FORMULAS]
    span: Estimate = estimate_range(EXAMPLE_WEIGHT_KG, EXAMPLE_REPS)
    yield Page(
        path=NUMBERS,
        title=say("How the numbers are made"),
        description=say("Every rule behind a dose, with its source."),
        template="numbers.md.jinja",
        context={
            "rules": RULES,
            "table": PERCENT_AT_REPS,
            "table_from_memory": FROM_MEMORY,
            "estimates": estimates,
            "span": span,
            "most_reps": MOST_REPS,
            "example_weight_kg": EXAMPLE_WEIGHT_KG,
            "example_reps": EXAMPLE_REPS,
            "example": band_example(site.programme.club),
        },
        kind="numbers",
    )


def band_example(club: Club) -> BandExample | None:
    """Return an example with the first kit that comes in weights: per hand where it is owned in pairs."""
    for name, entry in club.kit.items():
        if isinstance(entry, WeightSteps | WeightList):
            per_hand = entry.pairs
            percent, weight = (5 if per_hand else 15), 70
            if per_hand or not any(getattr(e, "pairs", False) is True for e in club.kit.values()):
                bands = load_bands(
                    Fraction(percent), club.weights_kg(name, per_hand), club.body_weight.from_, club.body_weight.to
                )
                return BandExample(
                    club.kit_name(name), percent, weight, share_kg(Fraction(percent), Fraction(weight)), bands, per_hand
                )
    return None
