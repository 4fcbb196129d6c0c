"""Errors for programmers and for how the tool is called. A coach's mistakes are findings, never exceptions."""


class SetwrightError(Exception):
    """Everything that this package raises on purpose."""


class ProjectError(SetwrightError):
    """The project around the programme cannot be used: no settings file, no plugin in it, an engine that stopped."""


class StoppedError(SetwrightError):
    """A run that was called rightly and cannot go on: a full disk, a folder without permission, another run at work."""
