"""Setwright: a club's strength programme, from YAML to a site that members train from."""

__version__ = "0.1.0"
