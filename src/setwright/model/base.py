"""What every part of the coach's language has in common."""

from typing import NoReturn

from pydantic import BaseModel, ConfigDict
from pydantic_core import PydanticCustomError


class CoachModel(BaseModel):
    """A thing a coach may write: fixed keys, nothing unknown, never changed once read."""

    model_config = ConfigDict(extra="forbid", frozen=True, populate_by_name=True)


def refuse(rule: str, message: str, hint: str = "", at: tuple[str | int, ...] = ()) -> NoReturn:
    """Reject the value at hand.

    Args:
        rule: the id under which the mistake is documented.
        message: what is wrong, in a coach's words.
        hint: the likely fix.
        at: where inside the value the mistake sits, as keys and indexes.

    Raises:
        PydanticCustomError: always; the reader turns it into a finding with a position.
    """
    context = {"rule": rule, "message": message, "hint": hint, "at": at}
    raise PydanticCustomError("coach", "{message}", context)
