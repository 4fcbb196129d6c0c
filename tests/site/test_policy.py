"""A strict policy for every page: only the site's own files, and nothing that runs or styles from inside a page.

Source: Content Security Policy Level 3 (W3C).
"""

import functools
import http.server
import re
import threading
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from setwright.pages import policy
from support.amount import at_night, some
from support.browsing import REFUSED
from support.site import KINDS

DESK = {"width": 1280, "height": 800}
PHONE = {"width": 390, "height": 844}
STRICT = {
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


class Needs(HTMLParser):
    """What a page would need an exception for, and where its policy stands."""

    def __init__(self) -> None:
        super().__init__()
        self.needs: list[str] = []
        self.policies: list[str] = []
        self.loads = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if tag == "meta" and (given.get("http-equiv") or "").lower() == "content-security-policy":
            if self.loads:
                self.needs.append("something loads before the policy")
            self.policies.append(given["content"] or "")
        if tag == "style" or "style" in given:
            self.needs.append(f"a style in <{tag}>")
        self.needs += [f"{name} in <{tag}>" for name in given if re.match(r"on[a-z]", name)]
        if tag == "script" and "src" not in given and given.get("type") != "application/json":
            self.needs.append("a script inside the page")
        loaded = [given.get(name) for name in ("src", "srcset", "poster", "data", "xlink:href")]
        if tag in ("link", "use", "image") and given.get("rel") not in ("canonical", "next", "prev"):
            loaded.append(given.get("href"))
        for address in filter(None, loaded):
            self.loads += 1
            if re.match(r"[a-z]+:|//", address):
                self.needs.append(f"<{tag}> loads {address}")
        if any((value or "").strip().lower().startswith("javascript:") for value in given.values()):
            self.needs.append(f"a script as an address in <{tag}>")


def needs_of(file: Path) -> Needs:
    """Read a page or a picture."""
    found = Needs()
    found.feed(file.read_text("utf-8"))
    return found


def test_the_policy_is_strict() -> None:
    """Nothing that is not named may load; what is named comes from the site itself; no data addresses, no digests."""
    assert policy.DIRECTIVES == STRICT


@pytest.mark.parametrize("engine", ["site", "successor"])
def test_no_page_needs_an_exception(request: pytest.FixtureRequest, engine: str) -> None:
    """Every page and picture of either engine: no script, style or handler inside, no other host, the policy first."""
    folder: Path = request.getfixturevalue(engine)
    pages = sorted(folder.rglob("*.html"))
    found = {page.relative_to(folder).as_posix(): needs_of(page) for page in pages}
    pictures = {path.name: needs_of(path).needs for path in folder.rglob("*.svg") if "assets/images" not in str(path)}

    assert len(pages) > 100
    assert {name: one.needs for name, one in found.items() if one.needs} == {}
    assert {name: needs for name, needs in pictures.items() if needs} == {}
    if engine == "site":
        assert {(*one.policies,) for one in found.values()} == {(policy.text(),)}
    else:
        assert {(*one.policies,) for one in found.values()} == {
            (policy.text().replace("style-src 'self'", f"style-src 'self' {policy.SUCCESSOR_STYLE}"),)
        }


def test_a_page_that_needs_an_exception_is_found(tmp_path: Path) -> None:
    """The check sees each kind of what the policy refuses."""
    page = tmp_path / "page.html"
    page.write_text(
        "<script>1</script><script type=module>1</script><style></style><p style='a:b' onclick=go() ONLOAD='x'>"
        "<img src='//a.example/b.png'><link rel=stylesheet href=https://a.example/c.css><a href=' javascript:x'>"
        "<svg><image href='https://a.example/d.png'/></svg><script type=application/json>{}</script>"
        f'<meta http-equiv="Content-Security-Policy" content="{policy.text()}">',
        "utf-8",
    )

    assert len(needs_of(page).needs) == 11


def test_a_host_can_send_the_same_policy(site: Path) -> None:
    """The file of headers says for every address what each page says for itself."""
    assert (site / "_headers").read_text("utf-8") == f"/*\n  Content-Security-Policy: {policy.text()}\n"


def test_what_is_refused_is_told(browser: Browser, address: str) -> None:
    """A picture of another place and a script inside the page: the suite would hear of both."""
    context = browser.new_context(viewport=DESK, service_workers="block")
    page = context.new_page()
    page.goto(f"{address}safety/")
    page.evaluate(
        "() => { document.body.insertAdjacentHTML('beforeend', '<p style=\"color: red\">x</p>');"
        " document.body.append(Object.assign(new Image(), {src: 'data:image/gif;base64,R0lGODlhAQABAAAAACw='})); }"
    )
    page.wait_for_function("document.images[document.images.length - 1].complete")
    page.wait_for_timeout(0)
    context.close()
    told = sorted(line.split()[1] for line in REFUSED)
    REFUSED.clear()

    assert told == ["img-src", "style-src-attr"]


@pytest.mark.parametrize("view", [PHONE, DESK], ids=["phone", "desk"])
def test_searching_works_under_the_policy(browser: Browser, address: str, view: dict[str, int]) -> None:
    """Typed words find an exercise, and its page opens with the word marked."""
    context = browser.new_context(viewport=view, service_workers="block")
    page = context.new_page()
    page.goto(address)
    page.wait_for_load_state("networkidle")
    if view == PHONE:
        page.locator("label.md-header__button[for=__search]").click()
    page.locator(".md-search__input").click()
    page.keyboard.type("goblet squat")
    result = page.locator(".md-search-result__link", has_text="Goblet squat").first
    expect(result.locator("mark").first).to_be_visible()
    result.click()

    expect(page.locator("h1")).to_have_text("Goblet squat")
    context.close()


def test_the_choice_of_colours_stays_under_the_policy(browser: Browser, address: str) -> None:
    """Light changed to dark is dark after a reload and on another page, before anything is drawn."""
    context = browser.new_context(viewport=DESK, color_scheme="light", service_workers="block")
    page = context.new_page()
    page.goto(address)
    page.wait_for_load_state("networkidle")
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "default")
    page.locator("label[title='Change to dark']").click()
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "slate")
    for at in ("", "plans/relay/week-07/friday/"):
        page.goto(address + at, wait_until="commit")
        page.wait_for_selector("main")
        assert page.locator("body").get_attribute("data-md-color-scheme") == "slate"
    context.close()


