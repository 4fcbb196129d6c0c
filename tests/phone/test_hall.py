"""The hall's screen: a session for a group on one clock, by keys alone, in the sizes of a television and a tablet."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from support.amount import some

HALL = "hall/?session=plans/relay/week-02/tuesday/"
MEMBERS = "plans/relay/week-02/tuesday/"
SCREENS = [(1920, 1080), (1024, 768)]

LETTERS = """() => {
  // The height of a digit or a capital in the main line, in shares of the screen's height.
  const line = [...document.querySelectorAll('.sw-hall-title, .sw-hall-clock')].find((one) => one.textContent);
  const style = getComputedStyle(line);
  const context = document.createElement('canvas').getContext('2d');
  context.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
  return context.measureText('H0').actualBoundingBoxAscent / innerHeight;
}"""

CUT = """() => [...document.querySelectorAll('.sw-hall-name, .sw-hall-amount, .sw-hall-clock, .sw-hall-button')]
  .filter((one) => {
    const { left, right, top, bottom } = one.getBoundingClientRect();
    const part = (one.closest('.sw-hall-part') ?? document.documentElement).getBoundingClientRect();
    const low = Math.min(part.bottom, innerHeight);
    return left < 0 || top < 0 || right > innerWidth + 1 || bottom > low + 1;
  }).map((one) => one.textContent)"""

CONTRAST = """() => {
  const seen = (colour) => {
    const context = document.createElement('canvas').getContext('2d', {willReadFrequently: true});
    context.fillStyle = colour;
    context.fillRect(0, 0, 1, 1);
    const [r, g, b] = [...context.getImageData(0, 0, 1, 1).data].slice(0, 3).map((one) => {
      const share = one / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const behind = seen(getComputedStyle(document.querySelector('.sw-hall')).backgroundColor);
  return Math.min(...[...document.querySelectorAll('.sw-hall > p, .sw-hall-lead p, .sw-hall-name, .sw-hall-amount')]
    .map((one) => seen(getComputedStyle(one).color))
    .map((ink) => (Math.max(ink, behind) + 0.05) / (Math.min(ink, behind) + 0.05)));
}"""
"""The relative luminance and the ratio of WCAG 2.2."""


@pytest.fixture(params=some([(size, scheme) for size in SCREENS for scheme in ("light", "dark")], 3), ids=str)
def hall(request: pytest.FixtureRequest, browser: Browser, address: str) -> Iterator[Page]:
    (width, height), scheme = request.param
    size = {"width": width, "height": height}
    context = browser.new_context(viewport=size, color_scheme=scheme, service_workers="block")
    page = context.new_page()
    complaints: list[str] = []
    page.on("console", lambda message: complaints.append(message.text) if message.type == "error" else None)
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.clock.install()
    page.goto(f"{address}{HALL}")
    expect(page.locator(".sw-hall")).to_be_visible()
    yield page
    assert complaints == []
    context.close()


def kind(page: Page) -> str:
    return page.locator(".sw-hall").get_attribute("data-kind") or ""


def test_a_whole_session_by_keys_alone_large_and_clear(hall: Page) -> None:
    """Halves of a superset change places, a circuit moves on by stations, and the last screen says that it is done."""
    opening = hall.locator(".sw-hall-opening")
    for words in ("Stop if", "local codes of practice", "ask a doctor or a physiotherapist", "Who should take care"):
        expect(opening).to_contain_text(words)
    halves, stations = [], set()
    for _ in range(90):
        hall.keyboard.press("ArrowRight")
        parts = hall.locator(".sw-hall-name").all_inner_texts()
        if kind(hall) == "end":
            break
        if hall.locator(".sw-hall-clock").inner_text() or hall.locator(".sw-hall-title").count():
            assert hall.evaluate(LETTERS) >= 1 / 12
        assert hall.evaluate(CONTRAST) >= 4.5
        assert hall.evaluate(CUT) == []
        if kind(hall) == "work" and len(parts) == 2:
            halves.append(parts)
        elif kind(hall) == "work":
            stations.add(tuple(parts))
    assert kind(hall) == "end"
    first, second = halves[:2]
    assert first == second[::-1]
    assert first != second
    assert any(len(parts) == 5 for parts in stations)


def test_a_reload_in_the_middle_loses_nothing_and_nothing_stays_on_the_device(hall: Page) -> None:
    for key in ("ArrowRight", "ArrowRight", "ArrowRight"):
        hall.keyboard.press(key)
    hall.clock.run_for(5_000)
    name, left = hall.locator(".sw-hall-name").first.inner_text(), hall.locator(".sw-hall-clock").inner_text()
    hall.keyboard.press(" ")
    hall.reload()
    expect(hall.locator(".sw-hall-name").first).to_have_text(name)
    expect(hall.locator(".sw-hall")).to_have_attribute("data-paused", "")
    assert hall.locator(".sw-hall-clock").inner_text()[:3] == left[:3]
    assert hall.evaluate("Object.keys(localStorage).filter((key) => key.includes('hall'))") == []


def test_a_rest_is_stretched_and_the_clock_moves_everybody_on(hall: Page) -> None:
    for _ in range(4):
        hall.keyboard.press("ArrowRight")
    assert kind(hall) == "change"
    hall.keyboard.press("ArrowUp")
    hall.clock.run_for(12_000)
    assert kind(hall) == "change"
    hall.clock.run_for(15_000)
    assert kind(hall) == "work"
    hall.keyboard.press("m")
    expect(hall.locator("[data-act='silent']")).to_have_attribute("aria-pressed", "true")


def test_loads_stand_there_as_bands(hall: Page) -> None:
    for _ in range(3):
        hall.keyboard.press("ArrowRight")
    expect(hall.locator(".sw-hall-part .sw-bands").first).to_contain_text("kg")


def test_members_pages_load_nothing_of_it(browser: Browser, address: str) -> None:
    page = browser.new_page()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(f"{address}{MEMBERS}", wait_until="networkidle")
    assert [url for url in asked if "hall" in url] == []
    page.close()
