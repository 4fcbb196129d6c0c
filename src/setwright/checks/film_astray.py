"""A session's film that lacks an exercise of the session, or has one that is gone from it.

Compares the parts of each film with the session's exercises and what may be done in their place.

Why it matters: a member who looks for a movement finds none, or trains one that the coach took out.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject

ID = "film-astray"
SEVERITY = "warning"
SOURCE = COMMON

_FILM = "film: 'https://films.example.org/legs', name: Legs, lasts: 5 min"

BAD: Example = {"sessions/legs": f"films: [{{{_FILM}, parts: [{{exercise: goblet-squat, at: 0 s}}]}}]"}
GOOD: Example = {
    "sessions/legs": f"films: [{{{_FILM}, parts: [{{exercise: goblet-squat, at: 0 s}}, "
    "{exercise: step-down, at: 2 min}]}]"
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each part that is gone, and one for each film that lacks exercises."""
    for ident, session in subject.programme.sessions.items():
        main = [written.exercise for block in session.blocks for written in block.exercises]
        all_of_it = {written.exercise for block in session.blocks for _, written in block.prescriptions()}
        for number, film in enumerate(session.films):
            for index, part in enumerate(film.parts):
                if part.exercise not in all_of_it:
                    yield Doubt(
                        subject.at(f"sessions/{ident}.yml", "films", number, "parts", index, "exercise"),
                        f"the film shows {part.exercise}, which is not in this session",
                        "take the part out, or film the session anew",
                        session.accept,
                    )
            shown = {part.exercise for part in film.parts}
            lacking = [one for one in dict.fromkeys(main) if one not in shown]
            if lacking:
                yield Doubt(
                    subject.at(f"sessions/{ident}.yml", "films", number),
                    f"the film does not show {', '.join(lacking)}",
                    "say where each begins, or film what is missing",
                    session.accept,
                )
