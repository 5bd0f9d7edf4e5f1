import { rainflow } from '@lastinch/core';
import {
  BOLT_CLASSES,
  barSection,
  bendCantilever,
  boltBearing,
  boltUse,
  boxSection,
  crackShare,
  dropFactor,
  impactForce,
  loadFactor,
  loopsToCrack,
  type PlateAnswer,
  type PulseShape,
  pressedAside,
  rectanglePlateUnderPatch,
  roundPlateUnderPatch,
  roundPlateUnderPressure,
  roundSection,
  SHEAR_SHARE,
  type StressKind,
  stressArea,
  stripAreas,
  strutLoad,
  type WeldRun,
  weldedAround,
  weldGroup,
  weldStress,
  weldStresses,
  withGussets,
} from '@lastinch/core/bracket';
import type { Runner } from '../runner.ts';
import { number, numbers, text } from './inputs.ts';

type Inputs = Readonly<Record<string, unknown>>;

const MM = 1e-3;
const MPA = 1e6;

const sheetOf = ({ thickness, modulus, poisson }: Inputs) => ({
  thickness: MM * number(thickness),
  modulus: MPA * number(modulus),
  poisson: number(poisson),
});

const plateValues = ({ deflection, centreStress, edgeStress }: PlateAnswer, parts: unknown) => {
  const all: Readonly<Record<string, number>> = {
    sag: deflection / MM,
    centre: centreStress / MPA,
    edge: edgeStress / MPA,
  };
  if (!Array.isArray(parts)) throw new Error('A check names no parts');
  return Object.fromEntries(parts.map((part) => [text(part), all[text(part)]]));
};

const tubeOf = ({ diameter, wall }: Inputs) =>
  roundSection({ diameter: MM * number(diameter), wall: MM * number(wall) });

function taperedBar({ width, depths, length, modulus, force }: Inputs) {
  const [tip, root] = numbers(depths);
  const long = MM * number(length);
  const sectionAt = (x: number) =>
    barSection({ width: MM * number(width), depth: MM * (tip + ((root - tip) * x) / long) });
  const beam = { length: long, modulus: MPA * number(modulus), sectionAt, breaks: [] };
  return bendCantilever(beam, number(force));
}

/** A square tube with gussets from a place on: their height rises evenly from nose to root. */
function towerOf({ size, wall, length, modulus, gusset }: Inputs) {
  const [side, long] = [MM * number(size), MM * number(length)];
  const tube = boxSection({ width: side, depth: side, wall: MM * number(wall) });
  const plates = gusset as Inputs | null;
  const reach = plates ? MM * number(plates.reach) : 0;
  const sectionAt = (x: number) => {
    const along = x - (long - reach);
    if (plates === null || along < 0) return tube;
    const nose = MM * number(plates.nose);
    const height = nose + ((MM * number(plates.height) - nose) * along) / reach;
    return withGussets(tube, side, {
      thickness: MM * number(plates.thickness),
      count: number(plates.count),
      height,
    });
  };
  return { length: long, modulus: MPA * number(modulus), sectionAt, breaks: [long - reach] };
}

const runsOf = (inputs: Inputs): readonly WeldRun[] => {
  if (inputs.around) {
    const [width, depth] = numbers(inputs.around);
    return weldedAround(MM * width, MM * depth);
  }
  return (inputs.runs as readonly (readonly number[])[]).map(([y0, z0, y1, z1]) => ({
    from: [MM * y0, MM * z0],
    to: [MM * y1, MM * z1],
  }));
};

const classOf = (name: unknown) => BOLT_CLASSES[text(name) as keyof typeof BOLT_CLASSES];
const areaOf = ({ diameter, pitch, form }: Inputs) =>
  stressArea({ diameter: number(diameter), pitch: number(pitch) }, text(form) === 'inch' ? 'inch' : 'metric');

