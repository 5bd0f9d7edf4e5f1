import { run } from './program.ts';

// A reader that had enough (`| head`) is no trouble of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

/** The exit code of a mistake in this program, apart from the three that answer the question (sysexits EX_SOFTWARE). */
const OWN_MISTAKE = 70;

try {
  process.exitCode = await run(process.argv.slice(2));
} catch (error) {
  const said = error instanceof Error ? (error.stack ?? error.message) : String(error);
  process.stderr.write(`lastinch made a mistake of its own; your files are as they were.\n${said}\n`);
  process.exitCode = OWN_MISTAKE;
}
