"""Where each exercise stands: reviewed, changed since its sign-off, changed back to an older one, or not reviewed."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final, Literal

from setwright.dose.in_use import Dosage, dosages
from setwright.dose.resolved import ResolvedPlan
from setwright.model.exercise import Exercise
from setwright.model.programme import Programme
from setwright.model.sign_off import NO_DIGEST, SignOff
from setwright.review.first_form import first_digest_of, sentence
from setwright.review.parts import PARTS, Part, digest_of
from setwright.review.signed import signed, text_of
from setwright.review.words import digest_of_words, words_about

Status = Literal["reviewed", "changed", "changed-back", "unreviewed"]
"""``changed-back``: the newest sign-off does not fit, and an older one does. Nobody said that the newer is void."""

DOSAGE: Final = "dosage"
WORDS: Final = "words"

GRAVE: Final = frozenset({"limits", "cautions"})
"""Parts that hold what must not be published without their reviewer: limits, whom it is not for, cautions, when to
stop."""


@dataclass(frozen=True, slots=True)
class Review:
    """One exercise before its reviewer.

    ``sign_off`` is the newest, which alone counts: a newer one may be stricter on purpose. ``changed`` names the parts
    that are not as that one saw them; ``digests`` hold every part as it is now, the dosage as it would be signed.
    ``words_seen`` says whether it saw what sessions and warm-ups say of the exercise in words and kit of their own.
    """

    exercise: str
    status: Status
    digests: Mapping[str, str]
    dosage: Dosage
    words_seen: bool
    sign_off: SignOff | None = None
    index: int = -1
    changed: tuple[str, ...] = ()
    earlier: tuple[SignOff, ...] = ()

    @property
    def grave(self) -> bool:
        """Whether limits, cautions or whom it is not for changed since the sign-off."""
        return not GRAVE.isdisjoint(self.changed)


def reviews(programme: Programme, plans: Sequence[ResolvedPlan]) -> dict[str, Review]:
    """Return where every exercise stands, by id."""
    signed: dict[str, list[tuple[int, SignOff]]] = {}
    for index, sign_off in enumerate(programme.sign_offs):
        signed.setdefault(sign_off.exercise, []).append((index, sign_off))
    in_use, words = dosages(programme, plans), words_about(programme)
    return {
        ident: _review(ident, exercise, in_use[ident], digest_of_words(words.get(ident, ())), signed.get(ident, []))
        for ident, exercise in programme.exercises.items()
    }


def digests_of(exercise: Exercise, dosage: Dosage, words: str = NO_DIGEST) -> dict[str, str]:
    """Return the digest of every part and of the words elsewhere, and the doses in use, as a sign-off keeps them."""
    return {**{part: digest_of(exercise, part) for part in PARTS}, WORDS: words, DOSAGE: text_of(signed(dosage))}


def _changed(sign_off: SignOff, exercise: Exercise, dosage: Dosage, now: Mapping[str, str]) -> tuple[str, ...]:
    """Return the parts that are not as a sign-off saw them, in the order of a page; ``now`` are their digests.

    A sign-off from before words were signed stays as good as it was.
    """
    changed: list[str] = [part for part in PARTS if not fits(sign_off, exercise, part, now[part])]
    if sign_off.words not in (None, now[WORDS]):
        changed.append(WORDS)
    same = sign_off.dosage == sentence(dosage) if sign_off.doses is None else sign_off.doses == signed(dosage)
    return tuple(changed if same else [*changed, DOSAGE])


def fits(sign_off: SignOff, exercise: Exercise, part: Part, now: str | None = None) -> bool:
    """Say whether a part is as a sign-off saw it, whichever form that has; ``now`` is its digest, where it is known."""
    saw: str | None = getattr(sign_off, part)
    return saw == (now or digest_of(exercise, part)) or saw == first_digest_of(exercise, part)


def _review(ident: str, exercise: Exercise, dosage: Dosage, words: str, signed: list[tuple[int, SignOff]]) -> Review:
    now = digests_of(exercise, dosage, words)
    # The newest by date; of two on one day, the one that stands lower in the file, where signing again writes it.
    ranked = sorted(signed, key=lambda one: (one[1].date, one[0]))
    if not ranked:
        return Review(ident, "unreviewed", now, dosage, words_seen=words == NO_DIGEST)
    index, newest = ranked[-1]
    changed = _changed(newest, exercise, dosage, now)
    older = tuple(sign_off for _, sign_off in reversed(ranked[:-1]))
    back = any(not _changed(one, exercise, dosage, now) for one in older)
    status: Status = "reviewed" if not changed else "changed-back" if back else "changed"
    seen = words in (NO_DIGEST, newest.words)
    return Review(ident, status, now, dosage, seen, newest, index, changed, older)
