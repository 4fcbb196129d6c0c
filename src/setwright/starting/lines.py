"""The rows of a coach's table as lines: an exercise of one week each, its values as the programme writes them."""

import re
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final

from setwright.errors import ProjectError
from setwright.model.exercise import Exercise
from setwright.source.suggest import closest
from setwright.starting import cells
from setwright.starting.heads import Heads, heads_of, letter
from setwright.starting.table import Table
from setwright.starting.trend import Written

_LIKE: Final = 0.85


@dataclass(frozen=True)
class Unread:
    """A cell that was not used, and why."""

    cell: str
    text: str
    why: str


@dataclass
class Line:
    """One row's exercise in one week, its values as the programme writes them."""

    week: int
    session: str
    block: str
    exercise: str
    row: int
    values: dict[str, Written] = field(default_factory=dict)
    what: str = "reps"
    note: str = ""


class Reader:
    """Reads a table, and keeps what it assumed and what it could not read."""

    def __init__(self, table: Table, exercises: Mapping[str, Exercise]) -> None:
        self.table, self.exercises = table, exercises
        self.names = {_key(one.name): ident for ident, one in exercises.items()}
        self.names |= {_key(ident): ident for ident in exercises}
        self.assumed: list[str] = list(table.remarks)
        self.unread: list[Unread] = []
        found = heads_of(table.rows, lambda text: _key(text) in self.names)
        if found is None:
            raise ProjectError(
                "no column says what it holds: give one the head 'Exercise' and one 'Sets x reps' or 'Reps'"
            )
        self.heads: Heads = found
        self.assumed += found.remarks

    def reasons(self) -> str:
        """Return the first cells that could not be read, in a line."""
        return (
            "; ".join(f"{one.cell} {one.text!r}: {one.why}" for one in self.unread[:5]) or "it is empty below its heads"
        )

    def lines(self) -> Iterator[Line]:
        """Yield every exercise of every week, in the table's order."""
        week, session, block = 1, "", ""
        for number, row in enumerate(self.table.rows[self.heads.below :], self.heads.below + 1):
            alone = [text for text in row if text]
            if len(alone) == 1 or len(set(alone)) == 1:
                week, session = self._title(alone[0], week, session)
                continue
            if found := self._week(row, number):
                week = found
            said = [self._one(row, kind) for kind in ("session", "day")]
            if any(said):
                session, block = " ".join(dict.fromkeys(text for text in said if text)), ""
            block = self._one(row, "block") or block
            yield from self._row(row, number, week, session, block)

    def _title(self, text: str, week: int, session: str) -> tuple[int, str]:
        """Return the week and session after a row with a single text: a title such as 'Week 2' or 'Day A'."""
        if match := re.fullmatch(r"(?:week|wk)\s*(\d{1,3})\b.*", text.casefold()):
            return int(match[1]), session
        return week, text

    def _one(self, row: Sequence[str], kind: str) -> str:
        return next((row[place] for place in self.heads.places(kind) if place < len(row) and row[place]), "")

    def _week(self, row: Sequence[str], number: int) -> int | None:
        text = self._one(row, "week")
        if match := re.fullmatch(r"(?:week|wk|w)?\s*(\d{1,3})", text.casefold()):
            return int(match[1])
        if text:
            self.skip(number, self.heads.places("week")[0], text, "no number of a week")
        return None

    def skip(self, number: int, place: int, text: str, why: str) -> None:
        """Note a cell, by its row (from 1) and its column (from 0), that is not used."""
        self.unread.append(Unread(f"{letter(place)}{number}", text, why))

    def _row(self, row: Sequence[str], number: int, week: int, session: str, block: str) -> Iterator[Line]:
        place = self.heads.places("exercise")[0]
        name = row[place] if place < len(row) else ""
        exercise = self._exercise(name, number, place)
        if exercise is None:
            return
        read = set(self.heads.columns)
        for other, text in enumerate(row):
            if text and other not in read:
                self.skip(number, other, text, "its column has no head that is known")
        weekly = [at for at, column in self.heads.columns.items() if column.week is not None]
        shared: dict[str, Written] = {}
        for kind in ("sets", "load", "effort", "rest", "tempo"):
            for at in self.heads.places(kind):
                text = row[at] if at < len(row) else ""
                self._take(shared, kind, text, number, at)
        note = " ".join(row[at] for at in self.heads.places("note") if at < len(row) and row[at])
        for at in weekly or [*self.heads.places("dose"), *self.heads.places("amount")][:1]:
            text = row[at] if at < len(row) else ""
            if not text:
                continue
            line = Line(self.heads.columns[at].week or week, session, block, exercise, number, dict(shared), note=note)
            if self._dose(line, text, number, at):
                yield line

    def _exercise(self, name: str, number: int, place: int) -> str | None:
        if not name:
            return None
        key = _key(name)
        if key in self.names:
            return self.names[key]
        near = closest(key, self.names, _LIKE)
        if near is None:
            why = (
                "no movement has this name: write exercises/" + as_id(name) + ".yml first, or use a name that is known"
            )
            self.skip(number, place, name, why)
            return None
        self._assume(f"'{name}' is taken as '{self.exercises[self.names[near]].name}'")
        return self.names[near]

    def _take(self, values: dict[str, Written], kind: str, text: str, number: int, at: int) -> None:
        """Read a cell of a kind into the values of a line, or note why not."""
        if not text:
            return
        unit = self.heads.columns[at].unit
        found: Written | None
        match kind:
            case "sets":
                found = text if re.fullmatch(r"[1-9]\d?", text) else None
            case "load":
                found = cells.load(text, unit)
            case "effort":
                found = cells.load(text, unit or "rpe")
            case "rest":
                found = cells.times(text, unit)
            case _:
                found = cells.tempo(text)
        if kind == "effort":
            kind = "feels_like" if found and values.get("load", cells.NONE) != cells.NONE else "load"
        if found is None:
            hint = (
                "of what? write the unit into the cell or the head"
                if re.fullmatch(r"[\d.,]+ ?%?", text)
                else "it is not read"
            )
            self.skip(number, at, text, f"as {'an effort' if kind == 'feels_like' else kind}: {hint}")
        else:
            values[kind] = found

    def _dose(self, line: Line, text: str, number: int, at: int) -> bool:
        sets, amount, load = cells.split_dose(text)
        found = cells.amount(amount, self.heads.columns[at].unit)
        if found is None:
            self.skip(number, at, text, "as a dose: it is not read, and this exercise is left out here")
            return False
        if load:
            self._take(line.values, "load", load, number, at)
        if sets:
            line.values["sets"] = sets
        if "sets" not in line.values:
            if isinstance(found.written, list):
                line.values["sets"] = str(len(found.written))
            else:
                self.skip(number, at, text, "how many sets? this exercise is left out here")
                return False
        line.what = self._measure(line.exercise, found.what)
        line.values["amount"] = self._in_all(line.exercise, found) if found.each else found.written
        return True

    def _in_all(self, ident: str, found: cells.Amount) -> Written:
        """Return an amount that the table gives a side, as this movement counts: of both where they take turns."""
        exercise = self.exercises[ident]
        if exercise.sides == "one at a time":
            return found.written
        if exercise.sides == "alternating" and isinstance(found.written, str) and found.written.isdigit():
            both = str(2 * int(found.written))
            self._assume(f"'{exercise.name}' counts both sides: {found.written} each side is {both} in all")
            return both
        self._assume(f"'{exercise.name}' is not done a side at a time here: 'each side' was left out")
        return found.written

    def _assume(self, remark: str) -> None:
        """Note what was assumed, once."""
        if remark not in self.assumed:
            self.assumed.append(remark)

    def _measure(self, ident: str, what: str) -> str:
        """Return reps, distance, and for a time whether it is held or worked: a movement that stands still is held."""
        if what != "time":
            return what
        figure = self.exercises[ident].figure
        return "hold" if figure is not None and len(figure.poses) == 1 else "work"


def _key(name: str) -> str:
    """Return a name as it is compared: small letters and digits alone."""
    return re.sub(r"[^a-z0-9]+", " ", unicodedata.normalize("NFKD", name).casefold()).strip()


def as_id(text: str) -> str:
    """Return a text as an id: small letters, digits and hyphens."""
    return re.sub(r"[^a-z0-9]+", "-", _key(text)).strip("-")[:40]
