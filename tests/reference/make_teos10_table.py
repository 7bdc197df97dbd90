#!/usr/bin/python3
"""Makes teos10_table.inc: density of water at the sea surface by TEOS-10.

Exact form from the Gibbs functions, gsw.rho_t_exact(SA, t, 0) of the Gibbs SeaWater toolbox for Python.
"""

import gsw

import frozen_table

NAME = "teos10_table.inc"
TOLERANCES = (0.0, 0.0, 1e-6)  # the last digit that is frozen


def rows():
    # TEOS-10 documentation, example of gsw_rho.
    frozen_table.check(
        "gsw.rho", float(gsw.rho(34.7118, 28.8099, 10)), 1021.839935738108, 1e-9
    )
    return [
        (float(t), float(sa), float(gsw.rho_t_exact(float(sa), float(t), 0.0)))
        for sa in range(0, 41, 2)
        for t in range(0, 41)
    ]


if __name__ == "__main__":
    says = [
        "Density of water at one atmosphere by TEOS-10 (IOC, SCOR and IAPSO 2010): temperature [°C, ITS-90],",
        "absolute salinity [g/kg], density [kg/m³].",
        f"Made by make_teos10_table.py with gsw {gsw.__version__}, function rho_t_exact at p = 0. Do not edit.",
    ]
    frozen_table.write(NAME, says, rows(), ("{:.0f}", "{:.0f}", "{:.6f}"))
