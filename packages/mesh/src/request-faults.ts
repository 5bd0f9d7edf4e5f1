import type { Problem } from '@lastinch/core';
import { headRoom, plateFor, type Seat, seatWidth } from './seat.ts';
import type { SolidRequest, Vents } from './solid-request.ts';

/** Lattice that must stand around a seat, and beside a bore or a skin [m]. */
const RIM = 3e-3;
const mm = (length: number): string => `${Number((1000 * length).toFixed(1))} mm`;

/** What is wrong with the shape of a solid before any of it is made. */
export function requestFaults(request: SolidRequest): readonly Problem[] {
  const { body, cell, plate, cap } = request;
  const faults: Problem[] = [];
  const shape = (found: string, accepted: string) =>
    faults.push({ code: 'stop-shape', where: {}, found, accepted });
  const narrowest = Math.min(...body.radius.value);
  const positive = [body.height, cell, narrowest];
  const others = [plate, cap, body.bore, body.skin];
  if (!positive.every((x) => x > 0) || !others.every((x) => x >= 0)) {
    shape('no size', 'height, diameter and cell above zero, nothing below it');
    return faults;
  }
  if (!body.density.value.every((rho) => rho >= 0.05 && rho <= 0.7))
    shape('such a density', 'a lattice from 5 % to 70 %');
  if (body.bore + body.skin + RIM > narrowest)
    shape(
      `a bore of ${mm(2 * body.bore)} and a skin of ${mm(body.skin)}`,
      `${mm(RIM)} of lattice between them at the narrowest place`,
    );
  if (body.skin > 0 && body.skin < 0.4e-3) shape(`a skin of ${mm(body.skin)}`, '0.4 mm or more');
  if (request.seat !== null) faults.push(...seatFaults(request.seat, request));
  if (request.vents !== null) faults.push(...ventFaults(request.vents, request));
  return faults;
}

function seatFaults(seat: Seat, { body, plate }: SolidRequest): readonly Problem[] {
  const bad = (found: string, accepted: string): Problem => ({
    code: 'stop-solid-seat',
    where: {},
    found,
    accepted,
  });
  const faults: Problem[] = [];
  if (seat.kind === 'insert' && !(seat.diameter > 0 && seat.depth > 0))
    return [bad('an insert without size', 'diameter and depth of its hole, as its maker says')];
  const needed = plateFor(seat);
  if (plate < needed - 1e-9)
    faults.push(bad(`a plate of ${mm(plate)}`, `${mm(needed)} or more for this seat`));
  const width = seatWidth(seat);
  const foot = 2 * body.radius.value[0];
  if (width + 2 * RIM > foot)
    faults.push(bad(`a foot of ${mm(foot)}`, `${mm(width + 2 * RIM)} or more around this seat`));
  if (seat.kind === 'clearance' && 2 * body.bore < headRoom(seat.thread))
    faults.push(
      bad(
        body.bore === 0 ? 'no bore for a screw from the tip' : `a bore of ${mm(2 * body.bore)}`,
        `a bore of ${mm(headRoom(seat.thread))} for its head, or a captive nut`,
      ),
    );
  return faults;
}

function ventFaults({ count, diameter }: Vents, { body, cell }: SolidRequest): readonly Problem[] {
  const bad = (found: string, accepted: string): Problem => ({
    code: 'stop-shape',
    where: {},
    found,
    accepted,
  });
  if (body.skin === 0)
    return [bad('vents without a skin', 'a skin for them, or no vents: open sides breathe')];
  if (!(Number.isInteger(count) && count >= 1 && count <= 24)) return [bad(`${count} vents`, '1 to 24')];
  if (!(diameter >= 1e-3 && diameter <= 2 * cell && diameter <= body.height / 2))
    return [bad(`a vent of ${mm(diameter)}`, '1 mm to twice the cell, and less than half the height')];
  const around = 2 * Math.PI * Math.min(...body.radius.value);
  return 2 * count * diameter > around
    ? [bad(`${count} vents of ${mm(diameter)}`, 'vents over half of its girth at most')]
    : [];
}
