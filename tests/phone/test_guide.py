"""One whole guided session as a member does it, by a clock that the test turns."""

from collections.abc import Iterator
from datetime import datetime
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect

from .conftest import PHONE

SESSION = "plans/relay/week-07/tuesday/"
"""Straight sets, two supersets, straight sets one side at a time, and a circuit with holds."""


SLIP_S = 0.4
"""Two taps closer than this are one."""


WHERE = """() => ['.sw-s-where', '.sw-s-title', '.sw-s-side']
  .map(part => document.querySelector(`.sw-session ${part}`)?.innerText ?? '')"""
GO_ON = """() => {
  const main = document.querySelector('.sw-session .sw-s-main');
  const buttons = [...document.querySelectorAll('.sw-session button')];
  const holds = main.innerText === 'Start';
  (holds ? buttons.find(one => one.innerText === 'Skip' && one.checkVisibility()) : main).click();
  return !holds;
}"""
"""Past a step on the way to another: the large button, or 'Skip' where that would start a hold. Says which it was."""


class Training:
    """A guided session in the hands of a member."""

    def __init__(self, page: Page, address: str, still: bool = True) -> None:
        self.page = page
        page.clock.install(time=datetime(2027, 8, 17, 18))
        page.goto(address + SESSION)
        self.start()
        if still:
            page.clock.pause_at(datetime(2027, 8, 17, 18, 1))

    def start(self) -> None:
        """Open the guided session."""
        self.page.get_by_role("button", name="Start the guided session").click()
        self.page.locator(".sw-s-title").wait_for()

    def main(self) -> str:
        """Return what the large button says."""
        return self.page.locator(".sw-s-main").inner_text()

    def press(self) -> None:
        """Press the large button, and not so fast again that it would count as a slip."""
        self.page.locator(".sw-s-main").click()
        self.passes(SLIP_S)

    def passes(self, seconds: float) -> None:
        """Let time go by with the page in sight."""
        self.page.clock.run_for(int(seconds * 1000))

    def away(self, seconds: float) -> None:
        """Let time go by as in a pocket: no timer fires until the phone is looked at again."""
        self.page.clock.fast_forward(int(seconds * 1000))

    def text(self, part: str) -> str:
        """Return a part of the screen."""
        found = self.page.locator(f".sw-session {part}")
        return found.first.inner_text() if found.count() else ""

    def where(self) -> tuple[str, str, str]:
        """Return place in the session, title and side."""
        place, title, side = self.page.evaluate(WHERE)
        return place, title, side

    def go_to(self, title: str, side: str = "") -> None:
        """Go on until an exercise is on the screen; holds run their time."""
        for _ in range(90):
            place = self.where()
            if place[1] == title and (not side or place[2] == side):
                return
            if self.page.evaluate(GO_ON):
                self.passes(SLIP_S)
        raise AssertionError(f"never came to {title}")


@pytest.fixture
def training(phone: Page, address: str) -> Training:
    """A session that has just begun."""
    return Training(phone, address)


def do_all(training: Training) -> Iterator[tuple[str, str, str]]:
    """Do every step to the end, and yield each."""
    for _ in range(120):
        yield training.where()
        if training.where()[1] == "All done":
            return
        if training.main() == "Start":
            training.press()
            training.passes(3 + 41)  # 3-2-1, and the longest hold of this session
        else:
            training.passes(1)
            training.press()


