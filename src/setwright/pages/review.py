"""The physiotherapist's page: where every exercise stands, what it is limited to, how it is dosed, and what changed."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from setwright.checks.registry import Accepted
from setwright.model.exercise import Exercise, Limits
from setwright.model.sign_off import SignedDosage, SignOff
from setwright.model.units import plain_number
from setwright.outline.addresses import REVIEW
from setwright.outline.site import Site
from setwright.pages.page import Page
from setwright.review.compare import ORDER, weeks_in_words
from setwright.review.difference import Row, rows
from setwright.review.parts import PART_NAMES, Line, lines_of
from setwright.review.signed import as_dosage
from setwright.review.status import DOSAGE, STATUS_WORDS, Review
from setwright.wording import dosage as dosage_words
from setwright.wording.words import load_in_words, seconds


@dataclass(frozen=True)
class Changed:
    """One part that changed since the sign-off; ``kept`` says whether the old one is known."""

    part: str
    name: str
    rows: tuple[Row, ...]
    kept: bool


@dataclass(frozen=True)
class Entry:
    """One exercise of the page. ``doses`` are plan names and ranges in words, ``accepted`` the coach's own reasons."""

    ident: str
    exercise: Exercise
    review: Review
    limits: tuple[tuple[str, str], ...]
    doses: tuple[tuple[str, str], ...]
    changed: tuple[Changed, ...]
    accepted: tuple[Accepted, ...]


def pages(site: Site) -> Iterator[Page]:
    """Yield the page."""
    entries = entries_of(site)
    counts = {status: sum(e.review.status == status for e in entries) for status in STATUS_WORDS}
    yield Page(
        path=REVIEW,
        title="Review",
        description="For the physiotherapist: every exercise with its limits, doses and sign-off.",
        template="review.md.jinja",
        context={
            "entries": entries,
            "counts": counts,
            "status_words": STATUS_WORDS,
            "part_names": PART_NAMES,
            "elsewhere": [one for one in site.accepted if _exercise_of(one) is None],
            "stops": site.programme.club.unreviewed_exercises == "stop publishing",
        },
        kind="review",
    )


def entries_of(site: Site) -> list[Entry]:
    """Return every exercise, what is due first: changed, not reviewed, reviewed, each by name."""
    order = {"changed": 0, "unreviewed": 1, "reviewed": 2}
    accepted: dict[str, list[Accepted]] = {}
    for one in site.accepted:
        accepted.setdefault(_exercise_of(one) or "", []).append(one)
    entries = [
        Entry(
            ident,
            exercise,
            site.reviews[ident],
            limits_in_words(exercise.limits),
            tuple(_doses(site, site.reviews[ident])),
            changed_parts(exercise, site.reviews[ident], site.seen.get(ident, {})),
            tuple(accepted.get(ident, ())),
        )
        for ident, exercise in site.programme.exercises.items()
    ]
    return sorted(entries, key=lambda e: (order[e.review.status], e.exercise.name))


def limits_in_words(limits: Limits | None) -> tuple[tuple[str, str], ...]:
    """Return what an exercise is limited to, as label and words; nothing where it has no limits."""
    if limits is None:
        return ()
    words = {
        "Load": load_in_words(limits.load) if limits.load is not None else "",
        "Reps": f"{limits.reps} a set" if limits.reps is not None else "",
        "Hold": seconds(limits.hold) if limits.hold is not None else "",
        "Sets": f"{limits.weekly_sets} a week" if limits.weekly_sets is not None else "",
        "Step of the load": f"{plain_number(limits.weekly_step)} % a week" if limits.weekly_step is not None else "",
        "Earliest": f"phase {limits.earliest_phase} of a plan" if limits.earliest_phase is not None else "",
    }
    return tuple((label, said) for label, said in words.items() if said)


def changed_parts(exercise: Exercise, review: Review, seen: Mapping[str, tuple[Line, ...]]) -> tuple[Changed, ...]:
    """Return what changed since the sign-off, limits first, old beside new where the old one is known."""
    if review.sign_off is None:
        return ()
    found = []
    if DOSAGE in review.changed:
        old = (Line("in use", _signed_doses(review.sign_off), "in use"),)
        new = (Line("in use", dosage_words.in_words(review.dosage), "in use"),)
        found.append(Changed(DOSAGE, PART_NAMES[DOSAGE], rows(old, new), kept=True))
    for part in ORDER:
        if part in review.changed:
            now = lines_of(exercise, part)
            # A part that was not there when it was signed needs no history.
            was = () if getattr(review.sign_off, part) == "none" else seen.get(part)
            found.append(Changed(part, PART_NAMES[part], rows(was or (), now), kept=was is not None))
    return tuple(found)


def _signed_doses(sign_off: SignOff) -> str:
    return sign_off.dosage or dosage_words.in_words(as_dosage(sign_off.doses or SignedDosage()))


def _doses(site: Site, review: Review) -> Iterator[tuple[str, str]]:
    names = {plan.ident: plan.plan.name for plan in site.plans}
    for plan, dosage in review.dosage.by_plan.items():
        yield f"{names[plan]}, {weeks_in_words(dosage.weeks)}", dosage_words.in_words(dosage)
    if review.dosage.in_routines:
        yield "Warm-ups and cool-downs", dosage_words.in_routines(review.dosage)


def _exercise_of(one: Accepted) -> str | None:
    """Return the exercise that an accepted warning stands at, or None for one in another kind of file."""
    _, _, below = one.finding.position.file.rpartition("exercises/")
    return below.removesuffix(".yml") if "exercises/" in one.finding.position.file else None
