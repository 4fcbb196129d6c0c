"""A comparison as text for a terminal and as Markdown for a pull request."""

from collections.abc import Iterator

from setwright.review.compare import Comparison, DoseChange, ExerciseChange, TextChange
from setwright.wording.language import ENGLISH
from setwright.wording.times import weeks_in_words

NOTHING = (
    "No difference in the doses of any week, in the texts and limits of any exercise, and in notes, kit, warm-ups, "
    "plans and the club's notices. Sign-offs and accepted warnings are not compared."
)


def as_text(change: Comparison) -> str:
    """Return a comparison as plain lines, most important first: limits and texts, then doses, then days."""
    if change.is_empty:
        return NOTHING + "\n"
    return "\n".join(_text(change)) + "\n"


def summary(change: Comparison) -> str:
    """Return one sentence on how much changed."""
    doses = sum(len(session.doses) for session in change.sessions)
    limits = sum(any(part.part == "limits" for part in exercise.parts) for exercise in change.exercises)
    beside = sum(max(1, len(text.rows)) for text in change.texts)
    return (
        f"{_count(len(change.exercises), 'exercise')}, {limits} of them in the limits; {_count(doses, 'dose')}; "
        f"{_count(len(change.days), 'training day')}; {_count(beside, 'line')} beside them."
    )


def _count(number: int, noun: str) -> str:
    return f"{number} {noun} changed" if number == 1 else f"{number} {noun}s changed"


def _text(change: Comparison) -> Iterator[str]:
    yield summary(change)
    for _, said in change.plans:
        yield f"  {said}"
    for exercise in change.exercises:
        yield ""
        yield f"{exercise.name} ({exercise.ident})" + ("" if exercise.way == "changed" else f": {exercise.way}")
        for part in exercise.parts:
            for row in part.rows:
                yield f"  {part.label(row)}"
                yield from (f"    - {row.old_text}" for _ in row.old[:1])
                yield from (f"    + {row.new_text}" for _ in row.new[:1])
    for text in change.texts:
        yield ""
        yield text.what + ("" if text.way == "changed" else f": {text.way}")
        for row in text.rows:
            yield f"  {row.label}"
            yield from (f"    - {row.old_text}" for _ in row.old[:1])
            yield from (f"    + {row.new_text}" for _ in row.new[:1])
    for session in change.sessions:
        yield ""
        yield f"{session.plan}, {session.session}"
        for dose in session.doses:
            yield f"  {change.names.get(dose.exercise, dose.exercise)}, {weeks_in_words(ENGLISH, dose.weeks)}"
            yield f"    - {dose.old or 'not in the session'}"
            yield f"    + {dose.new or 'not in the session'}"
        for was, now, weeks in session.times:
            yield f"  takes {now} instead of {was}, {weeks_in_words(ENGLISH, weeks)}"
    for day in change.days:
        yield f"{day.plan}, week {day.week}, {day.day}: {day.new} instead of {day.old}"


def as_markdown(change: Comparison) -> str:
    """Return a comparison as Markdown tables, for the page of a pull request."""
    if change.is_empty:
        return NOTHING + "\n"
    return "\n".join(_markdown(change)) + "\n"


def _markdown(change: Comparison) -> Iterator[str]:
    yield "## What this does to members"
    yield ""
    yield summary(change)
    yield ""
    yield from (f"- {_cell(said)}" for _, said in change.plans)
    for exercise in change.exercises:
        yield from _exercise_table(exercise)
    for text in change.texts:
        yield from _text_table(text)
    for session in change.sessions:
        yield f"### {_cell(session.session)} in {_cell(session.plan)}"
        yield ""
        yield "| Exercise | Weeks | Before | Now |"
        yield "| --- | --- | --- | --- |"
        for dose in session.doses:
            yield _dose_row(dose, change.names.get(dose.exercise, dose.exercise))
        for was, now, weeks in session.times:
            yield f"| *Time* | {weeks_in_words(ENGLISH, weeks)} | {_cell(was)} | {_cell(now)} |"
        yield ""
    if change.days:
        yield "### Training days"
        yield ""
        yield "| Plan | Week | Day | Before | Now |"
        yield "| --- | --- | --- | --- | --- |"
        for day in change.days:
            cells = (day.plan, str(day.week), day.day, day.old, day.new)
            yield f"| {' | '.join(map(_cell, cells))} |"
        yield ""


def _dose_row(dose: DoseChange, name: str) -> str:
    old, new = dose.old or "not in the session", dose.new or "not in the session"
    return f"| {_cell(name)} | {weeks_in_words(ENGLISH, dose.weeks)} | {_cell(old)} | {_cell(new)} |"


def _exercise_table(exercise: ExerciseChange) -> Iterator[str]:
    way = "" if exercise.way == "changed" else f" ({exercise.way})"
    yield f"### {_cell(exercise.name)}{way}"
    yield ""
    if exercise.parts:
        yield "| Part | Before | Now |"
        yield "| --- | --- | --- |"
        for part in exercise.parts:
            for row in part.rows:
                yield f"| {_cell(part.label(row))} | {_cell(row.old_text)} | {_cell(row.new_text)} |"
        yield ""


def _text_table(text: TextChange) -> Iterator[str]:
    way = "" if text.way == "changed" else f" ({text.way})"
    yield f"### {_cell(text.what[:1].upper() + text.what[1:])}{way}"
    yield ""
    if text.rows:
        yield "| Line | Before | Now |"
        yield "| --- | --- | --- |"
        for row in text.rows:
            yield f"| {_cell(row.label)} | {_cell(row.old_text)} | {_cell(row.new_text)} |"
        yield ""


def _cell(text: str) -> str:
    """Return text for a cell of a table, with every sign escaped that Markdown or HTML might read."""
    kept = "".join(f"\\{sign}" if sign in "\\`*_{}[]<>()#+!|~" else sign for sign in text)
    return " ".join(kept.split()) or " "
