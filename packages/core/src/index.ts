/**
 * The public surface of the core, grouped by the steps of the job. Named exports only: `api.txt` beside this
 * folder lists every signature, so that a change of surface is seen in review.
 * Reading and writing of rig files is `@lastinch/core/rigfile`, so that a worker need not load a YAML parser.
 */

// --- What can be said ---

export type { FindingCode, ProblemCode, RemedyCode } from './finding/codes.ts';
export { FINDING_CODES, PROBLEM_CODES, REMEDY_CODES } from './finding/codes.ts';
export { DIMENSIONS, type Dimension, type Figure } from './finding/figure.ts';
export type { Finding, Remedy, Severity } from './finding/finding.ts';
export type { Corner, End, Place, Side } from './finding/place.ts';
export { CORNERS, cornerAt, ENDS, endOf, SIDES, sideOf } from './finding/place.ts';
export { bad, good, type Problem, type Result, type Where } from './finding/problem.ts';

// --- Measure: typed text, the rig, its setups ---

export { fromSi, type Unit } from './quantity/dimension.ts';
export { type FormatOptions, formatFigure, formatQuantity, formatValue } from './quantity/format.ts';
export { parseQuantity } from './quantity/parse.ts';
export type { Quantity, UnitSystem } from './quantity/quantity.ts';
export { shownUnit } from './quantity/shown.ts';
export { acceptedUnits } from './quantity/unit-name.ts';
export { ASSUMPTION_RULES, type Assumption, type AssumptionRule } from './rig/assumptions.ts';
export type { CourseShape, CourseSpec, Wave } from './rig/course-spec.ts';
export type { Cushion, Driver } from './rig/driver.ts';
export type {
  AntiRollBar,
  BarLink,
  GasStop,
  KnownTo,
  ShockGas,
  ShockSetting,
  Spring,
  Stop,
  StopVent,
  TyreSize,
} from './rig/parts.ts';
export { nominal, type Origin, type Reading, type Sided, type ValueOf } from './rig/reading.ts';
export { readingsOf } from './rig/readings.ts';
export type {
  AxleEnd,
  AxleKind,
  CgLift,
  Contact,
  ContactKind,
  Hose,
  Limits,
  Rig,
  ShaftLimit,
  Shelf,
  Shock,
  StopMount,
  Strap,
  Tyre,
  Witness,
} from './rig/rig.ts';
export { ROAD_CLASSES, type RoadClass } from './rig/road-class.ts';
export { AS_MEASURED, type Setup, type SetupEnd } from './rig/setup.ts';
export type { EndPatch, SetupPatch } from './rig/setup-patch.ts';
export { resolveSetup, setupNames } from './rig/setup-resolve.ts';
export { TYRE_FEELS, type TyreFeel, type TyreFoot, USUAL_FEEL } from './rig/tyre-feel.ts';
export { unitsOfRig } from './rig/units-of-rig.ts';

// --- Links: where they let an axle go ---

export { curvesOf } from './linkage/curves.ts';
export type { AntiBasis, AxleCurves, CurveOptions, DragLink, StrutCurves } from './linkage/curves-result.ts';
export type {
  AxleGeometry,
  AxlePose,
  BushGive,
  Link,
  LinkageKind,
  PoseResult,
  Strut,
  StrutId,
  Unreachable,
  Vector,
} from './linkage/geometry.ts';
export { LINKAGE_KINDS, movedPoint, STRUT_IDS } from './linkage/geometry.ts';
export { type GeometryAsked, geometryProblems } from './linkage/geometry-problems.ts';
export { poseOf } from './linkage/pose.ts';
export { type RatioRange, ratioTables, type StrutTable } from './linkage/ratio-tables.ts';

// --- Statics and travel ---

export { type AxleLift, heightFromLift, liftedHeightWithTolerance } from './elements/axle-lift.ts';
export type { TrialOptions } from './stance/draws.ts';
export type { EndStance, StanceResult } from './stance/result.ts';
export { stanceOf } from './stance/stance.ts';
export type { ColumnChange } from './travel/change.ts';
export { gapsAt, type Pose, type SideGaps } from './travel/pose.ts';
export type { Blame, ContactLine, DroopLine, TravelColumn, TravelResult, Verdict } from './travel/result.ts';
export { travelNeeds, travelOf } from './travel/travel.ts';

// --- Driveshafts, hoses and lines over the travel of an axle ---

