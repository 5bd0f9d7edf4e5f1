import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openLog } from '../../src/traillog/open-log.ts';
import { bytesOf, readAll, rolesOf } from './read.ts';

const acceleration = (text: string, ...fixes: Parameters<typeof readAll>[1] & object) => {
  const read = readAll(text, fixes);
  const stream = read.streams.get('acceleration');
  if (!stream) throw new Error('no acceleration');
  return { ...read, ...stream, roles: rolesOf(read.format) };
};

describe('a table of accelerations', () => {
  it('with commas, units in brackets and relative seconds', () => {
    const { time, columns, roles } = acceleration(
      'time (s),ax (m/s^2),ay (m/s^2),az (m/s^2)\n0.00,0.1,-0.2,9.81\n0.01,0.2,-0.3,9.7\n',
    );
    expect(roles).toEqual(['time s', 'acceleration.x m/s^2', 'acceleration.y m/s^2', 'acceleration.z m/s^2']);
    expect(time).toEqual([0, 0.01]);
    expect(columns).toEqual([
      [0.1, 0.2],
      [-0.2, -0.3],
      [9.81, 9.7],
    ]);
  });

  it('with semicolons, decimal commas, a mark before UTF-8, junk before the header and a row of units', () => {
    const { time, columns, lines } = acceleration(
      '\uFEFFDevice;some phone\r\nStarted;2026-05-02\r\n\r\nTime;Acceleration x;Acceleration y;Acceleration z\r\nms;g;g;g\r\n0;0,01;0,02;1,00\r\n10;0,5;-1,25;1,5\r\n20;0;0;1\r\n',
    );
    expect(time).toEqual([0, 0.01, 0.02]);
    expect(columns[1][1]).toBeCloseTo(-1.25 * 9.80665, 12);
    expect(lines).toEqual([6, 7, 8]);
  });

  it('with tabs, quotes around every cell, and the same file with blanks', () => {
    const rows = [
      ['t', 'x', 'y', 'z'],
      ['1.0', '0.5', '0.25', '9.8'],
      ['1.01', '0.5', '0.25', '9.9'],
    ];
    const quoted = acceleration(rows.map((row) => row.map((cell) => `"${cell}"`).join('\t')).join('\n'));
    const blanks = acceleration(rows.map((row) => row.join('   ')).join('\n'));
    expect(quoted.columns).toEqual(blanks.columns);
    expect(quoted.columns[2]).toEqual([9.8, 9.9]);
    expect(blanks.time[1]).toBeCloseTo(0.01, 12);
  });

  it('without a header: what only rises is time, and the size at rest tells the unit', () => {
    const { roles } = acceleration('0,0.01,0.02,1.00\n20,0.00,0.01,0.99\n40,0.02,0.03,1.01\n60,0,0,1\n');
    expect(roles).toEqual(['time ms', 'acceleration.x g', 'acceleration.y g', 'acceleration.z g']);
  });

  it('whose time has a foreign name: it is the column that only rises', () => {
    const { roles, time } = acceleration('Zeit;ax;ay;az\nms;g;g;g\n0;0;0;1,0\n10;0;0;1,1\n20;0;0;1,0\n');
    expect(roles[0]).toBe('time ms');
    expect(time).toEqual([0, 0.01, 0.02]);
  });

  it('in Latin-1, where a spreadsheet wrote m/s² in one byte', () => {
    const text = 't [s];ax [m/s\xb2];ay [m/s\xb2];az [m/s\xb2]\n0;1;2;9\n1;1;2;9\n';
    const { format } = readAll(Uint8Array.from(Buffer.from(text, 'latin1')));
    expect(rolesOf(format)[1]).toBe('acceleration.x m/s²');
  });

  it.each([
    ['1714557600', 's', 1714557600],
    ['1714557600000', 'ms', 1714557600],
    ['1714557600000000', 'us', 1714557600],
    ['1714557600000000000', 'ns', 1714557600],
  ])('whose time is %s counts in %s since 1970', (first, unit, seconds) => {
    const steps = { s: '1', ms: '10', us: '10000', ns: '10000000' }[unit] ?? '';
    const second = (BigInt(first) + BigInt(steps)).toString();
    const read = readAll(`time,x,y,z\n${first},0,0,9.8\n${second},0,0,9.8\n`);
    expect(rolesOf(read.format)[0]).toBe(`time ${unit}`);
    expect(read.zero).toBeCloseTo(seconds, 3);
    expect(read.isDated).toBe(true);
    expect(read.streams.get('acceleration')?.time[1]).toBeCloseTo(unit === 's' ? 1 : 0.01, 6);
  });

  it('whose times are dates and clocks keeps their thousandths', () => {
    const read = readAll(
      'datetime,x,y,z\n2026-05-02T10:15:30.125Z,0,0,9.8\n2026-05-02T10:15:30.135Z,0,0,9.8\n2026-05-02 12:15:30.145+02:00,0,0,9.8\n',
    );
    expect(read.zero).toBeCloseTo(Date.parse('2026-05-02T10:15:30.125Z') / 1000, 6);
    expect(read.streams.get('acceleration')?.time[2]).toBeCloseTo(0.02, 6);
  });

  it('of which a column was asked to be another says so, and takes the unit that came with it', () => {
    const { roles, format } = acceleration(
      'a,b,c,d\n0,1,0,0\n1,1,0,0\n2,1,0,0\n',
      {
        column: '1',
        role: 'time',
        unit: 's',
      },
      { column: 'b', role: 'acceleration.x', unit: 'g' },
    );
    expect(roles.slice(0, 2)).toEqual(['time s', 'acceleration.x g']);
    expect(format.kind === 'table' && format.columns[1].roleBy).toBe('asked');
  });
});

