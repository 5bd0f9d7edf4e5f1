import { bad, good, type Problem, type Result, type Where } from '../finding/problem.ts';
import {
  type Coupon,
  couponFit,
  FITTED,
  type FittedNumber,
  type PressedStop,
} from '../stopdesign/coupon-fit.ts';
import { latticeLaw } from '../stopdesign/lattice-law.ts';
import {
  fittedMaterial,
  type PrintMaterial,
  type PrintMaterialName,
  usualMaterial,
} from '../stopdesign/print-material.ts';
import { middlePrint, pressed } from './print-spread.ts';

/** Readings of one coupon as typed, with where each stands. */
export interface CouponReadings {
  readonly name: string;
  readonly density: number;
  /** Of the cylinder as measured [m]. */
  readonly height: number;
  readonly diameter: number;
  /** From touch [m], [N]. */
  readonly crush: readonly number[];
  readonly force: readonly number[];
  /** Of each reading. */
  readonly where: readonly Where[];
}

export interface CorrectRequest {
  readonly name: string;
  /** What was taken of the material so far. */
  readonly before: PrintMaterialName | PrintMaterial;
  readonly coupons: readonly CouponReadings[];
  /** Printed stops that were pressed themselves, from touch. */
  readonly stops: readonly (PressedStop & { readonly where: Where })[];
}

export const CORRECT_DOUBTS = ['one-density', 'not-deep', 'one-copy', 'scatter', 'not-settled'] as const;
export type CorrectDoubt = (typeof CORRECT_DOUBTS)[number];

export interface ToldNumber {
  readonly number: FittedNumber;
  readonly before: number;
  readonly beforeHalf: number;
  readonly value: number;
  /** 95 %, of the modulus too in its own unit. */
  readonly half: number;
  readonly isTold: boolean;
}

/** What presses of prints say about their material. */
export interface Corrected {
  readonly material: PrintMaterial;
  readonly numbers: readonly ToldNumber[];
  /** Pairs that move together: the presses tell their sum rather than each. */
  readonly together: readonly {
    readonly one: FittedNumber;
    readonly other: FittedNumber;
    readonly by: number;
  }[];
  /** Root mean square of (reading − law) ÷ reading. */
  readonly misfit: number;
  readonly readings: number;
  readonly doubts: readonly CorrectDoubt[];
}

/** Density that a lattice law is known for. */
const DENSITIES = [0.1, 0.65] as const;
/** A coupon that is so many times harder or softer than any print of the band was read in other units. */
const ABSURD = 30;
const TOGETHER = 0.9;
const SCATTERED = 0.15;

/**
 * The material that presses show, least squares over coupons and printed stops together, with new intervals; the next
 * design takes it.
 *
 * @failure `stop-press-sign`, `stop-press-units`, `stop-press-too-short`, `stop-shape`, `stop-design-range`, each where it stands
 */
export function correctMaterial({ name, before: asked, coupons, stops }: CorrectRequest): Result<Corrected> {
  const before = typeof asked === 'string' ? usualMaterial(asked) : asked;
  const problems = [
    ...coupons.flatMap((coupon) => couponFaults(coupon, before)),
    ...stops.flatMap((stop) => stopFaults(stop, before)),
  ];
  if (problems.length > 0) return bad(...problems);
  if (coupons.length + stops.length === 0)
    return bad({
      code: 'stop-press-too-short',
      where: {},
      found: '0',
      accepted: 'readings of a coupon or of a stop',
    });
  const fit = couponFit(coupons.map(couponOf), before.middle, stops, before.half);
  const material = fittedMaterial(name, before, fit);
  const numbers = FITTED.map((number): ToldNumber => {
    const scale = (of: PrintMaterial) => (number === 'solidModulus' ? of.middle.solidModulus : 1);
    return {
      number,
      before: before.middle[number],
      beforeHalf: before.half[number] * scale(before),
      value: material.middle[number],
      half: material.half[number] * scale(material),
      isTold: fit.tolerance[number] !== null,
    };
  });
  const together = FITTED.flatMap((one, i) =>
    FITTED.slice(i + 1).flatMap((other, k) => {
      const by = fit.correlation[i * FITTED.length + i + 1 + k];
      return Math.abs(by) > TOGETHER ? [{ one, other, by }] : [];
    }),
  );
  const doubts: CorrectDoubt[] = [];
  if (fit.tolerance.densityPower === null) doubts.push('one-density');
  if (fit.tolerance.closing === null || fit.tolerance.softening === null) doubts.push('not-deep');
  if (coupons.length > 0 && new Set(coupons.map(({ density }) => density)).size === coupons.length)
    doubts.push('one-copy');
  if (fit.misfit > SCATTERED) doubts.push('scatter');
  if (!fit.settled) doubts.push('not-settled');
  const readings = [...coupons, ...stops].reduce(
    (sum, { force }) => sum + force.filter((f) => f > 0).length,
    0,
  );
  return good({ material, numbers, together, misfit: fit.misfit, readings, doubts });
}

