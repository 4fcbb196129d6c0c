"""Figures: a pose written in words becomes joints, a picture, and numbers.

For other parts of the tool, all pure functions of an exercise and cached by what its ``figure`` says:

- ``still(exercise)``: one SVG text with plain attributes and plain colours, start and end together, for paper and PDF.
- ``thumbnail(exercise)``: one SVG text of the end position, with its drawing in a group ``#f`` for ``<use>`` on pages.
- ``thumbnail_box(exercise)``: the box of that file, so that a page keeps the place for it.
- ``animated(exercise, ident)``: what a page needs to show a moving figure: SVG text, frames and beats.
- ``motion.solved(figure)``: joints of every frame and whatever does not fit.
- ``support.share_of(exercise)``: which share of body weight the hands carry, where the model can say so.

All return None for an exercise without a figure.
"""

from setwright.figure.picture import Animated, animated, still, thumbnail, thumbnail_box

__all__ = ["Animated", "animated", "still", "thumbnail", "thumbnail_box"]
