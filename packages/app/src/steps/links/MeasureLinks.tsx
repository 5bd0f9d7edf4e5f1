import { type End, LINKAGE_KINDS, type LinkageKind, type Rig } from '@lastinch/core';
import { useState } from 'react';
import panel from '../../design/panel.module.css';
import { Choice } from '../../parts/Choice.tsx';
import { PlainButton } from '../../parts/PlainButton.tsx';
import { END_NAME } from '../../parts/place-name.ts';
import type { Workbench } from '../../workbench.ts';
import style from './LinksStep.module.css';

const KIND_NAME: Readonly<Record<LinkageKind, string>> = {
  'three-link': 'two lower links, one upper, Panhard bar',
  'four-link': 'two lower links, two upper, Panhard bar',
  triangulated: 'two pairs of links, at least one at an angle',
  'radius-arms': 'radius arms, Panhard bar',
  leaf: 'leaf springs',
};

const FIRST: Readonly<Record<LinkageKind, string>> = {
  'three-link': 'links.lower.axle.ahead',
  'four-link': 'links.lower.axle.ahead',
  triangulated: 'links.lower.axle.ahead',
  'radius-arms': 'links.arm.axle.ahead',
  leaf: 'mounts.spring.axle.ahead',
};

/** Links of an end that nobody has measured yet: what they would tell, and the way to the tape. */
export function MeasureLinks(props: {
  readonly workbench: Workbench;
  readonly rig: Rig;
  readonly end: End;
  readonly onReading: (key: string) => void;
}) {
  const { workbench, rig, end } = props;
  const [kind, setKind] = useState<LinkageKind>('three-link');
  const name = END_NAME[end].toLowerCase();
  const independent = rig[end].kind === 'independent';
  const begin = (): void => {
    workbench.edit([{ path: [end, 'links', 'kind'], text: kind }], {
      label: `${END_NAME[end]}: links on this rig`,
      gesture: null,
    });
    props.onReading(`${end}.${FIRST[kind]}`);
  };
  return (
    <section className={panel.panel} aria-labelledby="measure-links-title">
      <h3 className={panel.heading} id="measure-links-title">
        Links of the {name} axle
      </h3>
      {independent ? (
        <p className={panel.sentence}>
          The {name} suspension is independent. Links are followed for rigid axles only.
        </p>
      ) : (
        <>
          <p className={panel.sentence}>
            Not measured yet. With both ends of each link taped, this step draws the axle from three sides and
            says what bump, droop, roll and every proposal do to pinion, shaft, steer, roll centre and anti-
            {end === 'rear' ? 'squat' : 'dive'}.
          </p>
          <div className={style.begin}>
            <Choice
              label="What holds this axle"
              value={kind}
              options={LINKAGE_KINDS.map((each) => ({ value: each, label: KIND_NAME[each] }))}
              onChange={(chosen) => setKind(chosen as LinkageKind)}
            />
            <PlainButton weight="strong" onPress={begin}>
              Measure these links
            </PlainButton>
          </div>
        </>
      )}
    </section>
  );
}
