import { LANES } from '../../answers.ts';
import panel from '../../design/panel.module.css';
import { LANE_NAME } from '../../parts/place-name.ts';
import type { RideDesk } from '../../rides.ts';
import { useStore } from '../../store.ts';
import style from './RideStep.module.css';

/** Whether the rides are still being computed, and how far they are. */
export function RideState({ desk }: { readonly desk: RideDesk }) {
  const rides = useStore(desk.rides, (state) => state);
  const broken = LANES.filter((lane) => rides[lane].status === 'broken');
  const riding = LANES.some((lane) => rides[lane].status === 'riding');
  const sharpening = LANES.filter((lane) => rides[lane].status === 'sharpening');
  const share = sharpening.length === 0 ? 0 : Math.min(...sharpening.map((lane) => rides[lane].share));
  return (
    <div className={`${panel.state} ${style.state}`} role="status">
      {broken.map((lane) => (
        <p key={lane} className={panel.broken}>
          {LANE_NAME[lane]}: {rides[lane].message}
        </p>
      ))}
      {riding ? <p>Riding…</p> : null}
      {!riding && sharpening.length > 0 ? (
        <>
          <p>Ridden. Now over the tolerances of your readings…</p>
          <progress className={panel.bar} max={1} value={share} aria-label="Rides over the tolerances" />
        </>
      ) : null}
    </div>
  );
}
