"""Which column of a table holds what: by its head, or by what stands in it where there are no heads."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

from setwright.starting.cells import looks_like_a_dose

_HEADS: Final[Mapping[str, str]] = {
    "week": r"weeks?|wks?|w",
    "day": r"days?|weekday",
    "session": r"sessions?|workouts?|training",
    "block": r"blocks?|groups?|supersets?|order|no|nr",
    "exercise": r"exercises?|movements?|drills?|lifts?",
    "sets": r"sets?|rounds?",
    "amount": r"reps?|repetitions?|time|duration|distance|hold|amount|reps? time|reps? or time",
    "dose": r"sets?( x | by | )reps?|dose|dosage|prescription|volume",
    "load": r"loads?|weights?|intensity|resistance|percent 1rm|1rm|of 1rm",
    "effort": r"rpe|effort|rir|reps? in reserve",
    "rest": r"rests?|recovery|pause|rest between sets",
    "tempo": r"tempo|pace",
    "note": r"notes?|comments?|remarks?|cues?|coaching",
}
"""What coaches write over their columns (common practice, no source)."""
_WEEK: Final = re.compile(r"(?:week|wk|w) ?(\d{1,3})")
_SEARCHED: Final = 15
"""Rows among which the heads are looked for."""


@dataclass(frozen=True)
class Column:
    """A column that was understood, the unit that its head gives, and whose week it is."""

    kind: str
    unit: str = ""
    week: int | None = None


@dataclass(frozen=True)
class Heads:
    """The understood columns by place (from 0), the first row below the heads, and what was assumed."""

    columns: Mapping[int, Column]
    below: int
    remarks: tuple[str, ...] = ()

    def places(self, kind: str) -> list[int]:
        """Return the places of the columns of a kind."""
        return [place for place, column in self.columns.items() if column.kind == kind]


def head(text: str) -> Column | None:
    """Return what a head says of its column, or nothing for a head that is not known."""
    words, unit = text.casefold(), ""
    if match := re.search(
        r"[\[(]\s*(kgs?|lbs?|pounds|s|secs?|seconds|mins?|minutes|m|metres|%( of)? ?1rm|%)\s*[\])]", words
    ):
        unit, words = _UNITS.get(match[1].replace(" ", ""), match[1]), words.replace(match[0], " ")
    if "1rm" in words:
        unit = unit if unit not in ("", "%") else "% 1RM"
    words = words.replace("%", " percent ").replace("×", " x ").replace("*", " x ").replace("/", " ")
    words = " ".join(re.sub(r"[^a-z0-9 ]+", " ", words).split())
    for suffix in ("kg", "lb", "lbs"):
        if words.endswith(f" {suffix}"):
            unit, words = suffix.rstrip("s"), words.removesuffix(f" {suffix}")
    if match := _WEEK.fullmatch(words):
        return Column("dose", unit, int(match[1]))
    kind = next((kind for kind, pattern in _HEADS.items() if re.fullmatch(pattern, words)), None)
    if words in ("rir", "reps in reserve"):
        unit = "in reserve"
    return Column(kind, unit) if kind else None


_UNITS: Final = {
    "kgs": "kg", "lbs": "lb", "pounds": "lb", "sec": "s", "secs": "s", "seconds": "s", "mins": "min", "minutes": "min",
    "metres": "m", "%1rm": "% 1RM", "%of1rm": "% 1RM",
}  # fmt: skip


def heads_of(rows: tuple[tuple[str, ...], ...], is_movement: Callable[[str], bool]) -> Heads | None:
    """Return which column holds what; nothing where neither heads nor contents say where exercises and doses stand.

    Args:
        rows: the table.
        is_movement: whether a text is the name of a known movement, for tables without heads.
    """
    best: Heads | None = None
    for number, row in enumerate(rows[:_SEARCHED]):
        columns: dict[int, Column] = {}
        for place, text in enumerate(row):
            column = head(text) if text else None
            if column and (
                column.kind == "note" or column.week or column.kind not in [c.kind for c in columns.values()]
            ):
                columns[place] = column
        found = Heads(columns, number + 1)
        whole = found.places("exercise") and (found.places("dose") or found.places("amount"))
        if whole and (best is None or len(columns) > len(best.columns)):
            best = found
    return best or _by_contents(rows, is_movement)


def _by_contents(rows: tuple[tuple[str, ...], ...], is_movement: Callable[[str], bool]) -> Heads | None:
    width = max(map(len, rows), default=0)
    columns = [[row[place] for row in rows if place < len(row) and row[place]] for place in range(width)]
    names = [sum(map(is_movement, cells)) for cells in columns]
    doses = [sum(map(looks_like_a_dose, cells)) for cells in columns]
    if not columns or max(names) < 2 or max(doses) < 2:
        return None
    exercise, dose = names.index(max(names)), doses.index(max(doses))
    if exercise == dose:
        return None
    remark = (
        f"there are no heads: column {letter(exercise)} was read as exercises ({max(names)} names are known) and "
        f"column {letter(dose)} as sets and repetitions; nothing else was read"
    )
    return Heads({exercise: Column("exercise"), dose: Column("dose")}, 0, (remark,))


def letter(place: int) -> str:
    """Return how spreadsheets call a column: A for 0, AA for 26."""
    before, last = divmod(place, 26)
    return (letter(before - 1) if before else "") + chr(65 + last)
