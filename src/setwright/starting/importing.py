"""A coach's table as a plan and its sessions: what was understood, what was assumed, and what could not be read."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from itertools import groupby
from typing import Any, Final, get_args

import yaml

from setwright.errors import ProjectError
from setwright.model.exercise import Exercise
from setwright.model.vocabulary import Weekday
from setwright.starting import cells
from setwright.starting.lines import Line, Reader, Unread, as_id
from setwright.starting.table import Table
from setwright.starting.trend import double, trend

_DAYS: Final[tuple[str, ...]] = get_args(Weekday)
_SPREAD: Final = ("monday", "wednesday", "friday", "saturday", "tuesday", "thursday", "sunday")
"""Where sessions without a weekday are put, in order (common practice, no source)."""
_MOST_IN_A_BLOCK: Final = 12
_FIELDS: Final = ("sets", "amount", "load", "rest", "tempo")


@dataclass(frozen=True)
class Imported:
    """What a table holds.

    ``files`` are the programme's new files by relative path. ``movements`` are exercises of the library that the club
    has not. ``understood``, ``assumed`` and ``unread`` are for the coach to look at before anything is written.
    """

    files: Mapping[str, str]
    movements: tuple[str, ...]
    understood: tuple[str, ...]
    assumed: tuple[str, ...]
    unread: tuple[Unread, ...]


def imported(
    table: Table, ident: str, starts: date, own: Mapping[str, Exercise], library: Mapping[str, Exercise]
) -> Imported:
    """Read a table as a plan.

    Args:
        table: its rows.
        ident: the id of the plan.
        starts: its first day.
        own: the club's exercises.
        library: those that come with the tool.

    Raises:
        ProjectError: where nothing says which column holds exercises and doses, or no exercise is known.
    """
    reader = Reader(table, {**library, **own})
    lines = list(reader.lines())
    if not lines:
        raise ProjectError("no row of this table names a known exercise with a dose: " + reader.reasons())
    plan = _Plan(lines, reader, ident, starts)
    files = plan.files()
    movements = tuple(sorted({line.exercise for line in lines} - set(own)))
    return Imported(files, movements, tuple(plan.understood), tuple(reader.assumed), tuple(reader.unread))


class _Plan:
    """Lines as sessions: weeks with the same exercises are one session that progresses, and a phase."""

    def __init__(self, lines: list[Line], reader: Reader, ident: str, starts: date) -> None:
        self.reader, self.ident, self.starts = reader, ident, starts
        self.understood: list[str] = []
        first = min(line.week for line in lines)
        if first > 1:
            reader.assumed.append(f"the table begins with week {first}: it is week 1 of the plan")
        self.weeks = max(line.week for line in lines) - first + 1
        self.by: dict[str, dict[int, list[Line]]] = {}
        for line in lines:
            self.by.setdefault(line.session, {}).setdefault(line.week - first + 1, []).append(line)

    def runs(self, label: str) -> list[tuple[int, int, bool]]:
        """Return stretches of weeks, first and last, with the same exercises, and whether there are any."""
        marks = [
            tuple((ln.block, ln.exercise, ln.what) for ln in self.by[label].get(week, ())) for week in self.numbers
        ]
        found, week = [], 1
        for mark, same in groupby(marks):
            count = len(list(same))
            found.append((week, week + count - 1, bool(mark)))
            week += count
        return found

    @property
    def numbers(self) -> range:
        return range(1, self.weeks + 1)

    def files(self) -> dict[str, str]:
        """Return the plan and its sessions."""
        days = self.days()
        named: dict[tuple[str, int], str] = {}
        made: dict[str, str] = {}
        edges = {1}
        for label in self.by:
            count = 0
            for first, last, trained in self.runs(label):
                edges.add(first)
                if not trained:
                    continue
                count += 1
                ident = f"{self.ident}-{as_id(label) or 'session'}" + (f"-{count}" if count > 1 else "")
                named |= {(label, week): ident for week in range(first, last + 1)}
                weeks = [self.by[label][week] for week in range(first, last + 1)]
                made[f"sessions/{ident}.yml"] = _yaml("session", self.session(label or "Session", weeks))
        phases = []
        starts = sorted(edges)
        for number, (first, after) in enumerate(zip(starts, [*starts[1:], self.weeks + 1], strict=True), 1):
            sessions = {days[label]: named[label, first] for label in self.by if (label, first) in named}
            if not sessions:
                raise ProjectError(
                    f"week {first} of this table has no exercise that could be read: a plan has no empty weeks"
                )
            aim = "Taken from a table: say here what these weeks are for."
            phases.append({"name": f"Part {number}", "aim": aim, "weeks": after - first, "sessions": sessions})
        plan = {
            "name": self.ident.replace("-", " ").capitalize(),
            "for": "Taken from a table: say here whom it is for.",
            "starts": self.starts.isoformat(),
            "phases": phases,
        }
        made[f"plans/{self.ident}.yml"] = _yaml("plan", plan)
        self.understood.insert(0, f"weeks: {self.weeks}, sessions: {len(made) - 1}, phases: {len(phases)}")
        return dict(sorted(made.items()))

    def days(self) -> dict[str, str]:
        """Return a weekday for each session: its own, where its name holds one."""
        short = {day: "|".join(day[:letters] for letters in (9, 5, 4, 3)) for day in _DAYS}
        found = {
            label: day for label in self.by for day in _DAYS if re.search(rf"\b(?:{short[day]})\b", label.casefold())
        }
        if any(found[label] in self.taken(label, found) for label in found):
            found = {}
        for label in self.by:
            if label in found:
                continue
            taken = self.taken(label, found)
            free = [day for day in _SPREAD if day not in taken]
            if not free:
                raise ProjectError(f"the table has more than {len(taken)} sessions a week: a week has seven days")
            found[label] = free[0]
            self.reader.assumed.append(f"'{label or 'the session'}' names no weekday: it is put on {free[0]}")
        return found

    def taken(self, label: str, days: Mapping[str, str]) -> set[str]:
        """Return the days of the sessions that are done in one of the weeks of another one."""
        return {days[other] for other in days if other != label and self.by[other].keys() & self.by[label].keys()}

    def session(self, label: str, weeks: list[list[Line]]) -> dict[str, Any]:
        """Return a session from its exercises in each of its weeks."""
        blocks = []
        rows = list(zip(*weeks, strict=True))
        for mark, group in groupby(rows, key=lambda row: _group(row[0].block)):
            members = list(group)
            together = bool(mark) and 1 < len(members) <= _MOST_IN_A_BLOCK
            rounds = {tuple(str(line.values["sets"]) for line in row) for row in members}
            if together and len(rounds) == 1:
                blocks.append(self.rounds(members))
                continue
            if together:
                names = ", ".join(row[0].exercise for row in members)
                self.reader.assumed.append(
                    f"{label}: {names} stand together and differ in sets: written one after the other"
                )
            for start in range(0, len(members), _MOST_IN_A_BLOCK):
                straight = [self.written(row, alone=True) for row in members[start : start + _MOST_IN_A_BLOCK]]
                blocks.append({"kind": "straight", "exercises": straight})
        self.understood.append(
            f"{label}, weeks {weeks[0][0].week} to {weeks[-1][0].week}: exercises: {len(rows)}, blocks: {len(blocks)}"
        )
        return {"name": label, "aim": "Taken from a table: say here what it is for.", "blocks": blocks}

    def rounds(self, members: list[tuple[Line, ...]]) -> dict[str, Any]:
        """Return exercises that are done in turn: a superset of two, a circuit of more."""
        block: dict[str, Any] = {"kind": "superset" if len(members) == 2 else "circuit"}
        progress = {}
        for key, named, row in (("sets", "rounds", members[0]), ("rest", "rest", members[-1])):
            values = [line.values[key] for line in row if key in line.values]
            if len(values) != len(row):
                continue
            block[named], climb = trend(values, key)
            if climb:
                progress[named] = climb
        block["exercises"] = [self.written(row, alone=False) for row in members]
        if progress:
            block["progress"] = progress
        return block

    def written(self, row: tuple[Line, ...], *, alone: bool) -> dict[str, Any]:
        """Return one exercise's prescription from its line in each week."""
        first = row[0]
        out: dict[str, Any] = {"exercise": first.exercise}
        progress: dict[str, Any] = {}
        values = {key: [line.values.get(key) for line in row] for key in (*_FIELDS, "feels_like")}
        for key in _FIELDS:
            given = [value for value in values[key] if value is not None]
            if not given or (not alone and key in ("sets", "rest")) or set(map(str, given)) == {cells.NONE}:
                continue
            if len(given) < len(row) or cells.NONE in map(str, given):
                name = self.reader.exercises[first.exercise].name
                self.reader.skip(
                    first.row, self.reader.heads.places("exercise")[0], name, f"{key} is given in some weeks only"
                )
                continue
            if key == "sets" and isinstance(first.values["amount"], list):
                continue
            field_of = first.what if key == "amount" else key
            kind = {"hold": "time", "work": "time"}.get(field_of, field_of)
            out[field_of], climb = trend(given, kind)
            if climb:
                progress[field_of] = climb
        felt = {value for value in values["feels_like"] if value is not None}
        if len(felt) == 1 and "load" in out:
            out["feels_like"] = felt.pop()
        amounts, loads = values["amount"], [value for value in values["load"] if isinstance(value, str)]
        if first.what == "reps" and len(loads) == len(row) and cells.NONE not in loads:
            both = double([value for value in amounts if value is not None], loads)
            if both:
                progress = {**{k: v for k, v in progress.items() if k not in ("reps", "load")}, "reps": both[0]}
                progress["then"] = {"load": both[1]}
        notes = {line.note for line in row}
        if first.note and len(notes) == 1:
            out["note"] = first.note
        elif notes - {""}:
            self.reader.skip(
                first.row, self.reader.heads.places("note")[0], first.note, "the note changes from week to week"
            )
        if progress:
            out["progress"] = progress
        return out


def _group(block: str) -> str:
    """Return what exercises that stand together share: A of A1 and A2; nothing for a label without a number."""
    match = re.fullmatch(r"([a-z]+)\s*[-.]?\s*\d+", block.strip().casefold())
    return match[1] if match else block.strip().casefold()


def _yaml(kind: str, thing: dict[str, Any]) -> str:
    """Return a file of the programme."""
    text = yaml.safe_dump(_plain(thing), sort_keys=False, allow_unicode=True, width=110, default_flow_style=False)
    return f"# yaml-language-server: $schema=../schema/{kind}.json\n{text}"


def _plain(value: Any) -> Any:
    """Return values without quotes where a coach writes none: whole numbers and days as themselves."""
    if isinstance(value, dict):
        return {key: _plain(one) for key, one in value.items()}
    if isinstance(value, list):
        return [_plain(one) for one in value]
    if isinstance(value, str) and re.fullmatch(r"[1-9]\d{0,3}", value):
        return int(value)
    if isinstance(value, str) and re.fullmatch(r"\d{4}-\d\d-\d\d", value):
        return date.fromisoformat(value)
    return value
