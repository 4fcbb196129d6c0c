"""A sign-off that is missing or out of date.

Looks at every exercise. It is out of date where the description, the cues, the cautions, the limits, the figure, the
notes and kit of sessions or the range of doses in use is not what the reviewer saw; spaces and the order of keys do not
count. The newest sign-off decides: where everything was changed back to what an older one saw, the reviewer is asked
again, since the newer may be stricter on purpose.

Whether this stops publishing is the club's choice, `unreviewed_exercises` in club.yml. Where limits, cautions, whom the
exercise is not for or when to stop changed since a sign-off, it stops publishing unless the club chose
`changed_limits: notice`; pages then say so, and the coach cannot accept it. A club that keeps no sign-offs at all and
publishes with a notice hears nothing here: each page says so already.

It is told once, with a list: what may hurt (limits, cautions, doses) before other changes, and last what nobody has
signed yet.

Why it matters: a page that carries a physiotherapist's name must be the page that the physiotherapist read.
"""

from collections.abc import Iterator, Sequence
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import Doubt, Subject
from setwright.review.status import Review
from setwright.source.finding import Position, Severity
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
    """Yield one doubt for the whole programme, with its list, or one for each severity.

    What a coach accepts is told one by one, as the acceptance is. What stops publishing cannot be accepted, nor can
    changed limits, cautions, or whom an exercise is not for.
    """
    if not subject.programme.sign_offs and not _stops(subject):
        return
    left: dict[Severity, list[Review]] = {}
    for review in subject.reviews.values():
        if review.status == "reviewed":
            continue
        grave = review.grave and subject.programme.club.changed_limits == "stop publishing"
        severity: Severity = "error" if grave or _stops(subject) else "warning"
        accepted = subject.programme.exercises[review.exercise].accept
        accept = [] if review.grave else [one for one in accepted if one.rule == ID]
        if accept and severity == "warning":
            yield Doubt(_place(subject, review), _said(subject, review), _HOW, accept, severity)
        else:
            left.setdefault(severity, []).append(review)
    for severity, due in left.items():
        due.sort(key=_urgency)
        yield Doubt(_place(subject, due[0]), _list(subject, due), _HOW, (), severity)


def _stops(subject: Subject) -> bool:
    return subject.programme.club.unreviewed_exercises == "stop publishing"


def _place(subject: Subject, review: Review) -> Position:
    return subject.at(f"exercises/{review.exercise}.yml")


def _urgency(review: Review) -> tuple[int, str]:
    """Return what comes first: what may hurt, then other changes, then what nobody has signed yet."""
    if review.sign_off is None:
        return 2, review.exercise
    return int(not (review.grave or "dosage" in review.changed)), review.exercise


def _list(subject: Subject, due: Sequence[Review]) -> str:
    if len(due) == 1:
        return _said(subject, due[0])
    changed = [
        f"{review.exercise} ({', '.join(PART_NAMES[part] for part in review.changed)})"
        for review in due
        if review.sign_off is not None
    ]
    unsigned = [review.exercise for review in due if review.sign_off is None]
    groups = {"changed since their sign-off": changed, "not signed off": unsigned}
    told = [f"{what}: {', '.join(names)}" for what, names in groups.items() if names]
    return f"{len(due)} exercises are due for review; {'; '.join(told)}"


def _said(subject: Subject, review: Review) -> str:
    if review.sign_off is None:
        return f"{review.exercise} is not signed off"
    parts = ", ".join(PART_NAMES[part] for part in review.changed)
    signed = f"{review.sign_off.who} signed on {review.sign_off.date} ({subject.at('sign-offs.yml', review.index)})"
    if review.status == "changed-back":
        return f"{review.exercise}: {parts} changed back to what was signed before {signed}: ask again"
    return f"{review.exercise}: {parts} changed since {signed}"
