import { Command, CommanderError } from 'commander';
import manifest from '../package.json' with { type: 'json' };
import type { ExitCode } from './asked.ts';
import { bracket } from './commands/bracket.ts';
import { check } from './commands/check.ts';
import { choose, chooseMerge } from './commands/choose.ts';
import { links } from './commands/links.ts';
import { logs } from './commands/log.ts';
import { newRig } from './commands/new.ts';
import { open } from './commands/open.ts';
import { plate } from './commands/plate.ts';
import { ride } from './commands/ride.ts';
import { sheet } from './commands/sheet.ts';
import { stopCorrected } from './commands/stop-correct.ts';
import { stopCoupons } from './commands/stop-coupons.ts';
import { stopDesigned } from './commands/stop-design.ts';
import { stopEstimated } from './commands/stop-estimate.ts';
import { stopFitted } from './commands/stop-fit.ts';
import { stopNeeded } from './commands/stop-need.ts';
import { stopSolid } from './commands/stop-solid.ts';

const EXITS = `
Exit codes: 0 fine, 1 a limit of the owner is broken, 2 something is wrong with the input.`;

/** Runs one command line, for example `['check', 'my.rig.yaml']`, and tells how it ended. */
export async function run(words: readonly string[]): Promise<ExitCode> {
  let ended: ExitCode = 0;
  const program = new Command('lastinch')
    .description('Divide the last inches between ride height and metal on a one-off off-road rig.')
    .version(manifest.version)
    .addHelpText('after', EXITS)
    .showSuggestionAfterError(true)
    // An option belongs to the word that it follows: `choose merge … --json` is one of merge.
    .enablePositionalOptions()
    .configureOutput({ outputError: (text, write) => write(text.replace(/^error: /, '')) })
    .exitOverride();
  const command = (name: string, about: string): Command =>
    program.command(name).description(about).exitOverride().allowExcessArguments(false);

  command('new', 'write a commented rig file to fill in')
    .argument('[FILE]', 'file to write, - for standard output', 'my.rig.yaml')
    .action(async (file: string) => {
      ended = await newRig(file);
    });
  command('check', 'statics and travel columns, with verdict')
    .argument('<FILE>', 'rig file, - for standard input')
    .option('--setup <NAME>', 'setup to judge (default: the rig as measured)')
    .option('--against <NAME>', 'setup to hold it against')
    .option('--units <SYSTEM>', 'shop (inches, lb) or metric; default: as the file was typed')
    .option('--json', 'data instead of text, SI units')
    .action(async (file: string, options) => {
      ended = await check(file, options);
    });
  command('links', 'what a setup does to links, shaft, hoses, steering and stability')
    .argument('<FILE>', 'rig file, - for standard input')
    .option('--setup <NAME>', 'setup to judge (default: the rig as measured)')
    .option('--against <NAME>', 'setup to hold it against (default: the rig as measured)')
    .option('--speed <SPEED>', 'road speed for shafts (default: the fastest course of the file, or 80 km/h)')
    .option('--units <SYSTEM>', 'shop (inches, lb) or metric; default: as the file was typed')
    .option('--json', 'data instead of text, SI units')
    .action(async (file: string, options) => {
      ended = await links(file, options);
    });
  command('ride', 'drive a setup over a course')
    .argument('<FILE>', 'rig file, - for standard input')
    .option('--course <NAMES>', 'course of the rig file, or several: whoops,ledge (default: its only one)')
    .option('--speed <SPEED>', 'for example "30 mph" (default: the speed of the course)')
    .option('--sweep <A..B>', 'how fast may it go: every speed of a range, for example 5..45mph')
    .option('--step <SPEED>', 'largest distance between two speeds of a sweep (default: a fortieth)')
    .option('--tyres <HOW>', 'how tyres read the ground: footprint (default), two-cams, point')
    .option('--setup <NAME>', 'setup to drive (default: the rig as measured)')
    .option('--against <NAME>', 'setup to hold it against')
    .option('--units <SYSTEM>', 'shop (inches, lb) or metric; default: as the file was typed')
    .option('--json', 'data instead of text, SI units')
    .action(async (file: string, options) => {
      ended = await ride(file, options);
    });
  command('log', 'the log of a drive: what it holds, what is wrong with it, what may be said from it')
    .argument('<FILES...>', 'CSV of a phone or logger, or GPX; - for standard input')
    .option(
      '--columns <ROLES>',
      'what columns are, where the guess is wrong: "time=1:ms, acceleration.x=ax:g"',
    )
    .option('--units <SYSTEM>', 'shop (miles) or metric (default)')
    .option('--json', 'data instead of text, SI units')
    .action(async (files: string[], options) => {
      ended = await logs(files, options);
    });
  command('sheet', 'the build sheet of a setup, to lie on the bench')
    .argument('<FILE>', 'rig file, - for standard input')
    .requiredOption('--setup <NAME>', 'setup that is built')
    .option('--against <NAME>', 'setup that is on the rig now (default: the rig as measured)')
    .option('--course <NAMES>', 'courses to expect marks for: whoops,ledge (default: all with a speed)')
    .option('-o, --out <FILE>', 'where to: .pdf or .html (default: HTML to standard output)')
    .option('--paper <SIZE>', 'a4 (default) or letter')
    .option('--units <SYSTEM>', 'shop (inches, lb) or metric; default: as the file was typed')
    .option('--json', 'data instead of a page')
    .action(async (file: string, options) => {
      ended = await sheet(file, options);
    });
  command('plate', 'a plate to cut, in true scale: DXF, SVG, or a paper template')
    .argument('<KIND>', 'top, gusset, standoff (bent from one piece) or pad')
    .option('--thickness <LENGTH>', 'of the plate')
    .option('--length <LENGTH>', 'of top, standoff or pad; the diameter of a round pad')
    .option('--width <LENGTH>', 'of top or pad')
    .option('--radius <LENGTH>', 'of corners; inside a bend of a standoff (default: its thickness)')
    .option('--stud <DIAMETER>', 'hole in the middle')
    .option('--bolt <DIAMETER>', 'four bolt holes of a top plate')
    .option('--bolt-along <LENGTH>', 'between bolt holes, along')
    .option('--bolt-across <LENGTH>', 'between bolt holes, across')
    .option('--slot <LENGTH>', 'bolt holes as slots of this length')
    .option('--foot <LENGTH>', 'of a gusset')
    .option('--height <LENGTH>', 'of a gusset')
    .option('--toe <LENGTH>', 'blunt ends of a gusset (default: its thickness)')
    .option('--relief <LENGTH>', 'corner of a gusset cut away (default: twice its thickness)')
    .option('--web <LENGTH>', 'of a standoff, outside')
    .option('--flange <LENGTH>', 'of a standoff, outside')
    .option('--kerf <LENGTH>', 'width of the cut (default: none, the machine takes it off)')
    .option('-o, --out <FILE>', 'where to: .dxf, .svg, or .pdf for a paper template')
    .option('--paper <SIZE>', 'a4 (default) or letter')
    .option('--units <SYSTEM>', 'shop (inches, lb) or metric; default: as typed')
    .action(async (kind: string, options) => {
      ended = await plate(kind, options);
    });
  command('bracket', 'whether what carries stops, springs and shocks holds')
    .argument('<FILE>', 'rig file, - for standard input')
    .option('--course <NAMES>', 'courses that load it: whoops,ledge (default: its only one)')
    .option('--speed <SPEED>', 'for example "20 mph" (default: the speed of each course)')
    .option('--force <FORCE>', 'a load that was thought of, instead of a ride: "12 kN"')
    .option('--setup <NAME>', 'setup (default: the rig as measured)')
    .option('--units <SYSTEM>', 'shop (inches, lb) or metric; default: as the file was typed')
    .option('--json', 'data instead of text, SI units')
    .action(async (file: string, options) => {
      ended = await bracket(file, options);
    });
  const choosing = command('choose', 'the best few setups out of the choices of a rig file, and why')
    .enablePositionalOptions()
    .argument('<FILE>', 'rig file with choices, - for standard input')
    .option('--samples <N>', 'rigs over the measurement tolerances that each is driven in (default: 16)')
    .option('--seed <N>', 'of the sampled rigs and of the search (default: 1)')
    .option('--shard <I/N>', 'only this share of the work, for `choose merge`: 1/4 … 4/4; needs -o')
    .option('-o, --out <FILE>', 'keep what is done there; the same command again goes on from it')
    .option('--show <LETTER>', 'everything of one member of the list, with the text for the rig file')
    .option('--units <SYSTEM>', 'shop (inches, lb) or metric; default: as the file was typed')
    .option('--json', 'data instead of text, SI units')
    .action(async (file: string, options) => {
      ended = await choose(file, options);
    });
  choosing
    .command('merge')
    .description('the answer of a study that was done in shards')
    .exitOverride()
    .argument('<PARTS...>', 'files that the shards wrote')
    .option('--show <LETTER>', 'everything of one member of the list, with the text for the rig file')
    .option('--units <SYSTEM>', 'shop (inches, lb) or metric; default: as the file was typed')
    .option('--json', 'data instead of text, SI units')
    .action(async (files: string[], options) => {
      ended = await chooseMerge(files, options);
    });
  const stop = command('stop', 'choose a stop by its curve');
  stop
    .command('need')
    .description('the band of stop curves that an end needs, with every stop of the rig driven')
    .exitOverride()
    .allowExcessArguments(false)
    .argument('<FILE>', 'rig file, - for standard input')
    .requiredOption('--end <END>', 'front or rear')
    .option('--course <NAMES>', 'courses that must be met: whoops,ledge (default: its only one)')
    .option('--speed <SPEED>', 'for example "20 mph" (default: the speed of each course)')
    .option('--setup <NAME>', 'setup (default: the rig as measured)')
    .option('--units <SYSTEM>', 'shop (inches, lb) or metric; default: as the file was typed')
    .option('--json', 'data instead of text, SI units')
    .action(async (file: string, options) => {
      ended = await stopNeeded(file, options);
    });
  stop
    .command('fit')
    .description('a press test made into a stop for the rig file')
    .exitOverride()
    .allowExcessArguments(false)
    .argument('<PRESS>', 'CSV file: travel and gauge, a reading a row; - for standard input')
    .option('--columns <UNITS>', 'units of the two columns where the file says none: "mm, N"')
    .option('--ram <DIAMETER>', 'of the press, where its gauge reads pressure: "2 in"')
    .option('--gauge-step <FORCE>', 'how fine the gauge reads')
    .option('--gauge-end <FORCE>', 'the most it can show')
    .option('--material <KIND>', 'rubber, polyurethane or foam: for the usual hardening in a hit')
    .option('--length <LENGTH>', 'free length of the stop')
    .option('--name <NAME>', 'its name on the shelf (default: that of the file)')
    .option('-o, --out <FILE>', 'write the text for the rig file there')
    .option('--units <SYSTEM>', 'shop (inches, lb) or metric; default: as the file was typed')
    .option('--json', 'data instead of text, SI units')
    .action(async (file: string, options) => {
      ended = await stopFitted(file, options);
    });
  stop
    .command('estimate')
    .description('a stop by its kind, where nothing was pressed: force against crush as a band')
    .exitOverride()
    .allowExcessArguments(false)
    .requiredOption('--kind <KIND>', 'rubber, polyurethane, foam or gas')
    .option('--hardness <SHORE>', 'of a block: "60 A"')
    .option('--density <DENSITY>', 'of a foam, weight ÷ volume: "500 kg/m3"')
    .option('--modulus <BAND>', 'of its solid, least and most: "15 MPa, 30 MPa" (default: 10 to 50 MPa)')
    .option('--height <LENGTHS>', 'of a block: "60 mm", or of its steps from end to end: "40 mm, 20 mm"')
    .option('--diameter <LENGTHS>', 'outside, as many as heights')
    .option('--bore <LENGTHS>', 'hole through it, as many as heights (default: none)')
    .option('--ends <HOW>', 'bonded, greased or dry (default: dry)')
    .option('--rod <DIAMETER>', 'of a gas stop')
    .option('--pressure <PRESSURE>', 'its charge by gauge, rod out')
    .option('--column <LENGTH>', 'its gas volume ÷ rod area, rod out')
    .option('--stroke <LENGTH>', 'its usable stroke')
    .option('--name <NAME>', 'its name on the shelf')
    .option('-o, --out <FILE>', 'write the text for the rig file there')
    .option('--units <SYSTEM>', 'shop (inches, lb) or metric; default: as typed')
    .option('--json', 'data instead of text, SI units')
    .action(async (options) => {
      ended = await stopEstimated(options);
    });
  stop
    .command('design')
    .description(
      'a printed stop: density along the height for a wanted curve, or the curve of given densities',
    )
    .exitOverride()
    .allowExcessArguments(false)
    .requiredOption('--height <LENGTH>', 'foot to tip')
    .requiredOption('--diameter <LENGTHS>', 'outside: "60 mm", or at foot and tip: "60 mm, 50 mm"')
    .option('--target <CURVE>', 'CSV file of the wanted curve: crush and force from zero, both rising')
    .option('--need <RIG>', 'instead: the rig file whose end needs it, with --end and --course')
    .option('--end <END>', 'front or rear, with --need')
    .option('--course <NAMES>', 'courses that must be met, with --need: whoops,ledge')
    .option('--speed <SPEED>', 'with --need (default: the speed of each course)')
    .option('--setup <NAME>', 'with --need (default: the rig as measured)')
    .option('--density <SHARES>', 'instead: solid shares from foot to tip: "50 %, 30 %"')
    .option('--bore <DIAMETER>', 'hole through it (default: none)')
    .option('--cell <LENGTH>', 'edge of a lattice cell (default: 10 mm)')
    .option(
      '--wall <LENGTH>',
      'thinnest wall that prints whole (default: 0.8 mm, two lines of a 0.4 mm nozzle)',
    )
    .option('--skin <LENGTH>', 'solid skin around the lattice (default: none, open sides)')
    .option('--foot <LENGTH>', 'solid plate at the foot, printed in one (default: none)')
    .option('--cap <LENGTH>', 'solid plate at the tip (default: none)')
    .option('--vents <HOLES>', 'holes through the skin: "2 x 4 mm" (default: none, air shut in)')
    .option('--material <NAME>', 'tpu-85a, tpu-95a (default), or a file of lastinch stop correct')
    .option('--columns <UNITS>', 'units of the two columns where the file says none: "mm, N"')
    .option('--units <SYSTEM>', 'shop (inches, lb) or metric; default: as typed')
    .option('--json', 'data instead of text, SI units')
    .action(async (options) => {
      ended = await stopDesigned(options);
    });
  stop
    .command('solid')
    .description('the printed stop as one closed body: a file for the slicer')
    .exitOverride()
    .allowExcessArguments(false)
    .requiredOption('--height <LENGTH>', 'foot to tip, plate and cap and all')
    .requiredOption('--diameter <LENGTHS>', 'outside: "60 mm", or at foot and tip: "60 mm, 50 mm"')
    .requiredOption('-o, --out <FILE>', 'new file, .3mf or .stl')
    .option('--density <SHARES>', 'solid shares from foot to tip: "50 %, 30 %"')
    .option('--target <CURVE>', 'instead: CSV file of the wanted curve, as for stop design')
    .option('--need <RIG>', 'instead: the rig file whose end needs it, with --end and --course')
    .option('--end <END>', 'front or rear, with --need')
    .option('--course <NAMES>', 'courses that must be met, with --need: whoops,ledge')
    .option('--speed <SPEED>', 'with --need (default: the speed of each course)')
    .option('--setup <NAME>', 'with --need (default: the rig as measured)')
    .option('--bore <DIAMETER>', 'hole through it (default: none)')
    .option('--cell <LENGTH>', 'edge of a lattice cell (default: 10 mm)')
    .option('--wall <LENGTH>', 'thinnest wall that prints whole (default: 0.8 mm)')
    .option('--skin <LENGTH>', 'solid skin around the lattice (default: none, open sides)')
    .option('--foot <LENGTH>', 'solid plate at the foot (default: 3 mm, or what the seat needs)')
    .option('--cap <LENGTH>', 'solid plate at the tip (default: none)')
    .option('--vents <HOLES>', 'holes through the skin: "2 x 4 mm" (default: none, air shut in)')
    .option('--stud <THREAD>', 'M6 to M12, or 1/4 to 1/2: "M10", "3/8-16" (default: no hole)')
    .option('--seat <KIND>', 'nut (also holds the head of a bolt), clearance or insert (default: nut)')
    .option('--insert <SIZES>', 'width and depth of the hole of an insert: "9.6 mm, 12 mm"')
    .option('--material <NAME>', 'tpu-85a, tpu-95a (default), or a file of lastinch stop correct')
    .option('--columns <UNITS>', 'units of the two columns where the file says none: "mm, N"')
    .option('--units <SYSTEM>', 'shop (inches, lb) or metric; default: as typed')
    .option('--json', 'data instead of text, SI units')
    .action(async (options) => {
      ended = await stopSolid(options);
    });
  stop
    .command('coupons')
    .description('which coupons of a print to press, what to read, and a form to fill in')
    .exitOverride()
    .allowExcessArguments(false)
    .option('--cell <LENGTH>', 'edge of a lattice cell: that of the stop to come (default: 10 mm)')
    .option('--wall <LENGTH>', 'thinnest wall that prints whole (default: 0.8 mm)')
    .option('--material <NAME>', 'tpu-85a, tpu-95a (default), or a file of lastinch stop correct')
    .option('--form <FILE>', 'write the form for the readings there, CSV')
    .option('-o, --out <FILE>', 'write the coupons to print there, 3MF')
    .option('--units <SYSTEM>', 'shop (inches, lb) or metric (default)')
    .option('--json', 'data instead of text, SI units')
    .action(async (options) => {
      ended = await stopCoupons(options);
    });
  stop
    .command('correct')
    .description('what presses of coupons, or of the printed stop, say about its material')
    .exitOverride()
    .allowExcessArguments(false)
    .option('--coupons <FORM>', 'the form of lastinch stop coupons, filled in')
    .option('--stop <PRESS>', 'CSV file of a press of the printed stop itself, with --design')
    .option('--design <JSON>', 'what it was printed from: the output of lastinch stop design --json')
    .option('--columns <UNITS>', 'units of the two columns of --stop where the file says none: "mm, N"')
    .option('--material <NAME>', 'what was taken before: tpu-85a, tpu-95a (default), or a file')
    .option('--name <NAME>', 'of the material (default: that of the file)')
    .option('-o, --out <FILE>', 'write the material there, for stop design --material')
    .option('--units <SYSTEM>', 'shop (inches, lb) or metric (default)')
    .option('--json', 'data instead of text, SI units')
    .action(async (options) => {
      ended = await stopCorrected(options);
    });
  command('open', 'print the verdict, then serve the workbench on this machine')
    .argument('<FILE>', 'rig file')
    .option('--no-open', 'do not start a browser')
    .option('--port <N>', 'port to serve on (default: 4646, or the next free one)')
    .action(async (file: string, options) => {
      ended = await open(file, options);
    });

  try {
    await program.parseAsync([...words], { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    // Help and version end with 0; whatever was not understood is bad input.
    return error.exitCode === 0 ? 0 : 2;
  }
  return ended;
}
