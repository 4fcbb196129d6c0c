"""A plan's page: twelve weeks within two screens of a phone, the numbers of the bars, and where the member is."""

from playwright.sync_api import Browser, expect

from .conftest import Look

PLAN = "plans/relay/"
PHONE = (390, 844)


def test_twelve_weeks_take_two_screens_of_a_phone(look: Look) -> None:
    """From the first phase's table to the end of the last, what the phases are for between them."""
    page = look(PLAN, PHONE)
    boxes = [one.bounding_box() for one in page.locator("table:has(> tbody > tr[data-week])").all()]
    first, last = boxes[0], boxes[-1]
    assert first is not None
    assert last is not None

    assert page.locator("tr[data-week]").count() == 12
    assert last["y"] + last["height"] - first["y"] <= 2 * PHONE[1]


def test_below_each_bar_stand_its_sets_and_its_week(look: Look) -> None:
    """The numbers are those of the rows, so that no bar has to be guessed."""
    page = look(PLAN, PHONE)
    below = [text.split() for text in page.locator("li[data-week]").all_inner_texts()]
    rows = page.locator("tr[data-week] > td:last-child").all_inner_texts()

    assert [sets for sets, _ in below] == [row.split()[0] for row in rows]
    assert [week for _, week in below] == [str(week) for week in range(1, 13)]
    assert page.locator("rect").count() == len(below)


def test_the_members_week_is_marked(browser: Browser, address: str) -> None:
    """On a day in week 7 that row says so, and no other; after the plan none does."""
    context = browser.new_context(viewport={"width": PHONE[0], "height": PHONE[1]}, service_workers="block")
    page = context.new_page()
    page.goto(f"{address}{PLAN}?on=2027-08-20")
    here = page.locator("tr[aria-current='date']")
    expect(here).to_have_count(1)
    expect(here).to_contain_text("Week 7")
    expect(here).to_contain_text("you are here")
    expect(page.locator("li[aria-current='date']")).to_contain_text("7")
    page.goto(f"{address}{PLAN}?on=2028-08-20")
    expect(page.get_by_role("heading", name="My weeks")).to_be_visible()
    expect(here).to_have_count(0)
    context.close()
