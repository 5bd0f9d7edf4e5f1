"""Reads what CalculiX printed and gives the figures of each case as JSON. Run: python3 collect.py FOLDER"""
import json
import math
import pathlib
import re
import sys

from rubber import SMALL_SHAPES
from towers import CUTS

AREA = math.pi * 25 ** 2
WEDGE = 180  # reactions of axisymmetric elements are printed for a wedge of two degrees


def printed(path):
    """(share of the step, numbers) of each printed line of forces or displacements."""
    rows, share = [], None
    for text in path.read_text().splitlines():
        head = re.search(r'(?:force|displacement).*time\s+([0-9.E+-]+)', text)
        if head:
            share = float(head[1])
        elif share is not None and text.strip():
            rows.append((share, [float(word) for word in text.split()]))
    if not rows:
        raise SystemExit(f'{path.name}: CalculiX printed nothing')
    return rows


def figure(quantity, unit, values, **rest):
    return {'quantity': quantity, 'unit': unit, **rest, 'values': values}


def pressed(path, strain):
    rows = printed(path)
    return figure('force', 'N', [round(-WEDGE * numbers[1], 3) for _, numbers in rows],
                  strains=[round(share * strain, 6) for share, _ in rows])


def small_strain(folder):
    """Apparent modulus over Young's, two small strains drawn on to none."""
    ratios = []
    for shape in SMALL_SHAPES:
        rows = printed(folder / f'disc-small-strain-{shape:g}.dat')[:2]
        first, second = (-WEDGE * numbers[1] / AREA / (share * 0.02) / 3 for share, numbers in rows)
        ratios.append(round(2 * first - second, 5))
    return figure('apparent modulus over Young\'s', '1', ratios, shapes=list(SMALL_SHAPES))


def sag(path, part):
    return figure('sag of the middle', 'mm', [round(abs(printed(path)[0][1][part]), 6)])


def tower(path, name):
    """Mean sag of the loaded walls, and mean stress along the upper wall at the cut."""
    sags, stresses, kind = [], [], None
    for text in path.read_text().splitlines():
        words = text.split()
        if 'displacements' in text:
            kind = 'sag'
        elif 'stresses' in text:
            kind = 'stress'
        elif kind == 'sag' and len(words) == 4:
            sags.append(-float(words[3]))
        elif kind == 'stress' and len(words) >= 8:
            stresses.append(float(words[2]))
    sag, stress = sum(sags) / len(sags), sum(stresses) / len(stresses)
    return figure('sag of the load, stress of the upper wall at the cut', 'mm, MPa',
                  [round(sag, 6), round(stress, 4)], cut=CUTS[name])


def collect(folder):
    def at(name):
        return folder / f'{name}.dat'
    return {
        **{name: pressed(at(name), strain) for name, strain in (
            ('disc-bonded-flat', 0.30), ('disc-bonded-flatter', 0.30), ('disc-greased', 0.30),
            ('disc-bonded-two-terms', 0.20), ('column-pair', 0.40), ('column-graded', 0.40))},
        'disc-small-strain': small_strain(folder),
        **{name: sag(at(name), 2) for name in ('plate-round-pressure', 'plate-round-patch')},
        **{name: tower(at(name), name) for name in CUTS},
        **{name: sag(at(name), 3) for name in ('plate-square-patch', 'plate-two-to-one-patch')},
    }


if __name__ == '__main__':
    json.dump(collect(pathlib.Path(sys.argv[1])), sys.stdout)
