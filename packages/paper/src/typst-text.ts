/** A string of the typesetter's language, so that no text is read as markup: only its own marks need a backslash. */
export const typstText = (words: string): string =>
  `"${words.replaceAll('\\', '\\\\').replaceAll('"', '\\"').replace(/\s+/g, ' ')}"`;
