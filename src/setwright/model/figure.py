"""The pose of a movement, as a coach writes it: what touches what, and the few bends that matter.

Inside ``figure:`` a bare number is an angle in degrees; places and heights carry their unit and are for a person of
170 cm. The picture is seen from the ``side``, facing right, with a ``near`` and a ``far`` side of the body, or from the
``front``, where ``left`` and ``right`` are the picture's.
"""

import re
from collections.abc import Iterator
from typing import Annotated, Any, Final, Literal, Self, get_args

from pydantic import ConfigDict, Field, PlainValidator, WithJsonSchema, model_validator

from setwright.model.base import CoachModel, refuse
from setwright.model.units import Flag, as_text, shown

View = Literal["side", "front"]
Side = Literal["near", "far"]
SIDES: Final[tuple[Side, ...]] = ("near", "far")
"""Sides of the body. From the front, ``near`` stands for the picture's right and ``far`` for its left."""

Limb = Literal["foot", "toes", "heel", "shin", "knee", "ankle", "hand", "forearm", "elbow"]

ONE_OF: Final[dict[str, Limb]] = {
    "feet": "foot", "toes": "toes", "heels": "heel", "shins": "shin", "knees": "knee", "ankles": "ankle",
    "hands": "hand", "forearms": "forearm", "elbows": "elbow",
}  # fmt: skip

TouchKey = Literal[
    "feet", "near foot", "far foot", "left foot", "right foot",
    "toes", "near toes", "far toes", "left toes", "right toes",
    "heels", "near heel", "far heel", "left heel", "right heel",
    "shins", "near shin", "far shin", "left shin", "right shin",
    "knees", "near knee", "far knee", "left knee", "right knee",
    "ankles", "near ankle", "far ankle", "left ankle", "right ankle",
    "hands", "near hand", "far hand", "left hand", "right hand",
    "forearms", "near forearm", "far forearm", "left forearm", "right forearm",
    "elbows", "near elbow", "far elbow", "left elbow", "right elbow",
    "back", "shoulders", "hips", "side",
]  # fmt: skip
"""A part of the body that touches something; ``foot`` is flat, ``toes`` is the ball of the foot with the heel up."""

Block = Literal["box", "bench", "step", "chair"]
BLOCKS: Final[tuple[Block, ...]] = get_args(Block)
Surface = Literal["floor", "box", "bench", "step", "chair", "wall", "roller"]
BodyTarget = Literal[
    "near knee", "far knee", "left knee", "right knee", "near thigh", "far thigh", "left thigh", "right thigh",
    "near ankle", "far ankle", "left ankle", "right ankle", "near hand", "far hand", "left hand", "right hand",
    "head", "chest", "hip",
]  # fmt: skip
Target = Literal[Surface, BodyTarget]
"""What a part of the body may touch: a surface, or another part of the body."""

Segment = Literal["thigh", "shank", "upper arm", "forearm"]

_ANGLE = re.compile(r"-?\d{1,3}")
_PLACE = re.compile(r"(?P<number>-?\d{1,4}(?:\.\d{1,2})?)\s*cm")


def parse_angle_deg(value: Any) -> int:
    """Return whole degrees from a bare number, such as ``-15``."""
    hint = "inside 'figure' a bare number is an angle in degrees, such as 90 or -15"
    text = as_text(value, "not-an-angle", "an angle", hint)
    if not _ANGLE.fullmatch(text) or abs(int(text)) > 270:
        refuse("not-an-angle", f"{shown(text)} is not an angle", hint)
    return int(text)


def parse_place_cm(value: Any) -> float:
    """Return centimetres from a place or a height such as ``-42 cm``."""
    hint = "write the unit too, such as '40 cm' or '-12 cm'"
    text = as_text(value, "not-a-place", "a place in cm", hint)
    match = _PLACE.fullmatch(text)
    if not match or abs(float(match["number"])) > 400:
        refuse("not-a-place", f"{shown(text)} is not a place within 400 cm", hint)
    return float(match["number"])


def parse_seen_percent(value: Any) -> int:
    """Return a whole percentage from 10 to 100, such as ``45 %``."""
    hint = "write the sign too, such as '45 %'"
    text = as_text(value, "not-a-percentage", "a percentage", hint)
    match = re.fullmatch(r"(\d{1,3})\s*%", text)
    if not match or not 10 <= int(match[1]) <= 100:
        refuse("not-a-percentage", f"{shown(text)} is not a share from 10 % to 100 %", hint)
    return int(match[1])


