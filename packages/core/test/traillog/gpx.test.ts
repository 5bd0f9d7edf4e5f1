import { describe, expect, it } from 'vitest';
import { logReading, openLog } from '../../src/traillog/open-log.ts';
import { bytesOf, readAll } from './read.ts';

const track = (points: string) => `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1">
  <!-- a comment with > and <trkpt lat="1" lon="1"/> in it -->
  <wpt lat="1" lon="2"><name>not a point of the track</name></wpt>
  <trk><name><![CDATA[<hill>]]></name><trkseg>
${points}
  </trkseg></trk>
</gpx>
`;
const POINTS = `<trkpt lat="48.1" lon="11.5"><ele>520.5</ele><time>2026-05-02T10:15:30Z</time></trkpt>
<trkpt lat='48.2' lon='11.6'>
  <ele>521</ele><time>2026-05-02T10:15:31.500Z</time>
  <extensions><x:TrackPointExtension><x:speed>4.5</x:speed></x:TrackPointExtension></extensions>
</trkpt>`;

describe('a GPX track', () => {
  it('is its points, whatever the pieces that it comes in', () => {
    for (const piece of [1, 3, 50, 10_000]) {
      const { streams, format, zero, report } = readAll(track(POINTS), [], piece);
      expect(format.kind).toBe('gpx');
      expect(zero).toBe(Date.parse('2026-05-02T10:15:30Z') / 1000);
      const position = streams.get('position');
      expect(position?.time).toEqual([0, 1.5]);
      expect(position?.columns.slice(0, 4)).toEqual([
        [48.1, 48.2],
        [11.5, 11.6],
        [520.5, 521],
        [Number.NaN, 4.5],
      ]);
      expect(position?.lines).toEqual([6, 7]);
      expect(report.rows.position).toBe(2);
    }
  });

  it('keeps its points when it ends too soon, and says that it did', () => {
    const whole = track(POINTS);
    const { report, streams } = readAll(whole.slice(0, whole.indexOf('</trkseg>')));
    expect(streams.get('position')?.time).toHaveLength(2);
    expect(report.torn.first[0].found).toBe('the file ends inside <trkseg>');
  });

  it('counts points without a time or off the globe', () => {
    const { report, streams } = readAll(
      track(
        `${POINTS}<trkpt lat="1" lon="1"/><trkpt lat="99" lon="1"><time>2026-05-02T10:15:33Z</time></trkpt>`,
      ),
    );
    expect(report.timeless.count).toBe(1);
    expect(report.texts.first[0].found).toBe('lat 99, lon 1');
    expect(streams.get('position')?.time).toHaveLength(2);
  });

  it('is refused when elements cross before any point is read', () => {
    const text = '<gpx><trk></gpx>';
    const format = openLog(bytesOf(text), { file: 'a.gpx' });
    if (!format.ok) throw new Error('no gpx');
    const reading = logReading(format.value, { take: () => {} }, 'a.gpx');
    reading.push(bytesOf(text));
    const end = reading.finish();
    expect(!end.ok && end.problems[0]).toMatchObject({
      code: 'log-broken',
      found: '</gpx> where </trk> belongs',
    });
  });
});
