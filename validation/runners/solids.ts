import {
  type SolidFigures,
  type SolidRequest,
  sheetDensity,
  sheetLevel,
  solidOf,
  thinnestWall,
  threadNamed,
} from '@lastinch/mesh';
import type { Runner } from '../runner.ts';
import { number, numbers } from './inputs.ts';

type Inputs = Readonly<Record<string, unknown>>;

const MM = 1e-3;

const made = new Map<string, SolidFigures>();

/** The figures of a body told in millimetres; made once for all checks of it. */
function figuresOf({ body }: Inputs): SolidFigures {
  const name = JSON.stringify(body);
  let figures = made.get(name);
  if (figures === undefined) {
    const solid = solidOf(requestOf(body as Inputs));
    if (!solid.ok) throw new Error(JSON.stringify(solid.problems));
    figures = solid.value.figures;
    made.set(name, figures);
  }
  return figures;
}

function requestOf(body: Inputs): SolidRequest {
  const height = MM * number(body.height);
  const at = [0, height];
  const thread = threadNamed('M10');
  if (thread === null) throw new Error('no M10');
  return {
    body: {
      height,
      radius: { at, value: [(MM * number(body.foot)) / 2, (MM * number(body.tip)) / 2] },
      bore: (MM * number(body.bore)) / 2,
      skin: MM * number(body.skin),
      density: { at, value: numbers(body.density) },
    },
    cell: MM * number(body.cell),
    plate: MM * number(body.plate),
    seat: body.nut === null ? null : { kind: 'nut', thread },
    cap: MM * number(body.cap),
    vents: null,
  };
}

/** Outline of a tapered slice with a bore [mm³]. */
function outlineOf(body: Inputs, from: number, to: number): number {
  const radius = (z: number) =>
    (number(body.foot) + ((number(body.tip) - number(body.foot)) * z) / number(body.height)) / 2;
  const [a, b] = [radius(from), radius(to)];
  return Math.PI * (to - from) * ((a * a + a * b + b * b) / 3 - (number(body.bore) / 2) ** 2);
}

export const solids: Runner = {
  'sheet-density': ({ levels }) => numbers(levels).map(sheetDensity),
  'sheet-level': ({ densities }) => numbers(densities).map(sheetLevel),
  'sheet-wall': ({ densities }) => numbers(densities).map((density) => thinnestWall(density, 1)),
  'solid-volume': (inputs) => 1e9 * figuresOf(inputs).volume,
  'solid-slices': (inputs) =>
    figuresOf(inputs).slices.map(
      ({ from, to, made: share }) => share * outlineOf(inputs.body as Inputs, from / MM, to / MM),
    ),
  'solid-density': (inputs) => figuresOf(inputs).slices.map(({ made: share }) => share),
};