def test_a_whole_session_goes_in_the_order_of_the_sheet(training: Training) -> None:
    """Superset A, B, rest; both sides one after the other; the circuit round by round; then effort and the log."""
    seen = list(do_all(training))
    sets = [(where, title, side) for where, title, side in seen if "of" in where.split("·")[-1]]
    up = "Step down and push up · Round 1 of 2"
    first = seen.index((up, "Box step-down", "First side"))

    assert [s[1] for s in seen[:4]] == ["Warm up", "Drop and stick", "Rest", "Drop and stick"]
    assert [(s[1], s[2]) for s in seen[first : first + 5]] == [
        ("Box step-down", "First side"),
        ("Box step-down", "Other side"),
        ("Change over", ""),
        ("Push-up", ""),
        ("Rest", ""),
    ]
    circuit = [
        title for where, title, side in sets if where == "Conditioning circuit · Round 2 of 2" and side != "Other side"
    ]
    assert circuit == ["Side plank", "Wall sit", "Dead bug", "Band press-out against a sideways pull"]
    assert [s[1] for s in seen[-2:]] == ["Cool down", "All done"]

    page = training.page
    page.get_by_label("How hard was all of it?").select_option("7")
    page.get_by_label("Minutes").fill("52")
    page.get_by_label("Minutes").press("Tab")
    expect(page.locator(".sw-s-sum")).to_have_text("Session load: 7 × 52 = 364")
    training.press()
    expect(page.locator(".sw-saved")).to_contain_text("Session saved on this device.")
    (kept,) = stored(page, "log/")
    assert (kept["effort"], kept["minutes"], len(kept["sets"])) == (7, 52, 20)
    assert stored(page, "now") == []


def stored(page: Page, start: str) -> list[Any]:
    """Return what the device keeps under keys that start so."""
    line = (
        "start => Object.entries(localStorage).filter(([k]) => k.includes(':' + start)).map(([, v]) => JSON.parse(v))"
    )
    return list(page.evaluate(line, start))


def test_a_reload_in_the_middle_loses_nothing(training: Training) -> None:
    """Half way through a rest the page is loaded anew: the same rest goes on, by the clock."""
    training.go_to("Box step-down", "First side")
    for _ in range(4):
        training.press()
    assert training.where()[1] == "Rest"
    training.passes(20)
    before = training.text(".sw-s-big")
    training.page.reload()
    training.page.locator(".sw-s-big").wait_for()
    training.passes(0.3)

    assert before == "55"
    assert training.where()[1] == "Rest"
    assert 53 <= int(training.text(".sw-s-big")) <= 55


def test_a_rest_goes_on_in_the_pocket(training: Training) -> None:
    """Locked for two minutes, the phone shows on waking that the rest is over, and for how long."""
    training.press()
    training.press()
    assert training.where()[1] == "Rest"
    training.away(150)
    training.passes(0.3)

    assert training.text(".sw-s-big") == "0"
    assert training.text(".sw-s-small").startswith("over for 30")
    assert training.main() == "Go on"


def test_a_call_in_the_middle_of_a_hold(training: Training) -> None:
    """A hold whose end fell into a phone call is done, with its whole time, and what follows began when it ended."""
    training.go_to("Wall sit")
    assert training.main() == "Start"
    training.press()
    training.passes(3 + 10)
    training.away(60)
    training.passes(0.3)

    assert training.where()[1] == "Change over"
    assert training.text(".sw-s-small").startswith("over for")
    assert stored(training.page, "log/")[0]["sets"][-1]["amount"] == 35


def test_a_hold_counts_in_and_down_and_ends_by_itself(training: Training) -> None:
    """3-2-1, then the hold's own seconds, then the other side."""
    training.go_to("Side plank", "First side")
    training.press()
    counted = []
    for _ in range(5):
        counted.append(training.text(".sw-s-big"))
        training.passes(1)
    training.passes(29)

    assert counted == ["3", "2", "1", "30", "29"]
    assert training.where()[1:] == ("Side plank", "Other side")


def test_a_hold_that_was_stopped_early_is_logged_as_long_as_it_was(training: Training) -> None:
    """Stopping at 12 of 35 seconds notes 12."""
    training.go_to("Wall sit")
    training.press()
    training.passes(3 + 12.5)
    assert training.main() == "Stop here"
    training.press()

    assert stored(training.page, "log/")[0]["sets"][-1]["amount"] == 12


def test_a_rest_can_be_longer_or_skipped(training: Training) -> None:
    """+30 s adds to what is left, and the large button ends it."""
    training.press()
    training.press()
    training.passes(100)
    training.page.get_by_role("button", name="+30 s").click()
    assert training.text(".sw-s-big") == "50"
    training.page.get_by_role("button", name="Skip rest").click()

    assert training.where()[1] == "Drop and stick"


