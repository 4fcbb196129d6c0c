"""What a figure is painted with: custom properties of the page, or plain greys for paper."""

from typing import Literal

from setwright.palette import DAY, PAPER

Medium = Literal["page", "paper"]


def paint(role: str, medium: Medium) -> str:
    """Return the value of a fill or a stroke for a role of the palette, such as ``skin-far``.

    A page's value falls back to the day's colour, for a picture that is opened without a page.
    """
    name = f"sw-fig-{role}"
    return f"var(--{name},{DAY[name]})" if medium == "page" else PAPER[name]
