"""Reading the built site back: every internal link and anchor must lead somewhere, nothing may come from elsewhere."""

import posixpath
from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

_LOADS = {"src", "data-days", "poster"}
"""Attributes whose target the browser fetches by itself."""

_ADDRESSES = {"canonical", "alternate", "prev", "next"}
"""Kinds of <link> that name an address and fetch nothing; a site that knows its own address carries it in full."""


@dataclass
class Built:
    """One built page: its anchors, where its links lead, and what it loads."""

    anchors: set[str] = field(default_factory=set)
    links: set[str] = field(default_factory=set)
    loads: set[str] = field(default_factory=set)


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.page = Built()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        fetches = tag == "link" and dict(attrs).get("rel") not in _ADDRESSES
        for name, value in attrs:
            if value is None:
                continue
            if name == "id" or (name == "name" and tag == "a"):
                self.page.anchors.add(value)
            elif name in _LOADS or (fetches and name == "href"):
                self.page.loads.add(value)
            elif name == "href" and tag != "link":
                self.page.links.add(value)


def read_page(text: str) -> Built:
    """Return the links, loads and anchors of one page."""
    reader = _Reader()
    reader.feed(text)
    reader.close()
    return reader.page


def read_site(site: Path) -> dict[str, Built]:
    """Return every page of a built site by its path, such as ``exercises/goblet-squat/index.html``."""
    return {
        path.relative_to(site).as_posix(): read_page(path.read_text("utf-8")) for path in sorted(site.rglob("*.html"))
    }


def broken(site: Path) -> Iterator[str]:
    """Yield a line for each link that leads nowhere and each thing that a page would load from another host."""
    pages = read_site(site)
    files = {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()}
    for name, page in pages.items():
        if name == "404.html":
            continue  # its addresses depend on where the site is published
        for link in sorted(page.links | page.loads):
            target = _target(name, link)
            if target is None:
                if link in page.loads:
                    yield f"{name} loads {link} from another host"
                continue
            path, anchor = target
            if path not in files:
                yield f"{name} links to {link}, which does not exist"
            elif anchor and path in pages and anchor not in pages[path].anchors:
                yield f"{name} links to {link}, but there is no '{anchor}' on that page"


def _target(page: str, link: str) -> tuple[str, str] | None:
    """Return file and anchor of an internal link, or None for one with a host of its own."""
    parts = urlsplit(link)
    if parts.scheme or parts.netloc:
        return None
    path = posixpath.normpath(posixpath.join("/", posixpath.dirname(page), unquote(parts.path))) if parts.path else page
    path = path.lstrip("/")
    if parts.path.endswith("/") or path in ("", "."):
        path = posixpath.join(path if path != "." else "", "index.html").lstrip("/")
    return path, unquote(parts.fragment)
