"""Slips of keyboard, editor and merge, at random: one file of a programme in, something like it out.

Every mutation takes a source of randomness and the file's bytes and returns bytes. They need not make sense.
"""

import re
from collections.abc import Callable, Iterator, Sequence
from random import Random
from typing import Any, Final

import yaml

Mutation = Callable[[Random, bytes], bytes]

_SIGNS: Final = ("\n", " ", "  ", "\t", ":", ": ", "-", "- ", "?", ",", "[", "]", "{", "}", "#", " #", "&a", "*a")
_MORE_SIGNS: Final = ("!", "!!x", "|", ">", ">-", "'", '"', "%", "@", "`", "\\", "~", "<", "<<: ", "---", "...", "=")
_WORDS: Final = (
    *(
        "name",
        "weeks",
        "add",
        "up_to",
        "exercise",
        "sessions",
        "kit",
        "load",
        "reps",
        "hold",
        "null",
        "true",
        "no",
        "on",
    ),
    *(
        "squat",
        "legs",
        "warm",
        "8",
        "30 s",
        "12 kg",
        "15 %",
        "15 % bodyweight",
        "per hand",
        "RPE 7",
        "2 weeks",
        "3-0-1-0",
    ),
    *(
        "tuesday",
        "2027-03-01",
        "light band",
        "70 % 1RM",
        "3 reps in reserve",
        "2 min",
        "20 m",
        "40 cm",
        "bodyweight",
        "X",
    ),
)
_TOKENS: Final = (*_SIGNS, *_MORE_SIGNS, *_WORDS)
_NUMBERS: Final = (
    *("0", "-1", "00", "007", "1", "2", "99", "104", "105", "1000", "1001", "999999", "1000000", "9" * 20, "9" * 5000),
    *(
        "0.5",
        ".5",
        "5.",
        "0.0001",
        "0.00001",
        "1e308",
        "1e-9",
        "1e3",
        "nan",
        "inf",
        "-inf",
        "+3",
        "0x10",
        "0o7",
        "1_000",
    ),
    *("5,5", "1/2", "½", "²", "٣", "８", "१", "12:30", "1 000", "1'000", "−5", "∞", "0b1", "1.2.3", "--", ""),
)
_DATES: Final = (
    *("2027-02-29", "2028-02-29", "2027-13-01", "2027-00-10", "2027-3-1", "1900-01-01", "1899-12-31", "2200-12-31"),
    *(
        "2201-01-01",
        "0000-00-00",
        "9999-12-31",
        "2027-03-01T00:00:00Z",
        "01.03.2027",
        "3/1/2027",
        "20270301",
        "2027-W09-1",
    ),
    *("2027-060", "-2027-03-01", "+12027-03-01", "２０２７-03-01", "today", "2027-03-0१", "2027-03-01 ", "2027‑03‑01"),
)
_ODD: Final = (
    *("\x00", "\x07", "\x1b[31m", "\x7f", "\x85", "\xa0", "\xad", "\u0301", "\u200b", "\u200d", "\u200e", "\u2028"),
    *("\u2029", "\u202e", "\u2066", "\u3000", "\ufeff", "\ufffd", "\ufffe", "\U0001f600", "\U000e0001", "\U0010ffff"),
    *(
        "é",
        "e\u0301",
        "İ",
        "ı",
        "ß",
        "ﬁ",
        "Ⅷ",
        "：",
        "－",
        "’",
        "“",
        "…",
        "中文",
        "שלום",
        "ا",
        "🏋🏽‍♀️",
        "\r",
        "\r\n",
        "\x0b",
    ),
)
_NUMBER = re.compile(r"[0-9]+(?:\.[0-9]+)?")
_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_KEY = re.compile(r"(?<![\w-])[a-z_]+(?=:(?:\s|$))")
_TOKEN = re.compile(r"\w+|\s+|[^\w\s]")


def mutated(rng: Random, raw: bytes) -> tuple[str, bytes]:
    """Return the kind of a mutation, and a file after one of it, or now and then after two or three."""
    kind = rng.choice(list(MUTATIONS))
    for _ in range(rng.choice((1, 1, 1, 2, 3))):
        raw = MUTATIONS[kind](rng, raw)
    return kind, raw


def _of_bytes(rng: Random, raw: bytes) -> bytes:
    at, length = rng.randrange(len(raw) + 1), rng.choice((0, 1, 1, 2, 8, 60, 2000))
    noise = rng.randbytes(rng.choice((0, 1, 1, 3, 12, 200)))
    copied = raw[at : at + length] if rng.random() < 0.2 else b""
    return raw[:at] + copied + noise + raw[at + length :]


def _of_tokens(rng: Random, raw: bytes) -> bytes:
    tokens = _TOKEN.findall(_text(raw)) or [""]
    at, other = rng.randrange(len(tokens)), rng.randrange(len(tokens))
    match rng.randrange(5):
        case 0:
            del tokens[at]
        case 1:
            tokens[at], tokens[other] = tokens[other], tokens[at]
        case 2:
            tokens.insert(at, tokens[other])
        case 3:
            tokens[at] = rng.choice(_TOKENS)
        case _:
            tokens.insert(at, rng.choice(_TOKENS))
    return _bytes("".join(tokens))


