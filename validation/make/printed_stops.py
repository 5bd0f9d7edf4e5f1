"""Printed stops: folding of a skin, held ends, shut and vented air, foam, and one whole design. Closed forms and minima worked
out with SciPy, and a small finite-element solver of its own (axisymmetric, eight-node elements, linear elasticity).

Run: python3 -B validation/make/printed_stops.py, then biome over validation/checks.
"""
import numpy as np
import scipy
import scipy.sparse as sp
from check_file import write
from scipy.integrate import quad
from scipy.optimize import brentq, minimize_scalar
from scipy.sparse.linalg import spsolve

MAKER = 'printed_stops.py'
SCIPY = f'scipy {scipy.__version__}'
HERE = 'validation/make/printed_stops.py'


def check(id, title, evaluator, quantity, unit, inputs, expected, tolerance, source, provenance='computed'):
    write('printed-stops', id, title, evaluator, quantity, unit, inputs, expected, tolerance, source, provenance, MAKER)


# --- Skin -------------------------------------------------------------------------------------------------------------

def tube(modulus, t, r, nu):
    """Least axial stress over all wavelengths: bending of the wall, and its hoops on the way out."""
    d = modulus * t**3 / (12 * (1 - nu**2))
    force = lambda k: (d * np.exp(k)**2 + modulus * t / (r**2 * np.exp(k)**2)) / t
    return minimize_scalar(force, bounds=(np.log(0.05 / np.sqrt(r * t)), np.log(50 / np.sqrt(r * t))), method='bounded',
                           options={'xatol': 1e-10}).fun


TUBES = [[20e6, 0.001, 0.03, 0.5], [20e6, 0.002, 0.02, 0.5], [70e9, 0.001, 0.3, 0.3]]
check('skin-folding', 'A long tube under axial load: least stress at which it folds', 'tube-folding', 'stress', 'Pa',
      {'tubes': TUBES}, [tube(*one) for one in TUBES], ('relative', 1e-6, 'search over wavelengths'),
      ('SciPy minimize_scalar over all wavelengths of the wall on its hoops', SCIPY, HERE,
       'axisymmetric buckling as in Timoshenko and Gere, section 11.1'))


def wrinkle(sheet, core, nuc, nus):
    """The same for a unit sheet on a half space whose face does not move along: reaction 2·E·k ÷ ((3 − ν)(1 + ν))."""
    d = sheet / (12 * (1 - nus**2))
    b = 2 * core / ((3 - nuc) * (1 + nuc))
    return minimize_scalar(lambda k: d * np.exp(k)**2 + b / np.exp(k), bounds=(-12, 8), method='bounded',
                           options={'xatol': 1e-10}).fun


SHEETS = [[20e6, 1e6, 0.3, 0.5], [45e6, 8e6, 0.3, 0.5], [70e9, 50e6, 0.2, 0.33]]
check('skin-wrinkling', 'A sheet on a deep soft core: least stress at which it wrinkles', 'wrinkling', 'stress', 'Pa',
      {'sheets': SHEETS}, [wrinkle(*one) for one in SHEETS], ('relative', 1e-6, 'search over wavelengths'),
      ('SciPy minimize_scalar over all wavelengths of a sheet on a half space', SCIPY, HERE,
       'reaction of the half space as in Allen 1969, chapter 8, from memory'))

# --- Held ends --------------------------------------------------------------------------------------------------------

