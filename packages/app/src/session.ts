import type { Corner, UnitSystem } from '@lastinch/core';
import type { MeasurePlace } from './steps/measure/places.ts';

export const STEPS = ['measure', 'travel', 'links', 'ride', 'stop', 'choose', 'build'] as const;
export type Step = (typeof STEPS)[number];

export type Theme = 'auto' | 'light' | 'dark';

/** What somebody chose to look at. Scope: session. Unit system and theme are remembered for the next visit. */
export interface Session {
  readonly step: Step;
  /** Setup that is on the rig now, and the one proposed. Null: take the first that fits. */
  readonly now: string | null;
  readonly proposed: string | null;
  /** Units of figures. Null: those in which the owner typed his readings. */
  readonly system: UnitSystem | null;
  readonly theme: Theme;
  /** Page of the Measure step, and whether it shows only what is still to measure. */
  readonly place: MeasurePlace;
  readonly onlyOpen: boolean;
  /** Course and speed to ride. Null: the first course of the rig, at its own speed. */
  readonly course: string | null;
  readonly speedText: string | null;
  /** Range of speeds of a sweep, as typed. Null: the usual one of the unit system. */
  readonly sweepText: string | null;
  /** Corner whose histories are shown. Null: the one with the least clearance. */
  readonly corner: Corner | null;
}

const REMEMBERED = 'lastinch.session';

export function startSession(): Session {
  const kept = recall();
  return {
    step: stepOfAddress() ?? 'measure',
    now: null,
    proposed: null,
    system: kept.system === 'metric' || kept.system === 'shop' ? kept.system : null,
    theme: kept.theme === 'light' || kept.theme === 'dark' ? kept.theme : 'auto',
    place: 'front',
    onlyOpen: false,
    course: null,
    speedText: null,
    sweepText: null,
    corner: null,
  };
}

export const stepOfAddress = (): Step | null =>
  STEPS.find((step) => step === window.location.hash.slice(1)) ?? null;

/** Storage may be forbidden; then the choice simply lasts as long as the page. */
export function remember(session: Session): void {
  try {
    const { system, theme } = session;
    window.localStorage.setItem(REMEMBERED, JSON.stringify({ system, theme }));
  } catch {}
}

function recall(): { readonly system?: unknown; readonly theme?: unknown } {
  try {
    const kept: unknown = JSON.parse(window.localStorage.getItem(REMEMBERED) ?? '{}');
    return typeof kept === 'object' && kept !== null ? kept : {};
  } catch {
    return {};
  }
}
