"""A second pair of eyes: one rule a file, a registry, findings with severity and position."""
