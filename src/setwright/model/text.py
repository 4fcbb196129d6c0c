"""Words as a coach writes them: names, prose and ids.

Prose is plain text with ``*emphasis*``, ``**strong emphasis**`` and ``[links](https://...)``, and nothing else.
A link may also lead to an exercise of the programme: ``[goblet squat](exercise:goblet-squat)``.
"""

import re
from dataclasses import dataclass
from typing import Annotated, Any, Final, Literal

from pydantic import PlainValidator, WithJsonSchema

from setwright.model.base import refuse
from setwright.model.units import shown

LONGEST_NAME: Final = 70
LONGEST_PROSE: Final = 1200
LONGEST_ID: Final = 250
"""A file's name on common disks has at most 255 bytes, its ending included."""

ID_PATTERN: Final = r"[a-z0-9]+(-[a-z0-9]+)*"

_TAG_LIKE = re.compile(r"<\s*[A-Za-z/!?]")
_ENTITY_LIKE = re.compile(r"&(#\d+|#x[0-9A-Fa-f]+|[A-Za-z][A-Za-z0-9]{1,31});")
_SPAN = re.compile(
    r"\[(?P<label>[^\[\]]+)\]\((?P<target>[^()\s]+)\)"
    r"|\*\*(?P<strong>[^*\s](?:[^*]*[^*\s])?)\*\*"
    r"|\*(?P<em>[^*\s](?:[^*]*[^*\s])?)\*"
)
_WEB_LINK = re.compile(r"https://[A-Za-z0-9.-]+(:\d+)?(/[^\s\"'<>\\]*)?")
_MAIL_LINK = re.compile(r"mailto:[^\s\"'<>\\]+@[A-Za-z0-9.-]+")
_LINK_HINT: Final = "a link is [words](address); the address starts with https://, mailto: or exercise:"
_EXERCISE_LINK = re.compile(rf"exercise:(?P<id>{ID_PATTERN})")


@dataclass(frozen=True, slots=True)
class Span:
    """A run of prose: plain text, emphasis, or a link with its target."""

    kind: Literal["text", "em", "strong", "link"]
    text: str
    target: str = ""


def _one_text(value: Any, wanted: str) -> str:
    if isinstance(value, list):
        refuse("not-text", f"expected {wanted}, not a list", "write it on one line, without a dash")
    if isinstance(value, dict):
        refuse("not-text", f"expected {wanted}, not keys and values", "if the text holds ': ', put it in quotes")
    text = " ".join(str(value).split())
    if not text:
        refuse("no-value", f"expected {wanted}, found nothing", "write it, or leave the key out")
    return text


def parse_name(value: Any) -> str:
    """Return a name on one line, of at most 70 characters, without markup."""
    text = _one_text(value, "a name")
    if len(text) > LONGEST_NAME:
        refuse("name-too-long", f"this name has {len(text)} characters, {LONGEST_NAME} are the most", "shorten it")
    if found := re.search(r"[<>{}\[\]`*\\|]", text):
        refuse("name-with-markup", f"a name cannot hold '{found[0]}'", "use plain words")
    return text


def parse_prose(value: Any) -> str:
    """Return prose with its white space folded; refuse HTML, unknown link targets and overlong text."""
    text = _one_text(value, "a text")
    if len(text) > LONGEST_PROSE:
        refuse("text-too-long", f"this text has {len(text)} characters, {LONGEST_PROSE} are the most", "shorten it")
    if found := _TAG_LIKE.search(text) or _ENTITY_LIKE.search(text):
        where = text[max(0, found.start() - 8) : found.end() + 12]
        refuse(
            "html-in-text",
            f"HTML is not used in texts: {shown(where)}",
            "write plain words; *this* gives emphasis and [this](https://...) a link",
        )
    for span in spans(text):
        if span.kind != "link" and (at := span.text.find("](")) >= 0:
            written = span.text[max(0, span.text.rfind("[", 0, at)) :]
            refuse("link-not-allowed", f"this link cannot be read: {shown(written)}", _LINK_HINT)
        if span.kind == "link" and not is_allowed_target(span.target):
            refuse(
                "link-not-allowed",
                f"this link cannot be followed: {shown(span.target)}",
                _LINK_HINT,
            )
    return text


def is_allowed_target(target: str) -> bool:
    """Say whether a link may lead there: a secure web page, a mail address or an exercise of the programme."""
    return any(p.fullmatch(target) for p in (_WEB_LINK, _MAIL_LINK, _EXERCISE_LINK))


def exercise_target(target: str) -> str | None:
    """Return the exercise id that a link leads to, or nothing for any other link."""
    match = _EXERCISE_LINK.fullmatch(target)
    return match["id"] if match else None


def spans(text: str) -> tuple[Span, ...]:
    """Split prose into runs of text, emphasis and links, in order; joined, they hold all the words."""
    found: list[Span] = []
    end = 0
    for match in _SPAN.finditer(text):
        if match.start() > end:
            found.append(Span("text", text[end : match.start()]))
        if match["label"] is not None:
            found.append(Span("link", match["label"], match["target"]))
        elif match["strong"] is not None:
            found.append(Span("strong", match["strong"]))
        else:
            found.append(Span("em", match["em"]))
        end = match.end()
    if end < len(text):
        found.append(Span("text", text[end:]))
    return tuple(found)


def plain(text: str) -> str:
    """Return prose without its markup, for a title, a feed or a search index."""
    return "".join(span.text for span in spans(text))


def parse_id(value: Any) -> str:
    """Return the id of a thing: its file's name without the ending."""
    text = _one_text(value, "an id")
    if not re.fullmatch(ID_PATTERN, text):
        refuse(
            "not-an-id",
            f"{shown(text)} is not an id",
            "an id is written in small letters, digits and hyphens, as a file's name is before '.yml'",
        )
    if len(text) > LONGEST_ID:
        refuse("not-an-id", f"{shown(text)} has {len(text)} characters, {LONGEST_ID} are the most", "shorten it")
    return text


Name = Annotated[
    str,
    PlainValidator(lambda v: parse_name(v)),
    WithJsonSchema({"type": "string", "minLength": 1, "maxLength": LONGEST_NAME}),
]
"""A short name in plain words."""

Prose = Annotated[
    str,
    PlainValidator(lambda v: parse_prose(v)),
    WithJsonSchema({"type": "string", "minLength": 1, "maxLength": LONGEST_PROSE}),
]
"""A text with emphasis and links."""

Id = Annotated[
    str, PlainValidator(lambda v: parse_id(v)), WithJsonSchema({"type": "string", "pattern": f"^{ID_PATTERN}$"})
]
"""The id of an exercise, a session, a routine or a reference."""
