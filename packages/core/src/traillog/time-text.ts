/** What a text of a time says: seconds since 1970 for a date, since midnight for a clock. */
export interface TimeRead {
  readonly seconds: number;
  readonly isDate: boolean;
}

const DATE =
  /^(\d{4})[-/.](\d\d?)[-/.](\d\d?)[T _]+(\d\d?):(\d\d):(\d\d)(?:[.,:](\d+))?\s*(Z|UTC|GMT|[+-]\d\d:?\d\d)?$/i;
const CLOCK = /^(\d\d?):(\d\d):(\d\d)(?:[.,](\d+))?$/;

/**
 * Reads `2026-05-02T10:15:30.125Z`, `2026-05-02 10:15:30,125` (zone unknown: taken as UTC) and `10:15:30.125`.
 *
 * @returns null for anything else, days that no month has among it
 * @source ISO 8601 calendar dates, as loggers write them
 */
export function readTime(text: string): TimeRead | null {
  const clock = CLOCK.exec(text);
  if (clock) {
    const [, h, m, s, part = ''] = clock;
    const seconds = 3600 * Number(h) + 60 * Number(m) + Number(s) + fraction(part);
    return Number(m) < 60 && Number(s) <= 60 ? { seconds, isDate: false } : null;
  }
  const date = DATE.exec(text);
  if (!date) return null;
  const [, year, month, day, h, m, s, part = '', zone = 'Z'] = date;
  const days = daysSince1970(Number(year), Number(month), Number(day));
  if (days === null || Number(h) > 24 || Number(m) > 59 || Number(s) > 60) return null;
  const offset = /^[+-]/.test(zone)
    ? (zone.startsWith('-') ? -1 : 1) * (3600 * Number(zone.slice(1, 3)) + 60 * Number(zone.slice(-2)))
    : 0;
  const seconds = 86_400 * days + 3600 * Number(h) + 60 * Number(m) + Number(s) + fraction(part) - offset;
  return { seconds, isDate: true };
}

const fraction = (digits: string): number => (digits === '' ? 0 : Number(`0.${digits}`));

const MONTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Days of the Gregorian calendar since 1 January 1970. */
function daysSince1970(year: number, month: number, day: number): number | null {
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  if (month < 1 || month > 12) return null;
  if (day < 1 || day > MONTHS[month - 1] + (isLeap && month === 2 ? 1 : 0)) return null;
  const before = year - 1;
  let days =
    365 * (year - 1970) + Math.floor(before / 4) - Math.floor(before / 100) + Math.floor(before / 400) - 477;
  for (let m = 1; m < month; m += 1) days += MONTHS[m - 1];
  return days + (isLeap && month > 2 ? 1 : 0) + day - 1;
}
