"""Cuts of a round tube's end, unrolled: copes onto another tube, mitres and pie cuts. Metres and radians."""

from __future__ import annotations

from math import cos, pi, sin, sqrt, tan

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import TypeAlias

    Flat: TypeAlias = tuple[float, float]


def cope_depth(header_radius: float, radius: float, angle: float, offset: float, t: float) -> float:
    """From the header's axis along a branch tube's, m, where a line of it at ``radius`` meets the header.

    z = [sqrt(R^2 - (r sin t + k)^2) + r cos t cos B] / sin B; t round the branch from the inside of the acute angle B
    between the axes, k the offset of the axes. ValueError where that line misses the header. Elementary geometry.

    >>> round(cope_depth(1.0, 0.6, 3.141592653589793 / 2, 0.0, 3.141592653589793 / 2), 12)
    0.8
    """
    across = radius * sin(t) + offset
    if abs(across) > header_radius * (1 + 1e-12):
        raise ValueError("part of the branch misses the header: a smaller branch or less offset")
    return (sqrt(max(0.0, header_radius**2 - across**2)) + radius * cos(t) * cos(angle)) / sin(angle)


def cope(
    *, header_od: float, od: float, wall: float, angle: float, offset: float = 0.0, count: int = 360
) -> list[Flat]:
    """The cut of a branch tube's end, wall allowed for: (t, z) round the branch, z from the header's axis.

    At each place round the tube the cut lies where no part of the wall, inside to outside, goes into the header: the
    greatest depth over the wall. Square to the header that is the inside edge, as a weld fit has it.
    """
    if not (0 < wall <= od / 2 and 0 < angle <= pi / 2 * (1 + 1e-12)):
        raise ValueError(
            "a wall is over nothing and at most half the diameter; the angle is over 0 and at most 90 degrees"
        )
    outer, inner, big = od / 2, od / 2 - wall, header_od / 2
    out = []
    for i in range(count + 1):
        t = 2 * pi * i / count
        s, c = sin(t), cos(t) * cos(angle)
        tries = [inner, outer]
        if abs(s) > 1e-12:  # the depth is concave through the wall: its top may lie inside it
            size = sqrt(s * s + c * c)
            for sign in (1.0, -1.0):
                top = (sign * big * c / size - offset) / s
                if inner < top < outer:
                    tries.append(top)
        out.append((t, max(cope_depth(big, r, angle, offset, t) for r in tries)))
    return out


def mitre_depth(radius: float, mitre: float, t: float) -> float:
    """Height of a mitre cut round a tube, m: r tan(M) (1 - cos t), from its longest side. Source: CTK, unfolding.

    >>> round(mitre_depth(100.0, 3.141592653589793 / 4, 3.141592653589793), 9)
    200.0
    """
    return radius * tan(mitre) * (1 - cos(t))


class PieCuts:
    """A bend welded from straight pieces: mitre angle of every cut and the lengths of the pieces on each side.

    ``middle`` and ``end`` are (inside, centre line, outside) lengths of a middle piece and of what an end piece takes.
    """

    __slots__ = ("end", "joints", "middle", "mitre")

    def __init__(self, radius: float, od: float, angle: float, joints: int) -> None:
        if joints < 1 or not 0 < angle < joints * pi:
            raise ValueError("pie cuts have one joint at least, and each turns by less than half a circle")
        if radius <= od / 2:
            raise ValueError("the radius is over half the diameter: the pieces come to nothing on the inside")
        self.joints = joints
        self.mitre = angle / joints / 2
        half = [r * tan(self.mitre) for r in (radius - od / 2, radius, radius + od / 2)]
        self.end = (half[0], half[1], half[2])
        self.middle = (2 * half[0], 2 * half[1], 2 * half[2])
