"""What a finger touches on members' pages is 44 px high, or has that much room."""

import pytest
from playwright.sync_api import Page

from support.site import KINDS

SMALL = """() => {
  const touched = '.md-main :is(a[href], button, select, input, summary), .sw-destinations a';
  const seen = [...document.querySelectorAll(touched)]
    .filter((one) => one.checkVisibility({visibilityProperty: true, opacityProperty: true}));
  const inSentence = (one) => {
    if (one.tagName !== 'A' || getComputedStyle(one).display !== 'inline') return false;
    const texts = [...one.parentElement.childNodes].filter((other) => other.nodeType === 3);
    return texts.some((other) => other.textContent.trim().length > 2);
  };
  const boxOf = (one) => {
    const own = one.getBoundingClientRect();
    if (!['radio', 'checkbox'].includes(one.type)) return own;
    const label = one.labels[0]?.getBoundingClientRect() ?? own;
    const [left, right] = [Math.min(own.left, label.left), Math.max(own.right, label.right)];
    const [top, bottom] = [Math.min(own.top, label.top), Math.max(own.bottom, label.bottom)];
    return {left, right, top, bottom, width: right - left, height: bottom - top};
  };
  const all = seen.filter((one) => !inSentence(one)).map((one) => [one, boxOf(one)]).filter(([, box]) => box.width);
  const hasRoom = (one, box) => {
    const middle = (box.top + box.bottom) / 2;
    const [top, bottom] = [middle - 22, middle + 22];
    return all.every(([other, its]) => other === one || other.contains(one) || one.contains(other) ||
      its.bottom <= top + 0.5 || its.top >= bottom - 0.5 || its.right <= box.left || its.left >= box.right);
  };
  return all.filter(([one, box]) => box.height < 43.5 && !hasRoom(one, box))
    .map(([one, box]) => `${one.tagName} ${one.textContent.trim().slice(0, 30)} ${Math.round(box.height)}`);
}"""

MEMBERS = (
    "home", "plans", "plan", "week", "exercise", "exercises", "find", "warm-ups", "warm-up", "cool-downs", "cool-down",
    "safety", "settings", "log", "offline", "more",
)  # fmt: skip


@pytest.mark.parametrize("kind", MEMBERS)
def test_targets_are_as_high_as_a_finger(phone: Page, address: str, kind: str) -> None:
    """Each link, button and field outside of a sentence (WCAG 2.2, 2.5.5 at level AAA, with the room of 2.5.8)."""
    phone.set_viewport_size({"width": 360, "height": 740})
    phone.goto(address + KINDS[kind])
    phone.wait_for_load_state("networkidle")

    assert phone.evaluate(SMALL) == []
