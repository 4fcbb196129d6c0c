"""A session as the phone's guide reads it: one block of JSON in the page, with plain numbers and a schema of its own.

Times are whole seconds, lengths centimetres, and a set's amount goes from ``low`` to ``high``. Words that a member
reads come in the site's language; everything that the guide decides by is a code or a number. What is
false or nothing is left out.
"""

import json
from dataclasses import replace
from fractions import Fraction
from typing import Annotated, Any, Final, Literal

from markupsafe import Markup
from pydantic import BaseModel, ConfigDict, Field, PlainSerializer, WithJsonSchema

from setwright.dose.dose import Dose, Set
from setwright.dose.next_weight import is_ranged, next_bands, next_fixed
from setwright.dose.phases import Manner, Phase, PhaseKind, phases
from setwright.dose.resolved import ResolvedBlock, ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.dose.sequence import Step
from setwright.model.load import Band, Base, Load
from setwright.model.prescription import Measure
from setwright.model.session import BlockKind, Session
from setwright.model.span import Open
from setwright.model.tempo import Tempo
from setwright.outline.site import Site
from setwright.phone import attributes
from setwright.phone.attributes import LoadWay, bands, multiples, weight
from setwright.wording.blocks import block_name
from setwright.wording.doses import big_amount, sides
from setwright.wording.effort import effort
from setwright.wording.language import capital
from setwright.wording.loads import load as load_in_words

VERSION: Final = 1
DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"

GuideKind = Literal["warm-up", "set", "rest", "change", "block", "rounds", "cool-down", "finish"]


