"""The columns of the programme as a table with a row for every set: names, kinds, and what they mean."""

from dataclasses import dataclass
from typing import Final, Literal

from setwright.wording.language import later

Kind = Literal["string", "integer", "decimal", "boolean", "date"]
"""What stands in a column, by the names that XML Schema gives its kinds."""


@dataclass(frozen=True, slots=True)
class Column:
    """A column; ``always`` says whether each row has a value in it, ``means`` is a sentence said later."""

    name: str
    kind: Kind
    means: str
    always: bool = True


COLUMNS: Final = (
    Column("plan", "string", later("id of the plan")),
    Column("week", "integer", later("week of the plan, counted from 1")),
    Column("place", "string", later("weekday, or session-1 where it is done on any day")),
    Column("date", "date", later("date for the plan's first start"), always=False),
    Column("session", "string", later("id of the session")),
    Column(
        "position",
        "integer",
        later("place in the list of the session, counted from 1; what is done instead has its own"),
    ),
    Column("exercise", "string", later("id of the exercise")),
    Column("name", "string", later("name of the exercise")),
    Column("choices", "string", later("who does it in the place of the one before: ids from club.yml"), always=False),
    Column("optional", "boolean", later("whether it may be left out")),
    Column("rounds", "boolean", later("whether its sets are rounds of a superset or circuit")),
    Column("sides", "string", later("both together, one at a time (the amount is that of each side) or alternating")),
    Column("set", "integer", later("the set, counted from 1")),
    Column("kind", "string", later("work, or ramp for a lighter set that leads up to it")),
    Column("low", "decimal", later("the least of the amount")),
    Column("high", "decimal", later("the most of the amount")),
    Column("unit", "string", later("unit of the amount: reps, s or cm")),
    Column("leave", "integer", later("repetitions to leave, where it is as many as possible"), always=False),
    Column("up_to", "integer", later("where as many as possible end in any case"), always=False),
    Column("load", "string", later("the load as the coach writes it; none is the body alone"), always=False),
    Column("load_number", "decimal", later("the load's number; none for a band"), always=False),
    Column("load_unit", "string", later("unit of the load"), always=False),
    Column("per_hand", "boolean", later("whether the load is that of each hand"), always=False),
    Column("feels", "string", later("how hard a set with its load should feel"), always=False),
    Column("tempo", "string", later("seconds down, pause, up, pause; x is as fast as control allows"), always=False),
    Column("rest_s", "integer", later("rest after the set, in seconds")),
    Column("every_s", "integer", later("how often a set starts, in seconds, where it goes by the clock"), always=False),
    Column("lasts_s", "integer", later("how long as many rounds as possible go on, in seconds"), always=False),
)