Angle = Annotated[
    int,
    PlainValidator(lambda v: parse_angle_deg(v)),
    WithJsonSchema({"type": "integer", "minimum": -270, "maximum": 270}),
]
"""An angle, in degrees."""

Place = Annotated[
    float,
    PlainValidator(lambda v: parse_place_cm(v)),
    WithJsonSchema({"type": "string", "pattern": r"^-?[0-9]+(\.[0-9]+)? *cm$", "examples": ["-42 cm"]}),
]
"""A place along the floor or up a wall, or a height, in centimetres."""

Seen = Annotated[
    int,
    PlainValidator(lambda v: parse_seen_percent(v)),
    WithJsonSchema({"type": "string", "pattern": "^[0-9]+ *%$", "examples": ["45 %"]}),
]
"""How much of a limb's length is seen, in percent."""


def _or(short: dict[str, Any]) -> Any:
    """Let editors take a short form instead of the keys."""

    def extend(schema: dict[str, Any]) -> None:
        whole = dict(schema)
        schema.clear()
        schema.update(title=whole.pop("title"), anyOf=[short, whole])

    return extend


class Bend(CoachModel):
    """A bend in degrees: one number for both sides, or a number a side."""

    model_config = ConfigDict(json_schema_extra=_or({"type": "integer", "minimum": -270, "maximum": 270}))

    near: Angle | None = Field(default=None, description="The near side's, in degrees.")
    far: Angle | None = Field(default=None, description="The far side's, in degrees.")
    left: Angle | None = Field(default=None, description="From the front: the one at the picture's left.")
    right: Angle | None = Field(default=None, description="From the front: the one at the picture's right.")

    @model_validator(mode="before")
    @classmethod
    def _one_number(cls, value: Any) -> Any:
        if isinstance(value, dict | Bend):
            return value
        both = parse_angle_deg(value)
        return {"near": both, "far": both}

    def of(self, side: Side) -> int | None:
        """Return one side's bend in degrees, or None where it is left open."""
        if side == "near":
            return self.near if self.near is not None else self.right
        return self.far if self.far is not None else self.left


class Contact(CoachModel):
    """What a part of the body touches, and where."""

    model_config = ConfigDict(json_schema_extra=_or({"enum": list(get_args(Target))}))

    to: Target = Field(default="floor", description="The surface, or the part of the body, that it touches.")
    at: Place | None = Field(default=None, description="Where: along the floor, or up the wall. Left out: solved.")
    above: Place = Field(default=0.0, description="How high it stays above the surface; 0 cm touches it.")

    @model_validator(mode="before")
    @classmethod
    def _surface_alone(cls, value: Any) -> Any:
        return {"to": value} if isinstance(value, str) else value


class Seens(CoachModel):
    """Limbs that point towards or away from the viewer, each with how much of its length is seen."""

    near_thigh: Seen | None = Field(default=None, alias="near thigh")
    far_thigh: Seen | None = Field(default=None, alias="far thigh")
    near_shank: Seen | None = Field(default=None, alias="near shank")
    far_shank: Seen | None = Field(default=None, alias="far shank")
    near_upper_arm: Seen | None = Field(default=None, alias="near upper arm")
    far_upper_arm: Seen | None = Field(default=None, alias="far upper arm")
    near_forearm: Seen | None = Field(default=None, alias="near forearm")
    far_forearm: Seen | None = Field(default=None, alias="far forearm")
    left_thigh: Seen | None = Field(default=None, alias="left thigh")
    right_thigh: Seen | None = Field(default=None, alias="right thigh")
    left_shank: Seen | None = Field(default=None, alias="left shank")
    right_shank: Seen | None = Field(default=None, alias="right shank")
    left_upper_arm: Seen | None = Field(default=None, alias="left upper arm")
    right_upper_arm: Seen | None = Field(default=None, alias="right upper arm")
    left_forearm: Seen | None = Field(default=None, alias="left forearm")
    right_forearm: Seen | None = Field(default=None, alias="right forearm")

    def of(self, side: Side, segment: Segment) -> float:
        """Return the share of a limb's length that is seen, 1.0 where nothing is said."""
        seen = None
        for word in (side, "right" if side == "near" else "left"):
            written = getattr(self, f"{word}_{segment.replace(' ', '_')}")
            seen = written if written is not None else seen
        return 1.0 if seen is None else seen / 100


