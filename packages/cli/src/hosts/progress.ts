/** One line of progress that rewrites itself, on a terminal only: a log file gets none. */
export interface ProgressLine {
  /** @param share – done so far, 0…1 */
  readonly show: (what: string, share: number) => void;
  readonly clear: () => void;
}

/** Short work shows nothing: a line that flashes by is noise. */
const PATIENCE = 400;

export function progressLine(stream: NodeJS.WriteStream): ProgressLine {
  if (!stream.isTTY) return { show: () => {}, clear: () => {} };
  const since = Date.now();
  let shown = '';
  return {
    show: (what, share) => {
      if (Date.now() - since < PATIENCE) return;
      const line = `${what} ${Math.round(100 * share)} %`;
      if (line === shown) return;
      shown = line;
      stream.write(`\r\u001b[K${line}`);
    },
    clear: () => {
      if (shown !== '') stream.write('\r\u001b[K');
    },
  };
}
