"""What every drawing with texts must hold: each text on the sheet, none on another."""

from __future__ import annotations

from heatledger.drawings.lettering import Box, text_boxes
from heatledger.drawings.shapes import Drawing


def overlap(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def check_tidy(drawing: Drawing) -> None:
    boxes = text_boxes(drawing)
    for number, (text, box) in enumerate(boxes):
        assert -0.5 <= box[0] < box[2] <= drawing.width + 0.5, text
        assert -0.5 <= box[1] < box[3] <= drawing.height + 0.5, text
        for other, beside in boxes[number + 1 :]:
            assert not overlap(box, beside), (text, other)
