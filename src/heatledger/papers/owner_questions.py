"""Twenty questions that an owner asks, each answered as far as the design reaches."""

from __future__ import annotations

from collections.abc import Callable

from heatledger.papers import blocks as b
from heatledger.papers import owner_answers_care as care
from heatledger.papers import owner_answers_house as house
from heatledger.papers import owner_answers_plant as plant
from heatledger.papers.printing import Printing

QUESTIONS: tuple[tuple[str, Callable[[Printing], b.Text]], ...] = (
    ("How much heat does my house need on the coldest night, and how sure is that?", house.how_much),
    ("Where does the heat go?", house.where_to),
    ("Why is this room cold, and what would mend it?", house.cold_room),
    ("Is my boiler the right size?", plant.boiler_size),
    ("Will my radiators do with cooler water, or with a heat pump?", plant.cooler_water),
    ("What will a winter cost?", house.winter_cost),
    ("Does all this agree with my own bills?", house.agrees),
    ("What would windows, insulation or tighter walls change?", house.what_changes),
    ("May I turn it down at night or when away?", plant.night),
    ("What water temperature should I see today?", plant.water_today),
    ("May I lay carpet, wood or rugs on a warm floor?", care.carpet),
    ("What should the pressure gauge show, cold and hot?", plant.gauge),
    ("Why does water drip beside the boiler?", plant.drips),
    ("Why do I hear air, ticking or banging?", plant.noises),
    ("Is there enough hot water, and can it burn my children?", care.hot_water),
    ("What happens when power or fuel fails?", plant.failure),
    ("Is it safe: who measured the fire, and where are the alarms?", care.is_it_safe),
    ("Which of these numbers were measured and which were guessed?", house.measured_or_guessed),
    ("What must be done each year, and by whom?", care.every_year),
    ("What should a contractor's offer and handover hold?", care.offer),
)


def owner_questions(printing: Printing) -> b.Questions:
    """The questions in their order, numbered."""
    return b.Questions(
        tuple(
            b.Question(f"{number}. {ask}", answer(printing))
            for number, (ask, answer) in enumerate(QUESTIONS, 1)
        )
    )
