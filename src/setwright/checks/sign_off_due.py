"""A sign-off that is missing or out of date.

Looks at every exercise. It is out of date where the description, the cues, the cautions, the limits, the figure, the
notes and kit of sessions or the range of doses in use is not what the reviewer saw; spaces and the order of keys do not
count. The newest sign-off decides: where everything was changed back to what an older one saw, the reviewer is asked
again, since the newer may be stricter on purpose.

Whether this stops publishing is the club's choice, `unreviewed_exercises` in club.yml. Where limits, cautions, whom the
exercise is not for or when to stop changed since a sign-off, it stops publishing unless the club chose
`changed_limits: notice`; pages then say so, and the coach cannot accept it. A club that keeps no sign-offs at all and
publishes with a notice hears nothing here: each page says so already.

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
    club = subject.programme.club
    stops = club.unreviewed_exercises == "stop publishing"
    if not subject.programme.sign_offs and not stops:
        return
    for ident, review in subject.reviews.items():
        if review.status != "reviewed":
            grave = review.grave and club.changed_limits == "stop publishing"
            severity: Severity = "error" if stops or grave else "warning"
            accept = () if review.grave else subject.programme.exercises[ident].accept
            yield Doubt(subject.at(f"exercises/{ident}.yml"), _said(subject, review), _HOW, accept, severity)


def _said(subject: Subject, review: Review) -> str:
    if review.sign_off is None:
        return f"{review.exercise} is not signed off"
    parts = ", ".join(PART_NAMES[part] for part in review.changed)
    signed = f"{review.sign_off.who} signed on {review.sign_off.date} ({subject.at('sign-offs.yml', review.index)})"
    if review.status == "changed-back":
        return f"{review.exercise}: {parts} changed back to what was signed before {signed}: ask again"
    return f"{review.exercise}: {parts} changed since {signed}"
