#!/usr/bin/python3
"""Makes iapws_table.inc: density and viscosity of fresh water at one atmosphere by IAPWS.

IAPWS-95 for the density, IAPWS R12-08 without its critical part (which is 1 here) for the viscosity, by the Python
library iapws.
"""

import iapws
from iapws._iapws import _Viscosity

import frozen_table

NAME = "iapws_table.inc"
TOLERANCES = (0.0, 1e-6, 1e-12)  # the last digits that are frozen
KELVIN = 273.15


def viscosity(temperature_k, density_kg_m3):
    return float(_Viscosity(density_kg_m3, temperature_k))


def rows():
    # IAPWS R12-08, Table 4 (critical part taken as 1): kelvin, kg/m³, µPa·s.
    for kelvin, density, published in (
        (298.15, 998.0, 889.735100),
        (298.15, 1200.0, 1437.649467),
        (373.15, 1000.0, 307.883622),
        (433.15, 1.0, 14.538324),
        (433.15, 1000.0, 217.685358),
        (873.15, 1.0, 32.619287),
    ):
        frozen_table.check("IAPWS R12-08", viscosity(kelvin, density) * 1e6, published, 1e-6)
    made = []
    for half_degrees in range(0, 81):
        # The formulation starts at the triple point, 0.01 °C.
        celsius = max(half_degrees / 2, 0.01)
        density = float(iapws.IAPWS95(T=celsius + KELVIN, P=0.101325).rho)
        made.append((celsius, density, viscosity(celsius + KELVIN, density)))
    return made


if __name__ == "__main__":
    says = [
        "Fresh water at 101325 Pa by IAPWS-95 (Wagner and Pruss 2002) and IAPWS R12-08 (2008): temperature [°C],",
        "density [kg/m³], dynamic viscosity [Pa·s].",
        f"Made by make_iapws_table.py with iapws {iapws.__version__}. Do not edit.",
    ]
    frozen_table.write(NAME, says, rows(), ("{:.2f}", "{:.6f}", "{:.12f}"))
