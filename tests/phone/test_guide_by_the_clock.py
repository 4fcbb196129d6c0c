"""The guided session with warm-up sets, an open-ended set, a start every minute and as many rounds as possible."""

from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

from support.serving import served
from support.shared import made_once
from support.small import setwright, small_project

LEGS = """
name: Legs
aim: Legs that push.
blocks:
  - kind: straight
    name: Heavy
    rest: 2 min
    exercises:
      - {exercise: squat, reps: [5, as many as possible], leave: 2 reps, up_to: 12, load: 12 kg, ramp: 2}
  - kind: straight
    name: Minutes
    every: 1 min
    sets: 3
    exercises: [{exercise: squat, reps: 5, load: 10 kg}]
  - kind: circuit
    name: Beat
    every: 1 min
    rounds: 1
    exercises:
      - {exercise: plank, hold: 40 s}
      - {exercise: squat, reps: 5, load: 4 kg}
  - kind: circuit
    name: Rounds
    rounds: as many as possible
    for: 3 min
    up_to: 4
    exercises:
      - {exercise: squat, reps: 5, load: 8 kg}
      - {exercise: row, reps: 10, load: light band}
"""
SLIP_S = 0.4
"""Two touches closer than this are one slip of the thumb."""

PAGE = "plans/regatta/week-01/tuesday/"


def _project(folder: Path) -> None:
    project = small_project(folder)
    (project / "program" / "sessions" / "legs.yml").write_text(LEGS, "utf-8")
    done = setwright(project, "build")
    assert done.exit_code == 0, done.output + done.stderr


@pytest.fixture(scope="session")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Where a small club's site is served whose session runs by the clock."""
    with served(made_once(tmp_path_factory, "by-the-clock", _project) / "site") as address:
        yield address


class Training:
    """The guided session in the hands of a member."""

    def __init__(self, page: Page, address: str, still: bool = True) -> None:
        self.page = page
        page.clock.install(time=datetime(2027, 3, 2, 18))
        page.goto(address + PAGE)
        page.get_by_role("button", name="Start the guided session").click()
        page.locator(".sw-s-title").wait_for()
        if still:
            page.clock.pause_at(datetime(2027, 3, 2, 18, 1))

    def press(self, name: str = "") -> None:
        """Press the large button, not so fast again that it would count as a slip, or the one of that name."""
        button = self.page.get_by_role("button", name=name, exact=True) if name else self.page.locator(".sw-s-main")
        button.click()
        if not name:
            self.passes(SLIP_S)

    def passes(self, seconds: float) -> None:
        """Let time go by."""
        self.page.clock.run_for(int(seconds * 1000))

    def text(self, part: str) -> str:
        """Return a part of the screen."""
        found = self.page.locator(f".sw-session {part}")
        return found.first.inner_text() if found.count() else ""

    def reload(self) -> None:
        """Load the page anew; the session opens by itself."""
        self.page.reload()
        self.page.locator(".sw-session").wait_for()

    def to(self, block: str) -> None:
        """Skip until a block's first step is on the screen."""
        for _ in range(40):
            step = self.page.locator(".sw-session").get_attribute("data-step")
            if self.text(".sw-s-where").startswith(block) and step != "block":
                return
            skip = self.page.get_by_role("button", name="Skip", exact=True)
            skip.click() if skip.is_visible() else self.press()
        raise AssertionError(f"never came to {block}")

    def kept(self) -> str:
        """Return everything that the device keeps, as text."""
        return str(self.page.evaluate("() => Object.values(localStorage).join()"))

    def logged(self) -> list[tuple[str, int, int, str]]:
        """Return name, set, amount and load of every set in the log."""
        code = """() => Object.keys(localStorage).filter((key) => key.includes("log/"))
          .flatMap((key) => JSON.parse(localStorage[key]).sets)
          .map((one) => [one.name, one.set, one.amount, one.load])"""
        return [tuple(one) for one in self.page.evaluate(code)]


@pytest.fixture
def training(phone: Page, address: str) -> Training:
    return Training(phone, address)


def test_warm_up_sets_are_named_and_not_logged(training: Training) -> None:
    """Two sets lead up to the first one, with their own weights; the log begins with the working set."""
    assert training.text(".sw-s-where") == "Heavy · Warm-up set 1 of 2"
    assert training.text(".sw-s-load") == "6 kg"
    training.press()
    training.press()
    assert training.text(".sw-s-where") == "Heavy · Warm-up set 2 of 2"
    assert training.text(".sw-s-load") == "8 kg"  # 75 % of 12 kg are 9 kg, between two owned weights: the lighter
    training.press()
    training.press()
    assert training.text(".sw-s-where") == "Heavy · Set 1 of 2"
    training.press()

    assert [(number, load) for _, number, _, load in training.logged()] == [(1, "12 kg")]


