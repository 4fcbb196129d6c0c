"""A table as a coach keeps it: rows of texts from a file of comma-separated values or a workbook."""

import csv
import io
import zipfile
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from setwright.errors import ProjectError

LARGEST_BYTES: Final = 2_000_000
MOST_ROWS: Final = 5_000
MOST_COLUMNS: Final = 200
_DELIMITERS: Final = ",;\t|"


@dataclass(frozen=True)
class Table:
    """Rows of texts without space around them, and what had to be assumed to read them."""

    rows: tuple[tuple[str, ...], ...]
    remarks: tuple[str, ...] = ()


def read_table(path: Path, sheet: str | None = None) -> Table:
    """Read a table from a file.

    Args:
        path: a file whose name ends in .csv, .txt, .tsv or .xlsx.
        sheet: the sheet of a workbook; its first one where none is named.

    Raises:
        ProjectError: for a file of another kind, one that is too large, empty, or cannot be read.
    """
    raw = path.read_bytes()
    if len(raw) > LARGEST_BYTES:
        raise ProjectError(f"{path} is larger than {LARGEST_BYTES // 1_000_000} MB: import one programme at a time")
    table = _workbook(raw, path, sheet) if path.suffix.lower() == ".xlsx" else separated(raw, str(path))
    if not any(any(row) for row in table.rows):
        raise ProjectError(f"{path} holds no table")
    if len(table.rows) > MOST_ROWS or max(map(len, table.rows)) > MOST_COLUMNS:
        raise ProjectError(f"{path} has more than {MOST_ROWS} rows or {MOST_COLUMNS} columns: import a part of it")
    return table


def separated(raw: bytes, name: str) -> Table:
    """Read comma-separated values (RFC 4180), or those of another separator, with or without a byte-order mark."""
    remarks = []
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = raw.decode("cp1252", "replace")
        remarks.append("the file is not UTF-8: its letters were read as Windows-1252")
    if "\0" in text:
        raise ProjectError(f"{name} is no table of text: save it as CSV or .xlsx")
    counts = {sign: _regular(text, sign) for sign in _DELIMITERS}
    delimiter = max(counts, key=lambda sign: counts[sign])
    if delimiter != ",":
        sign = "a tab" if delimiter == "\t" else f"'{delimiter}'"
        remarks.append(f"columns are separated by {sign}")
    rows = csv.reader(io.StringIO(text), delimiter=delimiter)
    try:
        return Table(tuple(tuple(cell.strip() for cell in row) for row in rows), tuple(remarks))
    except csv.Error as error:
        raise ProjectError(f"{name} cannot be read as a table: {error}") from error


def _regular(text: str, delimiter: str) -> int:
    """Return how many cells a separator makes of the first rows."""
    try:
        rows = list(csv.reader(io.StringIO(text[:20_000]), delimiter=delimiter))[:40]
    except csv.Error:
        return 0
    return sum(len(row) - 1 for row in rows)


def _workbook(raw: bytes, path: Path, sheet: str | None) -> Table:
    from openpyxl import load_workbook  # here, since it takes a while and only a workbook needs it

    try:
        book = load_workbook(io.BytesIO(raw), data_only=True)
    except (zipfile.BadZipFile, KeyError, ValueError, OSError) as error:
        raise ProjectError(f"{path} is no workbook that can be read: save it as .xlsx or CSV") from error
    if sheet is not None and sheet not in book.sheetnames:
        raise ProjectError(f"{path} has no sheet '{sheet}'; it has {', '.join(book.sheetnames)}")
    page = book[sheet] if sheet is not None else book.worksheets[0]
    remarks = [f"only the sheet '{page.title}' was read"] if sheet is None and len(book.worksheets) > 1 else []
    cells = {(cell.row, cell.column): _said(cell.value) for row in page.iter_rows() for cell in row}
    for area in page.merged_cells.ranges:
        first = cells.get((area.min_row, area.min_col), "")
        # A merged head stands for all of its rows; across columns it is a title.
        for row in range(area.min_row, area.max_row + 1):
            cells[row, area.min_col] = first
    rows = tuple(
        tuple(cells.get((row, column), "") for column in range(1, page.max_column + 1))
        for row in range(1, page.max_row + 1)
    )
    return Table(rows, tuple(remarks))


def _said(value: object) -> str:
    """Return a cell's value as it is seen: 8 where a workbook keeps 8.0."""
    if value is None:
        return ""
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    return " ".join(str(value).split())
