"""Accepting a warning, with a reason that is published to the physiotherapist's page."""

from pydantic import Field

from setwright.model.base import CoachModel
from setwright.model.text import Id, Prose


class Acceptance(CoachModel):
    """One warning that the coach has read and stands by."""

    rule: Id = Field(description="The warning's id, as printed after the message.")
    why: Prose = Field(description="The reason, for the physiotherapist to read.")
