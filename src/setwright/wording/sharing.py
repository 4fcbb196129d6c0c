"""How a group shares kit, in words: what runs short, how long somebody waits, and which order helps."""

from setwright.group.orders import Shared, Short
from setwright.model.club import Club
from setwright.wording.language import Language
from setwright.wording.times import duration


def runs_short(club: Club, short: Short) -> str:
    """Return what runs short: the 20 cm box; bands; weights of several sizes are said once."""
    name, whole = club.kit_name(short.kit), len(short.things)
    which = club.which(*short.things[0]) if whole == 1 else ""
    return f"{name} ({which})" if which else name


def how_to_share(language: Language, shared: Shared) -> str:
    """Return what a coach has the group do so that nobody waits long; nothing where the kit is enough as it is."""
    if shared.is_enough:
        return ""
    ways = []
    if shared.order == "halves":
        ways.append(language.say("halves in turn, one begins with the second exercise"))
    elif shared.order == "stations":
        ways.append(language.say("stations, somebody begins at each exercise"))
    if shared.lighter:
        ways.append(language.say("whoever finds the weight in use takes the next lighter one"))
    if shared.home:
        said = language.many("%(num)s does the home option", "%(num)s do the home option", shared.home)
        ways.append(said)
    return language.joined(ways) if ways else ""


def waiting(language: Language, shared: Shared) -> str:
    """Return how long somebody waits at most in the order proposed, and how long then all of it takes."""
    if not shared.longest_wait_s:
        return language.say("nobody waits")
    return language.say("the longest wait is %(time)s", time=duration(language, shared.longest_wait_s))


def in_a_sentence(language: Language, club: Club, shared: Shared) -> str:
    """Return all of it about one block; nothing where the kit is enough for everyone at once."""
    if shared.is_enough or not shared.short:
        return ""
    lacking = language.joined(runs_short(club, one) for one in shared.short[:3])
    said = language.say(
        "For %(people)s at once there is too little: %(kit)s. All together, somebody would wait %(time)s.",
        people=shared.people,
        kit=lacking,
        time=duration(language, shared.together_s),
    )
    way = how_to_share(language, shared)
    if not way:
        return said
    better = language.say("Better: %(way)s; then %(wait)s.", way=way, wait=waiting(language, shared))
    return f"{said} {better}"


def how_it_is_counted(language: Language, club: Club, people: int) -> str:
    """Return what the numbers stand on."""
    return language.say(
        "Counted for %(people)s people at the written pace. Nobody's weight is known: body weights lie evenly "
        "between %(low)s and %(high)s kg.",
        people=people,
        low=language.number(club.body_weight.from_),
        high=language.number(club.body_weight.to),
    )
