"""The climb to an upper opening, as it is seen from the side."""

from __future__ import annotations

from wardwright.documents.content.quantities import quantity
from wardwright.documents.drawing.recording import Drawing
from wardwright.documents.drawing.side_view import Stage, side_view
from wardwright.questions.answer import Answer
from wardwright.questions.reach_from_outside import NUMBER, TO


def climb_side(answer: Answer, *, key: str) -> Drawing | None:
    """Draw the climb that an answer is about.

    Parameters
    ----------
    answer : Answer
        To question 14.
    key : str
        Unique on the page.

    Returns
    -------
    Drawing or None
        None where nothing is climbed on the way.
    """
    if answer.question != NUMBER:
        return None
    stages = tuple(
        Stage(part.name.removeprefix(TO), part.estimate.value, quantity(part.estimate.value, "m", 0.1))
        for part in answer.parts
        if part.estimate is not None and part.name.startswith(TO)
    )
    if len(stages) < 2:
        return None
    told = ", ".join(f"{stage.name} {stage.words}" for stage in stages)
    return side_view(
        stages,
        key=key,
        title=f"The climb to {answer.subject} from the side",
        description=f"Heights above the ground, one after another: {told}.",
    )
