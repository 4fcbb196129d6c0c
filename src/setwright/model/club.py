"""The club: who it is, what kit it owns, and the safety notices that every page carries."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from typing import Annotated, Any, Final, Literal, Self

from pydantic import AfterValidator, BeforeValidator, Discriminator, Field, Tag, model_validator
from pydantic_core import PydanticCustomError

from setwright.model.acceptance import Acceptance
from setwright.model.base import CoachModel, refuse
from setwright.model.dates import Day, TimeZone
from setwright.model.kit_counts import KitCountField
from setwright.model.region import OwnRegion
from setwright.model.setting import Setting
from setwright.model.text import Id, Name, Prose
from setwright.model.units import Count, Flag, Length, Mass, Weeks, parse_length_cm, parse_mass_kg, plain_number, shown
from setwright.model.vocabulary import Region


class BodyWeightRange(CoachModel):
    """The body weights that load bands cover."""

    from_: Mass = Field(alias="from", description="The lightest member.")
    to: Mass = Field(description="The heaviest member.")

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if self.from_ >= self.to:
            refuse("range-upside-down", "'from' is not below 'to'", "swap them", at=("from",))
        return self


MOST_ONE_REP_MAX_KG: Final = Fraction(200)
"""Tables over 1RM end here where a club says nothing else. Common practice, no source: few members of a club lift more,
and a longer table fills a page."""


class OneRepMaxRange(CoachModel):
    """The 1RM that tables cover: what members may lift once."""

    from_: Mass | None = Field(
        default=None, alias="from", description="Where tables begin; left out, with the lightest weight."
    )
    to: Mass = Field(default=MOST_ONE_REP_MAX_KG, description="Where tables end.")

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if self.from_ is not None and self.from_ >= self.to:
            refuse("range-upside-down", "'from' is not below 'to'", "swap them", at=("from",))
        return self


class WeightSteps(CoachModel):
    """Weights in equal steps."""

    from_: Mass = Field(alias="from", description="The lightest.")
    to: Mass = Field(description="The heaviest.")
    step: Mass = Field(description="From one to the next.")
    pairs: Flag = Field(default=False, description="true: two of each.")

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if self.from_ > self.to:
            refuse("range-upside-down", "'from' is above 'to'", "swap them", at=("from",))
        if (self.to - self.from_) / self.step > 200:
            refuse("too-many-weights", "more than 200 weights", "check the step", at=("step",))
        return self

    @cached_property
    def weights_kg(self) -> tuple[Fraction, ...]:
        """Every weight, lightest first."""
        count = int((self.to - self.from_) / self.step)
        return tuple(self.from_ + self.step * i for i in range(count + 1))


class WeightList(CoachModel):
    """Weights one by one, in pairs or not."""

    weights: list[Mass] = Field(min_length=1, max_length=60, description="Each weight that the club owns.")
    pairs: Flag = Field(default=False, description="true: two of each.")

    @cached_property
    def weights_kg(self) -> tuple[Fraction, ...]:
        """Every weight, lightest first."""
        return tuple(sorted(set(self.weights)))


class Barbell(CoachModel):
    """A bar and the pairs of discs that go on it."""

    bar: Mass = Field(description="The bar alone, collars included.")
    pairs: list[Mass] = Field(min_length=1, max_length=10, description="One entry for each pair of discs.")

    @cached_property
    def weights_kg(self) -> tuple[Fraction, ...]:
        """Every total that can be loaded, lightest first: the bar, and twice any choice of discs."""
        totals = {self.bar}
        for disc in self.pairs:
            totals |= {total + 2 * disc for total in totals}
        return tuple(sorted(totals))


def _kind_of_kit(value: Any) -> str:
    """Return what a coach evidently meant: one unit is enough to tell the whole list."""
    if isinstance(value, dict):
        return "barbell" if "bar" in value else "weights" if "weights" in value else "steps"
    if isinstance(value, list):
        texts = [item.strip() for item in value if isinstance(item, str)]
        if any(text.endswith(("kg", "lb")) for text in texts):
            return "masses"
        return "lengths" if any(text[:1].isdigit() for text in texts) else "names"
    return "count"


def _with_units(value: Any) -> Any:
    """Refuse a list of bare numbers once, not once a number."""
    if isinstance(value, list) and value and all(isinstance(item, str) and item.strip().isdigit() for item in value):
        hint = f"{value[0]} of what? write '{value[0]} kg', or '{value[0]} cm'"
        refuse("not-a-weight", "these numbers have no unit", hint)
    return value


@dataclass(frozen=True, slots=True)
class Names:
    """Kit that is told apart by name, such as elastic bands, lightest first."""

    names: tuple[str, ...]


def _single_weights(weights: list[Fraction]) -> WeightList:
    return WeightList.model_construct(weights=weights, pairs=False)


KitEntry = Annotated[
    Annotated[list[Mass], AfterValidator(_single_weights), Tag("‹masses›")]
    | Annotated[list[Length], Tag("‹lengths›")]
    | Annotated[list[Name], AfterValidator(lambda v: Names(tuple(v))), Tag("‹names›")]
    | Annotated[WeightSteps, Tag("‹steps›")]
    | Annotated[WeightList, Tag("‹weights›")]
    | Annotated[Barbell, Tag("‹barbell›")]
    | Annotated[Count, Tag("‹count›")],
    Discriminator(lambda v: f"‹{_kind_of_kit(v)}›"),
    BeforeValidator(_with_units),
]
"""Kit: weights, sizes in cm, names, or how many of it."""


class Safety(CoachModel):
    """The club's safety notices. They add to the built-in notice and its lists, and remove nothing."""

    contact: Prose = Field(description="Whom to ask about pain, illness or doubt.")
    in_an_emergency: Prose = Field(description="What to do and whom to call.")
    call_for_help_if: list[Prose] = Field(
        default=[], max_length=12, description="Signs to call for help at once, added to the built-in ones."
    )
    stop_if: list[Prose] = Field(
        default=[], max_length=12, description="Signs to stop at once, added to the built-in ones."
    )
    before_you_start: list[Prose] = Field(
        default=[], max_length=12, description="Who should ask a clinician first, added to the built-in list."
    )
    take_care: list[Prose] = Field(
        default=[], max_length=12, description="Who should take care, and with what, added to the built-in list."
    )


