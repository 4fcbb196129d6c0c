"""The page that leads to the programme as data, and says what each file is."""

from collections.abc import Iterator

from setwright.outline.addresses import DATA, REVIEW
from setwright.outline.set_table import COLUMNS
from setwright.outline.site import Site
from setwright.pages.page import Crumb, Page


def pages(site: Site) -> Iterator[Page]:
    """Yield the page."""
    say = site.language.say
    yield Page(
        path=DATA,
        title=say("The programme as data"),
        description=say("Every dose and every set of the programme in files that other programs read."),
        template="data.md.jinja",
        context={
            "command": "setwright resolve",
            "import_command": "setwright import",
            "columns": [(column, site.language.text(column.means)) for column in COLUMNS],
        },
        crumbs=(Crumb(say("Review"), REVIEW),),
        kind="data",
    )
