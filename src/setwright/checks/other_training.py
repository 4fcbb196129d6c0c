"""A plan without a word about other training.

Looks for `other_training`. Whoever does nothing else accepts this with the reason.

Why it matters: whether strength work falls on the eve of a hard day can only be seen where the hard days are written
down.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject

ID = "no-other-training"
SEVERITY = "warning"
SOURCE = COMMON

BAD: Example = {"plans/spring": "other_training: []"}
GOOD: Example = {"plans/spring": "other_training: [{day: saturday, what: A long walk.}]"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each plan that names no other training."""
    for ident, plan in subject.programme.plans.items():
        if not plan.other_training:
            yield Doubt(
                subject.at(f"plans/{ident}.yml"),
                f"{ident} names no other training",
                "write what members do beside it: 'other_training: [{day: sunday, what: Long run., hard: true}]'",
                plan.accept,
            )