def test_the_controls_of_the_theme_keep_their_marks(browser: Browser, address: str) -> None:
    """The mark of something that unfolds is a file of the site."""
    context = browser.new_context(viewport=PHONE, service_workers="block")
    page = context.new_page()
    page.goto(f"{address}plans/relay/week-07/friday/")
    mask = page.locator(".md-typeset summary").first.evaluate("e => getComputedStyle(e, '::after').maskImage")
    context.close()

    assert mask == f'url("{address}assets/marks/next.svg")'


@pytest.fixture(scope="session")
def successor_address(successor: Path) -> Iterator[str]:
    """Where the successor's site is served."""

    class Quiet(http.server.SimpleHTTPRequestHandler):
        def log_message(self, *args: object) -> None:
            pass

    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=successor))
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()
    server.server_close()
    thread.join()


def open_all(page: Page, address: str) -> None:
    """Visit a page of every kind and unfold what unfolds."""
    for at in KINDS.values():
        page.goto(address + at)
        page.wait_for_load_state("networkidle")
        page.evaluate("document.querySelectorAll('details').forEach(one => one.open = true)")
        page.evaluate("new Promise(drawn => requestAnimationFrame(() => requestAnimationFrame(drawn)))")


@at_night
def test_the_successor_runs_under_the_policy(browser: Browser, successor_address: str) -> None:
    """Every kind of page, its search and its choice of colours, with nothing refused."""
    context = browser.new_context(viewport=PHONE, color_scheme="light", service_workers="block")
    page = context.new_page()
    open_all(page, successor_address)
    page.goto(successor_address)
    page.wait_for_load_state("networkidle")
    page.locator("label[title='Change to dark']").click()
    page.reload()
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "slate")
    page.locator(".md-search__button:visible, label[for=__search]:visible").first.click()
    page.keyboard.type("goblet squat")
    page.get_by_text(re.compile(r"^\d+ results$")).wait_for()
    page.keyboard.press("Enter")

    expect(page.locator("h1")).to_have_text("Goblet squat")
    context.close()


@pytest.mark.parametrize("view", some([PHONE, DESK], 2), ids=some(["phone", "desk"], 2))
def test_every_kind_of_page_runs_under_the_policy(browser: Browser, address: str, view: dict[str, int]) -> None:
    """Nothing is refused where everything is unfolded, nor in the menu of a phone."""
    context = browser.new_context(viewport=view, service_workers="block")
    page = context.new_page()
    open_all(page, address)
    if view == PHONE:
        page.locator("label.md-header__button[for=__drawer]").click()
        expect(page.locator(".md-nav--primary").first).to_be_in_viewport()
    context.close()