def fe(nu,R,h,n=40,m=40):
    # axisymmetric Q8 on half height (symmetry plane z=0), bonded plate at z=h/2. grading to the corner
    E=1.; lam=nu/((1+nu)*(1-2*nu)); G=1/(2*(1+nu))
    r1=R*(1-(1-np.linspace(0,1,n+1))**1.6); z1=(h/2)*(1-(1-np.linspace(0,1,m+1))**1.6)
    N={}
    def node(i,j):
        if (i,j) not in N: N[(i,j)]=len(N)
        return N[(i,j)]
    def half(a):
        b=np.empty(2*len(a)-1); b[::2]=a; b[1::2]=(a[1:]+a[:-1])/2; return b
    rr,zz=half(r1),half(z1)
    els=[]
    for i in range(n):
        for j in range(m):
            a,b=2*i,2*j
            els.append([node(a,b),node(a+2,b),node(a+2,b+2),node(a,b+2),node(a+1,b),node(a+2,b+1),node(a+1,b+2),node(a,b+1)])
    X=np.zeros((len(N),2))
    for (i,j),k in N.items(): X[k]=(rr[i],zz[j])
    D=np.array([[lam+2*G,lam,lam,0],[lam,lam+2*G,lam,0],[lam,lam,lam+2*G,0],[0,0,0,G]]) # rr tt zz rz
    gp=np.array([-np.sqrt(.6),0,np.sqrt(.6)]); gw=np.array([5/9,8/9,5/9])
    I=[];J=[];V=[]
    sx=np.array([-1,1,1,-1,0,1,0,-1.]); sy=np.array([-1,-1,1,1,-1,0,1,0.])
    for el in els:
        Xe=X[el]; K=np.zeros((16,16))
        for a,wa in zip(gp,gw):
            for b,wb in zip(gp,gw):
                Nn=np.zeros(8);dx=np.zeros(8);dy=np.zeros(8)
                for k in range(8):
                    if k<4:
                        Nn[k]=.25*(1+a*sx[k])*(1+b*sy[k])*(a*sx[k]+b*sy[k]-1)
                        dx[k]=.25*sx[k]*(1+b*sy[k])*(2*a*sx[k]+b*sy[k]); dy[k]=.25*sy[k]*(1+a*sx[k])*(2*b*sy[k]+a*sx[k])
                    elif sx[k]==0:
                        Nn[k]=.5*(1-a*a)*(1+b*sy[k]); dx[k]=-a*(1+b*sy[k]); dy[k]=.5*(1-a*a)*sy[k]
                    else:
                        Nn[k]=.5*(1-b*b)*(1+a*sx[k]); dy[k]=-b*(1+a*sx[k]); dx[k]=.5*(1-b*b)*sx[k]
                Jm=np.array([dx@Xe,dy@Xe]); dj=np.linalg.det(Jm); d=np.linalg.solve(Jm,np.array([dx,dy]))
                r=Nn@Xe[:,0]
                B=np.zeros((4,16)); B[0,0::2]=d[0]; B[1,0::2]=Nn/r; B[2,1::2]=d[1]; B[3,0::2]=d[1]; B[3,1::2]=d[0]
                K+=B.T@D@B*dj*wa*wb*2*np.pi*r
        dof=np.array([[2*k,2*k+1] for k in el]).ravel()
        I+=list(np.repeat(dof,16)); J+=list(np.tile(dof,16)); V+=list(K.ravel())
    nd=2*len(N); K=sp.csr_matrix((V,(I,J)),shape=(nd,nd))
    u=np.zeros(nd); fixed=np.zeros(nd,bool)
    for (i,j),k in N.items():
        if i==0: fixed[2*k]=True
        if j==0: fixed[2*k+1]=True
        if j==2*m: fixed[2*k]=True; fixed[2*k+1]=True; u[2*k+1]=-h/2
    f=-K[:,fixed]@u[fixed]
    u[~fixed]=spsolve(K[~fixed][:,~fixed],f[~fixed])
    W=u@(K@u)/2  # energy for unit strain half body
    return 2*W/(np.pi*R*R*h/2)


HELD = [[0.3, 1, h] for h in (4, 7 / 3, 2, 1, 0.5, 0.25)]
OF_FE = ('finite elements, 24 × 24 eight-node axisymmetric elements on half the height', SCIPY, HERE,
         'the same solver gives 1.195 for nu 0.4985 at shape factor 0.25, where CalculiX gave 1.196')
