"""Published shares of body weight on the hands in push-ups, and what the model says about the same positions.

Two kinds are kept apart: positions held still, and the highest force of a moving repetition, which a still model should
stay below. The two sets with a dynamic maximum of Mier 2014 are left out for that reason: no still model can meet them.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, Literal

from setwright.figure.support import SHOWN, PushUp, lowered_percent, share_percent

EBBEN: Final = "Ebben WP et al., J Strength Cond Res 2011;25:2891-2894"
SUPRAK: Final = "Suprak DN et al., J Strength Cond Res 2011;25:497-503"
MIER: Final = "Mier CM et al., Int J Exerc Sci 2014;7:161-168"

_FLOOR, _KNEES = PushUp(), PushUp(kneeling=True)
_LOW_CM: Final = 22.0
"""How high the shoulders are assumed to be at the bottom, in cm: the papers' depth was not seen."""

STILL_POINTS: Final = 3.5
LOW_ON_KNEES_POINTS: Final = 10.0
MOVING_POINTS: Final = 5.0
"""What the model is off by at most, in percentage points: held still, low on the knees, and moving."""


@dataclass(frozen=True, slots=True)
class Published:
    """One published share, in percent of body weight. ``from_memory`` marks a figure not yet checked on paper."""

    source: str
    position: str
    kind: Literal["up", "down", "moving"]
    variation: PushUp
    percent: float
    sex: Literal["male", "female"] = "male"
    from_memory: bool = False

    @property
    def model_percent(self) -> float:
        """What the model says: upright arms for held positions, as the papers had them; else the rule of the pages."""
        if self.kind == "moving":
            return share_percent(self.variation, SHOWN, self.sex)
        if self.kind == "up":
            return share_percent(self.variation, "under the shoulders", self.sex)
        return lowered_percent(self.variation, _LOW_CM, self.sex)

    @property
    def error_points(self) -> float:
        """Model minus published, in percentage points."""
        return self.model_percent - self.percent


def _held() -> Iterator[Published]:
    kinds: tuple[tuple[str, Literal["up", "down"], PushUp], ...] = (
        ("on the toes, arms straight", "up", _FLOOR),
        ("on the toes, lowered", "down", _FLOOR),
        ("on the knees, arms straight", "up", _KNEES),
        ("on the knees, lowered", "down", _KNEES),
    )
    for (name, kind, variation), men, women, trained in zip(
        kinds, (67.0, 74.6, 52.5, 60.1), (65.1, 70.3, 51.5, 56.6), (69.16, 75.04, 53.56, 61.80), strict=True
    ):
        yield Published(MIER, f"{name}, men", kind, variation, men)
        yield Published(MIER, f"{name}, women", kind, variation, women, "female")
        yield Published(SUPRAK, f"{name}, men", kind, variation, trained, from_memory=True)


def _moving() -> Iterator[Published]:
    for name, variation, percent in (
        ("from the floor", _FLOOR, 64),
        ("from the knees", _KNEES, 49),
        ("hands raised by 30.48 cm", PushUp(hands_cm=30.48), 55),
        ("hands raised by 60.96 cm", PushUp(hands_cm=60.96), 41),
        ("feet raised by 30.48 cm", PushUp(feet_cm=30.48), 70),
        ("feet raised by 60.96 cm", PushUp(feet_cm=60.96), 74),
    ):
        yield Published(EBBEN, name, "moving", variation, percent, from_memory=True)


PUBLISHED: Final = (*_held(), *_moving())
"""Every published push-up share that the model is held against."""
