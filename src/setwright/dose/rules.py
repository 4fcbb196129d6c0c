"""The rules behind every number, each with its source. Pages, ``explain`` and tests name them by id.

What of a rule or its source nobody has yet held against the paper is named in ``from_memory``, and shown with it.
"""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule of the arithmetic, for coach, member and physiotherapist to read.

    ``from_memory`` says what of it has not been held against its source; it is empty where nothing is.
    """

    title: str
    says: str
    source: str
    from_memory: str = ""

    @property
    def source_in_full(self) -> str:
        """The source, with what is from memory, for the coach."""
        return f"{self.source} From memory: {self.from_memory}" if self.from_memory else self.source


COMMON: Final = "Common practice, no source."
HOUSE: Final = "A rule of this tool."

RULES: Final[dict[str, Rule]] = {
    "trained-weeks": Rule(
        "Progressions count trained weeks",
        "A progression moves on only in a week in which its session is really trained. A lighter week or a taper week "
        "holds it, and afterwards it goes on from where it stood. A skipped week does not count.",
        HOUSE,
    ),
    "linear": Rule(
        "Steps",
        "A number grows (or falls) by the same step after every so many trained weeks, and stops at the end that the "
        "coach wrote.",
        COMMON,
    ),
    "double": Rule(
        "Repetitions first, then load",
        "Repetitions (or time, or distance) climb to their end. Then the load rises by one step and they start again. "
        "When the load has reached its own end, they climb once more and stay.",
        COMMON,
    ),
    "listed": Rule(
        "Listed weeks",
        "The coach wrote the number for each trained week. After the last one listed, it stays.",
        HOUSE,
    ),
    "lighter-week": Rule(
        "Lighter weeks",
        "A lighter week keeps the stated share of sets, repetitions and load; the last sets are left out. Whole "
        "numbers are rounded, a half goes to the smaller, and at least one set and one repetition stay. Efforts, "
        "repetitions in reserve and bands do not change.",
        COMMON,
    ),
    "taper": Rule(
        "Taper",
        "A taper keeps the stated share of the sets, the heavier ones where they differ; loads stay. Two weeks with 41 "
        "to 60 % less volume at the same intensity served best before competition. That evidence comes from "
        "endurance-type training: using it for strength sets is an extrapolation.",
        "Bosquet L et al., Med Sci Sports Exerc 2007;39:1358-1365; Wang Z et al., PLoS ONE 2023;18:e0282838.",
    ),
    "change": Rule(
        "Changes in one week", "A coach may set a number for one week; the progression does not notice.", HOUSE
    ),
    "sides": Rule(
        "Sides",
        "One side at a time: repetitions and times count on each side. Alternating: repetitions count in all, half of "
        "them on each side.",
        COMMON,
    ),
    "body-weight-share": Rule(
        "Share of body weight",
        "Load in kg = percentage × body weight ÷ 100. Per hand, it is the weight in each hand.",
        "Arithmetic.",
    ),
    "owned-weight": Rule(
        "The weight to take",
        "The weight nearest to the load among those that the club owns; on a tie the lighter; never one above the "
        "physiotherapist's limit. Nothing more than a quarter (and more than 1 kg) heavier than the load is ever "
        "offered: a lighter one is, where there is one. Weigh yourself in whole kilograms, rounded down.",
        COMMON,
    ),
    "support-share": Rule(
        "What the hands carry",
        "In a push-up the hands carry the share of body weight that keeps a straight, still body in balance about its "
        "feet or knees: the distance of its centre of mass from there, divided by that of the palms. The number shown "
        "has the arms halfway between upright and square to the trunk, pushing along the arm; the span reaches from "
        "wrists under the shoulders to arms square to the trunk. With hands more than 45 cm above the feet it is "
        "rough. The page of figures holds it against published measurements.",
        "Masses: de Leva P, J Biomech 1996;29:1223-1230. Lengths: Drillis R, Contini R, New York University, "
        "technical report 1166-03, 1966.",
        "the lengths of Drillis and Contini. The masses were seen in a second source that reprints them.",
    ),
    "one-rep-max-share": Rule(
        "Share of 1RM",
        "Load in kg = percentage × the weight that can be lifted once ÷ 100, met by an owned weight in the same way.",
        "Arithmetic.",
    ),
    "effort": Rule(
        "Effort of a set, and repetitions in reserve",
        "The effort of a set says how near it came to its end, from 0 (rest) to 10 (nothing more possible). From 7 "
        "upwards it is 10 minus the repetitions that could still follow: 8 leaves two. Below 7 no such sum holds. "
        "Effort 5 or 6 leaves about four to six, less than that is light, and nobody counts so many well: choose a "
        "weight with which the last repetition looks like the first. People are off by about one repetition where up "
        "to five remain, and by more than two where seven or more do. The effort of a whole session is another number.",
        "Zourdos MC et al., J Strength Cond Res 2016;30:267-275, for heavy squats; "
        "Hackett DA et al., J Strength Cond Res 2017;31:2162-2168.",
        "what an effort of 5 or 6 leaves.",
    ),
    "session-effort": Rule(
        "Effort of a session",
        "One number from 0 (rest) to 10 (as hard as can be) for the whole session, warm-up and rests included, given "
        "about half an hour after it. It does not follow from the efforts of the sets: a few hard sets with long rests "
        "can make an easy evening. What the coach writes is what the session is meant to feel like, and no target.",
        "Foster C et al., J Strength Cond Res 2001;15:109-115; for strength sessions, Day ML et al., "
        "J Strength Cond Res 2004;18:353-358.",
    ),
    "tempo": Rule(
        "Tempo",
        "Four numbers: seconds of lowering, pause, lifting, pause. X means as fast as control allows and counts as one "
        "second of time here. Where nothing is written, 2 s down and 2 s up, or a second less or more in all.",
        "Order as in Wilk M et al., Sports Med 2021;51:1629-1650; the usual tempo is common practice, no source; one "
        "second for X is a choice of this tool.",
        "what each of the four places stands for.",
    ),
    "ramp": Rule(
        "Warm-up sets",
        "One: 5 repetitions with 60 % of the first set's load. Two: 5 with 50 %, 3 with 75 %. Three: 5 with 40 %, 3 "
        "with 60 %, 2 with 80 %. Four: 5 with 40 %, 4 with 55 %, 3 with 70 %, 2 with 85 %. The coach may write others. "
        "Each takes the owned weight nearest to that, on a tie the lighter, and never one above the first set's; where "
        "all are heavier, the lightest. A minute between them. They are in the session's time, and in no total.",
        COMMON,
    ),
    "by-the-clock": Rule(
        "Blocks by the clock",
        "Where a set starts every minute (or whatever the coach wrote), the rest is what is left of it, and the block "
        "lasts as long as all starts and the last set. As many rounds as possible last as long as they are given; in "
        "totals they count as the whole rounds that fit in at the written pace, quick end. A lighter week or a taper "
        "shortens their time by whole half minutes. Slower is fine: the clock says when to stop, not how fast to move.",
        COMMON,
    ),
    "open-ended": Rule(
        "As many repetitions as possible",
        "A set that goes on until a few repetitions are left has no number beforehand. With a share of 1RM that the "
        "repetition table knows, it counts as what the table allows less what is to be left, or up to three fewer. Any "
        "other counts as 5 to 15. Where the coach wrote at how many it ends, that is the most. Stop when the speed or "
        "the form of a repetition goes, even if more would be possible. A lighter week ends it at what it counts as.",
        COMMON,
    ),
    "session-time": Rule(
        "Session time",
        "Repetitions × tempo × sides × sets, plus holds, rests and change-overs; three sets have two rests. The slow "
        "end allows a quarter more for each repetition and ten seconds more for every pause. The quick end is what is "
        "written; for repetitions without a tempo, a quarter less. Each part is printed in whole minutes, and the "
        "session is their sum.",
        COMMON,
    ),
    "sets-by-region": Rule(
        "Sets by region",
        "A set counts 1 for each region that does most of the work, and a half for each that helps. Warm-ups are not "
        "counted.",
        "Pelland J et al. 2024, a preprint: of 1, a half and none, a half for an indirect set fitted best.",
    ),
    "time-under-tension": Rule(
        "Time under tension",
        "Repetitions × the four numbers of the tempo × sides × sets; holds and work as they are, walks at 1 m/s.",
        "Arithmetic.",
    ),
    "session-load": Rule(
        "Session load",
        "The effort of the whole session (0 to 10) × minutes, warm-up included. What is too much differs from person "
        "to person. Training beside the plan is not in it, so that nothing is made of a week's loads here.",
        "Foster C, Med Sci Sports Exerc 1998;30:1164-1168.",
    ),
    "load-step": Rule(
        "Load steps",
        "Raise a load by 2 to 10 % once one or two repetitions more than planned are possible.",
        "Ratamess NA et al., Med Sci Sports Exerc 2009;41:687-708.",
        "volume and pages.",
    ),
    "repetition-table": Rule(
        "Repetitions at a share of 1RM",
        "A table of how many repetitions go with which share of the weight that can be lifted once, in a set to "
        "failure: one more is not possible. A rough guide; people and exercises differ.",
        "Baechle TR, Earle RW (eds), Essentials of Strength Training and Conditioning, NSCA / Human Kinetics, as other "
        "works reprint it.",
        "the row of 12 repetitions.",
    ),
    "one-rep-max": Rule(
        "Estimating 1RM",
        "From a set of 2 to 10 repetitions, by seven published formulas. They were made from sets to failure, in "
        "which one more repetition was not possible. A set that ended earlier gives too low a number, which is the "
        "safe side: nobody needs to go to failure for it. The formulas differ, so the span is shown, not one number.",
        "Named beside each formula; range of use after Reynolds JM et al., J Strength Cond Res 2006;20:584-592.",
        "what stands beside each formula as such.",
    ),
}
