"""Limits: what a physiotherapist allows of one exercise at most, wherever a plan asks for it."""

from dataclasses import dataclass
from typing import Annotated, Any, Final

from pydantic import Field, PlainValidator, WithJsonSchema, model_validator

from setwright.model.base import CoachModel, refuse
from setwright.model.load import (
    LOAD_SCHEMA,
    BodyWeightShare,
    Effort,
    HelpShare,
    HelpWeight,
    Load,
    LoadField,
    Reserve,
    Weight,
    parse_load,
)
from setwright.model.text import Prose
from setwright.model.units import Count, Length, Percent, WorkTime

NO_WEIGHT: Final = "none"
"""How a limit says that nothing is held, worn or pulled against."""


@dataclass(frozen=True, slots=True)
class NoWeight:
    """A limit of the load: the body alone."""

    def __str__(self) -> str:
        return NO_WEIGHT


def _parse_most(value: Any) -> Load | NoWeight:
    """Return the heaviest load that is allowed, or that none is."""
    if isinstance(value, NoWeight) or (isinstance(value, str) and value.strip() == NO_WEIGHT):
        return NoWeight()
    return parse_load(value)


MostLoad = Annotated[
    Load | NoWeight,
    PlainValidator(_parse_most),
    WithJsonSchema(
        {
            **LOAD_SCHEMA,
            "pattern": LOAD_SCHEMA["pattern"].replace("^(", f"^({NO_WEIGHT}|"),
            "examples": ["20 % bodyweight", "24 kg", "20 kg of help", "none"],
        }
    ),
]
"""The heaviest load of an exercise, the least help, or ``none``."""

_KINDS: dict[str, tuple[tuple[type[Load | NoWeight], ...], str, str]] = {
    "load": (
        (BodyWeightShare, Weight, HelpShare, HelpWeight, NoWeight),
        "compared with a weight",
        "write it as '20 % bodyweight', '24 kg' or '20 kg of help', or as 'none' for the body alone",
    ),
    "top_effort": ((Effort,), "compared with an effort", "write it as 'RPE 7'"),
    "least_reserve": ((Reserve,), "compared with reps in reserve", "write it as '3 reps in reserve'"),
}
"""Which loads a limit may be, what another cannot be, and how it is written."""


class Limits(CoachModel):
    """What the physiotherapist allows at most. A dose beyond it stops publishing."""

    load: MostLoad | None = Field(
        default=None,
        description="Heaviest load: '20 % bodyweight' or '24 kg'; or the least help; 'none' is the body alone.",
    )
    top_effort: LoadField | None = Field(
        default=None, description="Hardest effort of a set: 'RPE 7'. Loads by effort under a load limit need it."
    )
    least_reserve: LoadField | None = Field(
        default=None, description="Fewest reps left at the end of a set: '3 reps in reserve'; in place of an effort."
    )
    reps: Count | None = Field(default=None, description="Most repetitions of a set; time to keep moving, likewise.")
    hold: WorkTime | None = Field(default=None, description="Longest hold; time to keep moving, likewise.")
    rep_time: WorkTime | None = Field(
        default=None, description="Longest that one repetition takes, pauses included: '8 s'."
    )
    distance: Length | None = Field(default=None, description="Farthest in one set; time to keep moving, likewise.")
    height: Length | None = Field(default=None, description="Highest box or step, to stand on or to drop from.")
    contacts: Count | None = Field(
        default=None, description="Most landings of all jumps in a session that holds this exercise, warm-up included."
    )
    weekly_sets: Count | None = Field(default=None, description="Most sets in a week, by whatever way.")
    weekly_step: Percent | None = Field(default=None, description="Largest step of the load in a week.")
    earliest_phase: Count | None = Field(
        default=None, description="Not before this phase of a plan: 2 is the second phase."
    )
    earliest_week: Count | None = Field(
        default=None, description="Not before this week of a plan: 5 is the fifth week, whatever its phases are."
    )
    not_for: list[Prose] = Field(default=[], max_length=8, description="Who should leave this exercise out.")

    @model_validator(mode="after")
    def _can_be_compared(self) -> "Limits":
        for key, (kinds, compared, hint) in _KINDS.items():
            limit = getattr(self, key)
            if limit is not None and not isinstance(limit, kinds):
                refuse("limit-unclear", f"a limit of {limit} cannot be {compared}", hint, at=(key,))
        return self
