"""Where each exercise stands: reviewed, changed since its sign-off, or not reviewed."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final, Literal

from setwright.dose.in_use import Dosage, dosages
from setwright.dose.resolved import ResolvedPlan
from setwright.model.exercise import Exercise
from setwright.model.programme import Programme
from setwright.model.sign_off import SignOff
from setwright.review.first_form import first_digest_of, sentence
from setwright.review.parts import PARTS, Part, digest_of
from setwright.review.signed import signed, text_of

Status = Literal["reviewed", "changed", "unreviewed"]

DOSAGE: Final = "dosage"


@dataclass(frozen=True, slots=True)
class Review:
    """One exercise before its reviewer.

    ``sign_off`` is the one that counts: the latest that still fits, or else the latest. ``changed`` names the parts
    that are not as that one saw them; ``digests`` hold every part as it is now, the dosage as it would be signed.
    """

    exercise: str
    status: Status
    digests: Mapping[str, str]
    dosage: Dosage
    sign_off: SignOff | None = None
    index: int = -1
    changed: tuple[str, ...] = ()
    earlier: tuple[SignOff, ...] = ()


def reviews(programme: Programme, plans: Sequence[ResolvedPlan]) -> dict[str, Review]:
    """Return where every exercise stands, by id."""
    signed: dict[str, list[tuple[int, SignOff]]] = {}
    for index, sign_off in enumerate(programme.sign_offs):
        signed.setdefault(sign_off.exercise, []).append((index, sign_off))
    in_use = dosages(programme, plans)
    return {
        ident: _review(ident, exercise, in_use[ident], signed.get(ident, []))
        for ident, exercise in programme.exercises.items()
    }


def digests_of(exercise: Exercise, dosage: Dosage) -> dict[str, str]:
    """Return the digest of every part, and the doses in use, as a sign-off keeps them."""
    return {**{part: digest_of(exercise, part) for part in PARTS}, DOSAGE: text_of(signed(dosage))}


def changed_parts(sign_off: SignOff, exercise: Exercise, dosage: Dosage) -> tuple[str, ...]:
    """Return the parts that are not as a sign-off saw them, in the order of a page."""
    changed: list[str] = [part for part in PARTS if not fits(sign_off, exercise, part)]
    same = sign_off.dosage == sentence(dosage) if sign_off.doses is None else sign_off.doses == signed(dosage)
    return tuple(changed if same else [*changed, DOSAGE])


def fits(sign_off: SignOff, exercise: Exercise, part: Part) -> bool:
    """Say whether a part is as a sign-off saw it, whichever form the sign-off has."""
    saw = getattr(sign_off, part)
    return saw in (digest_of(exercise, part), first_digest_of(exercise, part))


def _review(ident: str, exercise: Exercise, dosage: Dosage, signed: list[tuple[int, SignOff]]) -> Review:
    now = digests_of(exercise, dosage)
    # Two reviewers may have signed on two branches: the latest counts, and one that fits goes before one that does not.
    ranked = sorted(signed, key=lambda one: (not changed_parts(one[1], exercise, dosage), one[1].date, one[0]))
    if not ranked:
        return Review(ident, "unreviewed", now, dosage)
    index, counts = ranked[-1]
    changed = changed_parts(counts, exercise, dosage)
    earlier = tuple(sign_off for _, sign_off in reversed(ranked[:-1]))
    return Review(ident, "changed" if changed else "reviewed", now, dosage, counts, index, changed, earlier)
