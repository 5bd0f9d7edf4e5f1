"""Structured meshes and the parts of a CalculiX deck that every case needs. Units: mm, N, MPa."""


def quads(nx, ny, x_of, y_of):
    """Quads of eight nodes on the unit square: nodes {number: (x, y)}, elements, and number by half step (i, j)."""
    nodes, ids = {}, {}
    for j in range(2 * ny + 1):
        for i in range(2 * nx + 1):
            if i % 2 and j % 2:
                continue
            ids[i, j] = len(nodes) + 1
            nodes[ids[i, j]] = (x_of(i / (2 * nx)), y_of(j / (2 * ny)))
    elements = []
    for j in range(0, 2 * ny, 2):
        for i in range(0, 2 * nx, 2):
            around = [(0, 0), (2, 0), (2, 2), (0, 2), (1, 0), (2, 1), (1, 2), (0, 1)]
            elements.append([ids[i + di, j + dj] for di, dj in around])
    return nodes, elements, ids


def line(numbers):
    return ', '.join(map(str, numbers)) + '\n'


def node_text(nodes):
    def one(number, at):
        x, y, *z = at
        return f'{number}, {x:.9g}, {y:.9g}, {z[0] if z else 0:.9g}\n'
    return '*NODE,NSET=NALL\n' + ''.join(one(number, at) for number, at in nodes.items())


def element_text(kind, name, elements, first=1):
    return f'*ELEMENT,TYPE={kind},ELSET={name}\n' + ''.join(
        line([first + k, *nodes]) for k, nodes in enumerate(elements))


def node_set(name, numbers):
    rows = [numbers[k:k + 10] for k in range(0, len(numbers), 10)]
    return f'*NSET,NSET={name}\n' + ''.join(line(row) for row in rows)


def neo_hooke(shear, bulk):
    """CalculiX takes C10 = G/2 and D1 = 2/K."""
    return f'*HYPERELASTIC,NEO HOOKE\n{shear / 2:.9g}, {2 / bulk:.9g}\n'


def mooney_rivlin(c10, c01, bulk):
    return f'*HYPERELASTIC,MOONEY-RIVLIN\n{c10:.9g}, {c01:.9g}, {2 / bulk:.9g}\n'


def elastic(modulus, poisson):
    return f'*ELASTIC\n{modulus:.9g}, {poisson:.9g}\n'


def pressed(step, travel, reaction_of='TOP'):
    """Twenty equal shares of a large displacement of the top, with the summed reaction at each."""
    return ('*TIME POINTS,NAME=TP,GENERATE\n0.05,1.0,0.05\n*STEP,NLGEOM,INC=2000\n*STATIC\n'
            f'{step},1.,1e-6,{step}\n*BOUNDARY\nTOP,2,2,{-travel:.9g}\n'
            f'*NODE PRINT,NSET={reaction_of},TOTALS=ONLY,TIME POINTS=TP\nRF\n*END STEP\n')