def _of_keys(rng: Random, raw: bytes) -> bytes:
    text = _text(raw)
    found = list(_KEY.finditer(text))
    if not found:
        return _of_tokens(rng, raw)
    one, other = rng.choice(found), rng.choice(found)
    letters = list(one[0])
    at = rng.randrange(len(letters))
    match rng.randrange(6):
        case 0:
            del letters[at]
        case 1:
            letters.insert(at, rng.choice("abcdefgh_ -A1"))
        case 2:
            letters = list(other[0])
        case 3:
            letters[at:] = list(reversed(letters[at:]))
        case 4:
            letters = list(one[0].upper())
        case _:  # the whole line once more
            line = text[text.rfind("\n", 0, one.start()) + 1 :].partition("\n")[0]
            return _bytes(
                text[: one.start()].rpartition("\n")[0] + "\n" + line + "\n" + line + "\n" + text[one.end() :]
            )
    return _bytes(text[: one.start()] + "".join(letters) + text[one.end() :])


def _of_structure(rng: Random, raw: bytes) -> bytes:
    try:
        whole = yaml.load(raw, Loader=yaml.BaseLoader)  # noqa: S506 - texts alone
    except (yaml.YAMLError, UnicodeDecodeError):
        return _of_tokens(rng, raw)
    ways = list(_ways(whole))
    if not ways:
        return _of_tokens(rng, raw)
    *way, last = rng.choice(ways)
    inner, other = _at(whole, way), _at(whole, rng.choice(ways))
    match rng.randrange(8):
        case 0:
            del inner[last]
        case 1:
            inner[last] = other
        case 2:
            inner[last] = [inner[last]]
        case 3:
            inner[last] = {rng.choice(_WORDS): inner[last]}
        case 4:
            inner[last] = rng.choice(([], {}, "", None, [[]], [None], {"": ""}, "x" * rng.choice((80, 1300, 5000))))
        case 5 if isinstance(inner, list):
            rng.shuffle(inner)
        case 5 | 6 if isinstance(inner, list):
            inner.extend(inner[:] * rng.choice((1, 3, 20)))
        case _:
            inner[last] = rng.choice((*_WORDS, *_NUMBERS))
    dumped = yaml.dump(whole, allow_unicode=True, sort_keys=False, default_flow_style=rng.choice((None, True, False)))
    return _bytes(dumped)


def _of_numbers(rng: Random, raw: bytes) -> bytes:
    return _replaced(rng, raw, _NUMBER, _NUMBERS)


def _of_dates(rng: Random, raw: bytes) -> bytes:
    return _replaced(rng, raw, _DATE, _DATES)


def _of_unicode(rng: Random, raw: bytes) -> bytes:
    text = _text(raw)
    at = rng.randrange(len(text) + 1)
    return _bytes(text[:at] + rng.choice(_ODD) * rng.choice((1, 1, 1, 40)) + text[at + rng.choice((0, 0, 1)) :])


def _of_repeats(rng: Random, raw: bytes) -> bytes:
    """Far too much of something: a line, an item, a sign, a level."""
    text = _text(raw)
    times = rng.choice((12, 60, 300, 2000, 12_000))
    at = rng.randrange(len(text) + 1)
    lines = text.split("\n")
    match rng.randrange(6):
        case 0:
            row = rng.randrange(len(lines))
            return _bytes("\n".join([*lines[:row], *[lines[row]] * times, *lines[row:]]))
        case 1:
            first = rng.randrange(len(lines))
            last = first + rng.randrange(1, 12)
            return _bytes("\n".join([*lines[:first], *lines[first:last] * min(times, 300), *lines[last:]]))
        case 2:
            return _bytes(
                text[:at] + rng.choice((*_SIGNS, *_MORE_SIGNS, "](", "[a](exercise:b) ", "a ")) * times + text[at:]
            )
        case 3:
            items = ", ".join(f"{rng.choice(_WORDS)}{n}" for n in range(times))
            return _bytes(_KEY.sub(lambda key: f"{key[0]}: [{items}]\nx", text, count=1))
        case 4:
            return _bytes(text + "\n" + "".join(f"key{n}: {rng.choice(_WORDS)}\n" for n in range(times)))
        case _:
            return _bytes(text[:at] + "".join(f"\n{'  ' * n}- a:" for n in range(min(times, 200))) + text[at:])


def _replaced(rng: Random, raw: bytes, pattern: re.Pattern[str], others: Sequence[str]) -> bytes:
    text = _text(raw)
    found = list(pattern.finditer(text))
    if not found:
        return _of_numbers(rng, raw) if pattern is _DATE else _of_tokens(rng, raw)
    one = rng.choice(found)
    return _bytes(text[: one.start()] + rng.choice(others) + text[one.end() :])


def _ways(value: Any, way: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    pairs = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for step, inner in pairs:
        yield (*way, step)
        if len(way) < 30:
            yield from _ways(inner, (*way, step))


def _at(whole: Any, way: Sequence[Any]) -> Any:
    for step in way:
        whole = whole[step]
    return whole


def _text(raw: bytes) -> str:
    return raw.decode("utf-8", "surrogateescape")


def _bytes(text: str) -> bytes:
    return text.encode("utf-8", "surrogateescape")


MUTATIONS: Final[dict[str, Mutation]] = {
    "bytes": _of_bytes,
    "tokens": _of_tokens,
    "keys": _of_keys,
    "structure": _of_structure,
    "numbers": _of_numbers,
    "dates": _of_dates,
    "unicode": _of_unicode,
    "repeats": _of_repeats,
}
"""Every kind of mutation, by name."""
