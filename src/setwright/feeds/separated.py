"""The table of sets as comma-separated values (RFC 4180), and what W3C's CSV on the Web has to say about it."""

import csv
import io
import json
from collections.abc import Iterable
from datetime import date
from fractions import Fraction
from typing import Any, Final

from setwright.feeds.sets import Row, Value
from setwright.model.units import exact_number
from setwright.outline.feeds import PROGRAMME, SETS
from setwright.outline.set_table import COLUMNS
from setwright.wording.language import Language

_FORMULA: Final = tuple("=+-@\t\r")
"""How a text begins that a spreadsheet would take for a formula (common practice, no source)."""


def values(table: Iterable[Row]) -> bytes:
    """Return rows as UTF-8 with a line of heads; a text that a spreadsheet would run has an apostrophe before it."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow([column.name for column in COLUMNS])
    writer.writerows([cell(value) for value in row] for row in table)
    return text.getvalue().encode()


def cell(value: Value) -> str:
    """Return a value as a cell has it: nothing, true or false, an exact number, an ISO 8601 date, or a text."""
    match value:
        case None:
            return ""
        case bool():
            return str(value).lower()
        case Fraction():
            return exact_number(value)
        case date():
            return value.isoformat()
        case str() if value.startswith(_FORMULA):
            return f"'{value}"
        case _:
            return str(value)


def metadata(club: str, language: Language) -> bytes:
    """Return the metadata of the table: what each column holds, and what makes a row itself.

    Source: W3C, Metadata Vocabulary for Tabular Data, 2015-12-17.
    """
    whole: dict[str, Any] = {
        "@context": ["http://www.w3.org/ns/csvw", {"@language": language.code}],
        "url": SETS.rpartition("/")[2],
        "dc:title": language.say("Every set of the programme of %(club)s", club=club),
        "dc:relation": PROGRAMME.rpartition("/")[2],
        "dialect": {"lineTerminators": ["\r\n"], "quoteChar": '"', "doubleQuote": True, "header": True},
        "tableSchema": {
            "columns": [
                {
                    "name": column.name,
                    "titles": column.name,
                    "dc:description": language.text(column.means),
                    "datatype": column.kind,
                    "required": column.always,
                }
                for column in COLUMNS
            ],
            "primaryKey": ["plan", "week", "place", "position", "set"],
        },
    }
    return (json.dumps(whole, ensure_ascii=False, indent=1) + "\n").encode()