check('held-ends', 'Round body of nu 0.3 between held ends, R/h 0.25 to 4: stiffness against free sides', 'held-ends',
      'stiffness', 'E', {'bodies': [[*one, 2] for one in HELD]}, [fe(*one, 24, 24) for one in HELD],
      ('relative', 0.015, 'planes stay plane and sides bulge as a parabola: 1.4 % low where tall'), OF_FE)
check('held-end', 'The same held at one end, slipping at the other', 'held-ends', 'stiffness', 'E',
      {'bodies': [[0.3, 1, h / 2, 1] for _, _, h in HELD]}, [fe(*one, 24, 24) for one in HELD],
      ('relative', 0.015, 'half of a body twice as high, by symmetry'), OF_FE)
check('held-ends-soft', 'Round body of nu 0.45 between held ends, R/h 0.25 to 4', 'held-ends', 'stiffness', 'E',
      {'bodies': [[0.45, 1, h, 2] for _, _, h in HELD]}, [fe(0.45, 1, h, 24, 24) for _, _, h in HELD],
      ('relative', 0.045, 'the parabola is 4.3 % low at R/h 0.4, nearer a rubber than any lattice'), OF_FE)

# --- Air --------------------------------------------------------------------------------------------------------------

R, GAMMA, P0 = 287.05, 1.4, 101325.0


def flow(area, up, down, temperature):
    r = max(down / up, (2 / (GAMMA + 1))**(GAMMA / (GAMMA - 1)))
    return area * up / np.sqrt(temperature) * np.sqrt(
        2 * GAMMA / ((GAMMA - 1) * R) * (r**(2 / GAMMA) - r**((GAMMA + 1) / GAMMA)))


def vented(hole, cd, face, speed):
    area = cd * np.pi / 4 * hole**2
    return brentq(lambda p: flow(area, p, P0, 293.15) - p / (R * 293.15) * face * speed, P0 * (1 + 1e-12), P0 / 0.5283) - P0


VENTS = [[0.008, 0.62, 1.9635e-3, 1], [0.006, 0.62, 1.9635e-3, 1], [0.002, 1, 1.9635e-3, 0.236]]
check('vent-steady', 'A face that closes steadily over a hole: pressure', 'vent-steady', 'pressure', 'Pa',
      {'vents': VENTS}, [vented(*one) for one in VENTS], ('relative', 1e-6, 'root to twelve digits'),
      ('SciPy brentq on compressible flow through a nozzle', SCIPY, HERE))


def shut(strains, rho, index):
    return [P0 * (((1 - rho) / (1 - rho - e))**index - 1) for e in strains]


check('shut-air', 'Air shut in a body of density 0.3, hit (n 1.4): pressure at strain 0.1 to 0.5', 'shut-air', 'pressure',
      'Pa', {'density': 0.3, 'index': 1.4, 'strains': [0.1, 0.3, 0.5]}, shut([0.1, 0.3, 0.5], 0.3, 1.4),
      ('relative', 1e-6, 'settled in turns'), ('Polytropic change of state', 'closed form', 'p·Vⁿ = constant'))

# --- Foam -------------------------------------------------------------------------------------------------------------

RHO = [0.1, 0.2, 0.3, 0.42, 0.5]
check('foam-most', 'Closed cells with their gas: modulus at small strain, Es 20 MPa, phi 0.8', 'foam-modulus', 'modulus',
      'Es', {'kind': 'most', 'solidModulus': 20e6, 'densities': RHO},
      [0.64 * r * r + 0.2 * r + P0 / (20e6 * (1 - r)) for r in RHO], ('relative', 1e-9, 'rounding'),
      ('Gibson and Ashby, Cellular Solids', '2nd ed. 1997', 'chapter 5, no widening (nu 0)',
       'from memory; first two terms read at the NIST page on closed cells'))
check('foam-least', 'Open cells: modulus at small strain', 'foam-modulus', 'modulus', 'Es',
      {'kind': 'least', 'solidModulus': 20e6, 'densities': RHO}, [r * r for r in RHO], ('relative', 1e-9, 'rounding'),
      ('Gibson and Ashby, Cellular Solids', '2nd ed. 1997', 'chapter 5', 'from memory'))
