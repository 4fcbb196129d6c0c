"""A sheet before it is printed: a template and the data that it shows."""

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

Data = Mapping[str, Any]
"""What a template reads: texts, numbers, lists and mappings, as JSON knows them. Texts are data, never markup."""


@dataclass(frozen=True)
class Sheet:
    """A PDF to come: its path in the tree, the template that lays it out, and everything that the template shows."""

    path: str
    template: str
    data: Data

    @cached_property
    def text(self) -> str:
        """The data as JSON; the same data gives the same text."""
        return json.dumps(self.data, ensure_ascii=False, sort_keys=True, separators=(",", ":"))

    def digest(self, press: str) -> str:
        """Return a digest of all that the PDF depends on; ``press`` stands for templates, fonts and typesetter."""
        return hashlib.sha256(f"{press}\n{self.template}\n{self.text}".encode()).hexdigest()
