/**
 * The bench itself, built: `program MEGABYTES`. Makes a log in memory, reads it in pieces of 64 KB, and prints one line
 * of JSON: megabytes a second of the processor, the best of some runs.
 */
import { type LogBlock, logReading, openLog } from '@lastinch/core/trail';

const [megabytes = '64'] = process.argv.slice(2);
const PIECE = 65_536;
const RUNS = 5;

/** Rows as a phone writes them, other ones each time; invented. */
function logOf(bytes: number, decimal: '.' | ','): Buffer {
  const separator = decimal === ',' ? ';' : ',';
  const number = (value: number, digits: number) => value.toFixed(digits).replace('.', decimal);
  const lines = [
    ['time (s)', 'ax (m/s^2)', 'ay (m/s^2)', 'az (m/s^2)', 'lat', 'lon', 'speed (m/s)'].join(separator),
  ];
  for (let k = 0; k < 20_000; k += 1) {
    const shake = Math.sin(k / 7) * 3;
    const fix =
      k % 100 === 0 ? [number(48.1 + k * 1e-7, 7), number(11.5 + k * 1e-7, 7), number(8.2, 2)] : ['', '', ''];
    lines.push(
      [number(k / 100, 3), number(shake, 6), number(-0.3 * shake, 6), number(9.81 + shake, 6), ...fix].join(
        separator,
      ),
    );
  }
  const piece = Buffer.from(`${lines.join('\n')}\n`);
  return Buffer.concat(Array.from({ length: Math.ceil(bytes / piece.length) }, () => piece));
}

function rateOf(log: Buffer) {
  let seconds = Infinity;
  let rows = 0;
  for (let run = 0; run < RUNS; run += 1) {
    const format = openLog(log.subarray(0, PIECE), { file: 'log' });
    if (!format.ok) throw new Error(JSON.stringify(format.problems));
    rows = 0;
    const from = process.cpuUsage();
    const take = (block: LogBlock): void => {
      rows += block.rows;
    };
    const reading = logReading(format.value, { take }, 'log');
    for (let at = 0; at < log.length; at += PIECE) reading.push(log.subarray(at, at + PIECE));
    reading.finish();
    const { user, system } = process.cpuUsage(from);
    seconds = Math.min(seconds, (user + system) / 1e6);
  }
  return { megabytesPerSecond: log.length / 1e6 / seconds, rows };
}

const bytes = Number(megabytes) * 1e6;
const point = rateOf(logOf(bytes, '.'));
const comma = rateOf(logOf(bytes, ','));
console.log(JSON.stringify({ megabytes: bytes / 1e6, point, comma }));