def test_in_a_rest_the_last_sets_can_be_put_right(training: Training) -> None:
    """One repetition less, and how hard it was: the log has it at once."""
    training.press()
    training.press()
    training.page.get_by_role("button", name="Drop and stick: less").click()
    training.page.get_by_label("Effort").select_option("8")
    (kept,) = stored(training.page, "log/")

    assert [(s["amount"], s["effort"]) for s in kept["sets"]] == [(3, 8)]


def test_doing_a_set_again_replaces_it_in_the_log(training: Training) -> None:
    """Back and done again is still one set."""
    training.press()
    training.press()
    training.page.get_by_role("button", name="Back", exact=True).click()
    training.press()

    assert len(stored(training.page, "log/")[0]["sets"]) == 1


def test_too_hard_offers_the_easier_one_and_the_log_says_so(training: Training) -> None:
    """The easier exercise stands in for the rest of the session, until the member takes it back."""
    training.go_to("Push-up")
    training.page.locator(".sw-session summary").click()
    training.page.get_by_role("button", name="Do this instead").click()
    easier = training.where()[1]
    training.press()
    (kept,) = stored(training.page, "log/")

    assert easier not in ("", "Push-up")
    assert kept["sets"][-1]["name"] == easier
    training.go_to("Box step-down", "First side")
    training.go_to(easier)
    training.page.get_by_role("button", name="Back to Push-up").click()
    assert training.where()[1] == "Push-up"


def test_before_the_first_set_stands_whom_it_is_not_for_and_the_dose_is_in_sight(training: Training) -> None:
    """The landing's first set: not for whom, then how many, and when to stop below it, without a touch."""
    training.go_to("Drop and stick")
    body = training.page.locator(".sw-session")
    expect(body.locator("[data-part='not-for']")).to_be_visible()
    expect(body.locator(".sw-amount")).to_be_in_viewport()
    expect(body.locator("[data-part='stop']")).to_contain_text("Stop if:")
    expect(body.locator("[data-part='care']")).to_contain_text("Take care:")


def test_another_exercise_brings_no_words_about_the_first(training: Training) -> None:
    """What is done instead has its own exclusions: the guide leads to its page and shows none of the other's."""
    training.go_to("Push-up")
    body = training.page.locator(".sw-session")
    body.locator("summary").click()
    training.page.get_by_role("button", name="Do this instead").click()

    expect(body.get_by_role("link", name="Its own page says whom it is not for")).to_be_visible()
    for part in ("stop", "care", "limits"):
        expect(body.locator(f"[data-part='{part}']")).to_have_count(0)


def test_stop_shows_the_safety_text_and_ends_with_what_was_done(training: Training) -> None:
    """One touch away in every step: the signs to stop at, whom to call, and the way out."""
    training.press()
    training.press()
    training.page.get_by_role("button", name="Stop").click()
    box = training.page.get_by_role("dialog", name="Stop at once if")
    expect(box).to_contain_text("Call for help now: chest pain")
    expect(box).to_contain_text("In an emergency")
    box.get_by_role("button", name="End the session").click()
    assert training.where()[1] == "Session ended"
    expect(training.page.get_by_text("If a sign made you stop, get help now.")).to_be_visible()
    training.page.get_by_role("button", name="Back", exact=True).click()
    training.go_to("All done")  # who goes on after all has done it all
    training.press()

    assert len(stored(training.page, "log/")) == 1


def test_looking_at_the_page_does_not_end_the_session(training: Training, address: str) -> None:
    """The session waits; another page has a line that leads back to it."""
    training.go_to("Push-up")
    training.page.keyboard.press("Escape")
    expect(training.page.get_by_role("button", name="Go on with the session")).to_be_focused()
    training.page.goto(address)
    training.page.get_by_role("link", name="Back to it").click()
    training.page.locator(".sw-s-title").wait_for()

    assert training.where()[1] == "Push-up"