export { type MovingLine, type Reach, reachOf, type TiePoint, tiePointOn } from './linkage/reach.ts';
export { LINE_PRACTICE, type LineAsked, lineFindings } from './linkage/reach-findings.ts';
export type { JointKind, Shaft, ShaftJoint, ShaftState, ShaftTube, Slip } from './linkage/shaft.ts';
export { shaftIn } from './linkage/shaft.ts';
export { type ShaftAsked, shaftFindings } from './linkage/shaft-findings.ts';
export {
  angleForSpeed,
  bindsAt,
  pinionAim,
  SHAFT_PRACTICE,
  shaftSpeed,
  speedForAngles,
  whirlSpeed,
} from './linkage/shaft-limits.ts';
export { droopThatFits, type ShaftTravel, shaftOver } from './linkage/shaft-travel.ts';
export { type SlackLoop, slackLoop } from './linkage/slack-loop.ts';
export type {
  Extreme,
  PoseSource,
  SampledRange,
  TravelPlace,
  TravelRange,
} from './linkage/travel-range.ts';
export { posesOn, sampleRange } from './linkage/travel-range.ts';
export type { BentJoint } from './linkage/universal-joint.ts';
export { equivalentAngle, peakAcceleration, speedRatio, unevenness } from './linkage/universal-joint.ts';

// --- Stability and road manners ---

export { flatRearFrequency } from './stability/flat-ride.ts';
export { packDown } from './stability/pack-down.ts';
export { STABILITY_LINES, type StabilityComparison, type StabilityResult } from './stability/result.ts';
export type { RollEnd, RollModel } from './stability/roll-model.ts';
export { rollPerG } from './stability/roll-rates.ts';
export { settle } from './stability/settle.ts';
export { pullOnSlope, rigidSlope, sideSlope } from './stability/side-slope.ts';

// --- Ride ---

export { type IriOptions, type IriStep, iriOf, iriStep } from './course/iri.ts';
export { trackCoherence } from './course/road-class.ts';
export { heightAt, type SampledSide, slopeAt, type Track } from './course/sampled.ts';
export { sampleCourse } from './course/track.ts';
export { rideModels } from './ride/from-setup.ts';
export type { AxleModel, RideModel } from './ride/model.ts';
export type {
  BodyRide,
  CornerRide,
  EnergyBalance,
  RideCounters,
  RideHistory,
  RideRun,
  RideStatus,
  ShakeRecord,
} from './ride/result.ts';
export { DEFAULT_TOLERANCE, type RunOptions, runRide } from './ride/run.ts';

// --- Exposure: what a seat takes ---

export { absorbedPower, absorbedPowerPerSquare } from './exposure/absorbed-power.ts';
export { estimatedDose, rootMeanSquare, vibrationDose } from './exposure/dose.ts';
export type { DrivingTime, DrivingTimes } from './exposure/driving-times.ts';
export { type ExposureOptions, exposureOf } from './exposure/exposure.ts';
export { type ExposureFigures, exposureFigures } from './exposure/figures.ts';
export { type ExposureOccasion, exposureFindings } from './exposure/findings.ts';
export type { DailyValue, Reaction, ShockTrigger, ZoneBounds, ZonePlace } from './exposure/limits.ts';
export {
  comfortBands,
  DAILY_VALUES,
  dailyExposure,
  guidanceZone,
  RIDE_TEST_LIMITS,
  timeToDose,
  timeToExposure,
  totalValue,
} from './exposure/limits.ts';
export { largestSize, lowPassedPeak } from './exposure/peak.ts';
export type {
  AxisExposure,
  DailyExposure,
  ExposureDoubt,
  ExposureResult,
  SeatExposure,
  TimeTo,
} from './exposure/result.ts';
export { maximumTransient, type RunningWindow, runningRms } from './exposure/running.ts';
export { accelerationFrom, type BodyMotion, type SeatPlace, seatAcceleration } from './exposure/seat.ts';
export { dynamicResponseIndex } from './exposure/shock-response.ts';
export type { SpinalDoses, SpinalEdition, SpinalResponse, WorkingLife } from './exposure/spinal.ts';
export {
  accelerationDose,
  equivalentStress,
  horizontalSpinalResponse,
  SPINAL_RATE,
  spinalEdition,
  verticalSpinalResponse,
  workingLifeFactor,
} from './exposure/spinal.ts';
export type { Response } from './exposure/transfer.ts';
export { WEIGHTINGS, type Weighting, weightedHistory, weightingResponse } from './exposure/weighting.ts';