describe('columns are told by their names', () => {
  it.each([
    ['linear_acceleration_x', 'linear-acceleration.x m/s²'],
    ['userAccelerationX(G)', 'linear-acceleration.x g'],
    ['gravityZ (m/s²)', 'gravity.z m/s²'],
    ['gyroY (rad/s)', 'turn-rate.y rad/s'],
    ['gz [deg/s]', 'turn-rate.z deg/s'],
    ['gz (g)', 'acceleration.z g'],
    ['gFx', 'acceleration.x g'],
    ['accelerometerAccelerationZ(G)', 'acceleration.z g'],
    ['magnetic_x', 'ignored'],
    ['Latitude (°)', 'position.latitude °'],
    ['GPS Long', 'position.longitude deg'],
    ['speed_kmh', 'position.speed kmh'],
    ['Horizontal Accuracy (m)', 'position.accuracy m'],
    ['Vertical Accuracy (m)', 'ignored'],
  ])('%s is %s', (name, role) => {
    const { format } = readAll(`time,${name},speed2\n0,1.01,1\n0.01,0.99,1\n`, [
      { column: 'speed2', role: 'position.heading', unit: '' },
    ]);
    expect(rolesOf(format)[1]).toBe(role);
  });
});

describe('a table that is not whole', () => {
  it('of merged sensors gives each its own rows: an empty cell is nothing', () => {
    const { streams, report } = readAll(
      'time,ax,ay,az,lat,lon,speed\n0,0,0,9.8,,,\n0.01,0,0,9.8,48.1,11.5,3.5\n0.02,0,0,9.9,,,\n1.01,,,,48.2,11.6,\n',
    );
    expect(streams.get('acceleration')?.time).toEqual([0, 0.01, 0.02]);
    const position = streams.get('position');
    expect(position?.time).toEqual([0.01, 1.01]);
    expect(position?.columns[1]).toEqual([11.5, 11.6]);
    expect(position?.columns[3]).toEqual([3.5, Number.NaN]);
    expect(report.texts.count).toBe(0);
  });

  it('counts words among numbers, torn lines and rows without a time, and says where', () => {
    const { report, streams } = readAll(
      't (s),x,y,z\n0,0,0,9.8\n1,0,oops,9.8\n2,0,0,9.8\nNaN,0,0,9.8\n3,0\n4,0,0,9.8\n5,0,0',
    );
    expect(report.texts).toEqual({ count: 1, first: [{ line: 3, column: 3, found: 'oops' }] });
    expect(report.torn.count).toBe(2);
    expect(report.torn.first[0]).toEqual({ line: 6, column: 0, found: '3,0' });
    expect(report.timeless.first[0].line).toBe(5);
    expect(streams.get('acceleration')?.time).toEqual([0, 2, 4]);
  });

  it.each([
    ['an empty file', '', 'an empty file'],
    ['blank lines', '\n\n  \n', 'an empty file'],
    ['prose', 'Dear diary,\ntoday we drove.\n', 'text without a table of numbers'],
    ['a photo', '\u00ff\u00d8\u00ff\u00e0', 'a JPEG photo'],
    ['zeros', '\0\0\0\0', 'bytes of value zero, no text'],
    ['a page', '<html><body></body></html>', 'markup that is not GPX'],
  ])('is refused when it is %s', (_, text, found) => {
    const read = openLog(Uint8Array.from(Buffer.from(text, 'latin1')), { file: 'log.csv' });
    expect(read.ok).toBe(false);
    if (!read.ok)
      expect(read.problems[0]).toMatchObject({ code: 'log-not-a-log', found, where: { file: 'log.csv' } });
  });

  it('is refused when no time or nothing but a time is found, with the names that are there', () => {
    for (const [text, accepted] of [
      ['a,b\n5,7\n5,6\n', /time/],
      ['time,b\n5,6\n6,7\n', /acceleration or position/],
    ] as const) {
      const read = openLog(bytesOf(text), { file: 'log.csv' });
      expect(!read.ok && read.problems[0].code).toBe('log-no-columns');
      expect(!read.ok && read.problems[0].accepted).toMatch(accepted);
    }
  });

  it('is refused when a column is corrected that is not there', () => {
    const read = openLog(bytesOf('t,x\n0,1\n1,2\n'), {
      file: 'l',
      fixes: [{ column: '7', role: 'time', unit: '' }],
    });
    expect(!read.ok && read.problems[0]).toMatchObject({
      code: 'log-column-unknown',
      found: '7',
      accepted: '1 (t), 2 (x)',
    });
  });
});

