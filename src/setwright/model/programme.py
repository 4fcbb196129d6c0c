"""A whole programme, read and checked for form: everything that the site is made from."""

from dataclasses import dataclass, field

from setwright.model.club import Club
from setwright.model.exercise import Exercise
from setwright.model.plan import Plan
from setwright.model.reference import Reference
from setwright.model.routine import Routine
from setwright.model.session import Session
from setwright.model.sign_off import SignOff


@dataclass(frozen=True)
class Programme:
    """All files of a programme, by id."""

    club: Club
    plans: dict[str, Plan] = field(default_factory=dict)
    sessions: dict[str, Session] = field(default_factory=dict)
    exercises: dict[str, Exercise] = field(default_factory=dict)
    routines: dict[str, Routine] = field(default_factory=dict)
    references: dict[str, Reference] = field(default_factory=dict)
    sign_offs: tuple[SignOff, ...] = ()
    photos: dict[str, bytes] = field(default_factory=dict)
