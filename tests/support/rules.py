"""What the checks say of their own examples: see ``setwright.checks.trial``."""

from setwright.checks.example import Example
from setwright.checks.trial import verdict_of


def said(example: Example) -> list[str]:
    """Return the ids of all checks that speak on an example."""
    return sorted(finding.rule for finding in verdict_of(example).findings)
