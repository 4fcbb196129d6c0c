"""The guided session in narrow, low and enlarged windows: one column, nothing cut, the main button widest."""

import pytest
from playwright.sync_api import Browser, Page, ViewportSize, expect

from .test_guide import Training

SESSION = "plans/relay/week-07/friday/"
WINDOWS: list[ViewportSize] = [
    {"width": 320, "height": 568},
    {"width": 360, "height": 740},
    {"width": 740, "height": 360},
    {"width": 640, "height": 320},
]
"""Small and usual phones, upright and on their side; the last is also a window of 1280 by 640 at 200 %."""

CUT = """() => {
  const wide = document.documentElement.clientWidth;
  const high = document.documentElement.clientHeight;
  const session = document.querySelector('.sw-session');
  const found = [];
  for (const one of session.querySelectorAll('.sw-s-top *, .sw-s-body *, .sw-s-buttons *')) {
    if (!one.checkVisibility() || one.closest('svg, .sw-scroll')) continue;
    const { left, right } = one.getBoundingClientRect();
    if (left < -1 || right > wide + 1) found.push(`${one.textContent.slice(0, 30)} ${left} to ${right}`);
  }
  for (const one of session.querySelectorAll('.sw-s-top button, .sw-s-buttons button')) {
    const { top, bottom, width } = one.getBoundingClientRect();
    if (one.checkVisibility() && (top < -1 || bottom > high + 1)) found.push(`${one.textContent} ${top} to ${bottom}`);
    if (one.checkVisibility() && one.scrollWidth > Math.ceil(width)) found.push(`${one.textContent} is cut`);
  }
  const body = session.querySelector('.sw-s-body');
  if (body.scrollWidth > body.clientWidth) found.push('the body scrolls sideways');
  if (body.clientHeight < 120) found.push(`the body is ${body.clientHeight} px high`);
  const buttons = [...session.querySelectorAll('.sw-s-buttons > button')];
  const [back, main, side] = buttons.map((one) => one.getBoundingClientRect().width);
  if (main <= Math.max(back, side)) found.push(`main ${main}, others ${back} and ${side}`);
  return found;
}"""


@pytest.mark.parametrize("text", ["usual", "largest"])
def test_nothing_is_cut_in_any_window(browser: Browser, address: str, text: str) -> None:
    """A set with a load, a rest, a change-over, a hold with its clock, and the end; the phone is turned in each."""
    context = browser.new_context(viewport=WINDOWS[0], has_touch=True, service_workers="block", reduced_motion="reduce")
    page = context.new_page()
    page.goto(f"{address}safety/")
    mine = {"weight": {"number": "68", "unit": "kg"}, "text": text}
    page.evaluate("mine => localStorage.setItem('setwright:/:settings', JSON.stringify(mine))", mine)
    page.clock.install()
    page.goto(f"{address}{SESSION}#go")
    page.locator(".sw-s-title").wait_for()
    training = Training.__new__(Training)
    training.page = page
    found = {}
    for state in ("Warm up", "Goblet squat", "Rest", "Change over", "All done"):
        training.go_to(state)
        for window in WINDOWS:
            page.set_viewport_size(window)
            training.passes(0.1)  # a frame in which the page hears of its new size
            found[state, *window.values()] = page.evaluate(CUT)
    context.close()

    assert {state: cut for state, cut in found.items() if cut} == {}


def test_the_figure_moves_and_is_large(phone: Page, address: str) -> None:
    """In a set the figure of the exercise's own page plays, over the whole width of a phone."""
    phone.set_viewport_size({"width": 360, "height": 740})
    phone.emulate_media(reduced_motion="no-preference")
    phone.clock.install()
    phone.goto(f"{address}{SESSION}#go")
    phone.locator(".sw-s-title").wait_for()
    training = Training.__new__(Training)
    training.page = phone
    training.go_to("Goblet squat")
    figure = phone.locator(".sw-session sw-figure.sw-fig-plays svg")
    box = figure.bounding_box()

    assert box
    assert box["width"] > 300
    assert box["height"] > 200
    assert figure.evaluate("svg => svg.getAnimations({subtree: true}).length") > 5


def test_the_weight_to_fetch_stands_in_the_rest_before(phone: Page, address: str) -> None:
    """Large, and before the set begins."""
    phone.goto(f"{address}safety/")
    mine = {"weight": {"number": "68", "unit": "kg"}}
    phone.evaluate("mine => localStorage.setItem('setwright:/:settings', JSON.stringify(mine))", mine)
    phone.clock.install()
    phone.goto(f"{address}{SESSION}#go")
    phone.locator(".sw-s-title").wait_for()
    training = Training.__new__(Training)
    training.page = phone
    training.go_to("Change over")
    expect(phone.locator(".sw-session .sw-s-load")).to_have_text("5 kg in each hand")


def test_bars_keep_their_two_colours_where_colours_are_forced(browser: Browser, address: str) -> None:
    """How far a session and a rest are can be seen in the reader's own colours (CSS Color Adjustment 1)."""
    context = browser.new_context(forced_colors="active", service_workers="block")
    page = context.new_page()
    page.clock.install()
    page.goto(f"{address}{SESSION}#go")
    page.locator(".sw-s-title").wait_for()
    training = Training.__new__(Training)
    training.page = page
    training.go_to("Rest")
    colours = "one => getComputedStyle(one).backgroundColor"
    bar, filled = (page.locator(part).evaluate(colours) for part in (".sw-s-bar", ".sw-s-bar span"))
    context.close()

    assert bar != filled
