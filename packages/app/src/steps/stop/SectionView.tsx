import { formatValue, type UnitSystem } from '@lastinch/core';
import type { StopDesign } from '@lastinch/core/stops';
import { sheetLevel } from '@lastinch/mesh';
import { type StopShape, type StopState, sectionRings, stopSectionScene } from '@lastinch/picture';
import { useCallback, useMemo, useState } from 'react';
import frame from '../../design/step.module.css';
import { DataTable } from '../../parts/DataTable.tsx';
import { Picture } from '../../parts/Picture.tsx';
import { RangeField } from '../../parts/RangeField.tsx';
import { tie } from '../../parts/tie.ts';
import style from './StopStep.module.css';

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** The cut through the axis of a design, crushed as far as the slider says, with the strain at each height. */
export function SectionView(props: {
  readonly design: StopDesign;
  readonly cell: number;
  readonly system: UnitSystem;
}) {
  const { design, cell, system } = props;
  const [share, setShare] = useState(0);
  const shape = useMemo((): StopShape => {
    const { height, radius, bore, skin, foot = 0, cap = 0, density } = design.body;
    return { height, radius, bore, skin, foot, cap, cell, density, level: density.value.map(sheetLevel) };
  }, [design, cell]);
  const rings = useMemo(() => sectionRings(shape), [shape]);
  const state = useMemo(() => stateAt(design, share), [design, share]);
  const draw = useCallback(
    (width: number) => stopSectionScene(rings, { shape, state, system, width }),
    [rings, shape, state, system],
  );
  const most = state.slices.reduce(
    (worst, one) => (one.strain > worst.strain ? one : worst),
    state.slices[0]!,
  );
  return (
    <figure className={style.part}>
      <RangeField
        label="Crush"
        min={0}
        max={1}
        step={0.01}
        value={share}
        valueText={tie(formatValue(state.crush, 'length', { system }))}
        onChange={setShare}
      />
      <Picture
        id="print-section"
        title="The cut through the middle of the printed stop"
        description={`Walls to scale, densest where they are thickest. Crushed by ${formatValue(state.crush, 'length', { system })}, most at ${formatValue(most.at, 'length', { system })} above the foot: ${percent(most.strain)} of ${percent(most.closesAt)} at which it closes.`}
        draw={draw}
      />
      <figcaption className={frame.about}>
        Walls, skin and solid ends to scale, as they are printed. Bars: how far each height is crushed; the
        broken line is where its cells have closed. Bulging is not drawn.
      </figcaption>
      <details className={frame.behind}>
        <summary>Density and strain as figures</summary>
        <DataTable
          caption="From the tip down"
          columns={['Height', 'Solid', 'Strain', 'Closes at']}
          rows={[...state.slices].reverse().map(({ at, strain, closesAt }) => ({
            head: tie(formatValue(at, 'length', { system })),
            cells: [percent(densityAt(design, at)), percent(strain), percent(closesAt)],
          }))}
        />
      </details>
    </figure>
  );
}

/** Between the states that were worked out, on straight lines. */
function stateAt({ states }: StopDesign, share: number): StopState {
  const place = share * (states.length - 1);
  const k = Math.min(Math.floor(place), states.length - 2);
  const [before, after] = [states[k]!, states[k + 1]!];
  const between = (a: number, b: number): number => a + (b - a) * (place - k);
  return {
    crush: between(before.crush, after.crush),
    slices: before.slices.map((slice, i) => ({
      ...slice,
      strain: between(slice.strain, after.slices[i]?.strain ?? slice.strain),
    })),
  };
}

function densityAt({ body }: StopDesign, height: number): number {
  const { at, value } = body.density;
  const z = height - (body.foot ?? 0);
  const k = Math.max(
    1,
    at.findIndex((here) => here >= z),
  );
  const [z0, z1, a, b] = [at[k - 1]!, at[k]!, value[k - 1]!, value[k]!];
  return a + ((b - a) * (z - z0)) / (z1 - z0);
}