def test_an_open_set_asks_for_its_number(training: Training) -> None:
    """Without a number it does not go on; with one, the log has it, and 1RM is kept only where the member says so."""
    for _ in range(6):
        training.press()
    assert "as many as possible" in training.text(".sw-amount")
    training.press()
    assert training.text(".sw-s-where") == "Heavy · Set 2 of 2"
    expect(training.page.get_by_label("Reps done")).to_have_attribute("aria-invalid", "true")
    training.page.get_by_label("Reps done").fill("8")
    training.press()

    assert training.logged()[-1] == ("Squat with a kettlebell", 2, 8, "12 kg")
    offered = training.text(".sw-s-best:not([hidden])")
    assert "By this set your 1RM is between" in offered
    assert '"reps":8' not in training.kept()
    training.press("Keep it as my best lift")
    assert '"reps":8' in training.kept()


@pytest.mark.parametrize(("count", "offered"), [("1", False), ("2", True), ("10", True), ("11", False)])
def test_the_formulas_hold_from_two_to_ten(training: Training, count: str, offered: bool) -> None:
    """Outside of that, nothing is offered."""
    for _ in range(6):
        training.press()
    training.page.get_by_label("Reps done").fill(count)
    training.press()

    assert training.page.locator(".sw-s-best").first.is_visible() == offered


def test_a_set_on_every_full_minute(training: Training) -> None:
    """The member starts the clock; each next set begins on the minute by itself, and after a reload, too."""
    training.to("Minutes")
    assert training.text(".sw-s-main") == "Start"
    training.press()
    training.passes(3 + 20)
    assert training.text(".sw-s-big") == "40"
    training.press()
    assert training.text(".sw-s-title") == "Rest"
    training.passes(39)
    assert training.text(".sw-s-title") == "Rest"
    training.passes(2)
    assert training.text(".sw-s-where") == "Minutes · Set 2 of 3"

    training.reload()
    assert training.text(".sw-s-where") == "Minutes · Set 2 of 3"
    training.passes(14)
    assert training.text(".sw-s-big") in ("45", "44", "43")


def test_who_is_late_waits_for_the_next_minute(training: Training) -> None:
    """A set of 70 seconds goes beyond the start of the next: that one is in fifty seconds."""
    training.to("Minutes")
    training.press()
    training.passes(3 + 70)
    training.press()
    assert training.text(".sw-s-title") == "Rest"
    training.passes(48)
    assert training.text(".sw-s-title") == "Rest"
    training.passes(3)
    assert training.text(".sw-s-where") == "Minutes · Set 2 of 3"


def test_exercises_take_turns_on_the_minute(training: Training) -> None:
    """A hold of 40 s ends by itself, the rest lasts until the minute, and then the next exercise begins."""
    training.to("Beat")
    training.press()
    training.passes(3 + 41)
    assert training.text(".sw-s-title") == "Rest"
    training.passes(20)
    assert training.text(".sw-s-title") == "Squat with a kettlebell"


def test_rounds_are_counted_by_a_tap(training: Training) -> None:
    """A running clock, a tap for each round, one taken back, a reload between; then they are in the log."""
    training.to("Rounds")
    training.press()
    training.passes(3 + 50)
    training.press()
    training.passes(40)
    training.press()
    training.press("One fewer")
    training.press()
    assert training.text(".sw-s-rounds").startswith("2 rounds done")
    training.reload()
    assert training.text(".sw-s-rounds").startswith("2 rounds done")
    training.passes(120)
    assert training.text(".sw-s-main") == "Go on"
    training.press("One more round")
    assert training.text(".sw-s-rounds").startswith("3 rounds done")
    training.press()

    done = [(name, number) for name, number, _, _ in training.logged() if "kettlebell" in name or "Row" in name]
    assert len(done) == 6
    assert {number for _, number in done} == {1, 2, 3}


def test_rounds_say_what_to_do_where_they_are_too_hard(training: Training) -> None:
    """Under each exercise of the screen that has one, its easier way is a tap away."""
    training.to("Rounds")
    easier = training.page.locator(".sw-s-turns .sw-s-easier")
    easier.first.locator("summary").click()

    assert easier.first.locator("p").inner_text().strip()


def test_the_rounds_end_where_the_coach_ends_them(training: Training) -> None:
    """After the fourth round, the button goes on."""
    training.to("Rounds")
    training.press()
    training.passes(5)
    for _ in range(4):
        training.press()

    assert training.text(".sw-s-rounds").startswith("4 rounds done")
    assert training.text(".sw-s-main") == "Go on"


@pytest.mark.parametrize("block", ["Heavy", "Minutes", "Rounds"])
def test_everyone_can_use_it(phone: Page, address: str, block: str) -> None:
    """No finding of the accessibility checker on any of the new screens."""
    training = Training(phone, address, still=False)
    training.to(block)
    found = Axe().run(training.page, context=".sw-session")

    assert found.violations_count == 0, found.generate_report()
