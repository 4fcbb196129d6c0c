"""A session as its coach goes through it in front of a group: what begins when, and what to lay out. No words."""

from collections.abc import Mapping
from dataclasses import dataclass

from setwright.dose.resolved import ResolvedBlock, ResolvedSession
from setwright.dose.timing import TimeRange, between_blocks, in_minutes
from setwright.group.orders import Shared, counted, session_shared
from setwright.outline.site import Site
from setwright.outline.training import warm_up_minutes

USUAL_PEOPLE = 8
"""How many a sheet counts for where the club does not say. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Hour:
    """When each part of a session begins, as a range in seconds from ``starts_s``, which counts from midnight.

    Blocks stand in their order; each range is that of what is printed before it, so that all of it adds up to the
    session's own time. ``cool_down`` is when the blocks are over.
    """

    starts_s: int
    warm_up: TimeRange | None
    blocks: tuple[TimeRange, ...]
    cool_down: TimeRange


@dataclass(frozen=True)
class InFront:
    """What a coach's sheet is made from. ``lay_out`` says how many of each kind of kit, ``shared`` how blocks share."""

    session: ResolvedSession
    hour: Hour
    people: int
    lay_out: Mapping[str, int]
    shared: tuple[Shared, ...]


def in_front(site: Site, session: ResolvedSession) -> InFront:
    """Return what a coach's sheet of a session is made from."""
    programme = site.programme
    people = programme.club.people or USUAL_PEOPLE
    written = programme.sessions[session.session]
    hour = hour_of(session, warm_up_minutes(written, programme.routines))
    shared = session_shared(programme, session, people)
    return InFront(session, hour, people, counted(programme, session, shared), shared)


def hour_of(session: ResolvedSession, warm_up: TimeRange | None) -> Hour:
    """Return when each part of a session begins; without a written time, from nought."""
    starts_s = session.at.hour * 3600 + session.at.minute * 60 if session.at is not None else 0
    before = warm_up or TimeRange(0, 0)
    begins = tuple(before + _until(session.blocks, place) for place in range(len(session.blocks)))
    return Hour(starts_s, warm_up, begins, before + session.minutes)


def _until(blocks: tuple[ResolvedBlock, ...], place: int) -> TimeRange:
    """Return the printed time of all blocks before one, and of the changes between them."""
    so_far = sum((block.minutes for block in blocks[:place]), TimeRange(0, 0))
    return so_far + in_minutes(between_blocks([block.time for block in blocks[: place + 1]])) if place else so_far
