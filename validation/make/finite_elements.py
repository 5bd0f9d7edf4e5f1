"""Figures that the finite-element decks gave, from validation/finite-elements/results.json. Writes no checks itself."""
import json
import pathlib

RESULTS = json.loads(
    (pathlib.Path(__file__).resolve().parent.parent / 'finite-elements' / 'results.json').read_text())
PLACE = 'validation/finite-elements'


def solved(name, along=None, at=None):
    """Values of a case; with `along` ('strains', 'shapes') only those at these places."""
    case = RESULTS[name]
    if along is None:
        return case['values']
    return [case['values'][case[along].index(place)] for place in at]
