"""A loader that reads plain values as YAML 1.2.2 does (core schema, section 10.3.2), as editors do."""

import re
from typing import Any

import yaml


class _Loader(yaml.SafeLoader):
    """Knows null, truth values and numbers of the core schema, and no dates or other types."""

    yaml_implicit_resolvers: dict[str, list[tuple[str, re.Pattern[str]]]] = {}  # noqa: RUF012 - PyYAML's own attribute


for _tag, _pattern, _first in (
    ("null", r"~|null|Null|NULL|", "~nN"),
    ("bool", r"true|True|TRUE|false|False|FALSE", "tTfF"),
    ("int", r"[-+]?[0-9]+", "-+0123456789"),
    ("float", r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?", "-+.0123456789"),
):
    _Loader.add_implicit_resolver(f"tag:yaml.org,2002:{_tag}", re.compile(rf"(?:{_pattern})\Z"), [*_first])


def load(text: str) -> Any:
    """Return what a YAML 1.2 text holds."""
    return yaml.load(text, Loader=_Loader)  # noqa: S506 - a safe loader with fewer types
