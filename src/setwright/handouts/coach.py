"""A coach's sheet on paper: what stands on its page, chosen so that the hour in front of the group is one leaf."""

from collections.abc import Iterable, Iterator
from typing import Any, Final

from setwright.dose.resolved import ResolvedBlock, ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.dose.timing import TimeRange, set_time
from setwright.handouts.sheet import Sheet
from setwright.handouts.writing import Desk, care_data, variation
from setwright.outline import paper
from setwright.outline.addresses import coach_path
from setwright.outline.coaching import InFront, in_front
from setwright.outline.training import whole_time
from setwright.wording import blocks, sharing, speaking
from setwright.wording.choices import clinician_decides, for_whom
from setwright.wording.days import session_when
from setwright.wording.doses import dose_in_words
from setwright.wording.items import item_words
from setwright.wording.times import duration, time_range

FAULTS: Final = 2
"""How many faults of an exercise stand on paper: a coach writes the one that is seen most first."""


def sheets(desk: Desk) -> Iterator[Sheet]:
    """Yield a coach's sheet for each session of each week."""
    for plan in desk.site.plans:
        for session in plan.sessions:
            yield desk.sheet(paper.coach_sheet(session), "coach", coach_data(desk, plan, session))


def coach_data(desk: Desk, plan: ResolvedPlan, session: ResolvedSession) -> dict[str, Any]:
    """Return everything that a coach's sheet on paper shows."""
    programme, language, say = desk.site.programme, desk.language, desk.language.say
    written, front = programme.sessions[session.session], in_front(desk.site, session)
    starts_s = front.hour.starts_s
    return {
        **desk.frame(say("Coach's sheet: %(session)s", session=written.name), coach_path(session)),
        "place": say("%(plan)s, week %(week)s", plan=plan.plan.name, week=session.week),
        "day": session_when(language, plan, session),
        "time": time_range(language, whole_time(session, written, programme.routines)),
        "before": say(
            "Ask who is ill, injured, pregnant, new or in doubt: they ask a clinician first, and what that one says "
            "comes before this sheet. Local codes of practice hold."
        ),
        "selection": say("A selection. Who takes care, limits and all faults stand on the page."),
        "lay_out": _lay_out(desk, front),
        "counted": sharing.how_it_is_counted(language, programme.club, front.people),
        "warm_up": _choices(desk, written.warm_up),
        "warm_up_title": say("%(time)s Warm-up", time=speaking.on_the_clock(language, starts_s, TimeRange(0, 0))),
        "blocks": [_block(desk, front, block, place) for place, block in enumerate(session.blocks)],
        "cool_down": _choices(desk, written.cool_down),
        "cool_down_title": say(
            "%(time)s Cool-down", time=speaking.on_the_clock(language, starts_s, front.hour.cool_down)
        ),
    }


def _lay_out(desk: Desk, front: InFront) -> str:
    """Return how many of each kind of kit."""
    club = desk.site.programme.club
    said = [f"{count} × {club.kit_name(name)}" for name, count in front.lay_out.items()]
    return ", ".join(said) or desk.language.say("no kit")


def _choices(desk: Desk, idents: Iterable[str]) -> str:
    """Return the warm-ups or cool-downs to choose from, with their time."""
    routines = (desk.site.programme.routines[ident] for ident in idents)
    return desk.language.either(f"{routine.name} ({duration(desk.language, routine.takes)})" for routine in routines)


def _block(desk: Desk, front: InFront, block: ResolvedBlock, place: int) -> dict[str, Any]:
    language, session = desk.language, front.session
    note = desk.noted(block.note, ("session", session.session, block.index, "note")) if block.note else None
    return {
        "title": language.say(
            "%(time)s %(block)s",
            time=speaking.on_the_clock(language, front.hour.starts_s, front.hour.blocks[place]),
            block=blocks.block_name(language, block),
        ),
        "how": blocks.how_with_rest(language, block),
        "time": time_range(language, block.minutes),
        "note": note,
        "sharing": sharing.in_a_sentence(language, desk.site.programme.club, front.shared[place]),
        "items": [_item(desk, session, block, item) for item in block.items],
    }


def _item(desk: Desk, session: ResolvedSession, block: ResolvedBlock, item: ResolvedItem) -> dict[str, Any]:
    """Return one exercise: what to say, show and count, watch for and offer, and who leaves it out."""
    language, programme = desk.language, desk.site.programme
    exercise, rounds = programme.exercises[item.exercise], block.rounds is not None
    said = item_words(language, item, exercise.limits, programme.club.units, desk.site.manner(item.exercise))
    own_s = duration(language, set_time(item.dose, item.dose.first).low_s)
    takes = language.say("A set takes %(time)s.", time=own_s)
    return {
        "name": exercise.name,
        "dose": dose_in_words(language, item.dose, rounds),
        "count": f"{said.tempo}. {takes}" if said.tempo else takes,
        "why": desk.prose(speaking.one_sentence(exercise.why)),
        "set_up": desk.all_prose(exercise.set_up),
        "set_up_short": desk.all_prose(speaking.one_sentence(line) for line in exercise.set_up[:1]),
        "faults": [{"sign": desk.prose(one.sign), "fix": desk.prose(one.fix)} for one in exercise.faults[:FAULTS]],
        "easier": variation(desk, exercise.easier[0].exercise, exercise.easier[0].how) if exercise.easier else [],
        "at_home": desk.prose(exercise.at_home.use) if exercise.at_home else None,
        "instead": [_instead(desk, session, way, rounds) for way in item.instead],
        **care_data(desk, item.exercise),
    }


def _instead(desk: Desk, session: ResolvedSession, way: ResolvedItem, rounds: bool) -> dict[str, Any]:
    """Return what members with a choice do, whom it is for, and who leaves that out."""
    language, programme = desk.language, desk.site.programme
    whom = language.say("For %(whom)s", whom=for_whom(language, programme.club, way.choices))
    return {
        "whom": desk.noted(whom, ("session", session.session, *way.slot, "for")),
        "name": programme.exercises[way.exercise].name,
        "dose": dose_in_words(language, way.dose, rounds),
        "clinician": clinician_decides(language, programme.club, way.choices),
        **care_data(desk, way.exercise),
    }
