"""A plan for minors that names no adults who answer for it.

Looks at whom a plan is for and at its aim, for juniors, children, pupils, teenagers, or an age below 18. Such a plan
says, in the same place, that a parent or guardian agrees, and that a coach who may train minors is there, or that a
clinician has agreed. What the tool itself prints about everyone under 18 stands on the page of safety.

Why it matters: a body that still grows bears strength work well, with somebody beside it who is trained for that. The
loads of this tool are for adults, and no number of it knows how far somebody has grown. What a club may do with minors
at all, its local codes and the law decide.
"""

import re
from collections.abc import Iterator
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import Doubt, Subject

ID = "minors-without-adults"
SEVERITY = "warning"
SOURCE = (
    "Lloyd RS et al., Br J Sports Med 2014;48:498-505, from memory: strength work suits the young when qualified "
    "people plan it and stand beside it. Consent of a guardian is common practice."
)

_AGE: Final = r"(?:[5-9]|1[0-7])"
_MINORS: Final = re.compile(
    r"\b(?:juniors?|youths?|youngsters?|young people|children|kids|boys|girls|teens?|teenagers?|adolescents?|minors"
    rf"|pupils|school ?children|u[- ]?{_AGE}s?|(?:under|below)[- ](?:the age of )?(?:{_AGE}|18)s?"
    rf"|aged? (?:from |of )?{_AGE}|{_AGE}[- ]years?[- ]olds?|{_AGE} years of age)\b(?!['’])",
    re.IGNORECASE,
)
"""Words for members under 18. What belongs to them ("juniors' parents") is somebody else."""
_LEFT_OUT: Final = re.compile(
    r"\b(?:no|not|nor|never|without|except|parents of|coaches of)(?: \w+){0,2} $", re.IGNORECASE
)
_GUARDIAN: Final = re.compile(r"\b(?:parents?|guardians?|carers?)\b", re.IGNORECASE)
_TRAINED: Final = re.compile(
    r"\b(?:coach(?:es)?|trainers?|instructors?|physiotherapists?|doctors?|clinicians?|paediatricians?)\b", re.IGNORECASE
)

BAD: Example = {"plans/spring": "for: Juniors of 12 to 15."}
GOOD: Example = {
    "plans/spring": "for: Juniors of 12 to 15 whose parents agree, while a coach who may train minors is there."
}


def speaks_of_minors(text: str) -> str | None:
    """Return the first words of a text that are about members under 18; None where there are none."""
    flat = " ".join(text.split())
    return next((found[0] for found in _MINORS.finditer(flat) if not _LEFT_OUT.search(flat[: found.start()])), None)


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each plan for minors that names no guardian, or nobody who is trained for it."""
    for ident, plan in subject.programme.plans.items():
        text = " ".join(filter(None, (plan.for_, plan.aim)))
        found = speaks_of_minors(text)
        if found is not None and not (_GUARDIAN.search(text) and _TRAINED.search(text)):
            yield Doubt(
                subject.at(f"plans/{ident}.yml", "for"),
                f"{ident} is for members under 18 ('{found}'), and does not say who answers for them",
                "add that a parent or guardian agrees, and that a coach who may train minors is there or a clinician "
                "has agreed; local codes decide what a club may do",
                plan.accept,
            )
