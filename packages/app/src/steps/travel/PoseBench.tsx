import {
  cornerAt,
  ENDS,
  type End,
  formatValue,
  gapsAt,
  type Pose,
  SIDES,
  type Side,
  type UnitSystem,
} from '@lastinch/core';
import { useState } from 'react';
import { type Answers, LANES, type Lane } from '../../answers.ts';
import panel from '../../design/panel.module.css';
import frame from '../../design/step.module.css';
import { DataTable } from '../../parts/DataTable.tsx';
import { PairCell } from '../../parts/PairCell.tsx';
import { PlainButton } from '../../parts/PlainButton.tsx';
import { CORNER_NAME, END_NAME, LANE_NAME, setupLabel } from '../../parts/place-name.ts';
import { RangeField } from '../../parts/RangeField.tsx';
import { Segments } from '../../parts/Segments.tsx';
import { tie } from '../../parts/tie.ts';
import style from './PoseBench.module.css';
import { PosePictures } from './PosePictures.tsx';
import { reachOf, type SideWords, sideInWords, stopLabel } from './pose-words.ts';

const CELLS = ['stop', 'contact', 'droop'] as const;

/** One step of the slider by arrow key [m]. Its ends are whole steps, so that ride height is one of them. */
const STEP = 0.001;

const LEVEL: Pose = { heave: 0, roll: 0 };

/** Most roll of an axle that the slider goes to [rad]; beyond it the small-angle gaps mislead. */
const MOST_ROLL = (12 * Math.PI) / 180;

/** One axle moved by hand through bump, droop and roll, in both setups, with what is left at each side. */
export function PoseBench(props: { readonly answers: Answers; readonly system: UnitSystem }) {
  const { answers, system } = props;
  const [end, setEnd] = useState<End>('front');
  const [pose, setPose] = useState<Pose>(LEVEL);
  const lanes = LANES.filter((lane) => answers[lane].setup !== null && answers[lane].check !== null);
  if (lanes.length === 0) return null;
  const reach = reachOf(
    lanes.flatMap((lane) => answers[lane].setup ?? []),
    end,
  );
  const heave = Math.min(reach.bump, Math.max(-reach.droop, pose.heave));
  const shown: Pose = { heave, roll: pose.roll };
  const length = (value: number): string => tie(formatValue(Math.abs(value), 'length', { system }));
  const posed = lanes.flatMap((lane) => {
    const { setup, check } = answers[lane];
    return setup === null || check === null
      ? []
      : [{ lane, setup, travel: check.travel, gaps: gapsAt(setup, end, shown) }];
  });
  const said = (lane: Lane, side: Side): SideWords | undefined => {
    const gaps = posed.find((each) => each.lane === lane)?.gaps;
    return gaps === undefined ? undefined : sideInWords(gaps[side], length);
  };
  return (
    <section className={`${panel.panel} ${style.bench}`} aria-labelledby="pose-title">
      <h3 className={panel.heading} id="pose-title">
        Move an axle by hand
      </h3>
      <div className={style.controls}>
        <Segments
          label="Axle"
          options={ENDS.map((each) => ({ value: each, label: END_NAME[each] }))}
          value={end}
          onChange={setEnd}
        />
        <PlainButton isDisabled={heave === 0 && pose.roll === 0} onPress={() => setPose(LEVEL)}>
          Back to ride height
        </PlainButton>
      </div>
      <div className={style.sliders}>
        <RangeField
          label="Droop to bump"
          min={-reach.droop}
          max={reach.bump}
          step={STEP}
          value={heave}
          valueText={heave === 0 ? 'ride height' : `${length(heave)} ${heave > 0 ? 'bump' : 'droop'}`}
          onChange={(value) => setPose({ ...pose, heave: Math.abs(value) < STEP / 2 ? 0 : value })}
        />
        <RangeField
          label="Axle roll"
          min={-MOST_ROLL}
          max={MOST_ROLL}
          step={MOST_ROLL / 120}
          value={pose.roll}
          valueText={rollInWords(pose.roll, system)}
          onChange={(roll) => setPose({ ...pose, roll: Math.abs(roll) < 1e-6 ? 0 : roll })}
        />
      </div>
      <div className={style.lanes}>
        {posed.map(({ lane, setup, travel, gaps }) => (
          <section key={lane} className={style.lane} data-lane={lane} aria-label={LANE_NAME[lane]}>
            <h4 className={style.laneName}>
              {LANE_NAME[lane]} <span className={style.setup}>{setupLabel(setup.id)}</span>
            </h4>
            <PosePictures
              lane={lane}
              setup={setup}
              travel={travel}
              end={end}
              pose={shown}
              labels={{ left: stopLabel(gaps.left, length), right: stopLabel(gaps.right, length) }}
            />
          </section>
        ))}
      </div>
      <DataTable
        caption={`${END_NAME[end]} axle, what is left`}
        wraps
        columns={['Side', 'Bump stop', 'Next contact', 'Droop']}
        rows={SIDES.map((side) => ({
          head: CORNER_NAME[cornerAt(end, side)],
          cells: CELLS.map((cell) => (
            <PairCell
              key={cell}
              values={{
                now: said('now', side)?.[cell] ?? null,
                proposed: said('proposed', side)?.[cell] ?? null,
              }}
            />
          )),
        }))}
      />
      <p className={frame.about}>
        At the readings as they stand, without tolerances. Body contacts are taken at the stop's station of
        their side.
      </p>
    </section>
  );
}

function rollInWords(roll: number, system: UnitSystem): string {
  if (roll === 0) return 'level';
  const degrees = formatValue(Math.round(Math.abs(roll) * 572.96) / 572.96, 'angle', { system });
  return `${degrees}, ${roll > 0 ? 'right wheel up' : 'left wheel up'}`;
}