check('foam-closing', 'Strain at which dense cells close', 'closing-strain', 'strain', '1',
      {'densities': [0.2, 0.3, 0.5]}, [0.72, 0.58, 0.30], ('absolute', 1e-12, 'rounding'),
      ('Gibson and Ashby, Cellular Solids', '2nd ed. 1997', 'chapter 5, 1 − 1.4·ρ'), 'from memory')


def plateau(strain):
    """0.05·Es·ρ² for Es 20 MPa, ρ 0.2, times what the closing of the cells adds."""
    return 0.05 * 20e6 * 0.04 / (1 - strain / 0.8)


check('foam-plateau', 'Open cells at strain 0.4 and 0.5: plateau of elastic collapse', 'foam-stress', 'stress', 'Pa',
      {'kind': 'least', 'solidModulus': 20e6, 'density': 0.2, 'strains': [0.4, 0.5]}, [plateau(0.4), plateau(0.5)],
      ('relative', 1e-3, 'the law comes to its plateau as 1 − e^(−20·ε)'),
      ('Gibson and Ashby, Cellular Solids', '2nd ed. 1997', 'chapter 5, elastic collapse 0.05·Es·ρ²', 'from memory'))

# --- A whole design ---------------------------------------------------------------------------------------------------

E, RHO_, A, C, H, D = np.sqrt(10e6 * 25e6), 0.4, 2.0, 1.2, 0.07, 0.06
REL = 0.2989 * RHO_ + 0.1221 * RHO_**2 + 0.5052 * RHO_**3
SCALE = E * REL * (RHO_ / 0.35)**0
CLOSE = 1 - C * RHO_
stress = lambda e: SCALE * (1 - np.exp(-A * e)) / A / (1 - e / CLOSE)
AREA = np.pi / 4 * D**2
STRAINS = 0.75 * CLOSE * np.arange(1, 11) / 10
SHAPE = {'height': H, 'diameter': D, 'density': [RHO_]}
LAW = ('the law of a slice, of one density all along', 'closed form', 'F = A·σ(ε)')
check('design-even', 'lastinch stop design of one density: force at its ten crushes', 'printed-design', 'force', 'N', SHAPE,
      [AREA * stress(e) for e in STRAINS], ('relative', 1e-9, 'slices of one law'), LAW)
check('design-even-energy', 'The same: work to the end of the curve', 'printed-energy', 'energy', 'J', SHAPE,
      [AREA * H * quad(stress, 0, STRAINS[-1])[0]], ('relative', 1e-9, 'quadrature'), LAW)
GRADED = {'height': H, 'diameter': D, 'density': [0.5, 0.3]}


def graded(force):
    def strain(z):
        rho = 0.5 - 0.2 * z / H
        rel = E * (0.2989 * rho + 0.1221 * rho**2 + 0.5052 * rho**3)
        close = 1 - C * rho
        return brentq(lambda e: rel * (1 - np.exp(-A * e)) / A / (1 - e / close) - force / AREA, 0, close * (1 - 1e-12))
    return quad(strain, 0, H, epsabs=1e-12)[0]


# The curve ends where the softest slice, of the lowest density that a slice has, comes to three quarters of closing.
SOFT = 0.3 + 0.2 * 0.5 / 60
SOFT_CLOSE = 1 - C * SOFT
TOP = AREA * E * (0.2989 * SOFT + 0.1221 * SOFT**2 + 0.5052 * SOFT**3) * (1 - np.exp(-A * 0.75 * SOFT_CLOSE)) / A / 0.25
END = graded(TOP)
check('design-graded', 'lastinch stop design from 50 to 30 %: force at its ten crushes', 'printed-design', 'force', 'N', GRADED,
      [brentq(lambda f, k=k: graded(f) - END * k / 10, 1, 1.01 * TOP) for k in range(1, 11)],
      ('relative', 5e-4, '60 slices in place of the integral'),
      ('SciPy quad over brentq', SCIPY, HERE, 'every height strained until it bears the force'))
