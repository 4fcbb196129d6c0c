"""A club's own threshold for a check, with the reason that is published to the physiotherapist's page."""

from typing import Self

from pydantic import Field, model_validator

from setwright.model.base import CoachModel, refuse
from setwright.model.text import Id, Prose


class Setting(CoachModel):
    """One check's threshold. Its value carries the unit that the check's own page names."""

    rule: Id = Field(description="The check's id, as printed after its message.")
    least: Prose | None = Field(default=None, description="The least that raises no doubt, such as '48 h'.")
    most: Prose | None = Field(default=None, description="The most that raises no doubt, such as '8 %' or '5 weeks'.")
    why: Prose = Field(description="The reason, for the physiotherapist to read.")

    @model_validator(mode="after")
    def _sets_something(self) -> Self:
        if self.least is None and self.most is None:
            refuse("setting-empty", "this setting sets nothing", "write 'least' or 'most' with a value")
        return self
