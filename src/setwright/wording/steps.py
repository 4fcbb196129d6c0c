"""A step of a derivation: how a number came about, told one step at a time."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a derivation, and the id of the rule behind it (see ``rules``); empty for what the coach wrote."""

    says: str
    rule: str = ""
