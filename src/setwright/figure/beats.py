"""When each frame of a figure is reached, in the tempo of its exercise."""

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from setwright.figure.motion import Motion
from setwright.model.tempo import Tempo

Moment = tuple[float, int]
"""A second of a repetition, and the place of the frame that is reached then."""

_USUAL: Final = Tempo(2, 1, 2, 1)
"""The pace of a figure whose exercise has no tempo."""

_FAST_S: Final = 0.5
"""What a way takes that the tempo gives no time, and one that is done as fast as control allows."""

_WAY_S: Final = 0.4
"""From pose to pose of a movement that goes on and on without a tempo. By eye, no source."""

_LEAST_STILL: Final = 0.5
"""The least share of the last pause in which nobody moves."""


def beats(tempo: Tempo | None, motion: Motion) -> tuple[list[Moment], float]:
    """Return when each frame is reached in one repetition, and how many seconds a repetition takes.

    The way out and the way back take the tempo's lowering and lifting, in the order of the movement; each eases in and
    out. A movement that does not come back the way it went takes them as it first sinks and rises (a jump: the dip,
    then up into the air); whatever follows, such as landing and standing up, happens in the pause after them. Without a
    tempo it goes on steadily.
    """
    if tempo is None and not motion.figure.comes_back:
        return _steady(motion)
    pace = tempo or _USUAL
    down_s, up_s = float(pace.lowering_s or _FAST_S), float(pace.lifting_s or _FAST_S)
    down, up = (down_s, pace.pause_low_s), (up_s, pace.pause_high_s)
    first, second = (down, up) if motion.lowers_first else (up, down)
    whole_s = math.fsum((*first, *second))
    along, last = motion.along, len(motion.frames) - 1
    clock = _Clock()
    if motion.figure.comes_back:
        clock.move(range(last + 1), along, first[0])
        clock.wait(first[1])
        clock.move(range(last, -1, -1), along, second[0])
    else:
        turn, *later = [*motion.turns, last]
        clock.move(range(turn + 1), along, first[0])
        clock.wait(first[1])
        if later and second[1]:
            clock.move(range(turn, later[0] + 1), along, second[0])
            each_s = min(_FAST_S, second[1] * (1 - _LEAST_STILL) / max(1, len(later) - 1))
            for start, end in pairwise(later):
                clock.move(range(start, end + 1), along, each_s)
        else:
            clock.move(range(turn, last + 1), along, second[0])
    clock.wait(whole_s - clock.second)
    return clock.moments, whole_s


def _steady(motion: Motion) -> tuple[list[Moment], float]:
    """Return the beats of something that goes on and on, such as walking: no pause, and no slower at either end."""
    whole_s = _WAY_S * (len(motion.stops) - 1)
    return [(round(whole_s * share, 3), frame) for frame, share in enumerate(motion.along)], whole_s


class _Clock:
    """Writes down moments, one after the other."""

    def __init__(self) -> None:
        self.second = 0.0
        self.moments: list[Moment] = []

    def move(self, frames: Sequence[int], along: Sequence[float], seconds: float) -> None:
        """Pass through frames in some seconds, slowly at either end."""
        start, end = along[frames[0]], along[frames[-1]]
        for frame in frames:
            share = abs(along[frame] - start) / abs(end - start) if end != start else 1.0
            self._note(self.second + seconds * math.acos(1 - 2 * min(1.0, share)) / math.pi, frame)
        self.second += seconds

    def wait(self, seconds: float) -> None:
        """Stay where the body is."""
        self.second += seconds
        if self.moments:
            self._note(self.second, self.moments[-1][1])

    def _note(self, second: float, frame: int) -> None:
        moment = (round(second, 3), frame)
        if not self.moments or moment != self.moments[-1]:
            self.moments.append(moment)
