"""When to call for help, when to stop, who asks a clinician first, and who takes care.

The tool's own list stands first, in every programme; a club adds lines of its own behind it and can take none away.
What belongs on such a list is common practice in sport and physiotherapy, with no one source, put together from
memory, and so are the works that it leans on: signs and conditions as pre-exercise screening asks for them (Riebe D et
al., Med Sci Sports Exerc 2015;47:2473-2479, for heart, metabolic and kidney disease); when to stop in pregnancy (ACOG
Committee Opinion 804, 2020); the head (Patricios JS et al., Br J Sports Med 2023;57:695-711, and for blood thinners
NICE guideline NG232); and what public first-aid guidance teaches of nerve roots, stroke, clots, allergy, asthma, low
blood sugar, heat and dark urine. It says stop, call and ask, and no more: it neither diagnoses nor treats.
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
    later("Breath that does not come back when you rest, or an asthma attack that your inhaler does not settle."),
    later("A face, tongue or throat that swells, or a rash with faintness or trouble breathing: a severe allergy."),
    later("A face, an arm or a leg that suddenly goes weak or numb, or sudden trouble with speech or sight."),
    later("A sudden, severe headache, unlike the ones you know."),
    later("You lose control of bladder or bowel, or go numb between the legs, where a saddle would touch."),
    later(
        "After a blow to the head or a heavy fall: a blackout, however short, confusion, drowsiness, vomiting, a "
        "headache that grows, a sore neck. After any blow to the head, if you take blood thinners."
    ),
    later("A seizure, or a fit of any kind."),
    later("With diabetes: somebody is confused, very drowsy or cannot swallow. It may be low blood sugar."),
    later("In the heat: confusion, staggering, a collapse, or somebody very hot who no longer makes sense."),
    later(
        "Urine as dark as tea or cola, or muscles far more painful, swollen or weak than the work explains, even days "
        "later."
    ),
    later("In pregnancy: bleeding, leaking fluid, pain in the belly, or contractions that do not settle."),
)
"""Signs to stop and call for help at once."""

STOP: Final = (
    later(
        "Any blow to the head, even if you feel well: no more sport today, no driving, not alone. A doctor looks at it "
        "before you train again, within a day or two."
    ),
    later("New swelling, warmth or pain in one calf. See a doctor the same day."),
    later("A fever, an infection, or you fall ill. Do not train until you are well, and ask if in doubt."),
    later("Shaky, sweaty or suddenly muddled, with diabetes. Do what you were told for low blood sugar."),
    later("Cramps, a headache, sickness or chills in the heat. Into the shade, cool down, and do not go on."),
    later("A wheeze or a tight chest with asthma. Do as your own plan says, and do not go on today."),
    later("Dizziness, or a headache that comes with the effort."),
    later("Sharp pain, or pain that grows from one repetition to the next."),
    later("A joint that swells, locks or gives way."),
    later("Numbness, pins and needles or weakness in an arm or a leg. If it stays, see a doctor the same day."),
    later("After a birth: bleeding that comes back, leaking, or a feeling of weight or dragging below."),
)
"""Signs to stop for the day, and to ask before training again."""

ASK: Final = (
    later("You have a heart, lung, kidney or metabolic condition, or are being looked into for one."),
    later("You get chest pain, faint, or lose your breath with mild effort."),
    later("You have high blood pressure."),
    later("You have diabetes, above all with numb feet, trouble with your eyes, or insulin."),
    later("You have asthma, or a severe allergy."),
    later("You have epilepsy, or had a seizure."),
    later("You had a head injury, and nobody has said that you may train again."),
    later("You had surgery, a fracture or a joint injury in the last months."),
    later("You have an artificial joint."),
    later("You have a hernia, or something that bulges at the belly or groin when you strain."),
    later("You have glaucoma, high pressure in the eye, or had trouble with the retina."),
    later("You have brittle bones (osteoporosis), or broke a bone in a small fall."),
    later("You take steroids for long, or took a quinolone antibiotic lately: they weaken bones or tendons."),
    later("You have or had cancer, or are treated for it."),
    later("Your joints are very mobile (hypermobility), slip or give way."),
    later("You are pregnant, gave birth in the last months, or leak urine when you jump or lift."),
    later("You have back or neck pain with numbness or weakness in an arm or a leg."),
    later("You have pain at night or without a reason that does not pass, or lose weight without trying."),
    later("You take medicine that changes your heart rate, blood pressure or bleeding."),
    later("You were ill from heat before, or take medicine with which you bear heat badly."),
    later("You are under 18. A parent or guardian agrees first, too."),
)
"""Who asks a doctor or a physiotherapist before the first session."""

CARE: Final = (
    later("High blood pressure: never hold your breath under a load or in a hold, and ask before heavy weights."),
    later(
        "Diabetes or numb feet: keep your shoes on, keep something sweet within reach, and ask whoever treats you how "
        "to train with it."
    ),
    later("Asthma or a severe allergy: keep your own medicine within reach, and tell somebody where it is."),
    later("Epilepsy: not alone, and ask before boxes, weights over your head, and lying under a weight."),
    later("Glaucoma: never hold your breath, and ask before you keep your head low or lift over it."),
    later("A hernia: never hold your breath, and ask before heavy loads and held positions."),
    later("An artificial joint: ask which bends, turns and landings it allows."),
    later("Hypermobility: stop short of the end of the range, and ask how far to go."),
    later("Brittle bones, or steroids for long: ask before jumps, drops, heavy bending and hard twists."),
    later("Cancer and its treatment: ask whoever treats you, and again whenever the treatment changes."),
    later("Pregnancy and after a birth: ask before jumps, heavy loads and held positions."),
    later("After surgery or an injury: do what your surgeon or physiotherapist allows, and nothing beyond it."),
    later("Heat: do less, drink, rest in the shade, and keep an eye on each other."),
    later("Under 18: only with a coach who may train minors, and by the local codes for it."),
)
"""Who takes care, and with what."""

SHORT: Final = (
    later(
        "Call for help now: chest pain, fainting, a heart or breath that does not settle; sudden weakness or numbness, "
        "a severe headache, trouble with speech or sight; a seizure; loss of control of bladder or bowel, numbness "
        "between the legs."
    ),
    later(
        "Call for help, too: a face or throat that swells; confusion or a collapse, in the heat or with diabetes; in "
        "pregnancy, bleeding, leaking fluid or pain in the belly; urine as dark as cola, even days later."
    ),
    later(
        "After a blow to the head, stop for today, even if you feel well, and do not stay alone. Call for help if you "
        "blacked out, vomit, get confused or drowsy, or take blood thinners."
    ),
    later("See a doctor the same day: new swelling, warmth or pain in one calf."),
    later("Not today: a fever, an infection, or feeling ill."),
    later(
        "Sharp pain or pain that grows, dizziness, a wheeze, cramps or chills in the heat, shaky and sweaty with "
        "diabetes, pins and needles, a limb that goes weak, a joint that swells, locks or gives way."
    ),
)
"""The signs to stop in a few lines, for the session and for sheets. Every sign of ``CALL`` and ``STOP`` is in them, but
for those after a birth, which stand with the exercises that they concern."""


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

    calls = (language.say("Call for help now: %(sign)s", sign=sign) for sign in safety.call_for_help_if)
    return RedFlags(
        call=whole(CALL, safety.call_for_help_if),
        stop=whole(STOP, safety.stop_if),
        ask=whole(ASK, safety.before_you_start),
        care=whole(CARE, safety.take_care),
        short=whole(SHORT, (*calls, *safety.stop_if)),
    )
