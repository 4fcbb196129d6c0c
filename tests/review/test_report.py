"""A comparison in words: every line of it, for a terminal and for the page of a pull request."""

from dataclasses import replace

from setwright.review.compare import (
    Comparison,
    DayChange,
    DoseChange,
    ExerciseChange,
    PartChange,
    SessionChange,
    TextChange,
)
from setwright.review.difference import rows
from setwright.review.parts import Line
from setwright.review.report import NOTHING, as_markdown, as_text

LIMIT = rows(
    [Line("limits load", "30 % bodyweight", "limits load")], [Line("limits load", "25 % bodyweight", "limits load")]
)
STEP = rows([], [Line("steps 2", "Stand | up.", "steps")])
CUE = rows([Line("cues 1", "Tall", "cues")], [])
NOTE = rows([Line("kit mat", "8", "kit mat")], [Line("kit mat", "6", "kit mat"), Line("about", "We row.", "about")])
EVERYTHING = Comparison(
    exercises=(
        ExerciseChange(
            "squat",
            "Goblet squat",
            "changed",
            (PartChange("limits", LIMIT), PartChange("cues", CUE), PartChange("text", STEP)),
        ),
        ExerciseChange("hop", "Hop", "added", ()),
    ),
    sessions=(
        SessionChange(
            "spring",
            "legs",
            (
                DoseChange("squat", "3 sets of 8 reps", "3 sets of 9 reps", (1, 2)),
                DoseChange("hop", "", "2 sets of 5 reps", (2,)),
                DoseChange("leap", "2 sets of 20 reps", "", (2,)),
            ),
            (("20 to 25 min", "25 to 30 min", (2,)),),
        ),
    ),
    days=(DayChange("spring", 2, "friday", "nothing", "legs, 2027-03-12"),),
    plans=(("autumn", "plan autumn is gone"),),
    names={"squat": "Goblet squat", "hop": "Hop"},
    texts=(TextChange("club", "changed", NOTE), TextChange("session hops", "added", ())),
)

TEXT = """\
2 exercises changed, 1 of them in the limits; 3 doses changed; 1 training day changed; 3 lines changed beside them.
  plan autumn is gone

Goblet squat (squat)
  limits load
    - 30 % bodyweight
    + 25 % bodyweight
  cues 1
    - Tall
  description: steps 2
    + Stand | up.

Hop (hop): added

club
  kit mat
    - 8
    + 6
  about
    + We row.

session hops: added

spring, legs
  Goblet squat, weeks 1 and 2
    - 3 sets of 8 reps
    + 3 sets of 9 reps
  Hop, week 2
    - not in the session
    + 2 sets of 5 reps
  leap, week 2
    - 2 sets of 20 reps
    + not in the session
  takes 25 to 30 min instead of 20 to 25 min, week 2
spring, week 2, friday: legs, 2027-03-12 instead of nothing
"""

MARKDOWN = """\
## What this does to members

2 exercises changed, 1 of them in the limits; 3 doses changed; 1 training day changed; 3 lines changed beside them.

- plan autumn is gone
### Goblet squat

| Part | Before | Now |
| --- | --- | --- |
| limits load | 30 % bodyweight | 25 % bodyweight |
| cues 1 | Tall |   |
| description: steps 2 |   | Stand \\| up. |

### Hop (added)

### Club

| Line | Before | Now |
| --- | --- | --- |
| kit mat | 8 | 6 |
| about |   | We row. |

### Session hops (added)

### legs in spring

| Exercise | Weeks | Before | Now |
| --- | --- | --- | --- |
| Goblet squat | weeks 1 and 2 | 3 sets of 8 reps | 3 sets of 9 reps |
| Hop | week 2 | not in the session | 2 sets of 5 reps |
| leap | week 2 | 2 sets of 20 reps | not in the session |
| *Time* | week 2 | 20 to 25 min | 25 to 30 min |

### Training days

| Plan | Week | Day | Before | Now |
| --- | --- | --- | --- | --- |
| spring | 2 | friday | nothing | legs, 2027-03-12 |

"""
NO_DAY = TEXT.split("spring, week 2, friday")[0].replace("1 training day changed", "0 training days changed")


def test_everything_that_changed_in_plain_lines() -> None:
    """Limits and texts come first, then doses, then days; what was not there has no line, or is said to be missing."""
    assert as_text(EVERYTHING) == TEXT


def test_everything_that_changed_in_tables() -> None:
    """A pull request shows the same as tables, whose cells hold no sign that would end them."""
    assert as_markdown(EVERYTHING) == MARKDOWN


def test_where_no_day_changed_nothing_is_said_of_days() -> None:
    """A heading without a table under it would make a reviewer look for more."""
    change = replace(EVERYTHING, days=())

    assert as_text(change) == NO_DAY
    assert "### Training days" not in as_markdown(change)


def test_each_kind_of_change_is_one() -> None:
    """A comparison is empty where nothing of all that changed, and only there."""
    nothing = Comparison((), (), (), (), {"squat": "Goblet squat"})
    fields = ("exercises", "sessions", "days", "plans", "texts")

    assert as_text(nothing) == as_markdown(nothing) == NOTHING + "\n"
    assert not any(replace(nothing, **{field: getattr(EVERYTHING, field)}).is_empty for field in fields)
