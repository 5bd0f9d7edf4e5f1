/** Text ⇄ rig. Apart from the public surface of core, so that a worker need not load a YAML parser. */
export { MAX_RIG_CHARACTERS } from './document.ts';
export { type ReadRigOptions, readRig } from './read.ts';
export type { ReadBeside } from './read-beside.ts';
