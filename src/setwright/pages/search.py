"""The search's index where only some pages are built: what it held of the others stays."""

import json
from collections.abc import Set
from typing import Any, Final

INDEX: Final = "search/search_index.json"
"""Where the engine puts it in the site."""


def merged(before: bytes, now: bytes, built: Set[str]) -> bytes:
    """Return an index with all entries of ``now``, and those of ``before`` about pages that were not built meanwhile.

    Args:
        before: the index of the build before.
        now: the index of this one, which holds only pages that were built.
        built: the addresses of these.
    """
    whole: dict[str, Any] = json.loads(now)
    others = [entry for entry in json.loads(before)["docs"] if entry["location"].partition("#")[0] not in built]
    return json.dumps(whole | {"docs": [*others, *whole["docs"]]}, separators=(",", ":")).encode()
