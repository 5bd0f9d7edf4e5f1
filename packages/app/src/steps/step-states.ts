import { CORNERS, ENDS } from '@lastinch/core';
import type { Answers } from '../answers.ts';
import type { RigDocument } from '../document/rig-document.ts';
import type { StepLink } from '../parts/StepNav.tsx';

/** How each step stands, in a few words for the navigation. Only steps that exist are listed. */
export function stepStates(
  document: RigDocument,
  answers: Answers,
  last: {
    /** Course that was ridden. */
    readonly course: string | null;
    /** How many candidates of the last study stand. */
    readonly standing: number | null;
    /** The setup that a build sheet was written for. */
    readonly written: string | null;
  },
): readonly StepLink[] {
  return [
    { step: 'measure', title: 'Measure', state: measured(document) },
    { step: 'travel', title: 'Travel', state: travelled(answers) },
    { step: 'links', title: 'Links', state: linked(document) },
    { step: 'ride', title: 'Ride', state: last.course ?? 'not ridden yet' },
    { step: 'stop', title: 'Stop', state: onTheShelf(document) },
    { step: 'choose', title: 'Choose', state: chosenFrom(document, last.standing) },
    { step: 'build', title: 'Build', state: last.written ?? 'no sheet yet' },
  ];
}

function measured({ problems, rig }: RigDocument): string {
  if (problems.length > 0)
    return problems.length === 1 ? '1 to put right' : `${problems.length} to put right`;
  const assumed = new Set(rig?.assumptions.filter(({ what }) => what === 'value').map(({ key }) => key)).size;
  return assumed === 0 ? 'all measured' : `${assumed} assumed`;
}

function travelled({ proposed }: Answers): string {
  const columns = proposed.check?.travel.corners;
  if (columns === undefined) return 'no answer';
  const passed = CORNERS.filter((corner) => columns[corner].verdict === 'pass').length;
  return `${passed} of 4 proposed pass`;
}

function linked({ rig }: RigDocument): string {
  const measured = ENDS.filter((end) => rig !== null && rig[end].points.linkage !== null);
  return measured.length === 2
    ? 'both axles'
    : measured.length === 0
      ? 'not measured yet'
      : `${measured[0]} axle`;
}

function onTheShelf({ rig }: RigDocument): string {
  const count = rig === null ? 0 : Object.keys(rig.shelf.stops).length;
  return count === 0 ? 'none on the shelf' : `${count} on the shelf`;
}

function chosenFrom({ rig }: RigDocument, standing: number | null): string {
  if (rig === null || rig.choices === null) return 'nothing listed';
  return standing === null ? 'not asked yet' : `${standing} stand`;
}
