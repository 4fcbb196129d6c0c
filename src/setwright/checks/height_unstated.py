"""A height that nobody states.

Looks at exercises whose height the physiotherapist limited, in every session: does the dose say how high (`height`),
or does its kit come in sizes, so that the page can name those within the limit? A bench, a chair or a wall has one
height, and nobody wrote down which. A note that speaks of the highest box, of one as high as a knee, or of a box on
another, says no height either. The page then shows the limit alone.

Why it matters: a member steps onto what stands there. A limit in centimetres helps nobody who has no ruler.
"""

import re
from collections.abc import Iterator
from typing import Final

from setwright.checks.example import Example
from setwright.checks.limit_crossing import limit_place
from setwright.checks.limit_heights import STOOD_ON
from setwright.checks.rule import COMMON, Doubt, Subject, place_in_session
from setwright.dose.heights import owned_heights_cm
from setwright.model.prescription import Prescription
from setwright.model.units import plain_number

ID = "height-not-stated"
SEVERITY = "warning"
SOURCE = COMMON

_BODY: Final = "ankle|shin|knee|thigh|hip|waist|chest|shoulder"
_TALL: Final = "high(?:er|est)?|tall(?:er|est)?|big(?:ger|gest)?"
_IN_WORDS: Final = re.compile(
    rf"\b(?:(?:{_BODY})(?:[- ]high| height)|as high as (?:your |the |a )?(?:{_BODY})s?"
    rf"|(?:{_TALL})[- ](?:box|bench|step|chair|stool|one)"
    rf"|(?:box|step)(?:es)? (?:on|onto|on top of) (?:a|the|another|each) (?:\w+ )?(?:box|bench|step|chair|stool|other)"
    rf"|(?:stack|pile)(?:ed)? (?:\w+ ){{0,2}}(?:box|step)(?:es|s)?)\b",
    re.IGNORECASE,
)

_LIMITED = "kit: [%s]\nat_home: {use: a stair}\nlimits: {height: 30 cm}"
_CLUB = "kit: {box: [20 cm, 40 cm], bench: 2, kettlebell: [4 kg, 8 kg, 12 kg]}"
BAD: Example = {"club": _CLUB, "exercises/step-down": _LIMITED % "bench"}
GOOD: Example = {"club": _CLUB, "exercises/step-down": _LIMITED % "box"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each such exercise of a session."""
    for session, whole in subject.programme.sessions.items():
        for b, block in enumerate(whole.blocks):
            for where, written in block.prescriptions():
                limits = subject.programme.exercises[written.exercise].limits
                if limits is None or limits.height is None:
                    continue
                found = _unstated(subject, written)
                if found is not None:
                    key, what = found
                    yield Doubt(
                        subject.at(*place_in_session(session, (b, *where)), key),
                        f"{written.exercise}: {what}, in the session {session}; the limit is "
                        f"{plain_number(limits.height)} cm",
                        f"write 'height', up to the limit in {limit_place(subject, written.exercise, 'height')}",
                        subject.accepted_at(session, (b, *where)),
                    )


def _unstated(subject: Subject, written: Prescription) -> tuple[str, str] | None:
    """Return the key that leaves the height open, and what it says; None where a height stands there."""
    words = _IN_WORDS.search(written.note or "")
    if words is not None:
        return "note", f"a note says '{words[0]}', which is no height"
    if written.height is not None:
        return None
    kit = written.kit or subject.programme.exercises[written.exercise].kit
    unsized = next(
        (one for one in kit if one in STOOD_ON and not owned_heights_cm(subject.programme.club, [one])), None
    )
    if unsized is not None:
        return "kit", f"the height of the {unsized} is not stated"
    if not owned_heights_cm(subject.programme.club, kit):
        return "kit", "the height is not stated"
    return None