// --- Whole questions, asked here or through a worker ---

export { type CheckOptions, checkRig, worstFirst } from './jobs/check.ts';
export type { CheckComparison, CompareOptions, CornerChange } from './jobs/compare.ts';
export { compareSetups } from './jobs/compare.ts';
export { FASTEST, SLOWEST } from './jobs/driving.ts';
export { LINK_TRIALS, linksRig } from './jobs/links.ts';
export type {
  EndLinksAnswer,
  KnockOnLine,
  LinkedHose,
  LinkedShaft,
  LinkRange,
  LinksAnswer,
  LinksMissing,
  LinksRequest,
  LinksRoadSpeed,
} from './jobs/links-answer.ts';
export type {
  CheckResult,
  CornerInterval,
  FromWorker,
  RideAnswer,
  RideRequest,
  ToWorker,
} from './jobs/protocol.ts';
export { rideRig } from './jobs/ride.ts';
export type { RideExposure } from './jobs/ride-exposure.ts';
export type { SeatKind } from './jobs/seat-record.ts';
export { type StabilityAnswer, type StabilityRequest, stabilityRig } from './jobs/stability.ts';

// --- How fast may it go ---

export { sweepRig } from './jobs/sweep.ts';
export type { Band, CriterionSweep, Ends, FirstBreak, SetupSweep, SweepAnswer } from './jobs/sweep-answer.ts';
export type { SweepRequest } from './jobs/sweep-bench.ts';
export { CRITERIA, type CriterionId } from './jobs/sweep-criteria.ts';
export { sweepProblems, usualStep } from './jobs/sweep-range.ts';
export type { State } from './jobs/sweep-scan.ts';
export { TRIALS_FOR_COVERAGE } from './jobs/trial-range.ts';
export { parseSpeedRange, type SpeedRange } from './quantity/speed-range.ts';

// --- Work for many hands: the same answer whoever does it ---

export type { BatchAnswer, SetupCourse } from './jobs/batch.ts';
export type { BatchCourse, BatchRequest } from './jobs/batch-bench.ts';
export { type Crew, type Seat, sameThreadCrew, threadCrew, type WorkThread } from './jobs/crew.ts';
export type { Work, WorkCounters, WorkOptions, WorkOutcome } from './jobs/run-work.ts';
export { serveWork } from './jobs/serve-work.ts';
export { startBatch, startSweep } from './jobs/start.ts';
export type { WorkPlan } from './jobs/work.ts';
export type { WorkAsk, WorkReply } from './jobs/work-messages.ts';

// --- In words: the one phrase book of terminal, page and paper ---

export type { KnownPaths } from './rig/known-paths.ts';
export {
  type AssumptionGroup,
  type AssumptionText,
  assumptionText,
  groupedAssumptions,
} from './words/assumptions.ts';
export { courseText } from './words/courses.ts';
export type { ExposureRow, ExposureWords } from './words/exposures.ts';
export { exposureNotes, exposureRows, seatText } from './words/exposures.ts';
export { findingText, type WordOptions } from './words/findings.ts';
export { limitOfText, linkLineMeaning, linkLineName, linksMissingText } from './words/link-lines.ts';
export { pathsText } from './words/paths.ts';
export { PLACE_NAMES } from './words/places.ts';
export { problemText } from './words/problems.ts';
export { readingName } from './words/readings.ts';
export { remedyText } from './words/remedies.ts';
export { needle, roughSpeed } from './words/speeds.ts';
export { criterionName } from './words/sweep-findings.ts';
export { bandsText, type FirstBreakText, firstBreakText } from './words/sweeps.ts';
export { tyreFootText } from './words/tyres.ts';

// --- Force laws: what a reading of a part becomes ---

