"""A film of a whole session, with the moment at which each exercise begins."""

from itertools import pairwise
from typing import Self

from pydantic import Field, model_validator

from setwright.model.base import CoachModel, refuse
from setwright.model.media import FilmAddress
from setwright.model.text import Id, Name
from setwright.model.units import Duration, WorkTime


class FilmPart(CoachModel):
    """Where an exercise begins in a film."""

    exercise: Id = Field(description="Id of the exercise.")
    at: Duration = Field(description="When it begins: '2 min 58 s'.")


class SessionFilm(CoachModel):
    """A film of a session of the club's own."""

    film: FilmAddress = Field(description="The address of the film, without '#'.")
    name: Name = Field(description="What the film is called.")
    lasts: WorkTime = Field(description="How long the film is.")
    parts: list[FilmPart] = Field(min_length=1, max_length=48, description="Where each exercise begins, in order.")

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if "#" in self.film:
            refuse("not-a-film", "a film with parts has no '#' in its address", "leave it out", at=("film",))
        for index, (one, after) in enumerate(pairwise(self.parts), 1):
            if after.at <= one.at:
                hint = "write the parts in the order of the film"
                refuse("film-times", "this begins no later than the part before it", hint, at=("parts", index, "at"))
        if self.parts[-1].at >= self.lasts:
            said = "this begins when the film is over"
            refuse("film-times", said, "check 'lasts'", at=("parts", len(self.parts) - 1, "at"))
        return self

    def address(self, exercise: str) -> str | None:
        """Return the film's address at the moment at which an exercise begins (W3C Media Fragments 1.0, 4.2.1)."""
        at = next((part.at for part in self.parts if part.exercise == exercise), None)
        return f"{self.film}#t={at}" if at is not None else None
