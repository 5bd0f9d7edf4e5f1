/** Papers that a sheet is laid out for, as a browser and a typesetter name them. */
export const PAPER_SIZES = {
  a4: { css: 'A4', typst: 'a4' },
  letter: { css: 'letter', typst: 'us-letter' },
} as const;
export type PaperSize = keyof typeof PAPER_SIZES;
