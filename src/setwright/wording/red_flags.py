"""When to call for help, when to stop, who asks a clinician first, and who takes care.

The tool's own list stands first, in every programme; a club adds lines of its own behind it and can take none away.
What belongs on such a list is common practice in sport and physiotherapy, with no one source, put together from
memory: signs and conditions as pre-exercise screening asks for them (Riebe D et al., Med Sci Sports Exerc
2015;47:2473-2479, for heart, metabolic and kidney disease), and the warning signs of nerve roots, stroke, head injury
and clots that first aid teaches. It says stop, call and ask, and no more: it neither diagnoses nor treats.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from setwright.model.club import Safety
from setwright.wording.language import Language, later

CALL: Final = (
    later(
        "Pain, pressure or a tight feeling in the chest, or pain that spreads to an arm, the neck, the jaw or the back."
    ),
    later("You faint or nearly faint, or your heart races or stumbles and does not settle."),
    later("Breath that does not come back when you rest."),
    later("A face, an arm or a leg that suddenly goes weak or numb, or sudden trouble with speech or sight."),
    later("A sudden, severe headache, unlike the ones you know."),
    later("You lose control of bladder or bowel, or go numb between the legs, where a saddle would touch."),
    later(
        "After a blow to the head or a heavy fall: a blackout, confusion, vomiting, a headache that grows, a sore neck."
    ),
    later("A seizure, or a fit of any kind."),
)
"""Signs to stop and call for help at once."""

STOP: Final = (
    later("Any blow to the head, even if you feel well. Leave with somebody, not alone."),
    later("New swelling, warmth or pain in one calf. See a doctor the same day."),
    later("A fever, an infection, or you fall ill. Do not train until you are well, and ask if in doubt."),
    later("Dizziness, or a headache that comes with the effort."),
    later("Sharp pain, or pain that grows from one repetition to the next."),
    later("A joint that swells, locks or gives way."),
    later("Numbness, pins and needles or weakness in an arm or a leg. If it stays, see a doctor the same day."),
    later("In pregnancy or after a birth: bleeding, leaking, or a feeling of weight or dragging below."),
)
"""Signs to stop for the day, and to ask before training again."""

ASK: Final = (
    later("You have a heart, lung, kidney or metabolic condition, or are being looked into for one."),
    later("You get chest pain, faint, or lose your breath with mild effort."),
    later("You have high blood pressure."),
    later("You have diabetes, above all with numb feet, trouble with your eyes, or insulin."),
    later("You have epilepsy, or had a seizure."),
    later("You had a head injury, and nobody has said that you may train again."),
    later("You had surgery, a fracture or a joint injury in the last months."),
    later("You have brittle bones (osteoporosis), or broke a bone in a small fall."),
    later("Your joints are very mobile (hypermobility), slip or give way."),
    later("You are pregnant, gave birth in the last months, or leak urine when you jump or lift."),
    later("You have back or neck pain with numbness or weakness in an arm or a leg."),
    later("You have pain at night or without a reason that does not pass, or lose weight without trying."),
    later("You take medicine that changes your heart rate, blood pressure or bleeding."),
    later("You are under 18. A parent or guardian agrees first, too."),
)
"""Who asks a doctor or a physiotherapist before the first session."""

CARE: Final = (
    later("High blood pressure: never hold your breath under a load or in a hold, and ask before heavy weights."),
    later("Diabetes or numb feet: keep your shoes on, and ask whoever treats you how to train with it."),
    later("Epilepsy: not alone, and ask before boxes, weights over your head, and lying under a weight."),
    later("Hypermobility: stop short of the end of the range, and ask how far to go."),
    later("Brittle bones: ask before jumps, drops, heavy bending and hard twists."),
    later("Pregnancy and after a birth: ask before jumps, heavy loads and held positions."),
    later("After surgery or an injury: do what your surgeon or physiotherapist allows, and nothing beyond it."),
    later("Under 18: only with a coach who may train minors, and by the local codes for it."),
)
"""Who takes care, and with what."""

SHORT: Final = (
    later(
        "Call for help now: chest pain, fainting, a heart or breath that does not settle; sudden weakness or numbness, "
        "a severe headache, trouble with speech or sight; a seizure; loss of control of bladder or bowel, numbness "
        "between the legs."
    ),
    later("After a blow to the head, stop for today, even if you feel well."),
    later("See a doctor the same day: new swelling, warmth or pain in one calf."),
    later("Not today: a fever, an infection, or feeling ill."),
    later(
        "Sharp pain or pain that grows, dizziness, pins and needles, a limb that goes weak, a joint that swells, locks "
        "or gives way."
    ),
)
"""The signs to stop in a few lines, for the session and for sheets. Every sign of ``CALL`` and ``STOP`` is in them, but
for those of pregnancy, which stand with the exercises that they concern."""


@dataclass(frozen=True, slots=True)
class RedFlags:
    """The whole list of one club, each line as prose: the tool's own lines first, then the club's."""

    call: tuple[str, ...]
    stop: tuple[str, ...]
    ask: tuple[str, ...]
    care: tuple[str, ...]
    short: tuple[str, ...]


def red_flags(language: Language, safety: Safety) -> RedFlags:
    """Return the tool's list in a language, with what the club adds to each group."""

    def whole(base: Iterable[str], added: Iterable[str]) -> tuple[str, ...]:
        return (*map(language.say, base), *added)

    return RedFlags(
        call=whole(CALL, safety.call_for_help_if),
        stop=whole(STOP, safety.stop_if),
        ask=whole(ASK, safety.before_you_start),
        care=whole(CARE, safety.take_care),
        short=whole(SHORT, (*safety.call_for_help_if, *safety.stop_if)),
    )