/** Brackets: plates, beams, struts, bolts, welds, holes, fatigue, sudden loads. */
export const bracket: Runner = {
  'round-pressure': (inputs) =>
    plateValues(
      roundPlateUnderPressure(sheetOf(inputs), MM * number(inputs.radius), MPA * number(inputs.pressure)),
      inputs.parts,
    ),
  'round-patch': (inputs) =>
    plateValues(
      roundPlateUnderPatch(
        sheetOf(inputs),
        MM * number(inputs.radius),
        MM * number(inputs.patch),
        number(inputs.force),
      ),
      inputs.parts,
    ),
  'rectangle-patch': (inputs) => {
    const [a, b] = numbers(inputs.edges);
    const edges = [MM * a, MM * b] as const;
    return plateValues(
      rectanglePlateUnderPatch(sheetOf(inputs), edges, MM * number(inputs.patch), number(inputs.force)),
      inputs.parts,
    );
  },
  'tapered-bar': (inputs) => {
    const { deflection, rootStress, peakStress } = taperedBar(inputs);
    return { sag: deflection / MM, root: rootStress / MPA, peak: peakStress / MPA };
  },
  'tapered-place': (inputs) => taperedBar(inputs).peakAt / MM,
  tower: (inputs) => {
    const beam = towerOf(inputs);
    const { deflection, shearDeflection } = bendCantilever(beam, number(inputs.force));
    const cut = MM * number(inputs.cut);
    const { inertia, area } = beam.sectionAt(cut);
    // Stress in the middle of the upper wall, as the shells have it.
    const side = MM * number(inputs.size);
    const tube = boxSection({ width: side, depth: side, wall: MM * number(inputs.wall) });
    const added = area - tube.area;
    const height = added / (inputs.gusset ? gussetWidth(inputs) : 1);
    const centre = (added * (side + height)) / 2 / area;
    const stress =
      (number(inputs.force) * cut * (side / 2 - (MM * number(inputs.wall)) / 2 + centre)) / inertia;
    return { sag: (deflection + shearDeflection) / MM, stress: stress / MPA };
  },
  strut: (inputs) =>
    numbers(inputs.lengths).map(
      (length) =>
        strutLoad({
          section: tubeOf(inputs),
          length: MM * length,
          fixity: number(inputs.fixity),
          modulus: MPA * number(inputs.modulus),
          yield: MPA * number(inputs.yield),
        }).critical,
    ),
  'strut-aside': (inputs) =>
    numbers(inputs.forces).map(
      (force) =>
        pressedAside(
          {
            section: tubeOf(inputs),
            length: MM * number(inputs.length),
            fixity: number(inputs.fixity),
            modulus: MPA * number(inputs.modulus),
            yield: MPA,
          },
          { force, aside: MM * number(inputs.aside), sideways: 0 },
        ) / MPA,
    ),
  'stress-area': (inputs) => areaOf(inputs),
  'bolt-loads': (inputs) => {
    const { proof, ultimate } = classOf(inputs.class);
    const area = areaOf(inputs) * number(inputs.areaUnit);
    const unit = number(inputs.forceUnit);
    return { proof: (proof * area) / unit, ultimate: (ultimate * area) / unit };
  },
  'bolt-shear': (inputs) => SHEAR_SHARE * classOf(inputs.class).ultimate * areaOf(inputs) * 1e-6,
  'bolt-use': ({ tension, shear, bears }) => {
    const [t, v] = numbers(bears);
    return boltUse({ tension: number(tension), shear: number(shear) }, { tension: t, shear: v });
  },
  'strip-areas': ({ diameter, pitch, engaged }) => {
    const { nut, bolt } = stripAreas({ diameter: number(diameter), pitch: number(pitch) }, number(engaged));
    return { nut, bolt };
  },
  weld: (inputs) => weldStress(weldGroup(runsOf(inputs)), MM * number(inputs.leg), loadOf(inputs)) / MPA,
  'weld-corners': (inputs) => {
    const all = weldStresses(weldGroup(runsOf(inputs)), MM * number(inputs.leg), loadOf(inputs));
    return { most: Math.max(...all) / MPA, least: Math.min(...all) / MPA };
  },
  'weld-lines': (inputs) => {
    const { length, unit, polar, centre } = weldGroup(runsOf(inputs));
    const throat = number(inputs.throat);
    return {
      area: (throat * length) / MM,
      inertia: (throat * unit) / MM ** 3,
      polar: (throat * polar) / MM ** 3,
      centre: centre[0] / MM,
    };
  },
  bearing: ({ bolt, hole, wall, edge, wallUltimate, boltUltimate }) =>
    boltBearing({
      boltDiameter: MM * number(bolt),
      holeDiameter: MM * number(hole),
      wall: MM * number(wall),
      edge: MM * number(edge),
      wallUltimate: MPA * number(wallUltimate),
      boltUltimate: MPA * number(boltUltimate),
    }),
  'loops-to-crack': ({ ranges, detail, kind }) =>
    numbers(ranges).map((range) => loopsToCrack(MPA * range, MPA * number(detail), text(kind) as StressKind)),
  'crack-share': ({ history, detail, times, factor }) =>
    number(times) *
    crackShare(rainflow(numbers(history).map((stress) => MPA * stress)), {
      range: MPA * number(detail) * number(factor),
      kind: 'direct',
    }),
  'load-factor': ({ shape, shares }) =>
    numbers(shares).map((share) => loadFactor(text(shape) as PulseShape, share)),
  drop: ({ heights }) => numbers(heights).map(dropFactor),
  impact: ({ speed, rate, mass }) => impactForce(number(speed), 1e3 * number(rate), number(mass)),
};

function loadOf(inputs: Inputs) {
  const load = inputs.load as Inputs;
  const of = (name: string) => number(load[name] ?? 0);
  return {
    across: of('across'),
    bending: of('bending'),
    sideBending: of('sideBending'),
    turning: of('turning'),
    along: of('along'),
  };
}

const gussetWidth = ({ gusset }: Inputs): number => {
  const { thickness, count } = gusset as Inputs;
  return MM * number(thickness) * number(count);
};
