"""Decks of clamped steel plates under a load on their middle: solids of revolution, and shells on a quarter."""
import math

from mesh import elastic, element_text, node_set, node_text, quads

MODULUS, POISSON = 210e3, 0.3


def round_plate(radius, thickness, nr, nz, pressure=None, force=None, patch=None):
    """Axisymmetric; `pressure` on the whole top, or `force` spread evenly over r < `patch`."""
    nodes, elements, ids = quads(nr, nz, lambda s: radius * s, lambda s: thickness * s)
    on = nr if force is None else sum(radius * (i + 1) / nr <= patch * (1 + 1e-9) for i in range(nr))
    p = pressure if force is None else force / (math.pi * patch ** 2)
    loads = ''.join(f'{(nz - 1) * nr + i + 1}, P3, {p:.9g}\n' for i in range(on))
    return (node_text(nodes) + element_text('CAX8R', 'EALL', elements)
            + node_set('EDGE', [n for (i, _), n in ids.items() if i == 2 * nr])
            + node_set('AXIS', [n for (i, _), n in ids.items() if i == 0]) + node_set('CENTRE', [ids[0, 0]])
            + f'*MATERIAL,NAME=STEEL\n{elastic(MODULUS, POISSON)}*SOLID SECTION,ELSET=EALL,MATERIAL=STEEL\n'
            + f'*BOUNDARY\nEDGE,1,2\nAXIS,1,1\n*STEP\n*STATIC\n*DLOAD\n{loads}'
            + '*NODE PRINT,NSET=CENTRE\nU\n*END STEP\n')


def share_inside(i, j, dx, dy, patch, parts=20):
    """Share of element (i, j) that lies within the loaded circle."""
    inside = sum(((i + (k + 0.5) / parts) * dx) ** 2 + ((j + (m + 0.5) / parts) * dy) ** 2 <= patch * patch
                 for k in range(parts) for m in range(parts))
    return inside / parts ** 2


def rectangle(a, b, thickness, na, nb, force, patch):
    """Quarter of a plate a x b clamped all round, S8R shells, `force` on a circle about its middle."""
    dx, dy = a / 2 / na, b / 2 / nb
    nodes, elements, ids = quads(na, nb, lambda s: a / 2 * s, lambda s: b / 2 * s)
    shares = {j * na + i + 1: share_inside(i, j, dx, dy, patch) for j in range(nb) for i in range(na)}
    pressure = force / (sum(shares.values()) * dx * dy * 4)
    loads = ''.join(f'{e}, P, {pressure * share:.9g}\n' for e, share in shares.items() if share > 0)
    return (node_text(nodes) + element_text('S8R', 'EALL', elements)
            + node_set('CLAMP', [n for (i, j), n in ids.items() if i == 2 * na or j == 2 * nb])
            + node_set('XS', [n for (i, _), n in ids.items() if i == 0])
            + node_set('YS', [n for (_, j), n in ids.items() if j == 0]) + node_set('CENTRE', [ids[0, 0]])
            + f'*MATERIAL,NAME=STEEL\n{elastic(MODULUS, POISSON)}*SHELL SECTION,ELSET=EALL,MATERIAL=STEEL\n{thickness}\n'
            + '*BOUNDARY\nCLAMP,1,6\nXS,1,1\nXS,5,6\nYS,2,2\nYS,4,4\nYS,6,6\n'
            + f'*STEP\n*STATIC\n*DLOAD\n{loads}*NODE PRINT,NSET=CENTRE\nU\n*END STEP\n')


DECKS = {
    'plate-round-pressure': round_plate(100, 5, 80, 4, pressure=1.0),
    'plate-round-patch': round_plate(100, 5, 80, 4, force=10000.0, patch=12.5),
    'plate-square-patch': rectangle(200, 200, 5, 40, 40, 10000.0, 10.0),
    'plate-two-to-one-patch': rectangle(400, 200, 5, 80, 40, 10000.0, 10.0),
}
