"""What the effort of a whole session feels like."""

from typing import Final

from setwright.wording.language import Language, later

_WORDS: Final = (
    later("like sitting still"),
    later("a stroll to the start"),
    later("you could go on all day"),
    later("warm, and chatting"),
    later("working, in whole sentences"),
    later("working, in short sentences"),
    later("you have to concentrate"),
    later("a few words at a time"),
    later("grim, but in control"),
    later("hardly anything left"),
    later("as hard as it can be"),
)


def effort(language: Language) -> tuple[str, ...]:
    """Return what each effort from 0 to 10 feels like. Our own words: the best-known printed scales are licensed."""
    return tuple(language.say(words) for words in _WORDS)
