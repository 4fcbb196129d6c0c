"""Reading the built site back: every internal link and anchor must lead somewhere, nothing may come from elsewhere."""

import posixpath
from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path
from typing import Final
from urllib.parse import unquote, urlsplit

_LOADS = {"src", "data-days", "poster"}
"""Attributes whose target the browser fetches by itself."""

_ADDRESSES = {"canonical", "alternate", "prev", "next"}
"""Kinds of <link> that name an address and fetch nothing; a site that knows its own address carries it in full."""

LOST: Final = "404.html"
"""The page that a host serves for every address that leads nowhere."""


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


def broken(site: Path, site_url: str | None = None) -> Iterator[str]:
    """Yield a line for each link that leads nowhere and each thing that a page would load from another host.

    Links are followed as they are served: relative ones hold at the root of a host and in a folder of it; those from
    the root must lead into the folder of the site's address. The page for lost addresses is served at any of them,
    so that its links must all begin at the root.

    Args:
        site: the built site.
        site_url: where it is published; the root of some host where nothing is given.
    """
    base = urlsplit(site_url or "/").path.rstrip("/") + "/"
    pages = read_site(site)
    files = {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()}
    for name, page in pages.items():
        for link in sorted(page.links | page.loads):
            parts = urlsplit(link)
            if parts.scheme or parts.netloc:
                if link in page.loads:
                    yield f"{name} loads {link} from another host"
                elif not parts.scheme:
                    yield f"{name} links to {link}, which is another host's address"
                continue
            if name == LOST and parts.path and not parts.path.startswith("/"):
                yield f"{name} links to {link}, which depends on the address that was asked for"
                continue
            path = _file(name, parts.path, base)
            anchor = unquote(parts.fragment)
            if path is None:
                yield f"{name} links to {link}, which leads out of the site"
            elif path not in files:
                yield f"{name} links to {link}, which does not exist"
            elif anchor and path in pages and anchor not in pages[path].anchors:
                yield f"{name} links to {link}, but there is no '{anchor}' on that page"


def _file(page: str, link: str, base: str) -> str | None:
    """Return the file that a link of a page leads to, or None where it leads out of the site's folder."""
    if not link:
        return page
    # A relative link is followed in some folder of a host, an absolute one in the folder of the site's address.
    folder = base if link.startswith("/") else "/some/folder/"
    path = posixpath.normpath(posixpath.join(folder, posixpath.dirname(page), unquote(link)))
    if f"{path}/" == folder or path == folder:
        return "index.html"
    if not path.startswith(folder):
        return None
    inside = path.removeprefix(folder)
    return f"{inside}/index.html" if link.endswith(("/", "/.", "/..")) or link in (".", "..") else inside
