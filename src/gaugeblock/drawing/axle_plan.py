"""An axle housing from above: flanges, spring seats, and the pinion aside of the middle."""

from __future__ import annotations

from gaugeblock.drawing.svg import CENTRE, LEAST, MEDIUM, THICK, THIN, Page

WIDTH, HEIGHT = 128.0, 78.0
_LEFT, _AXIS, _FLANGE, _SEAT = 8.0, 30.0, 9.0, 4.0


def axle_plan(
    flanges: float, seats: float | None, pinion: float, said: tuple[str, str, str], *, is_pinion_known: bool = True
) -> str:
    """SVG, to scale across. ``flanges`` from face to face, ``seats`` between their middles, ``pinion`` to the right.

    All in one unit; ``said`` is each of the three as printed ("" leaves its dimension out). ValueError for a seat or a
    pinion outside the flanges.
    """
    if not flanges > 0 or (seats is not None and not 0 < seats < flanges) or not abs(pinion) < flanges / 2:
        raise ValueError("seats and pinion lie between the flanges")
    page = Page(WIDTH, HEIGHT, "axle from above")
    scale = (WIDTH - 2 * _LEFT) / flanges
    middle = WIDTH / 2
    left, right = middle - flanges / 2 * scale, middle + flanges / 2 * scale
    nose = middle + pinion * scale
    page.line((left, _AXIS - 2.4), (right, _AXIS - 2.4), THICK)
    page.line((left, _AXIS + 2.4), (right, _AXIS + 2.4), THICK)
    for x in (left, right):
        page.line((x, _AXIS - _FLANGE), (x, _AXIS + _FLANGE), THICK)
    page.circle((nose, _AXIS), 9.0, THICK, fill="#fff")
    page.rectangle(nose - 3.0, _AXIS - 19.0, 6.0, 10.2, MEDIUM, fill="#fff")
    named = "pinion, forward" if is_pinion_known else "pinion: place not given"
    page.text((nose, _AXIS - 21.0), named, LEAST, "middle")
    page.line((middle, _AXIS - 26.0), (middle, _AXIS + 16.0), THIN, CENTRE)
    if seats is not None:
        ends = [(middle + side * seats / 2 * scale, _AXIS) for side in (-1, 1)]
        for x, y in ends:
            page.rectangle(x - _SEAT, y - 4.0, 2 * _SEAT, 8.0, MEDIUM, fill="#ddd")
        if said[1]:
            page.dimension(ends[0], ends[1], said[1], off=_AXIS + 26.0, direction="across", size=LEAST)
    if said[0]:
        faces = (left, _AXIS + _FLANGE), (right, _AXIS + _FLANGE)
        page.dimension(*faces, said[0], off=_AXIS + 37.0, direction="across", size=LEAST)
    if pinion and said[2]:
        a, b = sorted((middle, nose))
        page.dimension((a, _AXIS), (b, _AXIS), said[2], off=_AXIS + 15.0, direction="across", size=LEAST)
    page.text((2.0, HEIGHT - 3.0), "left of the car", LEAST)
    page.text((WIDTH - 2.0, HEIGHT - 3.0), "right of the car", LEAST, "end")
    return page.svg()
