"""Decks of a square tube welded to a wall and pushed at its free end, plain and with two gussets: S8R shells, clamped root.

x runs from the load to the root, z up; the force pushes down, gussets stand out below the tube in the planes of its
side walls. Units: mm, N, MPa.
"""
from mesh import elastic, element_text, node_set, node_text

MODULUS, POISSON = 205e3, 0.3
SIZE, WALL, LENGTH, FORCE = 50.0, 3.0, 110.0, 12000.0
GUSSET, REACH, HEIGHT, NOSE = 4.0, 60.0, 40.0, 6.0
MIDDLE = SIZE - WALL  # walls are drawn by their middle planes
ALONG, ACROSS, DOWN = 44, 8, 6


class Shells:
    """Quads of eight nodes; nodes at the same place are one."""

    def __init__(self):
        self.nodes, self.at, self.sets = {}, {}, {}
        self.count = 0

    def node(self, place):
        key = tuple(round(x, 6) for x in place)
        if key not in self.at:
            self.at[key] = len(self.nodes) + 1
            self.nodes[self.at[key]] = key
        return self.at[key]

    def panel(self, name, nu, nv, place, skip=lambda u, v: False):
        """A surface place(u, v) over the unit square; an element is left out where `skip` says so of its middle."""
        for i in range(nu):
            for j in range(nv):
                if skip((i + 0.5) / nu, (j + 0.5) / nv):
                    continue
                half = [(0, 0), (2, 0), (2, 2), (0, 2), (1, 0), (2, 1), (1, 2), (0, 1)]
                nodes = [self.node(place((2 * i + a) / 2 / nu, (2 * j + b) / 2 / nv)) for a, b in half]
                self.count += 1
                self.sets.setdefault(name, []).append((self.count, nodes))


def tower(gussets):
    """Deck, and the x at the middle of the column of elements whose stress is printed."""
    half = MIDDLE / 2
    shells = Shells()
    for side in (-half, half):
        shells.panel('TUBE', ALONG, ACROSS, lambda u, v, y=side: (LENGTH * u, y, MIDDLE * (v - 0.5)))
    for z, name in ((half, 'TOP'), (-half, 'TUBE')):
        shells.panel(name, ALONG, ACROSS, lambda u, v, z=z: (LENGTH * u, MIDDLE * (v - 0.5), z))
    if gussets:
        # Straight lower edge from the nose to the root; its columns of nodes are those of the tube.
        from_x, columns = LENGTH - REACH, round(ALONG * REACH / LENGTH)
        for side in (-half, half):
            shells.panel('GUSSET', columns, DOWN, lambda u, v, y=side: (
                from_x + REACH * u, y, -half - v * (NOSE + (HEIGHT - NOSE) * u)))
    printed = column_at(shells, LENGTH - REACH / 2 if gussets else LENGTH / 2)
    root = [n for n, (x, _, _) in shells.nodes.items() if abs(x - LENGTH) < 1e-6]
    end = [n for n, (x, y, _) in shells.nodes.items() if abs(x) < 1e-6 and abs(abs(y) - half) < 1e-6]
    deck = node_text(shells.nodes)
    for name, elements in shells.sets.items():
        deck += ''.join(element_text('S8R', name, [nodes], number) for number, nodes in elements)
    deck += f'*ELSET,ELSET=CUT\n' + ',\n'.join(str(number) for number in printed) + '\n'
    deck += node_set('ROOT', root) + node_set('LOADED', end)
    deck += f'*MATERIAL,NAME=STEEL\n{elastic(MODULUS, POISSON)}'
    for name in shells.sets:
        thickness = GUSSET if name == 'GUSSET' else WALL
        deck += f'*SHELL SECTION,ELSET={name},MATERIAL=STEEL\n{thickness}\n'
    deck += '*BOUNDARY\nROOT,1,6\n*STEP\n*STATIC\n*CLOAD\n'
    deck += ''.join(f'{n}, 3, {-FORCE / len(end):.9g}\n' for n in end)
    return deck + '*NODE PRINT,NSET=LOADED\nU\n*EL PRINT,ELSET=CUT\nS\n*END STEP\n'


def column_at(shells, x):
    """Elements of the upper wall whose middle is nearest to a place along it."""
    middles = {number: sum(shells.nodes[n][0] for n in nodes[:4]) / 4 for number, nodes in shells.sets['TOP']}
    best = min(abs(middle - x) for middle in middles.values())
    nearest = min(middle for middle in middles.values() if abs(abs(middle - x) - best) < 1e-6)
    return [number for number, middle in middles.items() if abs(middle - nearest) < 1e-6]


DECKS = {'tower-plain': tower(False), 'tower-gusseted': tower(True)}
# Middle of the printed column of elements, from the load.
ELEMENT = LENGTH / ALONG
CUTS = {'tower-plain': LENGTH / 2 - ELEMENT / 2, 'tower-gusseted': LENGTH - REACH / 2 - ELEMENT / 2}
