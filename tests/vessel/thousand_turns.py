"""Attitudes after a thousand turns as scipy's DOP853 has them (scipy 1.17, rtol 1e-13): too long to work out in each run. The whole table again:
python -m tests.vessel.thousand_turns
"""

import numpy as np

from rimfall.physics.constants import TURN_RAD
from tests.vessel.tumbling import body_of, integrated

SKEW = np.linalg.qr(np.random.default_rng(0).normal(size=(3, 3)))[0]
CASES = {
    "about the greatest": ([1, 2, 3], [0.1, 0.2, 1]),
    "about the least": ([1, 2, 3], [1, 0.2, 0.1]),
    "about no axis of its own": ((SKEW @ np.diag([1, 1.7, 2.1]) @ SKEW.T).tolist(), [-0.4, 0.2, -1]),
}
QUATERNIONS = {
    "about the greatest": [0.11175116750347283, -0.027774275866061182, 0.07178653025756622, 0.9907507053918111],
    "about the least": [-0.46534820959683265, 0.8833202965256766, -0.005843417977906525, 0.0562330155215226],
    "about no axis of its own": [0.39105306182922706, 0.24699307561491085, 0.2961208149966806, 0.835693954957943],
}


def until_s(rates):
    """When so many turns are over, at the rate it has at first."""
    return 1000 * TURN_RAD / float(np.linalg.norm(rates))


if __name__ == "__main__":
    for name, (inertia, rates) in CASES.items():
        print(f'    "{name}": {integrated(body_of(inertia), rates, until_s(rates), rtol=1e-13).tolist()},', flush=True)