const couponOf = ({ density, height, diameter, crush, force }: CouponReadings): Coupon => ({
  density,
  height,
  area: (Math.PI / 4) * diameter ** 2,
  crush,
  force,
});

const millimetres = (length: number): string => `${Number((1000 * length).toPrecision(4))} mm`;

function couponFaults(coupon: CouponReadings, { middle }: PrintMaterial): readonly Problem[] {
  const { density, height, diameter, crush, force, where } = coupon;
  const fault = (code: Problem['code'], i: number, found: string, accepted: string): readonly Problem[] => [
    { code, where: where[i] ?? {}, found, accepted },
  ];
  if (!(height > 0 && diameter > 0))
    return fault(
      'stop-shape',
      0,
      `a coupon of ${millimetres(Math.min(height, diameter))}`,
      'height and diameter above zero',
    );
  if (!(density >= DENSITIES[0] && density <= DENSITIES[1]))
    return fault(
      'stop-design-range',
      0,
      `${Math.round(100 * density)} %`,
      `10 % to 65 %: what a lattice is made of`,
    );
  const negative = crush.findIndex((c, i) => c < 0 || force[i] < 0);
  if (negative >= 0)
    return fault(
      'stop-press-sign',
      negative,
      `${millimetres(crush[negative])}, ${force[negative].toFixed(0)} N`,
      'crush and force of zero or more, counted from touch',
    );
  const back = crush.findIndex((c, i) => i > 0 && !(c > crush[i - 1]));
  if (back >= 0)
    return fault(
      'stop-press-strokes',
      back,
      millimetres(crush[back]),
      'one stroke down, each crush above the one before',
    );
  if (force.filter((f) => f > 0).length < 3)
    return fault(
      'stop-press-too-short',
      0,
      `${force.filter((f) => f > 0).length} that rise`,
      'three readings of a coupon or more',
    );
  const last = crush.length - 1;
  if (!(crush[last] < height * (1 - 0.8 * density)))
    return fault(
      'stop-shape',
      last,
      `a coupon of ${millimetres(height)} crushed by ${millimetres(crush[last])}`,
      'less than what closes it',
    );
  // Early, where no print of this density has closed, whatever its law.
  const early = crush.findIndex((c, i) => c > 0.03 * height && force[i] > 0);
  const i = early < 0 ? last : early;
  const strain = Math.min(crush[i] / height, 0.5 * (1 - middle.closing * density));
  const area = (Math.PI / 4) * diameter ** 2;
  const ratio = force[i] / (area * latticeLaw(middle, density).stress(strain));
  return ratio > ABSURD || ratio < 1 / ABSURD
    ? fault('stop-press-units', i, ...absurd(force[i], crush[i]))
    : [];
}

const absurd = (force: number, crush: number): [string, string] => [
  `${Number((force / crush / 1000).toPrecision(3))} N/mm over ${millimetres(crush)}`,
  'what such a print can be: look at the units of both columns, and at the density',
];

function stopFaults(
  { body, crush, force, where }: CorrectRequest['stops'][number],
  material: PrintMaterial,
): readonly Problem[] {
  const deep = crush[crush.length - 1];
  const half = Math.floor(crush.length / 2);
  const expected = pressed(middlePrint(body, material, false)).forceAt(crush[half]);
  if (!(deep < body.height))
    return [
      {
        code: 'stop-shape',
        where,
        found: `a lattice of ${millimetres(body.height)} crushed by ${millimetres(deep)}`,
        accepted: 'less than its height: is it the design that was pressed?',
      },
    ];
  const ratio = force[half] / expected;
  if (ratio < ABSURD && (ratio > 1 / ABSURD || !Number.isFinite(expected))) return [];
  const [found, accepted] = absurd(force[half], crush[half]);
  return [{ code: 'stop-press-units', where, found, accepted }];
}