describe('any table', () => {
  const number = fc.double({ min: -1e4, max: 1e4, noNaN: true });

  it('is read to the double nearest to each number, however its bytes are cut', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(number, number, number), { minLength: 3, maxLength: 40 }),
        fc.constantFrom(',', ';', '\t'),
        fc.integer({ min: 1, max: 50 }),
        fc.constantFrom('\n', '\r\n'),
        (rows, separator, piece, end) => {
          const lines = rows.map((row, k) => [k / 100, ...row].join(separator));
          const text = ['t', 'ax (m/s²)', 'ay (m/s²)', 'az (m/s²)'].join(separator) + end + lines.join(end);
          const { streams } = readAll(text, [], piece);
          const { columns, time } = streams.get('acceleration') ?? { columns: [], time: [] };
          expect(time).toEqual(rows.map((_, k) => k / 100));
          for (let axis = 0; axis < 3; axis += 1)
            expect(columns[axis].map((x) => x + 0)).toEqual(rows.map((row) => row[axis] + 0));
        },
      ),
      { seed: 8, numRuns: 200 },
    );
  });

  it('loses no line: each is read, empty or counted', () => {
    const cell = fc.oneof(number.map(String), fc.constantFrom('', 'x', 'NaN', '"1.5"', '1e3', '-', '"a""b"'));
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 1, maxLength: 5 }), { maxLength: 30 }),
        fc.integer({ min: 1, max: 30 }),
        (rows, piece) => {
          const good = ['0,1,2,3', '1,1,2,3', '2,1,2,3', '3,1,2,3', '4,1,2,3', '5,1,2,3'];
          const text = `t,x,y,z\n${[...good, ...rows.map((row) => row.join(','))].join('\n')}`;
          const { report, streams } = readAll(text, [], piece);
          const rowsRead = streams.get('acceleration')?.lines.length ?? 0;
          const blank = rows.filter((row) => row.every((each) => each === '')).length;
          const counted = report.torn.count + report.timeless.count;
          const short =
            rows.filter((row) => !row.every((each) => each === '')).length + good.length - rowsRead - counted;
          // What is neither counted as a line nor a row has a word or an empty cell in it.
          const holed = rows.filter(
            (row) =>
              row.length >= 4 &&
              row.slice(1, 4).some((each) => !Number.isFinite(Number.parseFloat(each.replaceAll('"', '')))),
          ).length;
          expect(short).toBeGreaterThanOrEqual(0);
          expect(short).toBeLessThanOrEqual(holed);
          expect(blank).toBeGreaterThanOrEqual(0);
        },
      ),
      { seed: 9, numRuns: 200 },
    );
  });
});
