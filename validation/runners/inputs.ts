/** Reads the inputs of a check. A wrong one is our own mistake in a check file, so it throws. */
export function numbers(value: unknown): number[] {
  if (!Array.isArray(value) || !value.every((entry) => typeof entry === 'number'))
    throw new Error(`A check gives ${JSON.stringify(value)} where a list of numbers is due`);
  return value;
}

export function number(value: unknown): number {
  if (typeof value !== 'number')
    throw new Error(`A check gives ${JSON.stringify(value)} where a number is due`);
  return value;
}

export function texts(value: unknown): string[] {
  if (!Array.isArray(value) || !value.every((entry) => typeof entry === 'string'))
    throw new Error(`A check gives ${JSON.stringify(value)} where a list of texts is due`);
  return value;
}

export function text(value: unknown): string {
  if (typeof value !== 'string')
    throw new Error(`A check gives ${JSON.stringify(value)} where a text is due`);
  return value;
}
