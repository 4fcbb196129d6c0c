"""The physiotherapist's page: where every exercise stands, what it is limited to, how it is dosed, and what changed."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from setwright.checks.registry import Accepted
from setwright.model.exercise import Exercise
from setwright.model.sign_off import SignedDosage, SignOff
from setwright.outline.addresses import REVIEW
from setwright.outline.site import Site
from setwright.pages.page import Page
from setwright.review.compare import ORDER
from setwright.review.difference import Row, rows
from setwright.review.parts import Line, lines_of
from setwright.review.signed import as_dosage
from setwright.review.status import DOSAGE, WORDS, Review
from setwright.wording import dosage as dosage_words
from setwright.wording.keys import line_name
from setwright.wording.language import Language
from setwright.wording.limits import LimitWords, limits_set
from setwright.wording.reviews import STATUS_WORDS, said_what, said_where, status
from setwright.wording.times import weeks_in_words


@dataclass(frozen=True)
class Changed:
    """One part that changed since the sign-off; ``kept`` says whether the old one is known."""

    part: str
    rows: tuple[Row, ...]
    kept: bool


@dataclass(frozen=True)
class Entry:
    """One exercise of the page.

    ``doses`` are plan names and ranges in words, ``words`` what sessions and warm-ups say of it, ``accepted`` the
    coach's own reasons.
    """

    ident: str
    exercise: Exercise
    review: Review
    limits: tuple[LimitWords, ...]
    doses: tuple[tuple[str, str], ...]
    words: tuple[Line, ...]
    changed: tuple[Changed, ...]
    accepted: tuple[Accepted, ...]


def pages(site: Site) -> Iterator[Page]:
    """Yield the page."""
    say = site.language.say
    entries = entries_of(site)
    counts = {one: sum(e.review.status == one for e in entries) for one in STATUS_WORDS}
    yield Page(
        path=REVIEW,
        title=say("Review"),
        description=say("For the physiotherapist: every exercise with its limits, doses and sign-off."),
        template="review.md.jinja",
        context={
            "entries": entries,
            "counts": counts,
            "said_where": said_where,
            "status_words": {one: status(site.language, one) for one in STATUS_WORDS},
            "elsewhere": [one for one in site.accepted if one.exercise is None],
            "stops": site.programme.club.unreviewed_exercises == "stop publishing",
            "limits_stop": site.programme.club.changed_limits == "stop publishing",
        },
        kind="review",
    )


def entries_of(site: Site) -> list[Entry]:
    """Return every exercise, what is due first: changed back, changed, not reviewed, reviewed, each by name."""
    order = {"changed-back": 0, "changed": 1, "unreviewed": 2, "reviewed": 3}
    accepted: dict[str, list[Accepted]] = {}
    for one in site.accepted:
        accepted.setdefault(one.exercise or "", []).append(one)
    entries = [
        Entry(
            ident,
            exercise,
            site.reviews[ident],
            limits_set(site.language, exercise.limits),
            tuple(_doses(site, site.reviews[ident])),
            _said_elsewhere(site, ident),
            changed_parts(
                site.language,
                exercise,
                site.reviews[ident],
                site.seen.get(ident, {}),
                _said_elsewhere(site, ident),
            ),
            tuple(accepted.get(ident, ())),
        )
        for ident, exercise in site.programme.exercises.items()
    ]
    return sorted(entries, key=lambda e: (order[e.review.status], e.exercise.name))


def changed_parts(
    language: Language,
    exercise: Exercise,
    review: Review,
    seen: Mapping[str, tuple[Line, ...]],
    words: tuple[Line, ...] = (),
) -> tuple[Changed, ...]:
    """Return what changed since the sign-off, limits first, old beside new where the old one is known.

    Args:
        language: the language to say it in.
        exercise: the exercise as it is now.
        review: where it stands.
        seen: by part, what the reviewer saw.
        words: what sessions and warm-ups say of it now.
    """
    if review.sign_off is None:
        return ()
    found = []
    if DOSAGE in review.changed:
        label = language.say("in use")
        old = (Line(label, _signed_doses(language, review.sign_off), label),)
        new = (Line(label, dosage_words.in_words(language, review.dosage), label),)
        found.append(Changed(DOSAGE, rows(old, new), kept=True))
    for part in ORDER:
        if part in review.changed:
            now = _named(language, lines_of(exercise, part))
            # A part that was not there when it was signed needs no history.
            was = () if getattr(review.sign_off, part) == "none" else seen.get(part)
            found.append(Changed(part, rows(_named(language, was or ()), now), kept=was is not None))
    if WORDS in review.changed:
        found.append(Changed(WORDS, rows((), words), kept=review.sign_off.words == "none"))
    return tuple(found)


def _said_elsewhere(site: Site, ident: str) -> tuple[Line, ...]:
    """Return what sessions, routines and plans say of an exercise, as a reviewer reads it."""
    said = site.words_about.get(ident, ())
    return tuple(replace(line, text=said_what(site.language, line.text, line.field)) for line in said)


def _named(language: Language, lines: Iterable[Line]) -> tuple[Line, ...]:
    """Return lines under the names that a reviewer reads."""
    return tuple(replace(line, key=line_name(language, line.key, line.field)) for line in lines)


def _signed_doses(language: Language, sign_off: SignOff) -> str:
    return sign_off.dosage or dosage_words.in_words(language, as_dosage(sign_off.doses or SignedDosage()))


def _doses(site: Site, review: Review) -> Iterator[tuple[str, str]]:
    names = {plan.ident: plan.plan.name for plan in site.plans}
    for plan, dosage in review.dosage.by_plan.items():
        yield (
            f"{names[plan]}, {weeks_in_words(site.language, dosage.weeks)}",
            dosage_words.in_plan(site.language, dosage),
        )
    if review.dosage.in_routines:
        yield site.language.say("Warm-ups and cool-downs"), dosage_words.in_routines(site.language, review.dosage)
