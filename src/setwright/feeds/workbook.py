"""The table of sets as a workbook (Office Open XML), so that a coach can sort and filter it. Same rows, same bytes."""

import io
import re
import zipfile
from collections.abc import Iterable
from fractions import Fraction
from typing import Final

from openpyxl import Workbook
from openpyxl.styles import Font
from openpyxl.utils import get_column_letter

from setwright.feeds.sets import Row, Value
from setwright.outline.set_table import COLUMNS
from setwright.wording.language import Language

_EPOCH: Final = (1980, 1, 1, 0, 0, 0)
_STAMP: Final = re.compile(rb"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ")
_WIDEST: Final = 44


def workbook(table: Iterable[Row], language: Language) -> bytes:
    """Return the workbook: a sheet of all sets with filters over its heads, and one that says what its columns mean."""
    book = Workbook()
    sets = book.worksheets[0]
    sets.title = language.say("Sets")
    sets.append([column.name for column in COLUMNS])
    for row in table:
        sets.append([_cell(value) for value in row])
    for line in sets.iter_rows(min_row=2):
        for cell in line:
            if cell.data_type == "f":  # a name that begins like a formula is a name
                cell.data_type = "s"
    sets.freeze_panes = "A2"
    sets.auto_filter.ref = sets.dimensions
    columns = book.create_sheet(language.say("Columns"))
    columns.append([language.say("Column"), language.say("What it holds")])
    for column in COLUMNS:
        columns.append([column.name, language.text(column.means)])
    for sheet in book.worksheets:
        for cell in sheet[1]:
            cell.font = Font(bold=True)
        for number, cells in enumerate(sheet.iter_cols(values_only=True), 1):
            longest = max(len(str(value)) for value in cells if value is not None)
            sheet.column_dimensions[get_column_letter(number)].width = min(_WIDEST, longest + 3)
    return _steady(book)


def _cell(value: Value) -> object:
    return float(value) if isinstance(value, Fraction) else value


def _steady(book: Workbook) -> bytes:
    """Return a workbook without the time at which it was made, in its properties or in its archive."""
    raw, steady = io.BytesIO(), io.BytesIO()
    book.save(raw)
    with zipfile.ZipFile(raw) as made, zipfile.ZipFile(steady, "w", zipfile.ZIP_DEFLATED) as kept:
        for name in made.namelist():
            content = made.read(name)
            if name == "docProps/core.xml":
                content = _STAMP.sub(b"1980-01-01T00:00:00Z", content)
            kept.writestr(zipfile.ZipInfo(name, _EPOCH), content, zipfile.ZIP_DEFLATED)
    return steady.getvalue()
