const HARD = '\u00a0';

/** Keeps a figure on one line: the whole and its fraction, the number and its unit, both sides of ±. */
export const tie = (text: string): string =>
  text
    .replace(/(\d) (\d+\/\d+)/g, `$1${HARD}$2`)
    .replace(/ ± /g, `${HARD}±${HARD}`)
    .replace(/(\d) (in|ft|mm|m|lb|kg|N|kN|g|mph|km\/h|deg|Hz|psi|kPa|%)(?![\p{L}\d])/gu, `$1${HARD}$2`);
