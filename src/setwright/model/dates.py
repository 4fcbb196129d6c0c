"""Days, times of day and time zones as a coach writes them."""

import re
from datetime import date, time
from typing import Annotated, Any
from zoneinfo import ZoneInfo

from pydantic import PlainSerializer, PlainValidator, WithJsonSchema

from setwright.model.base import refuse
from setwright.model.units import as_text, shown


def parse_day(value: Any) -> date:
    """Return a calendar day from year-month-day (ISO 8601), of the years 1900 to 2200."""
    if isinstance(value, date):
        return value
    text, hint = str(value).strip(), "write year-month-day, such as 2027-07-05"
    if not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
        refuse("not-a-date", f"{shown(text)} is not a date", hint)
    try:
        day = date.fromisoformat(text)
    except ValueError:
        refuse("not-a-date", f"{shown(text)} is not in the calendar", hint)
    if not 1900 <= day.year <= 2200:
        refuse("not-a-date", f"{shown(text)} is in another age", "check the year")
    return day


Day = Annotated[date, PlainValidator(lambda v: parse_day(v)), WithJsonSchema({"type": "string", "format": "date"})]
"""A calendar day."""

_CLOCK = re.compile(r"(?P<h>[01]?[0-9]|2[0-3])[:.h](?P<m>[0-5][0-9])\s*(?P<half>am|pm)?", re.IGNORECASE)


def parse_clock(value: Any) -> time:
    """Return a time of day from hours and minutes on a clock of 24 hours, such as ``18:30``."""
    if isinstance(value, time):
        return value
    text = as_text(value, "not-a-clock-time", "a time of day", "write hours and minutes, such as '18:30'")
    if re.fullmatch(r"([01][0-9]|2[0-3]):[0-5][0-9]", text):
        return time.fromisoformat(text)
    hint = "write hours and minutes of 24 hours, such as '18:30'"
    if found := _CLOCK.fullmatch(text):
        later = 12 if (found["half"] or "").lower() == "pm" and int(found["h"]) < 12 else 0
        hint = f"write '{int(found['h']) + later:02}:{found['m']}'"
    refuse("not-a-clock-time", f"{shown(text)} is not a time of day", hint)


ClockTime = Annotated[
    time,
    PlainValidator(lambda v: parse_clock(v)),
    PlainSerializer(lambda v: v.isoformat("minutes")),
    WithJsonSchema({"type": "string", "pattern": "^([01][0-9]|2[0-3]):[0-5][0-9]$"}),
]
"""A time of day on the club's clock."""


def parse_time_zone(value: Any) -> str:
    """Return the name of a time zone of the IANA database, such as ``Europe/Vienna``."""
    hint = "write a name of the IANA time zone database, such as 'Europe/Vienna'"
    text = as_text(value, "not-a-time-zone", "a time zone", hint)
    try:
        ZoneInfo(text)
    except (KeyError, ValueError, OSError):  # no such name, no name at all, or a folder of the database
        refuse("not-a-time-zone", f"{shown(text)} is not a time zone", hint)
    return text


TimeZone = Annotated[
    str, PlainValidator(lambda v: parse_time_zone(v)), WithJsonSchema({"type": "string", "pattern": "^[A-Za-z].*$"})
]
"""A place's clock, with its summer time."""
