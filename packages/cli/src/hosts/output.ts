/** Standard output, in the two forms that an answer takes. */
export const writeLines = (lines: readonly string[]): void => {
  process.stdout.write(`${lines.join('\n')}\n`);
};

export const writeJson = (value: unknown): void => {
  process.stdout.write(`${JSON.stringify(value, null, 2)}\n`);
};
