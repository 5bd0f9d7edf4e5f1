"""Decks of rubber discs and of graded columns whose sides are held: axisymmetric, large strain."""
from mesh import element_text, mooney_rivlin, neo_hooke, node_set, node_text, pressed, quads

RADIUS = 25.0
BULK = 1000.0


def disc(height, strain, law, nx, ny, step, bonded=True, grading=1.0):
    """Upper half of a disc: its lower face is the plane of symmetry, its upper one is pressed and, bonded, held."""
    def finer_outside(share):
        return 1 - (1 - share) ** grading
    half = height / 2
    nodes, elements, ids = quads(nx, ny, lambda s: RADIUS * finer_outside(s), lambda s: half * finer_outside(s))
    return (node_text(nodes) + element_text('CAX8R', 'EALL', elements)
            + node_set('TOP', [n for (_, j), n in ids.items() if j == 2 * ny])
            + node_set('BOTTOM', [n for (_, j), n in ids.items() if j == 0])
            + node_set('AXIS', [n for (i, _), n in ids.items() if i == 0])
            + f'*MATERIAL,NAME=RUBBER\n{law}*SOLID SECTION,ELSET=EALL,MATERIAL=RUBBER\n'
            + '*BOUNDARY\nBOTTOM,2,2\nAXIS,1,1\n' + ('TOP,1,1\n' if bonded else '')
            + pressed(step, strain * half))


def column(height, strain, shears, poisson):
    """Equal layers under uniaxial strain, two elements across."""
    count = len(shears)
    nodes, elements, ids = quads(2, count, lambda s: RADIUS * s, lambda s: height * s)
    layers = [element_text('CAX8R', f'L{j}', elements[2 * j:2 * j + 2], 2 * j + 1) for j in range(count)]
    laws = [f'*MATERIAL,NAME=M{j}\n{neo_hooke(shear, 2 * shear * (1 + poisson) / 3 / (1 - 2 * poisson))}'
            f'*SOLID SECTION,ELSET=L{j},MATERIAL=M{j}\n' for j, shear in enumerate(shears)]
    return (node_text(nodes) + ''.join(layers)
            + node_set('TOP', [n for (_, j), n in ids.items() if j == 2 * count])
            + node_set('BOTTOM', [n for (_, j), n in ids.items() if j == 0])
            + ''.join(laws) + '*BOUNDARY\nBOTTOM,2,2\nNALL,1,1\n' + pressed(0.05, strain * height))


def by_shape(shape):
    """Height of the disc whose shape factor D/4h this is."""
    return 2 * RADIUS / (4 * shape)


SMALL_SHAPES = (0.25, 0.5, 1.0, 2.0, 4.0)
PAIR = [1.0] * 6 + [3.0] * 6
GRADED = [0.5 + 3.5 * (j + 0.5) / 24 for j in range(24)]

DECKS = {
    'disc-bonded-flat': disc(by_shape(0.5), 0.30, neo_hooke(1, BULK), 12, 12, 0.01),
    'disc-bonded-flatter': disc(by_shape(1.0), 0.30, neo_hooke(1, BULK), 24, 6, 0.02),
    'disc-greased': disc(by_shape(0.5), 0.30, neo_hooke(1, BULK), 4, 4, 0.05, bonded=False),
    'disc-bonded-two-terms': disc(by_shape(0.5), 0.20, mooney_rivlin(0.4, 0.1, BULK), 12, 12, 0.01),
    **{f'disc-small-strain-{shape:g}': disc(by_shape(shape), 0.02, neo_hooke(1, BULK), 24, 16, 0.05, grading=1.5)
       for shape in SMALL_SHAPES},
    'column-pair': column(60, 0.40, PAIR, 0.3),
    'column-graded': column(60, 0.40, GRADED, 0.3),
}
