"""The notice that every page carries and no file can remove."""

from typing import Final

NOTICE: Final = (
    "This is general training information, not medical advice. It cannot see you move. If you are ill, injured, "
    "pregnant, new to exercise or in doubt, ask a doctor or a physiotherapist before you start. Stop at pain, "
    "dizziness or unusual breathlessness. What a clinician who knows you says comes first, and so do your local codes "
    "of practice."
)
