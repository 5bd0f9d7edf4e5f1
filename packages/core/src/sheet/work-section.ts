import { ENDS, type End } from '../finding/place.ts';
import type { Reading } from '../rig/reading.ts';
import type { SetupEnd } from '../rig/setup.ts';
import type { LinkPatch, PointPatch, ShaftPatch } from '../rig/setup-patch.ts';
import { figureOfReading } from '../stance/columns.ts';
import { PLACE_NAMES } from '../words/places.ts';
import { type SheetAnswers, written } from './answers.ts';
import { heading, type SheetBlock, type SheetSection, say, tick, warn } from './sheet.ts';

/** Everything that is cut, welded, bolted or set, end by end: each choice of the setup as one box to tick. */
export function workSection(answers: SheetAnswers): SheetSection {
  const ends = ENDS.flatMap((end): readonly SheetBlock[] => {
    const done = workAt(answers.setup.ends[end], answers);
    return done.length === 0 ? [] : [heading(PLACE_NAMES[end]), ...done.map(tick)];
  });
  const blocks: readonly SheetBlock[] =
    ends.length === 0
      ? [say('Nothing is cut or bolted in this setup; settings stand below.')]
      : [
          ...ends,
          warn(
            'Welds on frame and axle by a qualified person under your local rules; battery off, earth clamp at the weld, brake and fuel lines away.',
          ),
          say(
            'Bolts: class 8.8 or grade 5 at least, new locking nuts, torque of their maker. Common practice, no source.',
          ),
        ];
  return { id: 'work', title: 'Cut, weld and bolt', blocks };
}

/** The patch of one end in words. Left and right alike, as the setup says. */
export function workAt(one: SetupEnd, answers: SheetAnswers): readonly string[] {
  const { patch, base } = one;
  const size = (reading: Reading): string => written(figureOfReading(reading), answers);
  const done: string[] = [];
  if (patch.seatAndStopDrop)
    done.push(
      `Lower coil seat and stop together on the frame by ${size(patch.seatAndStopDrop)}, left and right alike; coil and pad stay.`,
    );
  if (patch.stop !== undefined) done.push(stopWords(one, size));
  if (patch.stopGap) done.push(`Set the stop gap to ${size(patch.stopGap)} with everything else done.`);
  if (patch.stopSpacer)
    done.push(
      `Solid spacer of ${size(patch.stopSpacer)} behind the stop or under its pad. Steel or aluminium: a printed one is no load path.`,
    );
  if (patch.springSpacer) done.push(`Spacer of ${size(patch.springSpacer)} on the coil that is there.`);
  if (patch.spring !== undefined)
    done.push(
      `Coil: ${patch.spring}, ${size(one.spring.rate)}. It stores energy: proper compressors, out of its line.`,
    );
  for (const [id, gain] of Object.entries(patch.notch ?? {})) {
    const name = base.contacts.find((contact) => contact.id === id)?.name ?? id;
    done.push(
      `Notch or move at ${name}: ${size(gain)} gained along its motion. A notched rail is boxed again.`,
    );
  }
  if (patch.addedLoad) done.push(`Load of ${size(patch.addedLoad)} aboard when it is measured again.`);
  for (const [name, link] of Object.entries(patch.links ?? {})) done.push(...linkWords(name, link, size));
  if (patch.shaft) done.push(...shaftWords(patch.shaft, size));
  if (patch.strapLength) done.push(`Strap of ${size(patch.strapLength)}, of the same webbing.`);
  return done;
}

type Size = (reading: Reading) => string;

function stopWords({ stop }: SetupEnd, size: Size): string {
  const length = stop.freeLength ? `, free length ${size(stop.freeLength)}` : '';
  const pressed =
    stop.origin === 'measured' ? 'its curve was pressed' : 'its curve was not pressed: press it first';
  return `Stop: ${stop.id}${length}, usable crush ${size(stop.usableCrush)}; ${pressed}. Its stud and the captive nut must be of one thread: look before drilling.`;
}

function pointWords(point: PointPatch | undefined, size: Size): string {
  if (!point) return '';
  const ways = [
    point.ahead && `${size(point.ahead)} ahead`,
    point.out && `${size(point.out)} out`,
    point.up && `${size(point.up)} up`,
  ].filter((way) => way);
  return ways.join(', ');
}

function linkWords(name: string, { axle, frame, longer }: LinkPatch, size: Size): readonly string[] {
  const done: string[] = [];
  const [atAxle, atFrame] = [pointWords(axle, size), pointWords(frame, size)];
  if (atAxle) done.push(`Link ${name}, joint on the axle: move by ${atAxle} (minus: the other way).`);
  if (atFrame) done.push(`Link ${name}, joint on the frame: move by ${atFrame} (minus: the other way).`);
  if (longer)
    done.push(`Link ${name}: longer by ${size(longer)} at its adjuster (minus: shorter); jam nut tight.`);
  return done;
}

function shaftWords(
  { case: atCase, pinionJoint, caseJoint, slip }: ShaftPatch,
  size: Size,
): readonly string[] {
  const done: string[] = [];
  const moved = pointWords(atCase, size);
  if (moved) done.push(`Transfer case: move by ${moved} (minus: the other way).`);
  if (pinionJoint) done.push(`Joint of the driveshaft at the pinion: ${pinionJoint}.`);
  if (caseJoint) done.push(`Joint of the driveshaft at the case: ${caseJoint}.`);
  if (slip) done.push(`Slip of the driveshaft: ${size(slip)} usable; a driveshaft maker balances it.`);
  return done;
}

/** Ends at which something is cut, bolted or moved. */
export const touchedEnds = (answers: SheetAnswers): readonly End[] =>
  ENDS.filter((end) => workAt(answers.setup.ends[end], answers).length > 0);