class Club(CoachModel):
    """The club's own facts."""

    name: Name = Field(description="The club's name.")
    about: Prose | None = Field(default=None, description="A sentence for the home page.")
    units: Literal["kg", "lb"] = Field(default="kg", description="The unit that pages show.")
    body_weight: BodyWeightRange = Field(description="The body weights that load bands cover.")
    one_rep_max: OneRepMaxRange = Field(
        default_factory=OneRepMaxRange, description="The 1RM that tables cover, if loads are a share of it."
    )
    time_zone: TimeZone | None = Field(
        default=None,
        description="The club's clock, by the IANA database, such as Europe/Vienna; for sessions with 'at'.",
    )
    long_gap: Weeks = Field(
        default=2, description="After how many weeks without training a phone proposes the way back, such as 2 weeks."
    )
    kit: dict[Id, KitEntry] = Field(description="What the club owns: weights, sizes, names or how many.")
    kit_counts: dict[Id, KitCountField] = Field(
        default={},
        description="How many members can use it at once, where that is not one: 6, or {12 kg: 2, 16 kg: 1}.",
    )
    people: Count | None = Field(
        default=None, description="How many usually come to a session: then a check says where kit runs short."
    )
    kit_names: dict[Id, Name] = Field(
        default={}, description="What members read for a kind of kit, where that is not its id with spaces for dashes."
    )
    safety: Safety = Field(description="Safety notices.")
    regions: dict[OwnRegion, Region] = Field(
        default={}, description="Regions of the body that the club adds, each with the one that it counts as."
    )
    choices: dict[Id, Name] = Field(
        default={}, description="What members may say of themselves, a sentence each: 'I cannot do a pull-up yet'."
    )
    unreviewed_exercises: Literal["notice", "stop publishing"] = Field(
        default="notice", description="What happens to exercises that no physiotherapist has signed off."
    )
    changed_limits: Literal["stop publishing", "notice"] = Field(
        default="stop publishing",
        description="What happens where limits, cautions or whom an exercise is not for changed since the sign-off.",
    )
    accept: list[Acceptance] = Field(
        default=[], max_length=12, description="Warnings about the club's kit that the coach stands by, once for all."
    )
    checks: list[Setting] = Field(default=[], max_length=60, description="The club's own thresholds for checks.")
    demonstration_day: Day | None = Field(
        default=None, description="For an example: the day that its home page takes for today, and says so."
    )

    @model_validator(mode="after")
    def _counts_what_there_is(self) -> Self:
        for kit, counts in self.kit_counts.items():
            if kit not in self.kit:
                said = f"{shown(kit)} is counted, and not in 'kit'"
                refuse("kit-count-unknown", said, "write it into 'kit' too", at=("kit_counts", kit))
            if isinstance(counts, int):
                continue
            there = {self.which(kit, one) for one in self.each(kit)}
            for which in counts:
                if self._as_which(kit, which) not in there:
                    said = f"{shown(which)} is no {kit} of the club"
                    hint = f"one of {', '.join(sorted(there))}" if there - {""} else "write one number"
                    refuse("kit-count-unknown", said, hint, at=("kit_counts", kit, which))
        return self

    def each(self, kit: str) -> tuple["Fraction | str | None", ...]:
        """Return what is told apart of a kind of kit: weights in kg, sizes in cm, names; None alone for none of it."""
        entry = self.kit.get(kit)
        if isinstance(entry, list):
            return tuple(size for size in entry if isinstance(size, Fraction))
        if isinstance(entry, Barbell):
            return (None,)
        return self.weights_kg(kit) or self.names(kit) or (None,)

    def which(self, kit: str, one: "Fraction | str | None") -> str:
        """Return how a coach writes one of ``each``: 12 kg, 20 cm, light; nothing where there is but one kind."""
        if isinstance(one, Fraction):
            return f"{plain_number(one)} {'cm' if isinstance(self.kit.get(kit), list) else 'kg'}"
        return one or ""

    def owned(self, kit: str, one: "Fraction | str | None") -> int:
        """Return how many members can use one of ``each`` at once; of weights in pairs there are two."""
        entry = self.kit.get(kit)
        pairs = isinstance(entry, WeightSteps | WeightList) and entry.pairs
        usual, counts = entry if isinstance(entry, int) else 2 if pairs else 1, self.kit_counts.get(kit)
        if isinstance(counts, dict):
            return self._counts[kit].get(self.which(kit, one), usual)
        return usual if counts is None else counts

    @cached_property
    def things(self) -> Mapping[tuple[str, "Fraction | str | None"], int]:
        """How many there are of each thing: a kind of kit, and which of it."""
        return {(kit, one): self.owned(kit, one) for kit in self.kit for one in self.each(kit)}

    @cached_property
    def _counts(self) -> Mapping[str, Mapping[str, int]]:
        """How many there are of each weight, size or name, by kit, for the kit that says so of each."""
        told = {kit: counts for kit, counts in self.kit_counts.items() if isinstance(counts, dict)}
        return {
            kit: {self._as_which(kit, which): count for which, count in counts.items()} for kit, counts in told.items()
        }

    def _as_which(self, kit: str, written: str) -> str:
        """Return a weight or size as it stands in ``which``, whatever the unit it is written with."""
        first = next(iter(self.each(kit)))
        if not isinstance(first, Fraction):
            return written
        try:
            return self.which(kit, (parse_length_cm if isinstance(self.kit[kit], list) else parse_mass_kg)(written))
        except PydanticCustomError:
            return written

    def counted(self, regions: Iterable[str]) -> tuple[str, ...]:
        """Return regions as they are counted, each once: one that the club added counts as that which it belongs to."""
        return tuple(dict.fromkeys(self.regions.get(name, name) for name in regions))

    def kit_name(self, kit: str) -> str:
        """Return what members read for a kind of kit."""
        return self.kit_names.get(kit, kit.replace("-", " "))

    def weights_kg(self, kit: str, per_hand: bool = False) -> tuple[Fraction, ...]:
        """Return the weights of a kind of kit, lightest first; per hand, only those owned in pairs."""
        entry = self.kit.get(kit)
        if isinstance(entry, WeightSteps | WeightList):
            return entry.weights_kg if entry.pairs or not per_hand else ()
        return entry.weights_kg if isinstance(entry, Barbell) and not per_hand else ()

    @cached_property
    def bands(self) -> tuple[str, ...]:
        """The names of all kit that is told apart by name, in the club's order: of one kind, lightest first."""
        return tuple(name for kit in self.kit for name in self.names(kit))

    def is_load(self, kit: str) -> bool:
        """Say whether a kind of kit is one to choose a load from: weights, or bands that are told apart by name."""
        return bool(self.weights_kg(kit) or self.names(kit))

    def names(self, kit: str) -> tuple[str, ...]:
        """Return the names that tell a kind of kit apart, such as the club's bands."""
        entry = self.kit.get(kit)
        return entry.names if isinstance(entry, Names) else ()