def test_the_screen_reader_hears_each_step_once(training: Training) -> None:
    """One sentence a step, one at ten seconds, one at the end of a rest: the countdown itself is silent."""
    page = training.page
    page.evaluate(
        """() => {
          const line = document.querySelector('.sw-s-heard');
          window.heard = [];
          const watch = new MutationObserver(() => heard.push(line.textContent));
          watch.observe(line, {childList: true, characterData: true, subtree: true});
        }"""
    )
    training.press()
    training.press()
    training.passes(130)
    heard = page.evaluate("heard")

    assert [words.split(",")[0] for words in heard] == ["Drop and stick", "Rest", "10 seconds left", "Rest is over"]
    assert page.locator(".sw-s-clock").get_attribute("role") == "timer"


def test_a_full_device_says_so_and_keeps_what_it_had(training: Training) -> None:
    """No room: the member is told in the session, the set saved before is still there, and the session goes on."""
    training.press()
    training.press()
    before = stored(training.page, "log/")
    training.page.evaluate(
        """() => {
          for (let size = 1 << 23; size >= 1; size >>= 1) {
            try { localStorage.setItem('junk' + size, 'x'.repeat(size)); } catch { /* half as much, then */ }
          }
        }"""
    )
    training.press()
    training.press()
    expect(training.page.locator(".sw-s-warning")).to_contain_text("no room left")

    assert stored(training.page, "log/") == before
    assert training.where()[1] != ""


def test_every_target_is_a_thumb_wide(training: Training) -> None:
    """44 CSS pixels or more each way (WCAG 2.2, 2.5.5 at level AAA), in each kind of step."""
    small = """() => [...document.querySelectorAll('.sw-session :is(button, select, input, summary)')]
      .filter(target => target.checkVisibility())
      .map(target => [target.textContent.slice(0, 20), target.getBoundingClientRect()])
      .filter(([, box]) => box.width < 44 || box.height < 44)
      .map(([text]) => text)"""
    for title in ("Warm up", "Drop and stick", "Rest", "Box step-down", "Side plank", "All done"):
        training.go_to(title)

        assert training.page.evaluate(small) == [], title


def test_the_dose_can_be_read_at_arms_length(training: Training) -> None:
    """A digit of the dose is 9 mm tall or more: at 60 cm that is 50 minutes of arc, ten times the 5 of normal sight.

    A CSS pixel is 1/96 inch at arm's length by definition (CSS Values 4); a digit is about 0.7 of its type size.
    """
    training.go_to("Push-up")
    size = training.page.locator(".sw-session .sw-amount b").evaluate("e => parseFloat(getComputedStyle(e).fontSize)")

    assert size * 0.7 * 25.4 / 96 >= 9


STATES = ("Warm up", "Drop and stick", "Rest", "Change over", "Side plank", "lead", "Cool down", "All done", "stop")


def faults(page: Page, part: str = "html", **chosen: object) -> list[tuple[str, str]]:
    """Return what axe-core finds in a part of a page."""
    violations = Axe().run(page, part, {"resultTypes": ["violations"], **chosen}).response["violations"]
    return [(violation["id"], violation["nodes"][0]["html"]) for violation in violations]


def test_axe_finds_no_violation_in_any_state(browser: Browser, address: str) -> None:
    """Every kind of step, with its clock standing, running or over, passes axe-core's rules.

    At night, that of contrast: other colours come then, and nothing else.
    """
    context = browser.new_context(viewport=PHONE, service_workers="block", reduced_motion="reduce")
    training = Training(context.new_page(), address, still=False)
    found = {}
    for state in STATES:
        if state == "lead":
            training.press()
        elif state == "stop":
            training.page.get_by_role("button", name="Stop").click()
        else:
            training.go_to(state)
        if state == "Rest":
            training.passes(200)
        found[state] = faults(training.page)
        training.page.emulate_media(color_scheme="dark")
        found[f"{state}, at night"] = faults(training.page, ".sw-session", runOnly=["color-contrast"])
        training.page.emulate_media(color_scheme="light")
        if state == "lead":
            training.press()
    context.close()

    assert {state: bad for state, bad in found.items() if bad} == {}
