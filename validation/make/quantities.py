"""Unit factors as the published table gives them, and typed lengths worked out in exact fractions.

Run: python3 validation/make/quantities.py, then biome over validation/checks.
"""
from fractions import Fraction
from check_file import write

MAKER = 'quantities.py'
NOTE = ('Values read in two public transcriptions of the table (an R package and a table saved from the web page); '
        'the publication itself was not opened.')


def table(place):
    return ('NIST Special Publication 811, Guide for the Use of the International System of Units', '2008', place, NOTE)


EXACT = ('relative', 4e-16, 'the table marks these factors as exact; two units in the last place of a double')
SEVEN = ('relative', 5e-7, 'the table prints seven digits; half a unit of the last one')


def factors(id, title, dimension, unit, expected, tolerance, place='Appendix B.8'):
    write('quantities', id, title, 'si-values', f'{dimension} in SI', unit,
          {'dimension': dimension, 'texts': list(expected)}, expected, tolerance, table(place), 'read')


factors('length', 'Lengths in inches and feet', 'length', 'm',
        {'1 in': 0.0254, '1 ft': 0.3048}, EXACT)
factors('mass', 'Masses in pounds', 'mass', 'kg', {'1 lb': 0.4535924}, SEVEN)
factors('force', 'Forces in pounds-force', 'force', 'N', {'1 lbf': 4.448222}, SEVEN)
factors('rate', 'Spring rates in pounds-force per inch', 'rate', 'N/m', {'1 lbf/in': 175.1268, '1 lb/in': 175.1268},
        SEVEN)
factors('pressure', 'Pressures in pounds-force per square inch', 'pressure', 'Pa', {'1 psi': 6894.757}, SEVEN)
factors('speed', 'Speeds in miles per hour', 'speed', 'm/s', {'1 mph': 0.44704}, EXACT)
factors('standard-gravity', 'Accelerations in multiples of standard gravity', 'acceleration', 'm/s²',
        {'1 g': 9.80665}, EXACT, 'Appendix B.8, acceleration of free fall, standard')

INCH = Fraction(254, 10000)
LENGTHS = {
    '4 1/8 in': Fraction(33, 8) * INCH,
    '4-5/8"': Fraction(37, 8) * INCH,
    '21 1/4 in': Fraction(85, 4) * INCH,
    '16 7/16 in': Fraction(263, 16) * INCH,
    '7 1/16 in': Fraction(113, 16) * INCH,
    '4.625 in': Fraction(4625, 1000) * INCH,
    '1\'6"': 18 * INCH,
    '2\' 7 1/4"': Fraction(125, 4) * INCH,
    '101.6 mm': Fraction(1016, 10000),
}
write('quantities', 'shop-fractions', 'Shop fractions and feet with inches', 'si-values', 'length in SI', 'm',
      {'dimension': 'length', 'texts': list(LENGTHS)}, {text: float(value) for text, value in LENGTHS.items()},
      ('relative', 4e-16, 'exact in rational arithmetic; two units in the last place of a double'),
      ('Exact rational arithmetic (Python fractions) on 1 in = 25.4 mm', 'Python 3',
       'validation/make/quantities.py'), 'computed', MAKER)

# g_n with one pound-force per inch: the exact factor, so that a rounded one in our table cannot hide.
POUND, GRAVITY = Fraction(45359237, 10 ** 8), Fraction(980665, 10 ** 5)
write('quantities', 'derived-factors', 'Factors that follow exactly from inch, pound and standard gravity', 'si-values',
      'rate in SI', 'N/m', {'dimension': 'rate', 'texts': ['1 lbf/in', '250 lb/in', '1 N/mm', '1 kN/m']},
      {'1 lbf/in': float(POUND * GRAVITY / INCH), '250 lb/in': float(250 * POUND * GRAVITY / INCH), '1 N/mm': 1000,
       '1 kN/m': 1000},
      ('relative', 4e-16, 'exact in rational arithmetic; two units in the last place of a double'),
      ('Exact rational arithmetic on the definitions of inch, pound and standard gravity', 'Python 3',
       'validation/make/quantities.py'), 'computed', MAKER)
write('quantities', 'pressure-exact', 'Pressure from its definition', 'si-values', 'pressure in SI', 'Pa',
      {'dimension': 'pressure', 'texts': ['1 psi', '32 psi']},
      {'1 psi': float(POUND * GRAVITY / INCH ** 2), '32 psi': float(32 * POUND * GRAVITY / INCH ** 2)},
      ('relative', 4e-16, 'exact in rational arithmetic; two units in the last place of a double'),
      ('Exact rational arithmetic on the definitions of inch, pound and standard gravity', 'Python 3',
       'validation/make/quantities.py'), 'computed', MAKER)