export { type Envelope, enveloped, movingFootprint } from './course/envelope.ts';
export { type Cams, twoCams, usualCams } from './course/two-cams.ts';
export type { BarOnBench } from './elements/anti-roll-bar.ts';
export { antiRollEnergy, antiRollMoment, barRateAtAxle, barRateOf } from './elements/anti-roll-bar.ts';
export { strapRateOf, USUAL_TOP_OUT_RATE } from './elements/droop-limit.ts';
export type { GasChamber } from './elements/gas-chamber.ts';
export {
  ATMOSPHERE,
  gasEnergy,
  gasForce,
  gasRate,
  gasStopCurve,
  oilForce,
  pressureAt,
  rodArea,
} from './elements/gas-chamber.ts';
export { columnFor, gasStopOf } from './elements/gas-stop.ts';
export { asSolidAxle } from './elements/independent-axle.ts';
export type { MaxwellBranch } from './elements/maxwell.ts';
export {
  maxwellEnergy,
  maxwellFlow,
  maxwellForce,
  maxwellLoopEnergy,
  maxwellLoss,
  maxwellModuli,
  restingCrush,
} from './elements/maxwell.ts';
export { type ShockGasReadings, shockChamber, shockGasAt, shockGasOf } from './elements/shock-gas.ts';
export type { DampedCorner, HandPush, ShockTable } from './elements/shock-table.ts';
export {
  dampingOfPush,
  dampingRatioTable,
  handPushTable,
  measuredTable,
  withSealFriction,
} from './elements/shock-table.ts';
export type { FrictionBranch, Reversal } from './elements/stop-friction.ts';
export {
  frictionAmplitude,
  frictionForce,
  frictionLoopEnergy,
  frictionRate,
} from './elements/stop-friction.ts';
export { type LossReadings, type StopLoss, stopLoss } from './elements/stop-loss.ts';
export { contactLength } from './elements/tyre-contact.ts';
export type { TyreRateLine } from './elements/tyre-rate.ts';
export { rateAtPressure, rateBySize, rateFromPress, rateOnLine } from './elements/tyre-rate.ts';
export { blowDownTime, CRITICAL_RATIO, type Vent, ventFlow, ventPressure } from './elements/vent.ts';

// --- Stops: what a block, a foam or a printed lattice answers, and the density that answers a wanted curve ---

export { type Cycle, equivalentRange, minerSum, rainflow, turningPoints } from './numerics/rainflow.ts';
export type { Block, BlockEnds } from './stopdesign/block.ts';
export { blockArea, blockForce, bondedModulus, mooneyRivlinStress, shapeFactor } from './stopdesign/block.ts';
export type { Structure } from './stopdesign/cellular.ts';
export {
  cellGasStress,
  relativeModulus,
  STRUCTURES,
} from './stopdesign/cellular.ts';
export type { Body, ColumnState, Layer } from './stopdesign/column.ts';
export { columnAt, columnEnergy, columnPressed, slicesOf } from './stopdesign/column.ts';
export { type Coupon, type CouponFit, couponFit, type FittedNumber } from './stopdesign/coupon-fit.ts';
export type { DensityRange, DesignedDensity, WantedCurve } from './stopdesign/density-for-curve.ts';
export { densityForCurve } from './stopdesign/density-for-curve.ts';
export type { HardnessScale, ModulusBand } from './stopdesign/hardness.ts';
export {
  errorFunctionModulus,
  gentModulus,
  HARDNESS_RANGE,
  indenterModulus,
  modulusBand,
  shoreDModulus,
} from './stopdesign/hardness.ts';
export type { LatticeMaterial } from './stopdesign/lattice-law.ts';
export { latticeLaw, latticeModulus, MIDDLE_DENSITY } from './stopdesign/lattice-law.ts';
export type { LayerLaw } from './stopdesign/layer-law.ts';
export {
  confinedNeoHookeanLaw,
  linearLaw,
  lockingLaw,
  neoHookeanLaw,
  strainAt,
} from './stopdesign/layer-law.ts';
export type { PressCurve, PressDoubt, PressReadings } from './stopdesign/press-test.ts';
export { LEAST_READINGS, PRESS_DOUBTS, pressCurve } from './stopdesign/press-test.ts';
export type { AlongHeight, PrintedBody } from './stopdesign/printed-body.ts';
export { printedLayers, SLICES, slenderness } from './stopdesign/printed-body.ts';

// --- Fits: parameters and curves out of readings ---

export { isotonic } from './numerics/isotonic.ts';
export { type LeastSquares, type LeastSquaresOptions, leastSquares } from './numerics/least-squares.ts';

// --- Force tables: how a measured stop and shock are read between their points ---

export type { MonotoneCubic } from './numerics/monotone-cubic.ts';
export { cubicIntegral, cubicSlope, cubicValue, monotoneCubic } from './numerics/monotone-cubic.ts';
export { linearValue, type PiecewiseLinear, piecewiseLinear } from './numerics/piecewise-linear.ts';

// --- Chance: the numbers behind the trials ---

export { normalQuantile } from './numerics/normal-quantile.ts';
export { normalTrials } from './numerics/sampling.ts';
