/**
 * Public surface `@lastinch/core/stops`: whole questions about stops, and their words. The laws behind them are on the
 * first surface.
 */

// --- Which stop an end needs ---

export type { BandAsked } from './jobs/stop-band.ts';
export type { StopCandidate, StopVerdict, UnknownCandidate } from './jobs/stop-candidates.ts';
export type { StopCures } from './jobs/stop-cures.ts';
export { DAMPING_GAIN, MOST_ROOM } from './jobs/stop-cures.ts';
export type { Broken, Demand, StopCurve } from './jobs/stop-drive.ts';
export type { StopFamily } from './jobs/stop-family.ts';
export type { LifeBand, StopLife } from './jobs/stop-life.ts';
export type { StopNeed, StopNeedRequest } from './jobs/stop-need.ts';
export { STOP_TRIALS, stopNeed } from './jobs/stop-need.ts';

// --- A press test read ---

export type { StopFit, StopFitRequest, StopMaterialName } from './jobs/stop-fit.ts';
export { fitStop, STOP_MATERIALS } from './jobs/stop-fit.ts';

// --- A stop that nobody pressed ---

export type { BlockStep, EstimateEnds, StopEstimate, StopEstimateRequest } from './jobs/stop-estimate.ts';
export { estimateStop } from './jobs/stop-estimate.ts';
export { parseBulkDensity } from './stopdesign/bulk-density-text.ts';
export { type Hardness, parseHardness } from './stopdesign/hardness-text.ts';

// --- A stop to print ---

export type { CurveMiss } from './jobs/curve-miss.ts';
export type { ZoneScatter } from './jobs/print-spread.ts';
export { DENSER, STIFFER } from './jobs/print-spread.ts';
export type { StopAir, VentHoles } from './jobs/stop-air.ts';
export { VENT_SPEED } from './jobs/stop-air.ts';
export type { DesignPoint, StopDesign, StopDesignRequest } from './jobs/stop-design.ts';
export { designStop } from './jobs/stop-design.ts';
export { targetFault } from './jobs/stop-design-faults.ts';
export type { BandMiss, DesignedForNeed, NeedDesign } from './jobs/stop-design-need.ts';
export { designForNeed } from './jobs/stop-design-need.ts';
export type { WantedCurve } from './stopdesign/density-for-curve.ts';
export type { PrintMaterial, PrintMaterialName } from './stopdesign/print-material.ts';
export { PRINT_MATERIALS } from './stopdesign/print-material.ts';

export { curveOf } from './stopdesign/printed-body.ts';

// --- Coupons, and what presses of prints say ---

export type { Corrected, CorrectRequest, CouponReadings, ToldNumber } from './jobs/stop-correct.ts';
export { correctMaterial } from './jobs/stop-correct.ts';
export type { CouponPlan, CouponPlanRequest, PlannedCoupon, PlannedReading } from './jobs/stop-coupons.ts';
export { couponPlan } from './jobs/stop-coupons.ts';
export type { PressedStop } from './stopdesign/coupon-fit.ts';

// --- In words ---

export { designDoubtText } from './words/design-doubts.ts';
export { estimateDoubtText } from './words/estimate-doubts.ts';
export { doubtText } from './words/press-doubts.ts';
export { correctDoubtText, couponTexts, togetherText, toldText } from './words/print-materials.ts';
export { movedText, needDesignTexts, printedBuild, printedTexts } from './words/printed-stops.ts';
export { estimateLines, fitRows, LOSS_ABSURD, roughText } from './words/stop-answers.ts';
export { STOP_CAUTIONS } from './words/stop-cautions.ts';
export { LOOK_AT_STOPS, lifeText } from './words/stop-life.ts';
export { NEED_TRUST, NO_CURVE_DOES, roomText } from './words/stop-need.ts';
export { candidateText, curesText, familyText, steepnessText } from './words/stops.ts';

// --- Laws of a printed stop, for the checks ---

export { steadyVentPressure } from './elements/vent.ts';
export { pressedWithAir } from './stopdesign/body-air.ts';
export { closingStrain, leastFoam, mostFoam } from './stopdesign/foam-law.ts';
export { heldFactor } from './stopdesign/held-ends.ts';
export { foldingKnockDown, tubeFoldingStress, wrinklingStress } from './stopdesign/skin-law.ts';
