"""The site's colours, read from its one palette for what no style sheet reaches: files that stand alone, and paper."""

import re
from importlib.resources import files
from typing import Final

SHEET: Final = (files("setwright") / "palette.css").read_bytes()
"""The palette itself, a style sheet of custom properties."""


def _colours(part: str) -> dict[str, str]:
    return dict(re.findall(r"--([\w-]+): (#[0-9a-f]+);", part))


_day, _night, _paper = SHEET.decode().split("@media ")

DAY: Final = _colours(_day)
"""Every colour by day, by the name of its custom property without the dashes."""
NIGHT: Final = _colours(_night)
"""The colours at night."""
PAPER: Final = DAY | _colours(_paper)
"""The colours on paper: those of the day but for what paper says of its own."""
