"""A club's own regions: they count as what they belong to, and pages show them by their own word."""

from setwright.dose.exposure import week_exposure
from setwright.dose.resolve import resolve
from setwright.outline.site import Site
from setwright.pages import index
from setwright.pages.renderer import Renderer
from setwright.source.suggest import which_word
from setwright.wording.language import ENGLISH
from setwright.wording.vocabulary import facts
from support import make

FILES = {
    "club": "regions: {neck-and-jaw: neck, upper chest: chest}",
    "exercises/lift": "regions: {main: [neck-and-jaw, upper chest], also: [chest, lats]}",
}


def test_an_own_region_counts_as_the_one_that_it_belongs_to() -> None:
    """Three sets count whole for neck and chest; the chest, which also helps, is not counted twice."""
    made = make.programme(FILES)
    week = resolve(made)[0].weeks[0]

    assert week_exposure(week, made).by_region == {"neck": 3, "chest": 3, "lats": 1.5}


def test_two_own_regions_of_one_count_once() -> None:
    """A set of an exercise for two parts of the chest is one set for the chest."""
    made = make.programme(
        {
            "club": "regions: {upper chest: chest, lower chest: chest}",
            "exercises/lift": "regions: {main: [upper chest, lower chest]}",
        }
    )

    assert week_exposure(resolve(made)[0].weeks[0], made).by_region == {"chest": 3}


def test_pages_show_a_region_by_its_own_word() -> None:
    """On the exercise and among the regions to find by, with what it counts as."""
    made = make.programme(FILES)
    site = Site(made, resolve(made))
    page = next(page for page in index.pages(site) if page.kind == "find")
    text = Renderer(site).render(page)

    assert (
        dict(facts(ENGLISH, made.club, made.exercises["lift"]))["Works"]
        == "neck and jaw, upper chest; also chest, lats"
    )
    assert 'id="region-neck-and-jaw"' in text
    assert "Neck and jaw" in text
    assert "counts as neck" in text


def test_a_slip_with_nothing_near_lists_the_words() -> None:
    """'chin' is near no region: all are listed; 'lowerback' is near one."""
    known = ("neck", "lower back", "chest", "shin")

    assert which_word("face", known) == "one of: neck, lower back, chest, shin"
    assert which_word("lowerback", known) == "did you mean 'lower back'?"
