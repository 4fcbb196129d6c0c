"""A comparison of two states as one HTML page that stands by itself, for an artifact or an attachment."""

from jinja2 import Environment, PackageLoader, StrictUndefined

from setwright.review.compare import Comparison, weeks_in_words
from setwright.review.report import summary


def as_html(change: Comparison, old: str, new: str) -> str:
    """Return a whole document; it loads nothing and runs nothing."""
    environment = Environment(
        loader=PackageLoader("setwright.pages"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.globals.update(weeks_in_words=weeks_in_words, summary=summary)
    return environment.get_template("comparison.html.jinja").render(change=change, old=old, new=new)
