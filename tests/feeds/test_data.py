"""The programme as data: its own schema, W3C's CSV on the Web and a workbook's reader take the files apart."""

import csv
import io
import json
from collections import Counter
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import jsonschema
import openpyxl
import pytest
from csvw import Table
from hypothesis import given, settings

from setwright import publish
from setwright.dose.resolve import resolve
from setwright.feeds import data
from setwright.model.load import parse_load
from setwright.model.programme import Programme
from setwright.outline.feeds import METADATA, PROGRAMME, SCHEMA, SETS, WORKBOOK
from setwright.outline.set_table import COLUMNS
from setwright.outline.site import Site
from support import make, reading
from support.any_programme import programmes


@pytest.fixture(scope="module")
def good(tmp_path_factory: pytest.TempPathFactory) -> Site:
    """Return the good programme's site."""
    looked = publish.look(reading.good_programme(tmp_path_factory.mktemp("data")))
    return publish.site_of(looked)


@pytest.fixture(scope="module")
def files(good: Site) -> dict[str, bytes]:
    """Return the good programme's data."""
    return data.files(good)


def table(raw: bytes) -> list[dict[str, str]]:
    """Return the rows by their heads, as Python's own reader of RFC 4180 has them."""
    return list(csv.DictReader(io.StringIO(raw.decode("utf-8"), newline="")))


def test_the_same_programme_gives_the_same_bytes(good: Site, files: dict[str, bytes]) -> None:
    """A workbook too, which by itself holds the time at which it was made."""
    assert data.files(good) == files


def test_the_resolved_programme_keeps_to_its_published_schema(files: dict[str, bytes]) -> None:
    """JSON Schema 2020-12, checked by the library ``jsonschema``."""
    schema = json.loads(files[SCHEMA])
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.Draft202012Validator(schema).validate(json.loads(files[PROGRAMME]))


def test_lines_end_as_the_standard_has_it(files: dict[str, bytes]) -> None:
    """RFC 4180, 2.1: CRLF; 2.4: the same number of fields in each line."""
    raw = files[SETS]
    assert raw.endswith(b"\r\n")
    assert raw.count(b"\n") == raw.count(b"\r\n")
    assert {len(row) for row in csv.reader(io.StringIO(raw.decode(), newline=""))} == {len(COLUMNS)}


def test_a_reader_of_csv_on_the_web_finds_every_value_of_its_kind(files: dict[str, bytes], tmp_path: Path) -> None:
    """The library ``csvw`` reads the table by its metadata: datatypes, required values, one row a key."""
    for path in (SETS, METADATA):
        (tmp_path / path.rpartition("/")[2]).write_bytes(files[path])
    one = Table.from_file(tmp_path / METADATA.rpartition("/")[2])
    rows = list(one.iterdicts(strict=True))
    assert len(rows) == len(table(files[SETS])) > 0
    assert one.check_primary_key()
    assert all(isinstance(row["week"], int) and isinstance(row["rounds"], bool) for row in rows)


def test_the_table_holds_every_set_of_every_session(good: Site, files: dict[str, bytes]) -> None:
    """Counted against the doses that pages are made from, with what is done in an exercise's place."""
    expected = Counter(
        {
            (plan.ident, str(session.week), session.place, item.exercise): len(item.dose.sets)
            for plan in good.plans
            for session in plan.sessions
            for item in session.all_items
        }
    )
    rows = table(files[SETS])
    found = Counter((row["plan"], row["week"], row["place"], row["exercise"]) for row in rows)
    assert set(found) == set(expected)
    assert sum(found.values()) == sum(
        len(item.dose.sets) for plan in good.plans for session in plan.sessions for item in session.all_items
    )


def test_amounts_loads_and_rests_are_those_of_the_dose(good: Site, files: dict[str, bytes]) -> None:
    """Row by row, in the order of the sets."""
    expected = [
        (Fraction(one.amount.low), Fraction(one.amount.high), one.load, one.rest_s, one.kind)
        for plan in good.plans
        for session in plan.sessions
        for item in session.all_items
        for one in item.dose.sets
    ]
    read = [
        (
            Fraction(row["low"]),
            Fraction(row["high"]),
            parse_load(row["load"]) if row["load"] else None,
            int(row["rest_s"]),
            row["kind"],
        )
        for row in table(files[SETS])
    ]
    assert read == expected


def test_the_workbook_holds_the_rows_of_the_table(files: dict[str, bytes]) -> None:
    """Read again with openpyxl, the reader of Office Open XML that a coach's own tables are read with."""
    book = openpyxl.load_workbook(io.BytesIO(files[WORKBOOK]))
    sets, columns = book.worksheets
    heads, *rows = sets.iter_rows(values_only=True)
    assert heads == tuple(column.name for column in COLUMNS)
    assert [row[heads.index("name")] for row in rows] == [row["name"] for row in table(files[SETS])]
    assert [row[heads.index("low")] for row in rows] == [float(row["low"]) for row in table(files[SETS])]
    assert [row[0] for row in columns.iter_rows(min_row=2, values_only=True)] == list(heads)


@pytest.mark.parametrize("name", ['"Quote", comma', "=1+1", "+1", "@sum", "-2", "Zeile\u2028zwei", "<b>fett</b>"])
def test_a_name_is_a_name_and_no_formula(name: str) -> None:
    """A spreadsheet runs what begins like a formula: an apostrophe is before it in the table."""
    made = make.programme()
    exercise = next(iter(made.exercises))
    called = made.exercises[exercise].model_copy(update={"name": name})
    renamed = replace(made, exercises={**made.exercises, exercise: called})
    files = data.files(Site(renamed, resolve(renamed)))
    row = next(row for row in table(files[SETS]) if row["exercise"] == exercise)
    assert row["name"].removeprefix("'") == name
    assert not row["name"].startswith(("=", "+", "-", "@"))
    sheet = openpyxl.load_workbook(io.BytesIO(files[WORKBOOK])).worksheets[0]
    cells = [cell for line in sheet.iter_rows() for cell in line if cell.value == name]
    assert cells
    assert {cell.data_type for cell in cells} == {"s"}


@settings(max_examples=15)
@given(programmes())
def test_any_programme_comes_out_whole(programme: Programme) -> None:
    """Every valid programme has data, each key once, and the JSON keeps to its schema."""
    site = Site(programme, resolve(programme))
    files = data.files(site)
    rows = table(files[SETS])
    keys = [tuple(row[key] for key in ("plan", "week", "place", "position", "set")) for row in rows]
    assert (
        len(keys)
        == len(set(keys))
        == sum(len(item.dose.sets) for plan in site.plans for session in plan.sessions for item in session.all_items)
    )
    jsonschema.validate(json.loads(files[PROGRAMME]), json.loads(files[SCHEMA]))
