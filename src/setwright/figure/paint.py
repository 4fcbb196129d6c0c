"""The colours of a figure by role: as custom properties of the page, or as plain colours for paper."""

from typing import Final, Literal

Medium = Literal["page", "paper"]

COLOURS: Final = {
    "skin": ("#b06f47", "#cdcdcd"),
    "skin-far": ("#835033", "#9d9d9d"),
    "shirt": ("#2f6f8f", "#8a8a8a"),
    "shirt-far": ("#214f67", "#666666"),
    "shorts": ("#25334a", "#3c3c3c"),
    "shorts-far": ("#172133", "#262626"),
    "sock": ("#e9e4d8", "#f2f2f2"),
    "sock-far": ("#b9b3a4", "#c6c6c6"),
    "shoe": ("#d0631c", "#5a5a5a"),
    "shoe-far": ("#9c4812", "#404040"),
    "hair": ("#33261f", "#1c1c1c"),
    "headband": ("#d0631c", "#5a5a5a"),
    "metal": ("#4a4f57", "#2b2b2b"),
    "shine": ("#868d97", "#8e8e8e"),
    "wood": ("#a8834f", "#6f6f6f"),
    "block": ("#e3d9c4", "#e6e6e6"),
    "lid": ("#c4b28e", "#9a9a9a"),
    "wall": ("#d3ccbf", "#b5b5b5"),
    "panel": ("#efebe2", "#f3f3f3"),
    "floor": ("#c9c1b1", "#8c8c8c"),
    "mat": ("#8fa58a", "#bcbcbc"),
    "rubber": ("#a3386c", "#333333"),
    "arrow": ("#a3386c", "#000000"),
    "edge": ("#fcfbf8", "#ffffff"),
}
"""Each role's colour by day, and its grey for paper. The page's style sheet changes them for the night."""


def paint(role: str, medium: Medium) -> str:
    """Return the value of a fill or a stroke."""
    day, grey = COLOURS[role]
    return f"var(--sw-fig-{role},{day})" if medium == "page" else grey