AwayLimb = Literal[
    "near thigh", "far thigh", "near shank", "far shank", "near upper arm", "far upper arm", "near forearm",
    "far forearm", "left thigh", "right thigh", "left shank", "right shank", "left upper arm", "right upper arm",
    "left forearm", "right forearm",
]  # fmt: skip


class Pose(CoachModel):
    """One position of the movement. What is left out is solved: contacts first, then balance, then standing tall."""

    touch: dict[TouchKey, Contact] = Field(
        default={"feet": Contact()}, max_length=8, description="What touches what; the feet on the floor by default."
    )
    trunk: Angle | None = Field(default=None, description="Lean forward from upright; -90 lies on the back.")
    hip: Bend | None = Field(default=None, description="Forward is plus; from the front: out to the side.")
    knee: Bend | None = Field(default=None, description="Heel towards the buttock is plus.")
    ankle: Bend | None = Field(default=None, description="Toes up is plus.")
    shoulder: Bend | None = Field(default=None, description="Arm forward is plus; from the front: out to the side.")
    elbow: Bend | None = Field(default=None, description="Hand towards the shoulder is plus.")
    neck: Angle = Field(default=0, description="Chin down is plus, chin up is minus.")
    back: Angle = Field(default=0, ge=-40, le=40, description="Rounded is plus, hollowed is minus.")
    seen: Seens = Field(default=Seens(), description="Limbs that point at the viewer: {near forearm: 45 %}.")
    balance: Flag = Field(default=True, description="false for a position in motion, which need not be in balance.")
    turn: Angle = Field(default=0, ge=-90, le=90, description="Chest turned towards the viewer is plus, away is minus.")
    passed: Flag = Field(default=False, description="true for a position passed through, which no still picture shows.")


class BlockProp(CoachModel):
    """A box, bench, step or chair."""

    height: Place = Field(default=40.0, description="How high it is.")
    at: Place = Field(default=34.0, description="Where its middle stands.")
    width: Place = Field(default=44.0, description="How wide it is.")
    beside: Literal["near", "far", "left", "right", "both"] | None = Field(
        default=None, description="The side of the body that stands beside it, if one does, or both astride."
    )


class Wall(CoachModel):
    """A wall: ahead of the figure, behind it, or alongside, where it is drawn as a pale panel."""

    at: Place = Field(default=50.0, description="Where its face stands.")
    where: Literal["ahead", "behind", "alongside"] = Field(default="ahead", description="On which side of the figure.")


class At(CoachModel):
    """A thing with a place along the floor."""

    at: Place = Field(default=0.0, description="Where its middle is.")


class Post(CoachModel):
    """A post that a band is tied to."""

    at: Place = Field(default=100.0, description="Where it stands.")
    height: Place = Field(default=105.0, description="How high the band is tied.")
    where: Literal["ahead", "alongside"] = Field(default="ahead", description="In line with the figure, or beyond it.")


class Props(CoachModel):
    """What stands there besides the floor."""

    box: BlockProp | None = Field(default=None, description="A box.")
    bench: BlockProp | None = Field(default=None, description="A bench.")
    step: BlockProp | None = Field(default=None, description="A step.")
    chair: BlockProp | None = Field(default=None, description="A chair, facing right.")
    wall: Wall | None = Field(default=None, description="A wall.")
    roller: At | None = Field(default=None, description="A foam roller, 15 cm thick.")
    line: At | None = Field(default=None, description="A line on the floor, to hop over.")
    post: Post | None = Field(default=None, description="A post for a band.")


Hold = Literal["both hands", "each hand", "near hand", "far hand", "left hand", "right hand"]


class Holds(CoachModel):
    """What the hands hold."""

    kettlebell: Hold | None = Field(default=None, description="Which hand holds it.")
    dumbbell: Hold | None = Field(default=None, description="Which hand holds it, or one in each.")
    barbell: Literal["both hands"] | None = Field(default=None, description="In both hands.")
    pole: Literal["both hands", "along the back"] | None = Field(default=None, description="How the pole is held.")


BandEnd = Literal[
    "hands", "near hand", "far hand", "left hand", "right hand", "feet", "near foot", "far foot", "left foot",
    "right foot", "near thigh", "far thigh", "left thigh", "right thigh", "post",
]  # fmt: skip


