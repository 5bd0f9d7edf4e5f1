import type {
  BandAsked,
  NeedDesign,
  StopDesign,
  StopDesignRequest,
  StopEstimate,
  StopEstimateRequest,
  StopFit,
  StopFitRequest,
  StopNeed,
  StopNeedRequest,
} from '@lastinch/core/stops';
import { createSolidDesk, type MeshWorker, type SolidDesk } from './solids.ts';
import { createStore, type Store } from './store.ts';
import { createWorkDesk, type DeskWorker, type FromWorker, type WorkDesk } from './work-desk.ts';

/** What can be asked about stops, by job. */
export interface StopQuestions {
  readonly need: StopNeedRequest;
  readonly fit: StopFitRequest;
  readonly estimate: StopEstimateRequest;
  readonly design: StopDesignRequest;
  readonly forNeed: ForNeedQuestion;
}
/** A printed stop of this shape for an end that is asked about as in `need`. */
export interface ForNeedQuestion extends BandAsked {
  readonly shape: PrintShape;
}
export type PrintShape = Omit<StopDesignRequest, 'target' | 'density'>;
export interface StopAnswers {
  readonly need: StopNeed;
  readonly fit: StopFit;
  readonly estimate: StopEstimate;
  readonly design: StopDesign;
  readonly forNeed: NeedDesign;
}
export type StopJob = keyof StopQuestions;

export type ToStopWorker = {
  readonly [Job in StopJob]: {
    readonly id: number;
    readonly job: Job;
    readonly question: StopQuestions[Job];
  };
}[StopJob];

export type FromStopWorker = FromWorker<StopAnswers[StopJob]>;
export type StopWorker = DeskWorker<ToStopWorker, StopAnswers[StopJob]>;

export type StopDesk<Job extends StopJob> = WorkDesk<StopQuestions[Job], StopAnswers[Job]>;

export interface StopDesks {
  /** One for each end in each setup, so that what was found for one stays while another is looked at. */
  need(place: string): StopDesk<'need'>;
  readonly fit: StopDesk<'fit'>;
  readonly estimate: StopDesk<'estimate'>;
  readonly design: StopDesk<'design'>;
  readonly forNeed: StopDesk<'forNeed'>;
  readonly solid: SolidDesk;
  /** What was typed into the step, by name of the field. Scope: session. */
  readonly forms: Store<Readonly<Record<string, string>>>;
}

export function createStopDesks(spawn: () => StopWorker, spawnMesh: () => MeshWorker): StopDesks {
  const needs = new Map<string, StopDesk<'need'>>();
  return {
    need(place) {
      const desk = needs.get(place) ?? createStopDesk('need', spawn);
      needs.set(place, desk);
      return desk;
    },
    fit: createStopDesk('fit', spawn),
    estimate: createStopDesk('estimate', spawn),
    design: createStopDesk('design', spawn),
    forNeed: createStopDesk('forNeed', spawn),
    solid: createSolidDesk(spawnMesh),
    forms: createStore({}),
  };
}

/** A desk for one kind of question about stops. */
export const createStopDesk = <Job extends StopJob>(job: Job, spawn: () => StopWorker): StopDesk<Job> =>
  createWorkDesk(
    spawn as () => DeskWorker<ToStopWorker, StopAnswers[Job]>,
    (id, question: StopQuestions[Job]) => ({ id, job, question }) as ToStopWorker,
  );

/** The browser's own worker; its script is fetched when a stop is first asked about. */
export const spawnStopWorker = (): StopWorker =>
  new Worker(new URL('./hosts/stop-worker.ts', import.meta.url), {
    type: 'module',
    name: 'stop',
  }) as StopWorker;
