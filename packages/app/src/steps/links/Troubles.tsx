import { problemText, type UnitSystem } from '@lastinch/core';
import { LANES, type Lane } from '../../answers.ts';
import panel from '../../design/panel.module.css';
import { LANE_NAME } from '../../parts/place-name.ts';
import type { AxlePair, PosedLane } from './lanes.ts';
import { inWords, rollInWords } from './stand-words.ts';

/** What keeps a setup from being drawn, said where the drawing would be. */
export function Troubles(props: {
  readonly axles: AxlePair;
  readonly posed: Readonly<Record<Lane, PosedLane | null>>;
  readonly system: UnitSystem;
}) {
  const { axles, posed, system } = props;
  const said = LANES.flatMap((lane) => {
    const answer = axles[lane];
    if (answer?.status === 'broken')
      return answer.problems.map(
        (problem) => `${LANE_NAME[lane]}: ${problemText({ ...problem, where: {} })}`,
      );
    const stopped = posed[lane]?.stopped ?? null;
    if (stopped === null) return [];
    const names = stopped.links.map((id) => id.replace('-', ' ')).join(', ');
    const where = `${inWords(stopped.bump, system)}, ${rollInWords(stopped.roll, system)}`;
    return [`${LANE_NAME[lane]}: the links end at ${where}; ${names} would have to give.`];
  });
  if (said.length === 0) return null;
  return (
    <div className={panel.note} role="status">
      {said.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}
