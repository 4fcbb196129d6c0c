"""What was done is compared with the range: in the guide's last step and in the log."""

import json
import re
from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import Page, Route, expect

SESSION = "plans/relay/week-01/tuesday/"
ASKED = [{"low": 8, "high": 12}, {"low": 8, "high": 12}]


@pytest.mark.parametrize(
    ("done", "where"),
    [
        ([12, 12], "top"),
        ([13, 12], "top"),
        ([12, 11], "within"),
        ([8, 8], "within"),
        ([12, 7], "below"),
        ([12], None),
        ([None, 12], None),
        ([], None),
    ],
)
def test_where_sets_ended(run: Callable[..., Any], done: list[int | None], where: str | None) -> None:
    """All at the top, some below, or within; a missing set says nothing yet."""
    given = {"asked": ASKED, "done": done}
    line = "m => m.ended(given.asked, given.done.map(one => one ?? undefined)) ?? null"

    assert run("ranges", line, given) == where


def test_one_number_is_no_range(run: Callable[..., Any]) -> None:
    """Where a set asks for just 8, nothing is compared."""
    assert run("ranges", "m => m.ended(given, [8, 8]) ?? null", [{"low": 8, "high": 8}, {"low": 6, "high": 8}]) is None


def ranged(route: Route) -> None:
    """Serve the session with a range for its first exercise, a fixed weight, and the one after it."""
    answer = route.fetch()

    def edited(found: re.Match[str]) -> str:
        session = json.loads(found[2])
        item = session["blocks"][0]["items"][0]
        item["sets"] = [{"low": 6, "high": 8, "load": 0} for _ in item["sets"]]
        item["loads"] = [{"text": "12 kg", "weight": "12 kg", "kit": "kettlebell", "next_weight": "16 kg"}]
        return found[1] + json.dumps(session) + "</script>"

    body = re.sub(r"(<script[^>]*id=.?session.?[^>]*>)(.*?)</script>", edited, answer.text(), flags=re.S)
    route.fulfill(response=answer, body=body)


def test_all_sets_at_the_top_say_what_to_take_next_time(phone: Page, address: str) -> None:
    """At the end the next owned weight is named, in the member's unit too, and the log keeps the sentence."""
    phone.route(f"**/{SESSION}", ranged)
    phone.goto(f"{address}settings/")
    phone.locator("label[for='sw-lb']").click()
    phone.goto(address + SESSION)
    phone.locator(".sw-start").click()
    for _ in range(90):
        if phone.locator(".sw-s-finish").count():
            break
        title = phone.locator(".sw-s-title").inner_text()
        skip = phone.locator(".sw-s-buttons button", has_text="Skip")
        squat = title == "Goblet squat" or phone.locator(".sw-session").get_attribute("data-step") != "set"
        (phone.locator(".sw-s-main") if squat or not skip.count() else skip.last).click()
        phone.wait_for_timeout(450)  # two touches at once are a slip of the thumb

    said = "Goblet squat: all sets reached the top. Next time 16 kg (35.3 lb)."
    expect(phone.locator(".sw-s-next-time")).to_have_text(said)
    phone.locator(".sw-s-main").click()
    phone.goto(f"{address}log/")
    phone.locator(".sw-logged summary").first.click()
    expect(phone.locator(".sw-logged")).to_contain_text(said)
