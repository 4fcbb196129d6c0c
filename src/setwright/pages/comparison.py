"""A comparison of two states as one HTML page that stands by itself, for an artifact or an attachment."""

from functools import partial

from jinja2 import Environment, PackageLoader, StrictUndefined

from setwright.review.compare import Comparison
from setwright.review.report import NOTHING, summary
from setwright.wording.language import ENGLISH
from setwright.wording.times import weeks_in_words


def as_html(change: Comparison, old: str, new: str) -> str:
    """Return a whole document; it loads nothing and runs nothing."""
    environment = Environment(
        loader=PackageLoader("setwright.pages"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.globals.update(weeks_in_words=partial(weeks_in_words, ENGLISH), summary=summary, nothing=NOTHING)
    return environment.get_template("comparison.html.jinja").render(change=change, old=old, new=new)
