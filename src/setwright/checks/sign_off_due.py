"""A sign-off that is missing or out of date.

Looks at every exercise. It is out of date where the description, the cues, the cautions, the limits, the figure or the
range of doses in use is not what the reviewer saw; spaces and the order of keys do not count. Whether this stops
publishing is the club's choice, `unreviewed_exercises` in club.yml. A club that keeps no sign-offs at all and publishes
with a notice hears nothing here: each page says so already.

Why it matters: a page that carries a physiotherapist's name must be the page that the physiotherapist read.
"""

from collections.abc import Iterator
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import Doubt, Subject
from setwright.review.status import Review
from setwright.source.finding import Severity
from setwright.wording.reviews import PART_NAMES

ID = "sign-off-due"
SEVERITY = "warning"
SOURCE = "The club's own agreement with its physiotherapist."

_HOW: Final = "ask for a review on the review page; then 'setwright sign' or paste the line that it prepares"

SQUAT = """
- {exercise: goblet-squat, who: A physiotherapist, role: Physiotherapist of the club,
   date: 2027-02-01, text: okkpcfloalhb, cues: ifamihhpafao, cautions: dcngmfgdlnpi,
   limits: none, figure: none, dosage: 3 sets of 8 reps; at most 3 sets a week}
"""
STEP_DOWN = """
- {exercise: step-down, who: A physiotherapist, role: Physiotherapist of the club,
   date: 2027-02-01, text: immodpkinhig, cues: fkpfdaecoaaj, cautions: dcngmfgdlnpi,
   limits: none, figure: none, dosage: 3 sets of 8 reps; at most 3 sets a week}
"""
BAD: Example = {"sign-offs": SQUAT + STEP_DOWN.replace("fkpfdaecoaaj", "gbmhciandpek")}  # its cues were others
GOOD: Example = {"sign-offs": SQUAT + STEP_DOWN}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise whose sign-off is missing or out of date."""
    stops = subject.programme.club.unreviewed_exercises == "stop publishing"
    if not subject.programme.sign_offs and not stops:
        return
    severity: Severity = "error" if stops else "warning"
    for ident, review in subject.reviews.items():
        if review.status != "reviewed":
            accept = subject.programme.exercises[ident].accept
            yield Doubt(subject.at(f"exercises/{ident}.yml"), _said(subject, review), _HOW, accept, severity)


def _said(subject: Subject, review: Review) -> str:
    if review.sign_off is None:
        return f"{review.exercise} is not signed off"
    parts = ", ".join(PART_NAMES[part] for part in review.changed)
    place = subject.at("sign-offs.yml", review.index)
    return f"{review.exercise}: {parts} changed since {review.sign_off.who} signed on {review.sign_off.date} ({place})"
