"""Kit by a name for members: the club's own, or its id with spaces for dashes."""

from setwright.dose.resolve import resolve
from setwright.handouts.session import session_data
from setwright.handouts.writing import Desk
from setwright.outline.site import Site
from setwright.pages import exercise, index, session, settings
from setwright.pages.renderer import Renderer
from setwright.phone.session_data import data
from setwright.wording.language import ENGLISH
from setwright.wording.vocabulary import kit
from support import make

FILES = {
    "club": "{kit: {medicine-ball: [2 kg, 3 kg], straps: 2, mat: 4}, kit_names: {straps: sling mat}}",
    "exercises/lift": "kit: [medicine-ball, straps]",
    "sessions/only": "blocks: [{kind: straight, sets: 3, exercises: [{exercise: lift, reps: 8, load: 4 kg}]}]",
}


def test_a_dash_becomes_a_space_and_a_name_is_a_name() -> None:
    """Without a name of its own, kit is read by its id, words apart."""
    assert kit(ENGLISH, make.club(FILES["club"]), ["medicine-ball", "straps", "mat"]) == "medicine ball, sling mat, mat"


def test_members_read_no_id_of_kit_anywhere() -> None:
    """On the session, the exercise, the index, the settings and the sheet; what a script reads by, keeps the id."""
    made = make.programme(FILES)
    site = Site(made, resolve(made))
    renderer = Renderer(site)
    kinds = (session, exercise, index, settings)
    pages = "".join(renderer.render(page) for kind in kinds for page in kind.pages(site))
    first = next(site.plans[0].sessions)
    sheet = str(session_data(Desk(site), site.plans[0], first))

    for text in (pages, sheet):
        assert "medicine ball" in text.lower()
    assert "sling mat" in pages
    assert ">medicine-ball<" not in pages
    assert "medicine-ball" not in sheet
    assert data(site, site.plans[0], first).kit_names == {"medicine-ball": "medicine ball", "straps": "sling mat"}
