"""Figures in a browser: they move when asked, stop when asked, stand still where they must, and shift nothing."""

from collections.abc import Iterator
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

EXERCISE = "exercises/goblet-squat/"
SESSION = "plans/relay/week-07/friday/"

RUNNING = (
    "() => document.getAnimations().filter(a => a.playState === 'running' && a.effect?.target?.dataset?.part).length"
)
SHIFTS = """() => new Promise(done => {
    let sum = 0;
    new PerformanceObserver(list => { for (const e of list.getEntries()) sum += e.value; })
        .observe({type: 'layout-shift', buffered: true});
    setTimeout(() => done(sum), 600);
})"""


def opened(browser: Browser, address: str, **options: Any) -> Iterator[Page]:
    context = browser.new_context(viewport={"width": 390, "height": 844}, service_workers="block", **options)
    page = context.new_page()
    page.goto(address)
    yield page
    context.close()


@pytest.fixture
def moving(browser: Browser, address: str) -> Iterator[Page]:
    """An exercise's page, for someone who has not asked for less motion."""
    yield from opened(browser, address + EXERCISE, reduced_motion="no-preference")


@pytest.fixture
def calm(browser: Browser, address: str) -> Iterator[Page]:
    """The same page, for someone whose device asks for less motion."""
    yield from opened(browser, address + EXERCISE, reduced_motion="reduce")


@pytest.fixture
def plain(browser: Browser, address: str) -> Iterator[Page]:
    """The same page without JavaScript."""
    yield from opened(browser, address + EXERCISE, java_script_enabled=False)


def test_a_figure_moves_and_pauses_at_once(moving: Page) -> None:
    """Play and pause are a button; a pause takes no time. WCAG 2.2, 2.2.2 Pause, Stop, Hide."""
    moving.get_by_role("button", name="Pause").wait_for()
    assert moving.evaluate(RUNNING) > 0
    moving.get_by_role("button", name="Pause").click()

    assert moving.evaluate(RUNNING) == 0
    moving.get_by_role("button", name="Play").click()
    assert moving.evaluate(RUNNING) > 0


def test_a_repetition_takes_as_long_as_its_tempo(moving: Page) -> None:
    """3-1-1-0 is five seconds."""
    moving.get_by_role("button", name="Pause").wait_for()
    lasts = "() => document.getAnimations().find(a => a.effect?.target?.dataset?.part).effect.getTiming().duration"

    assert moving.evaluate(lasts) == 5000


def test_less_motion_means_start_and_end_side_by_side(calm: Page) -> None:
    """Nothing moves by itself, and both positions are seen; whoever wants may still press play."""
    calm.get_by_role("button", name="Play").wait_for()

    assert calm.evaluate(RUNNING) == 0
    assert calm.locator(".sw-fig-start").is_visible()
    assert calm.locator(".sw-fig-end").is_visible()


def test_asking_for_less_motion_stops_it(moving: Page) -> None:
    """When the device's setting changes, the figure stands still at once."""
    moving.get_by_role("button", name="Pause").wait_for()
    moving.emulate_media(reduced_motion="reduce")
    moving.get_by_role("button", name="Play").wait_for()

    assert moving.evaluate(RUNNING) == 0
    assert moving.locator(".sw-fig-end").is_visible()


def test_paper_shows_start_and_end(moving: Page) -> None:
    """Printing while it moves prints the pair, and neither the moving copy nor the button."""
    moving.get_by_role("button", name="Pause").wait_for()
    moving.emulate_media(media="print")

    assert moving.locator(".sw-fig-end").is_visible()
    assert not moving.locator(".sw-fig-moving").is_visible()
    assert not moving.locator(".sw-fig-button").is_visible()


def test_without_javascript_both_positions_are_there(plain: Page) -> None:
    """The pair is part of the page itself."""
    assert plain.locator(".sw-fig-start").is_visible()
    assert plain.locator(".sw-fig-end").is_visible()
    assert plain.locator(".sw-fig-button").count() == 0


def test_a_moving_figure_shifts_nothing(moving: Page) -> None:
    """The place for the picture and its button is kept from the start. Layout Instability, W3C."""
    assert moving.evaluate(SHIFTS) < 0.01


@pytest.mark.parametrize("path", [SESSION, "exercises/", "figures/"], ids=["session", "list", "sheet"])
def test_small_pictures_shift_nothing(browser: Browser, address: str, path: str) -> None:
    """Whether or not the pictures have arrived, everything stands where it stands."""
    places = []
    for arrive in (True, False):
        for page in opened(browser, "about:blank", reduced_motion="reduce"):
            if not arrive:
                page.route("**/assets/figures/*", lambda route: route.abort())
            page.goto(address + path)
            page.wait_for_load_state("networkidle")
            places.append(page.locator("svg.sw-thumb").evaluate_all("all => all.map(e => e.getBoundingClientRect().y)"))

    assert places[0] == places[1]
    assert len(places[0]) > 5


def test_small_pictures_are_shared_and_arrive(browser: Browser, address: str) -> None:
    """A session's page asks for each exercise's picture once, as a file that other pages share."""
    context = browser.new_context(service_workers="block")
    page = context.new_page()
    asked: list[tuple[str, int]] = []
    page.on("response", lambda answer: asked.append((answer.url, answer.status)) if "/figures/" in answer.url else None)
    page.goto(address + SESSION)
    page.wait_for_load_state("networkidle")
    shown = page.locator("svg.sw-thumb").count()
    drawn = page.locator("svg.sw-thumb use").first.bounding_box()
    context.close()

    assert shown >= len({url for url, _ in asked}) == len(asked) > 0
    assert {status for _, status in asked} == {200}
    assert drawn is not None
    assert drawn["height"] > 40


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("path", ["figures/", EXERCISE, "exercises/push-up/"], ids=["sheet", "moving", "share"])
def test_pages_with_figures_are_accessible(browser: Browser, address: str, path: str, scheme: Any) -> None:
    """axe-core finds nothing in the page's own content, by day and by night."""
    for page in opened(browser, address + path, color_scheme=scheme, reduced_motion="reduce"):
        page.wait_for_load_state("networkidle")
        found = Axe().run(page, context=".md-content").response["violations"]

        assert [(one["id"], [node["target"] for node in one["nodes"]]) for one in found] == []
