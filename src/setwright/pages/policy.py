"""What a page may load and run: only the site's own files, and nothing that stands inside a page.

The policy goes into every page, so that it holds wherever the site is published, and into a file for hosts that can
send it as a header. Source: Content Security Policy Level 3 (W3C).
"""

from typing import Final

DIRECTIVES: Final = {
    "default-src": "'none'",
    "script-src": "'self'",
    "style-src": "'self'",
    "img-src": "'self'",
    "font-src": "'self'",
    "connect-src": "'self'",
    "worker-src": "'self'",
    "manifest-src": "'self'",
    "object-src": "'none'",
    "base-uri": "'none'",
    "form-action": "'none'",
}

SUCCESSOR_STYLE: Final = "'sha256-NwSx/R2V/U4jnW0Tq5pQ53Y/rzPVJ4dqE7D6UTA/J1k='"
"""The digest of the one style that the successor engine's search (0.0.73) writes into its own part of a page."""

FRAGMENT: Final = ".theme/policy.html"
"""The element, as a piece of the theme, so that it stands in the pages of every engine."""

HEADERS: Final = "_headers"
"""The file from which some hosts of static sites take the headers of their answers."""


def text() -> str:
    """Return the policy on one line."""
    return "; ".join(f"{name} {sources}" for name, sources in DIRECTIVES.items())


def files() -> dict[str, str]:
    """Return what the policy adds to the tree: the element for the pages, and the file of headers.

    The successor engine fills its own name into pages; its pages alone allow its one style.
    """
    style = f"style-src {DIRECTIVES['style-src']}"
    content = text().replace(style, f"{style}{{% if generator is defined %}} {SUCCESSOR_STYLE}{{% endif %}}")
    element = f'<meta http-equiv="Content-Security-Policy" content="{content}">\n'
    return {FRAGMENT: element, HEADERS: f"/*\n  Content-Security-Policy: {text()}\n"}
