"""The typesetter: from a sheet to the bytes of a tagged PDF. The same sheet gives the same bytes.

Templates are Typst sources in ``typst/``; the sheet's data goes in as JSON, so that a coach's text is never read as
markup. PDFs follow PDF/UA-1 (ISO 14289-1); the typesetter refuses to write one that lacks a title, a language, an
alternative text or a proper order of headings.
"""

import hashlib
import os
import threading
from concurrent.futures import Future, ThreadPoolExecutor
from functools import cached_property
from importlib.metadata import version
from pathlib import Path
from typing import Final, Self

import typst

from setwright.errors import SetwrightError
from setwright.handouts.coverage import printable
from setwright.handouts.sheet import Sheet

HERE: Final = Path(__file__).parent
FONTS: Final = HERE / "fonts"
TEMPLATES: Final = HERE / "typst"
STANDARD: Final = "ua-1"
_MOST: Final = 4
"""The most presses side by side: each keeps the fonts and what it has set."""


class PressError(SetwrightError):
    """A sheet that the typesetter refuses: a mistake in a template, never in the programme."""


class Press:
    """Prints sheets. Made once for a run, since fonts and templates are read only once."""

    @cached_property
    def mark(self) -> str:
        """What stands for templates, fonts and typesetter in a sheet's digest."""
        whole = hashlib.sha256(version("typst").encode())
        for path in sorted([*TEMPLATES.rglob("*.typ"), *FONTS.iterdir()]):
            whole.update(path.name.encode() + hashlib.sha256(path.read_bytes()).digest())
        return whole.hexdigest()

    @cached_property
    def _compiler(self) -> typst.Compiler:
        fonts = typst.Fonts(include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(FONTS)])
        return typst.Compiler(root=str(TEMPLATES), font_paths=fonts, ignore_system_fonts=True)

    def print(self, sheet: Sheet) -> bytes:
        """Return a sheet as PDF.

        Raises:
            PressError: where the typesetter refuses, or has a remark about the template.
        """
        try:
            pdf, remarks = self._compiler.compile_with_warnings(
                input=str(TEMPLATES / f"{sheet.template}.typ"),
                format="pdf",
                sys_inputs={"sheet": printable(sheet.text)},
                pdf_standards=[STANDARD],
                timestamp=0,
            )
        except typst.TypstError as error:
            raise PressError(f"{sheet.path}: {error.message}\n{error.diagnostic}") from error
        if remarks or not isinstance(pdf, bytes):
            raise PressError(f"{sheet.path}: " + "; ".join(remark.message for remark in remarks))
        return pdf


class Presses:
    """Several presses side by side, one a core: the typesetter works without holding up Python."""

    def __init__(self) -> None:
        self._own = threading.local()
        self._pool = ThreadPoolExecutor(min(_MOST, os.cpu_count() or 1), "press")
        self._begun: dict[str, Future[bytes]] = {}

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self._pool.shutdown(cancel_futures=True)

    def begin(self, sheet: Sheet) -> None:
        """Print a sheet as soon as a press is free."""
        self._begun[sheet.path] = self._pool.submit(self._print, sheet)

    def done(self) -> dict[str, bytes]:
        """Wait for all that was begun, and return the sheets as PDF by path.

        Raises:
            PressError: where the typesetter refused one.
        """
        return {path: sheet.result() for path, sheet in self._begun.items()}

    def _print(self, sheet: Sheet) -> bytes:
        if not hasattr(self._own, "press"):
            self._own.press = Press()
        press: Press = self._own.press
        return press.print(sheet)
