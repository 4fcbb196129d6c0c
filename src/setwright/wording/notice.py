"""The notice that every page carries and no file can remove."""

from typing import Final

from setwright.wording.language import Language, later

NOTICE: Final = later(
    "This is general training information, not medical advice. It cannot see you move. If you are ill, injured, "
    "pregnant, new to exercise or in doubt, ask a doctor or a physiotherapist before you start. Stop at pain, "
    "dizziness or unusual breathlessness. What a clinician who knows you says comes first, and so do your local codes "
    "of practice."
)


def notice(language: Language) -> str:
    """Return the notice."""
    return language.say(NOTICE)
