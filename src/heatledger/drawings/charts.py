"""The charts of a design, each with its table and the sentence that gives its result.

One function a chart, of a design and a reader's preset; None while there is nothing to draw. Screens and
papers take the same pictures from here.
"""

from __future__ import annotations

from heatledger.drawings.chart import Chart, ChartCell
from heatledger.drawings.emitter_charts import wall_bars_of_rooms, walls_to_scale, water_temperatures
from heatledger.drawings.firing_chart import firing_range
from heatledger.drawings.heat_charts import bars_of_rooms, heat_by_cause, likely_range, rooms_by_cause
from heatledger.drawings.load_chart import load_by_weather
from heatledger.drawings.matters_chart import what_matters
from heatledger.drawings.pump_from import pump_and_circuits
from heatledger.drawings.reset_from import reset_line

__all__ = [
    "Chart", "ChartCell", "bars_of_rooms", "firing_range", "heat_by_cause", "likely_range",
    "load_by_weather", "pump_and_circuits", "reset_line", "rooms_by_cause", "wall_bars_of_rooms",
    "walls_to_scale", "water_temperatures", "what_matters",
]  # fmt: skip
