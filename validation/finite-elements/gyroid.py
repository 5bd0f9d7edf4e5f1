"""Stiffness of the sheet gyroid by linear periodic homogenisation on voxels, in NumPy and SciPy.

The sheet |sin X cos Y + sin Y cos Z + sin Z cos X| <= t fills a cube of N voxels a side; each solid voxel is a brick of
eight nodes; one mean strain along an edge gives C11 and C12, and with the cubic symmetry of the cell the modulus
E100 = C11 - 2 C12^2 / (C11 + C12). Run: python3 gyroid.py [N [nu [density ...]]] gives JSON.
"""
import json
import sys

import numpy as np
from scipy.optimize import brentq
from scipy.sparse import coo_matrix, diags
from scipy.sparse.linalg import cg

CORNERS = np.array([(0, 0, 0), (1, 0, 0), (1, 1, 0), (0, 1, 0), (0, 0, 1), (1, 0, 1), (1, 1, 1), (0, 1, 1)])


def level(n):
    at = 2 * np.pi * (np.arange(n) + 0.5) / n
    x, y, z = np.meshgrid(at, at, at, indexing='ij')
    return np.abs(np.sin(x) * np.cos(y) + np.sin(y) * np.cos(z) + np.sin(z) * np.cos(x))


def half_width(density, n=200):
    """Level t whose sheet fills this share of the cell."""
    field = np.sort(level(n).ravel())
    return brentq(lambda t: np.searchsorted(field, t) / field.size - density, 0, 1.5)


def elasticity(poisson):
    lam, mu = poisson / ((1 + poisson) * (1 - 2 * poisson)), 1 / (2 * (1 + poisson))
    stiffness = np.diag([2 * mu] * 3 + [mu] * 3)
    stiffness[:3, :3] += lam
    return stiffness


def strain_rows(at, edge):
    """Strain of a brick from its 24 displacements, at a point in -1 .. 1."""
    signs = 2 * CORNERS - 1
    slopes = np.array([[s[k] / 4 / edge * np.prod([1 + s[m] * at[m] for m in range(3) if m != k]) for s in signs]
                       for k in range(3)])
    rows = np.zeros((6, 24))
    for k in range(3):
        rows[k, k::3] = slopes[k]
    for row, (a, b) in zip((3, 4, 5), ((1, 2), (0, 2), (0, 1))):
        rows[row, a::3], rows[row, b::3] = slopes[b], slopes[a]
    return rows


def brick(stiffness, edge):
    """Stiffness of one brick, and its forces and mean strain: Gauss points 2 x 2 x 2."""
    g = 1 / np.sqrt(3)
    weight = edge ** 3 / 8
    points = [strain_rows((g * a, g * b, g * c), edge) for a in (-1, 1) for b in (-1, 1) for c in (-1, 1)]
    return (sum(weight * rows.T @ stiffness @ rows for rows in points), sum(weight * rows for rows in points))


def modulus(density, n, poisson):
    """E100 over the modulus of the solid."""
    solid = np.argwhere(level(n) <= half_width(density))
    stiffness = elasticity(poisson)
    own, mean = brick(stiffness, 1 / n)
    nodes = (solid[:, None, :] + CORNERS) % n
    numbers, inverse = np.unique(nodes @ np.array([n * n, n, 1]), return_inverse=True)
    dofs = (3 * inverse.reshape(len(solid), 8, 1) + np.arange(3)).reshape(len(solid), 24)
    size = 3 * len(numbers)
    whole = coo_matrix((np.tile(own.ravel(), len(solid)), (np.repeat(dofs, 24, axis=1).ravel(),
                                                           np.tile(dofs, 24).ravel())), (size, size)).tocsr()
    along = np.array([1.0, 0, 0, 0, 0, 0])
    pull = np.bincount(dofs.ravel(), np.tile(-mean.T @ stiffness @ along, len(solid)), size)
    moved, failed = cg(whole, pull, rtol=1e-7, maxiter=20000, M=diags(1 / whole.diagonal()))
    if failed:
        raise SystemExit('the gyroid did not converge')
    stress = stiffness @ (len(solid) / n ** 3 * along + mean @ moved[dofs].sum(axis=0))
    c11, c12 = stress[0], (stress[1] + stress[2]) / 2
    return c11 - 2 * c12 ** 2 / (c11 + c12)


def collect(n=48, poisson=0.3, densities=(0.15, 0.2, 0.3, 0.4, 0.5, 0.6)):
    return {'gyroid-sheet': {'quantity': 'E100 over the modulus of the solid', 'unit': '1', 'voxels': n,
                             'poisson': poisson, 'densities': list(densities),
                             'values': [round(float(modulus(rho, n, poisson)), 5) for rho in densities]}}


if __name__ == '__main__':
    words = sys.argv[1:]
    asked = {}
    if words:
        asked['n'] = int(words[0])
    if len(words) > 1:
        asked['poisson'] = float(words[1])
    if len(words) > 2:
        asked['densities'] = tuple(map(float, words[2:]))
    json.dump(collect(**asked), sys.stdout)
