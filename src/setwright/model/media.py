"""A photo or a film of the club's own, beside an exercise's figure."""

import re
from typing import Annotated, Any, Final, Self

from pydantic import Field, PlainValidator, WithJsonSchema, model_validator

from setwright.model.base import CoachModel, refuse
from setwright.model.text import Name, Prose
from setwright.model.units import as_text, shown

PHOTO_KINDS: Final = ("jpg", "jpeg", "png", "webp")
"""File types that a photo may have: all browsers show them, and none can hold a script."""

_PHOTO = re.compile(rf"[a-z0-9]+(?:-[a-z0-9]+)*\.(?:{'|'.join(PHOTO_KINDS)})")
_FILM = re.compile(r"https://[A-Za-z0-9.-]+(:\d+)?(/[^\s\"'<>\\]*)?")


def parse_photo(value: Any) -> str:
    """Return the name of a photo's file in ``media/``, such as ``goblet-squat.jpg``."""
    hint = f"put it into media/ and write its name alone: small letters, digits, hyphens and .{', .'.join(PHOTO_KINDS)}"
    text = as_text(value, "not-a-photo", "a photo's file name", hint)
    if not _PHOTO.fullmatch(text):
        refuse("not-a-photo", f"{shown(text)} is not a photo's file name", hint)
    return text


def parse_film(value: Any) -> str:
    """Return the address of a film, which starts with ``https://``."""
    hint = "a film stays where it is; write its address, such as https://films.example.org/squat"
    text = as_text(value, "not-a-film", "a film's address", hint)
    if not _FILM.fullmatch(text):
        refuse("not-a-film", f"{shown(text)} is not a film's address", hint)
    return text


PhotoFile = Annotated[
    str,
    PlainValidator(lambda v: parse_photo(v)),
    WithJsonSchema({"type": "string", "pattern": f"^{_PHOTO.pattern}$", "examples": ["goblet-squat.jpg"]}),
]
"""The name of a photo's file."""

FilmAddress = Annotated[
    str, PlainValidator(lambda v: parse_film(v)), WithJsonSchema({"type": "string", "pattern": "^https://"})
]
"""Where a film is."""


class Medium(CoachModel):
    """A photo with its alternative text, or a link to a film with its name."""

    photo: PhotoFile | None = Field(default=None, description="A file in media/.")
    alt: Prose | None = Field(default=None, description="What the photo shows, for those who do not see it.")
    film: FilmAddress | None = Field(default=None, description="The address of a film of the club's own.")
    name: Name | None = Field(default=None, description="What the film is called.")

    @model_validator(mode="after")
    def _one_whole_thing(self) -> Self:
        if (self.photo is None) == (self.film is None):
            refuse("media-unclear", "this is a photo or a film", "write 'photo' with 'alt', or 'film' with 'name'")
        if self.photo is not None and (self.alt is None or self.name is not None):
            refuse(
                "photo-without-text", "a photo needs a text that says what it shows", "add 'alt: ...'", at=("photo",)
            )
        if self.film is not None and (self.name is None or self.alt is not None):
            refuse("film-without-name", "a film's link needs a name", "add 'name: ...'", at=("film",))
        return self