class BandProp(CoachModel):
    """A rubber band between two places."""

    from_: BandEnd = Field(alias="from", description="One end.")
    to: BandEnd = Field(description="The other end.")


ArrowPart = Literal[
    "hip", "shoulder", "head", "near hand", "far hand", "left hand", "right hand", "near knee", "far knee",
    "left knee", "right knee", "near elbow", "far elbow", "near foot", "far foot", "left foot", "right foot",
    "near heel", "far heel", "near toes", "far toes", "none",
]  # fmt: skip


class Figure(CoachModel):
    """The picture of an exercise: one pose for a hold; two for start and end; more for what comes between them."""

    view: View = Field(default="side", description="From the side, facing right, or from the front.")
    props: Props = Field(default=Props(), description="What stands there besides the floor.")
    holds: Holds = Field(default=Holds(), description="What the hands hold.")
    band: BandProp | None = Field(default=None, description="A rubber band: {from: hands, to: post}.")
    away: list[AwayLimb] = Field(
        default=[], max_length=8, description="Limbs that point away from the viewer: drawn behind, and darker."
    )
    poses: list[Pose] = Field(min_length=1, max_length=9, description="The positions, in order.")
    returns: Flag | None = Field(
        default=None, description="false where the movement does not come back the way it went, such as a jump."
    )
    arrow: ArrowPart | None = Field(
        default=None, description="What the arrow follows; left out, whatever moves most. 'none' draws no arrow."
    )
    begins: Literal["lowering", "lifting"] | None = Field(
        default=None, description="How the way from start to end counts in the tempo; left out, by which way it goes."
    )

    @property
    def comes_back(self) -> bool:
        """Whether a repetition ends by going back the way it came."""
        return self.returns is not False

    @model_validator(mode="after")
    def _fits_itself(self) -> Self:
        for at, word in _side_words(self):
            if (word in SIDES) == (self.view == "front"):
                hint = "from the front, write left and right" if self.view == "front" else "write near and far"
                refuse("side-unclear", f"'{word}' is not used in a view from the {self.view}", hint, at=at)
        if all(pose.passed for pose in self.poses):
            refuse("nothing-shown", "every position is passed through", "leave 'passed' out of one", at=("poses", 0))
        for index, pose in enumerate(self.poses):
            if pose.turn and self.view == "front":
                refuse(
                    "turn-from-the-front", "a chest turns when seen from the side", "leave it out", at=("poses", index)
                )
            for key, contact in pose.touch.items():
                at = ("poses", index, "touch", key)
                if contact.to in get_args(Surface)[1:] and getattr(self.props, contact.to) is None:
                    refuse("prop-missing", f"no {contact.to} stands here", f"add 'props: {{{contact.to}: ...}}'", at=at)
                single = ONE_OF.get(key)
                if single and any(other.endswith(f" {single}") for other in pose.touch):
                    refuse("contact-twice", f"'{key}' already says it for both sides", "keep one of them", at=at)
        if self.band and "post" in (self.band.from_, self.band.to) and self.props.post is None:
            refuse("prop-missing", "no post stands here", "add 'props: {post: ...}'", at=("band",))
        return self


def _side_words(figure: Figure) -> Iterator[tuple[tuple[str | int, ...], str]]:
    """Yield every word for a side of the body, with its place."""
    words = ("near", "far", "left", "right")
    for index, pose in enumerate(figure.poses):
        here = ("poses", index)
        for key, contact in pose.touch.items():
            for text in (key, contact.to):
                if text.split()[0] in words:
                    yield (*here, "touch", key), text.split()[0]
        for joint in ("hip", "knee", "ankle", "shoulder", "elbow"):
            bend = getattr(pose, joint)
            if bend is not None and bend.model_fields_set != {"near", "far"}:
                yield from (((*here, joint), word) for word in words if getattr(bend, word) is not None)
        for name in sorted(pose.seen.model_fields_set):
            yield (*here, "seen"), name.split("_")[0]
    for name in BLOCKS:
        block = getattr(figure.props, name)
        if block is not None and block.beside in words:
            yield ("props", name, "beside"), block.beside
    yield from ((("away",), limb.split()[0]) for limb in figure.away)
    whole: tuple[str | None, ...] = (figure.holds.kettlebell, figure.holds.dumbbell, figure.arrow)
    for said in whole:
        if said and said.split()[0] in words:
            yield (), said.split()[0]
