"""What a club writes, out again in open forms: every text and dose as JSON with its schema, every set as a table."""

from typing import Final

from setwright.feeds import plan_table, separated
from setwright.feeds.sets import rows
from setwright.feeds.workbook import workbook
from setwright.outline.feeds import METADATA, PROGRAMME, SCHEMA, SETS, WORKBOOK, table_path
from setwright.outline.site import Site
from setwright.review.state import state_of
from setwright.review.written_state import as_json, schema, written

FILES: Final = (PROGRAMME, SCHEMA, SETS, METADATA, WORKBOOK)
"""Those of the whole programme; each plan has a table beside them."""


def files(site: Site) -> dict[str, bytes]:
    """Return the files by path; the same programme gives the same bytes."""
    state = written(state_of(site.programme, site.plans))
    table = tuple(rows(state))
    made = (
        as_json(state).encode(),
        schema().encode(),
        separated.values(table),
        separated.metadata(site.programme.club.name, site.language),
        workbook(table, site.language),
    )
    tables = {table_path(plan.ident): plan_table.values(plan, site.programme) for plan in site.plans}
    return dict(zip(FILES, made, strict=True)) | tables