class _Data(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


Number = Annotated[
    Fraction,
    PlainSerializer(lambda n: int(n) if n.denominator == 1 else float(n)),
    WithJsonSchema({"type": "number"}),
]
"""A count, seconds or centimetres."""


class PhaseData(_Data):
    """One phase of a repetition, in the order in which it is done."""

    kind: PhaseKind
    seconds: int
    fast: bool = False


class LoadData(_Data):
    """How heavy: in words, and as what the member's own settings are put to.

    ``of`` is what a percentage is of, ``bands`` the weights to take for it, ``weight`` the owned weight of a fixed
    load, ``band`` an elastic band's name. ``way`` is what it does where it is not just held: it takes weight off the
    body, or is added to it. ``next_bands`` and ``next_weight`` are what a member takes next time who reached the top of
    a range in every set.
    """

    text: str
    of: Base | None = None
    per_hand: bool = False
    bands: str | None = None
    weight: str | None = None
    band: str | None = None
    kit: str | None = None
    way: LoadWay | None = None
    next_bands: str | None = None
    next_weight: str | None = None


class SetData(_Data):
    """One set; ``load`` and ``tempo`` are places in the exercise's lists, left out for the body alone and no tempo.

    ``amount`` is its own amount in words, where sets differ. ``leave`` is there where it is as many as possible: so
    many repetitions must be left, and ``up_to`` ends it in any case. ``ramp`` is a warm-up set.
    """

    low: Number
    high: Number
    load: int | None = None
    tempo: int | None = None
    amount: str | None = None
    leave: int | None = None
    up_to: int | None = None
    ramp: bool = False


class ItemData(_Data):
    """One exercise of a block. ``sides`` is 2 where they work one at a time; ``amount`` is its amount in words.

    A member may leave out what is ``optional``.
    """

    exercise: str
    name: str
    measure: Measure
    sides: Literal[1, 2]
    amount: str
    kit: list[str] = []
    loads: list[LoadData] = []
    tempos: list[list[PhaseData]] = []
    sets: list[SetData] = Field(min_length=1)
    optional: bool = False


StepData = tuple[GuideKind, int, int, int, int, Literal[0, 1, 2], int]
"""One step: kind, block, exercise, round, rounds, side, seconds. Blocks and exercises count from 0, rounds from 1; the
side is 0 where both work, and the seconds are those of a pause. A list of plain values, since a session has many."""


class WayData(_Data):
    """What members with one of some choices, known by their ids, do in the place of an exercise."""

    choices: list[str] = Field(min_length=1)
    item: ItemData


class BlockData(_Data):
    """A block with its exercises.

    ``every`` is how often a set starts, in seconds, where it runs by the clock; ``up_to`` where as many rounds as
    possible end in any case. ``ways`` hold, for each exercise, what may be done in its place; of several that fit a
    member, the first counts.
    ``courses`` are the steps of each combination of ways, by their numbers: ``"0 2"`` is the first exercise as it
    stands, and the second way of the second one.
    """

    kind: BlockKind
    name: str
    every: int | None = None
    up_to: int | None = None
    items: list[ItemData] = Field(min_length=1)
    optional: bool = False
    ways: list[list[WayData]] = []
    courses: dict[str, list[StepData]] = {}


class SessionData(_Data):
    """Everything that the guide knows of a session.

    ``efforts`` say what 0 to 10 feels like, ``kit_names`` what members call kit, where that is not its id.
    ``multiples`` lead from an open-ended set to 1RM, where there is one: ``phone/attributes.py`` says how.
    """

    version: Literal[1]
    plan: str
    session: str
    week: int
    efforts: list[str]
    kit_names: dict[str, str] = {}
    multiples: str | None = None
    blocks: list[BlockData] = Field(min_length=1)
    steps: list[StepData] = Field(min_length=1)


def schema() -> dict[str, Any]:
    """Return the JSON Schema (2020-12) of the block."""
    return {"$schema": DIALECT, **SessionData.model_json_schema(mode="validation")}


def data(site: Site, plan: ResolvedPlan, session: ResolvedSession) -> SessionData:
    """Return what the guide reads of a session."""
    written = site.programme.sessions[session.session]
    last = len(session.blocks) - 1
    steps = [
        *([_edge("warm-up", 0)] if written.warm_up else []),
        *map(_step, session.steps),
        *([_edge("cool-down", last)] if written.cool_down else []),
        _edge("finish", last),
    ]
    return SessionData(
        version=VERSION,
        plan=plan.plan.name,
        session=written.name,
        week=session.week,
        efforts=list(effort(site.language)),
        kit_names={kit: name for kit in site.kit_of(session) if (name := site.programme.club.kit_name(kit)) != kit},
        multiples=multiples() if any(_is_open(o) for item in session.all_items for o in item.dose.working) else None,
        blocks=[_block(site, session, block) for block in session.blocks],
        steps=steps,
    )


def markup(session: SessionData) -> Markup:
    """Return the block as it stands inside a page's ``script`` element: no sign in it can end that element."""
    text = json.dumps(session.model_dump(mode="json", exclude_defaults=True), ensure_ascii=False, separators=(",", ":"))
    for sign in "<>&\u2028\u2029`~":
        text = text.replace(sign, f"\\u{ord(sign):04x}")
    return Markup(text)  # noqa: S704 - escaped right here


def _edge(kind: GuideKind, block: int) -> StepData:
    return (kind, block, 0, 0, 0, 0, 0)


def _side(side: int) -> Literal[0, 1, 2]:
    return 1 if side == 1 else 2 if side == 2 else 0


def _block(site: Site, session: ResolvedSession, block: ResolvedBlock) -> BlockData:
    written = site.programme.sessions[session.session]
    ways = [
        [WayData(choices=list(way.choices), item=_item(site, way, written, item.optional)) for way in item.instead]
        for item in block.items
    ]
    courses = {" ".join(map(str, one.picks)): list(map(_step, block.guided(one.steps))) for one in block.courses}
    return BlockData(
        kind=block.kind,
        name=block_name(site.language, block),
        every=block.clock.every_s if block.clock else None,
        up_to=block.clock.up_to if block.clock else None,
        items=[_item(site, item, written, item.optional) for item in block.items],
        optional=block.optional,
        ways=ways if any(ways) else [],
        courses=courses,
    )


def _step(step: Step) -> StepData:
    return (step.kind, step.block, step.item, step.round, step.rounds, _side(step.side), step.seconds)


def _item(site: Site, item: ResolvedItem, written: Session, optional: bool) -> ItemData:
    dose, exercise, prescription = item.dose, site.programme.exercises[item.exercise], written.written(item.slot)
    loads = list(dict.fromkeys(one.load for one in dose.sets if one.load is not None))
    paced = dose.measure == "reps"
    tempos = list(dict.fromkeys(one.tempo for one in dose.sets if one.tempo is not None and paced))
    amounts = {one.amount for one in dose.sets}
    # Where the coach's own progression moves the load, that is what comes next.
    moves = prescription.progress is not None and (prescription.progress.load or prescription.progress.then)
    grows = is_ranged(item) and not moves
    return ItemData(
        exercise=item.exercise,
        name=exercise.name,
        measure=dose.measure,
        sides=2 if dose.side_count == 2 else 1,
        amount=_amount(site, dose),
        kit=prescription.kit or exercise.kit,
        loads=[_load(site, item, load, grows) for load in loads],
        tempos=[_phases(tempo, site.manner(item.exercise)) for tempo in tempos],
        sets=[
            SetData(
                low=Fraction(one.amount.low),
                high=Fraction(one.amount.high),
                load=loads.index(one.load) if one.load is not None else None,
                tempo=tempos.index(one.tempo) if one.tempo in tempos and one.tempo is not None else None,
                amount=_amount(site, replace(dose, sets=(replace(one, kind="work"),))) if len(amounts) > 1 else None,
                leave=one.amount.leave if isinstance(one.amount, Open) else None,
                up_to=one.amount.up_to if isinstance(one.amount, Open) else None,
                ramp=one.kind == "ramp",
            )
            for one in dose.sets
        ],
        optional=optional,
    )


def _is_open(one: Set) -> bool:
    return isinstance(one.amount, Open)


def _amount(site: Site, dose: Dose) -> str:
    return " ".join(part for part in (*big_amount(site.language, dose), sides(site.language, dose)) if part)


def _load(site: Site, item: ResolvedItem, load: Load, grows: bool) -> LoadData:
    club, take = site.programme.club, item.take_of(load)
    unit, exercise = club.units, site.programme.exercises[item.exercise]
    chosen = take.choice.weight_kg if take and take.choice else None
    following = next_fixed(club, exercise, item, take) if grows and take else None
    return LoadData(
        text=capital(load_in_words(site.language, load)),
        of=load.of,
        per_hand=load.per_hand,
        bands=bands(take.bands, unit) if take and take.bands else None,
        weight=weight(chosen, unit) if chosen is not None else None,
        band=load.name if isinstance(load, Band) else None,
        kit=item.kit,
        way=attributes.way(load),
        next_bands=bands(next_bands(club, exercise, item, take), unit) if grows and take and take.bands else None,
        next_weight=weight(following, unit) if following is not None else None,
    )


def _phases(tempo: Tempo, manner: Manner) -> list[PhaseData]:
    return [_phase(phase) for phase in phases(tempo, manner)]


def _phase(phase: Phase) -> PhaseData:
    return PhaseData(kind=phase.kind, seconds=phase.seconds, fast=phase.fast)
