#!/usr/bin/python3
"""The frozen table that the viscosity tests read is what the reference library gives."""

import frozen_table
import make_iapws_table as table

frozen_table.report(frozen_table.differences(table.NAME, table.rows(), table.TOLERANCES))
