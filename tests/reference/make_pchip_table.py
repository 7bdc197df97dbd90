#!/usr/bin/python3
"""Makes pchip_table.inc: monotone cubic interpolation by SciPy's PchipInterpolator.

Each case is a short list of points; each row is case, x, value, slope.
"""

import scipy
from scipy.interpolate import PchipInterpolator

import frozen_table

NAME = "pchip_table.inc"
TOLERANCES = (0.0, 1e-15, 1e-13, 1e-12)

# The same lists stand in tests/unit/shape/curve_test.cpp.
CASES = (
    ([0.0, 1.0, 2.5, 3.0, 5.0], [0.0, 2.0, 2.5, 2.5, 1.0]),  # rise, flat, fall
    ([0.0, 0.1, 2.0, 2.2], [1.0, -1.0, -1.5, 4.0]),          # uneven steps, a turn
    ([0.0, 1.0, 2.0], [0.0, 1.0, 0.9]),                      # end slopes that the limiter cuts
    ([0.0, 1.0, 2.0, 3.0], [0.0, 0.1, 5.0, 5.1]),            # end slope of the wrong sign
    ([0.0, 3.0, 4.0], [0.0, 0.5, -8.0]),                     # end slope three times too steep
)


def rows():
    made = []
    for number, (x, y) in enumerate(CASES):
        curve = PchipInterpolator(x, y)
        slope = curve.derivative()
        for k in range(21):
            at = x[0] + (x[-1] - x[0]) * k / 20.0
            made.append((number, at, float(curve(at)), float(slope(at))))
    return made


if __name__ == "__main__":
    says = [
        "Monotone cubic interpolation (Fritsch and Carlson 1980; Fritsch and Butland 1984): case, x, value, slope.",
        f"Made by make_pchip_table.py with SciPy {scipy.__version__}, PchipInterpolator. Do not edit.",
    ]
    frozen_table.write(NAME, says, rows(), ("{:d}", "{:.17g}", "{:.17g}", "{:.17g}"))
