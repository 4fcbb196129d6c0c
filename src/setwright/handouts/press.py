"""The typesetter: from a sheet to the bytes of a tagged PDF. The same sheet gives the same bytes.

Templates are Typst sources in ``typst/``; the sheet's data goes in as JSON, so that a coach's text is never read as
markup. PDFs follow PDF/UA-1 (ISO 14289-1); the typesetter refuses to write one that lacks a title, a language, an
alternative text or a proper order of headings.
"""

import hashlib
from functools import cached_property
from importlib.metadata import version
from pathlib import Path
from typing import Final

import typst

from setwright.errors import SetwrightError
from setwright.handouts.coverage import printable
from setwright.handouts.sheet import Sheet

HERE: Final = Path(__file__).parent
FONTS: Final = HERE / "fonts"
TEMPLATES: Final = HERE / "typst"
STANDARD: Final = "ua-1"


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
