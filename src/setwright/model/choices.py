"""Choices: what a member may say of themselves, and what is done then in the place of an exercise."""

from typing import Final, Self

from pydantic import Field, model_validator

from setwright.model.base import refuse
from setwright.model.prescription import Prescription
from setwright.model.text import Id
from setwright.model.units import Flag

MOST_CHOICES_OF_A_BLOCK: Final = 4
"""A member may tick any of them together, so that a block has a way for each combination: sixteen at most."""


class Alternative(Prescription):
    """A whole prescription for members with a choice: nothing is carried over from the exercise that it stands for."""

    for_: list[Id] = Field(
        alias="for", min_length=1, max_length=12, description="Ids of choices in club.yml: who does this instead."
    )


class Entry(Prescription):
    """An exercise of a session with what may be done in its place."""

    optional: Flag = Field(default=False, description="true: a member may leave it out.")
    instead: list[Alternative] = Field(
        default=[], max_length=6, description="What members with a choice do instead; of several, the first that fits."
    )

    @model_validator(mode="after")
    def _each_choice_once(self) -> Self:
        first: dict[str, int] = {}
        for index, other in enumerate(self.instead):
            for place, choice in enumerate(other.for_):
                if first.setdefault(choice, index) != index or other.for_.index(choice) != place:
                    said, hint = f"'{choice}' has its way already", "name each choice once: the first way would count"
                    refuse("choice-repeated", said, hint, at=("instead", index, "for", place))
        return self
