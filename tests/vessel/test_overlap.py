"""Parts in one place are told, and parts that only touch, surround or pass each other are not."""

from rimfall.vessel.overlap import overlapping
from rimfall.vessel.solids import Solid
from tests.tables import each_row

HERE = (0.0, 0.0, 0.0)
CYLINDER = Solid("cylinder", 1.0, HERE, radius_m=3.0, length_m=40.0)
TORUS = Solid("torus", 1.0, HERE, radius_m=10.0, tube_radius_m=2.0)


def box(x, y, z, side=2.0, axis=(0, 0, 1)):
    return Solid("box", 1.0, (x, y, z), axis, size_m=(side, side, side))


def cone(z, axis=(0, 0, 1)):
    return Solid("cone", 1.0, (0.0, 0.0, z), axis, radius_m=3.0, length_m=6.0)


PAIRS = [
    (CYLINDER, TORUS, False),
    (CYLINDER, box(0, 0, 10, 0.2), True),
    (CYLINDER, box(3.9, 0, 0), True),
    (CYLINDER, box(4.0, 0, 0), False),
    (box(0, 0, 0), box(1.9, 1.9, 1.9), True),
    (box(0, 0, 0), box(2.0, 0, 0), False),
    (box(0, 0, 0), box(2.2, 0, 0, axis=(1, 1, 0)), True),
    (TORUS, box(10, 0, 0, 1), True),
    (TORUS, Solid("sphere", 1.0, HERE, radius_m=7.9), False),
    (TORUS, Solid("sphere", 1.0, HERE, radius_m=8.5), True),
    (cone(23.0), CYLINDER, False),
    (cone(22.0), CYLINDER, True),
    (cone(0.0), Solid("sphere", 1.0, (2.5, 0.0, 2.5), radius_m=0.5), False),
    (cone(0.0, (0, 0, -1)), Solid("sphere", 1.0, (2.0, 0.0, 2.5), radius_m=0.5), True),
    (CYLINDER, Solid("sphere_shell", 1.0, HERE, radius_m=2.0), False),
    (CYLINDER, Solid("point", 1.0, HERE), False),
    (CYLINDER, Solid("rod", 1.0, HERE, length_m=3.0), False),
]


@each_row(("one", "other", "told"), PAIRS)
def test_two_parts(one, other, told):
    pair = [("a", "b")] if told else []
    assert overlapping({"a": one, "b": other}) == pair
    assert overlapping({"a": other, "b": one}) == pair
