#!/usr/bin/python3
"""The frozen table that the curve tests read is what SciPy gives."""

import frozen_table
import make_pchip_table as table

frozen_table.report(frozen_table.differences(table.NAME, table.rows(), table.TOLERANCES))
