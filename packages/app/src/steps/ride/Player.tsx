import { Choice } from '../../parts/Choice.tsx';
import { PlainButton } from '../../parts/PlainButton.tsx';
import { RangeField } from '../../parts/RangeField.tsx';
import { useStore } from '../../store.ts';
import type { Moment } from './moment.ts';
import style from './Player.module.css';

export const PACES = [
  { value: '1', label: '1 ×' },
  { value: '0.5', label: '1/2 ×' },
  { value: '0.25', label: '1/4 ×' },
  { value: '0.1', label: '1/10 ×' },
] as const;

/** Play, pause, and the scrubber that the charts follow. */
export function Player(props: {
  readonly moment: Moment;
  readonly end: number;
  readonly playing: boolean;
  readonly pace: string;
  readonly onPlaying: (playing: boolean) => void;
  readonly onPace: (pace: string) => void;
}) {
  const { moment, end, playing } = props;
  const time = useStore(moment, (now) => now);
  const toggle = (): void => {
    if (!playing && time >= end) moment.set(() => 0);
    props.onPlaying(!playing);
  };
  return (
    <div className={style.player}>
      <PlainButton weight="strong" onPress={toggle}>
        <svg viewBox="0 0 20 20" width="18" height="18" aria-hidden="true">
          <path
            d={playing ? 'M5 4h3.5v12H5zM11.5 4H15v12h-3.5z' : 'M6 3.5l10 6.5-10 6.5z'}
            fill="currentColor"
          />
        </svg>
        <span className={style.word}>{playing ? 'Pause' : 'Play'}</span>
      </PlainButton>
      <div className={style.scrubber}>
        <RangeField
          label="Moment"
          min={0}
          max={end}
          step={0.01}
          value={time}
          valueText={`${time.toFixed(2)} s of ${end.toFixed(1)} s`}
          onChange={(value) => {
            props.onPlaying(false);
            moment.set(() => value);
          }}
        />
      </div>
      <div className={style.pace}>
        <Choice label="Pace" options={PACES} value={props.pace} onChange={props.onPace} />
      </div>
    </div>
  );
}
