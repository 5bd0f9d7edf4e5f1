/**
 * Pictures as data, and what becomes of them: SVG text for page and paper, characters for the terminal.
 * Named exports only, grouped by what they draw.
 */

// --- A scene and its SVG ---

export { paperStyle } from './paper-style.ts';
export type { Role } from './role.ts';
export { ROLES } from './role.ts';
export type { Box, Item, Scene, Weight } from './scene.ts';
export { heightAt, metresPerPixel } from './scene.ts';
export type { SvgOptions } from './svg.ts';
export { svgItems, svgOf } from './svg.ts';
export { pictureStyle } from './svg-style.ts';

// --- Travel: the four columns ---

export type { ColumnOptions } from './column.ts';
export { columnScene } from './column.ts';
export type { Boundary, ColumnPart, ColumnShape } from './column-parts.ts';
export { columnShape } from './column-parts.ts';
export type { ColumnsTextOptions } from './column-text.ts';
export { columnsText } from './column-text.ts';
export { columnDescription } from './column-words.ts';

// --- Rig: side and rear drawing in a pose ---

export type { RigPose } from './pose.ts';
export { AT_REST, axlePose, poseAt } from './pose.ts';
export type { RearOptions } from './rig-rear.ts';
export { rearScene } from './rig-rear.ts';
export type { EndShape, RigShape } from './rig-shape.ts';
export { rigShapeOf } from './rig-shape.ts';
export type { GroundLine, SideOptions } from './rig-side.ts';
export { sideScene } from './rig-side.ts';

// --- Links: an axle from the side, from behind and from above ---

export type { DrawnAxle } from './link-axle.ts';
export { linkHandles } from './link-axle.ts';
export type { LinkSceneOptions } from './link-scene.ts';
export { linkBounds, linkScene } from './link-scene.ts';
export type { LinkView, PaperPoint } from './link-view.ts';
export { LINK_VIEWS, offPaper, onPaper } from './link-view.ts';

// --- Curves and histories ---

export type { BandTextOptions } from './band-text.ts';
export { bandText } from './band-text.ts';
export type { CurveBand, CurveOptions, CurveSeries } from './curve.ts';
export { curveScene } from './curve.ts';
export type { CurveArea } from './curve-area.ts';
export type { HistorySeries, HistoryTextOptions } from './history-text.ts';
export { historyText } from './history-text.ts';

// --- Candidates by two of the things that are wanted ---

export type { ScatterOptions, ScatterPlace, ScatterPoint, ScatterSpread } from './scatter.ts';
export { scatterPlaces, scatterScene } from './scatter.ts';

// --- Stops ---

export type { StopBandOptions } from './stop-band.ts';
export { stopBandScene, stopLetter } from './stop-band.ts';
export type { SectionRings, StopSectionOptions, StopShape, StopState } from './stop-section.ts';
export { sectionRings, stopSectionScene } from './stop-section.ts';

// --- Characters in cells of a terminal ---

export { cellWidth, fitCells, padCells, printable, wrapCells } from './cells.ts';
export type { TextTable } from './text-table.ts';
export { textTable } from './text-table.ts';
