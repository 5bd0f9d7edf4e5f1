import type { Figure } from '../finding/figure.ts';
import type { Finding } from '../finding/finding.ts';
import type { ExposureFigures } from './figures.ts';
import { comfortBands } from './limits.ts';
import type { ExposureResult } from './result.ts';

/** Where and how fast the seat was shaken. */
export interface ExposureOccasion {
  /** Name of the course or stretch. */
  readonly course: string;
  /** [m/s] */
  readonly speed: number;
  /** Whose seat: of the sitter, or of nobody in particular, at a usual place on the body. Left out: the sitter. */
  readonly seat?: 'sitter' | 'usual-place';
}

/**
 * What the exposure says, in at most three findings: the main statement, or that nothing is known; that single hits
 * stand out; that the record is narrower than the band. Words of comfort and yardsticks, never of health.
 */
export function exposureFindings(
  exposure: ExposureResult,
  figures: ExposureFigures,
  { course, speed, seat: whose = 'sitter' }: ExposureOccasion,
): readonly Finding[] {
  const occasion = { course, whose, speed: { dimension: 'speed', value: speed, tolerance: 0 } as Figure };
  const exact = (dimension: Figure['dimension'], value: number): Figure => ({
    dimension,
    value,
    tolerance: 0,
  });
  const { rms, timeToAction, timeToLimit, crestFactor, dose, lowPassedPeak } = figures;
  const { seat, doubts } = exposure;
  if (seat === null || rms === null || timeToAction === null || timeToLimit === null) {
    return [
      finding('exposure-unknown', 'unproven', {
        ...occasion,
        reason: doubts[0] ?? '',
        duration: exact('time', exposure.duration),
        samples: exact('frequency', exposure.rate),
      }),
    ];
  }
  const findings = [
    finding(
      'exposure-seat',
      'note',
      {
        ...occasion,
        rms,
        timeToAction,
        timeToLimit,
        comfort: comfortBands(rms.value, rms.tolerance ?? 0).join(', '),
      },
      rms,
    ),
  ];
  if (
    seat.vertical.shocks !== null &&
    seat.vertical.shocks.length > 0 &&
    dose !== null &&
    lowPassedPeak !== null
  )
    findings.push(
      finding('exposure-shocks', 'note', {
        ...occasion,
        dose,
        peak: lowPassedPeak,
        ...(crestFactor === null ? {} : { crestFactor }),
      }),
    );
  if (doubts.includes('rate-low'))
    findings.push(
      finding('exposure-narrow', 'unproven', {
        ...occasion,
        rightUpTo: exact('frequency', exposure.rightUpTo),
        samples: exact('frequency', exposure.rate),
      }),
    );
  return findings;
}

const finding = (
  code: Finding['code'],
  severity: Finding['severity'],
  facts: Finding['facts'],
  value?: Figure,
): Finding => ({
  id: `${code}.rig`,
  code,
  severity,
  place: 'rig',
  facts,
  because: [],
  remedies: [],
  ...(value === undefined ? {} : { value }),
});
