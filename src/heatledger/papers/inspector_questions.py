"""Twenty questions that an inspector asks, each with its answer and where the proof stands."""

from __future__ import annotations

from collections.abc import Callable

from heatledger.papers import blocks as b
from heatledger.papers import inspector_answers as job
from heatledger.papers import inspector_answers_plant as plant
from heatledger.papers.printing import Printing

QUESTIONS: tuple[tuple[str, Callable[[Printing], b.Text]], ...] = (
    ("Which code, edition and local changes is this drawn to?", job.code),
    ("Who prepared it, with which license, when, and which revision is it?", job.who),
    ("Which outdoor and indoor temperatures, and from which table?", job.temperatures),
    ("Do the areas match the plan?", job.areas),
    ("How was each U-value found?", job.u_factors),
    ("On what do air leakage and ventilation rest?", job.air),
    ("What are the loads of the rooms, and on which load is the plant sized?", job.loads),
    ("What is output over load, with altitude and every margin?", plant.ratio),
    ("What are listing, input, output and efficiency of the appliance?", plant.appliance),
    ("Has the fire enough air?", plant.fire_air),
    ("Which vent, by which route, and what stays on the old chimney?", plant.vent),
    ("Do gas pipe and meter do with everything burning?", plant.gas),
    ("What is the relief valve set to and good for, and where does it discharge?", plant.relief),
    ("Which low-water cutoff, limits and switch, and does each stop the fire?", plant.guards),
    ("How is drinking water kept apart?", plant.drinking_water),
    ("Which expansion tank, with what charge, held how?", plant.tank),
    ("Which pipe and tube, to which standard, held and insulated how?", job.pipes),
    ("Which pressure tests, how high, how long, by whom, before covering?", job.tests),
    ("How is hot water stored, tempered and relieved?", plant.hot_water),
    ("Are sequence, combustion slip, alarms and open items on site?", job.on_site),
)


def inspector_questions(printing: Printing) -> b.Questions:
    """The questions in their order, numbered."""
    return b.Questions(
        tuple(
            b.Question(f"{number}. {ask}", answer(printing))
            for number, (ask, answer) in enumerate(QUESTIONS, 1)
        )
    )
