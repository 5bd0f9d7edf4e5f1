import { type End, formatValue, problemText, type Setup, type UnitSystem, type Vector } from '@lastinch/core';
import { memo, useMemo } from 'react';
import { LANES, type Lane } from '../../answers.ts';
import { Choice } from '../../parts/Choice.tsx';
import { DataTable } from '../../parts/DataTable.tsx';
import { PairCell } from '../../parts/PairCell.tsx';
import { END_NAME } from '../../parts/place-name.ts';
import { TypedField } from '../../parts/TypedField.tsx';
import { tie } from '../../parts/tie.ts';
import { useStore } from '../../store.ts';
import type { Workbench } from '../../workbench.ts';
import type { LinkedAxle } from './axle.ts';
import style from './PointPanel.module.css';
import { type PointTarget, targetId, targetName, targetPath, WAYS, type Way } from './points.ts';
import type { HeldPoint } from './use-drag.ts';

/** One point of the proposal: which, by how much it is moved, and where it then stands in both setups. */
export function PointPanel(props: {
  readonly workbench: Workbench;
  readonly setup: Setup;
  readonly end: End;
  readonly targets: readonly PointTarget[];
  readonly selected: PointTarget;
  readonly held: HeldPoint | null;
  readonly axles: Readonly<Record<Lane, LinkedAxle | null>>;
  readonly system: UnitSystem;
  readonly onSelect: (target: PointTarget) => void;
}) {
  const { workbench, setup, end, targets, selected, held, axles, system } = props;
  const id = targetId(selected);
  const fields = useMemo(() => fieldsOf(setup, end, selected), [setup, end, selected]);
  const label = `${END_NAME[end]}: ${targetName(selected).toLowerCase()}`;
  return (
    <div className={style.point}>
      <Choice
        label="Point to move"
        tone="proposed"
        value={id}
        options={targets.map((target) => ({ value: targetId(target), label: targetName(target) }))}
        onChange={(id) => {
          const target = targets.find((each) => targetId(each) === id);
          if (target !== undefined) props.onSelect(target);
        }}
      />
      <div className={style.fields}>
        {fields.map(({ way, title, hint, path }) => (
          <MoveField
            key={path.join('.')}
            workbench={workbench}
            path={path}
            label={title}
            what={label}
            hint={hint}
            // While the point is under the finger the field says where it is.
            held={heldText(held, id, way, system)}
          />
        ))}
      </div>
      <PlaceTable target={selected} axles={axles} system={system} />
    </div>
  );
}

const WAY_TEXT = {
  ahead: { title: 'Moved forward', hint: 'Minus is back' },
  out: { title: 'Moved outward', hint: 'Both sides alike; minus is inward' },
  left: { title: 'Moved to the left', hint: 'Minus is to the right' },
  up: { title: 'Moved up', hint: 'Minus is down' },
} as const;

interface MoveOf {
  readonly way: Way | 'longer';
  readonly title: string;
  readonly hint: string;
  readonly path: readonly string[];
}

/** What can be changed about a point, and the length of its link. */
function fieldsOf(setup: Setup, end: End, target: PointTarget): readonly MoveOf[] {
  const path = targetPath(setup.id, end, target);
  const single = isSingle(setup, end, target);
  const ways = WAYS.map((way): MoveOf => {
    const text = WAY_TEXT[way === 'out' && single ? 'left' : way];
    return { way, ...text, path: [...path, way] };
  });
  if (target.of === 'case') return ways;
  const longer: MoveOf = {
    way: 'longer',
    title: 'Link longer by',
    hint: 'At its adjuster; minus is shorter',
    path: [...path.slice(0, -1), 'longer'],
  };
  return [...ways, longer];
}

function isSingle(setup: Setup, end: End, target: PointTarget): boolean {
  if (target.of === 'case') return true;
  const links = setup.ends[end].base.points.linkage?.links ?? [];
  return links.some(({ name, side }) => name === target.link && side === null);
}

function heldText(
  held: HeldPoint | null,
  id: string,
  way: Way | 'longer',
  system: UnitSystem,
): string | null {
  if (held === null || way === 'longer' || targetId(held.target) !== id) return null;
  const index = WAYS.indexOf(way);
  const value = held.total[index] ?? 0;
  return value === 0 ? '' : formatValue(value, 'length', { system });
}

/** Drawn anew only when its own text changes: a drag changes one of them, and fields are dear. */
const MoveField = memo(function MoveField(props: {
  readonly workbench: Workbench;
  readonly path: readonly string[];
  readonly label: string;
  readonly what: string;
  readonly hint: string;
  readonly held: string | null;
}) {
  const { workbench, path, label, what, hint, held } = props;
  const key = path.join('.');
  const state = useStore(workbench.document, ({ fields }) =>
    fields.find((each) => each.path.join('.') === key),
  );
  const problems = state?.problems ?? [];
  return (
    <TypedField
      label={label}
      text={held ?? state?.typed ?? ''}
      placeholder="as it is"
      hint={hint}
      error={
        problems.length === 0 ? null : problems.map((each) => problemText({ ...each, where: {} })).join(' ')
      }
      name={key}
      onType={(text) =>
        workbench.edit([{ path, text: text.trim() === '' ? null : text.trim() }], {
          label: `${what}: ${label.toLowerCase()}`,
          gesture: key,
        })
      }
      onLeave={workbench.leaveField}
    />
  );
});

/** Where the point stands at ride height. */
function PlaceTable(props: {
  readonly target: PointTarget;
  readonly axles: Readonly<Record<Lane, LinkedAxle | null>>;
  readonly system: UnitSystem;
}) {
  const { target, axles, system } = props;
  const say = (
    lane: Lane,
    of: (at: Vector, hub: Vector) => readonly [number, string, string],
  ): string | null => {
    const axle = axles[lane];
    const at = axle === null ? null : placeOf(axle, target);
    if (axle === null || at === null) return null;
    const [value, more, less] = of(at, axle.geometry.centre);
    const length = formatValue(Math.abs(value), 'length', { system });
    return tie(`${length} ${value < 0 ? less : more}`);
  };
  const cell = (of: (at: Vector, hub: Vector) => readonly [number, string, string]) => (
    <PairCell values={{ now: say('now', of), proposed: say('proposed', of) }} />
  );
  return (
    <DataTable
      caption="Where it stands at ride height"
      columns={['Point', 'From the hub line', 'From the centreline', 'From the ground']}
      rows={[
        {
          head: targetName(target),
          ...(target.of === 'link' && LANES.some((lane) => isPaired(axles[lane], target))
            ? { note: 'the left one' }
            : {}),
          cells: [
            cell((at, hub) => [at[0] - hub[0], 'ahead', 'behind']),
            cell((at) => [at[1], 'left', 'right']),
            cell((at) => [at[2], 'above', 'below']),
          ],
        },
      ]}
    />
  );
}

const isPaired = (axle: LinkedAxle | null, target: PointTarget): boolean =>
  target.of === 'link' && (axle?.geometry.links.some(({ id }) => id === `${target.link}-left`) ?? false);

function placeOf(axle: LinkedAxle, target: PointTarget): Vector | null {
  if (target.of === 'case') return axle.shaft?.caseJoint.point ?? null;
  const link = axle.geometry.links.find(({ id }) => id === target.link || id === `${target.link}-left`);
  if (link === undefined) return null;
  return target.where === 'axle' ? link.axle : link.body;
}
