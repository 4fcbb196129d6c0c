"""When the files behind each plan's calendar changed last, as the repository around the programme knows it."""

from pathlib import Path

from setwright.feeds.calendar import Revision
from setwright.model.plan import Plan
from setwright.model.programme import Programme
from setwright.source import git


def revisions(folder: Path, programme: Programme) -> dict[str, Revision]:
    """Return, by plan, when its files were committed last and how often; without those that no repository knows.

    Args:
        folder: the programme's folder.
        programme: what was read from it.
    """
    found = {}
    for ident, plan in programme.plans.items():
        commits = git.commits(folder, behind(ident, plan, programme))
        if commits:
            found[ident] = Revision(len(commits), max(commits))
    return found


def behind(ident: str, plan: Plan, programme: Programme) -> list[str]:
    """Return the files that a plan's calendar is made from, below the programme's folder."""
    instead = {change.do_instead for change in plan.changes if change.do_instead}
    sessions = sorted(plan.session_ids | instead)
    timed = any(programme.sessions[session].at is not None for session in sessions)
    return [
        f"plans/{ident}.yml",
        *(f"sessions/{session}.yml" for session in sessions),
        *(["club.yml"] if timed else []),
    ]
