/** Calls back once at Ctrl-C or a polite kill instead of ending at once; a second one ends. Returns how to forget it. */
export function onInterrupt(stop: () => void): () => void {
  const signals = ['SIGINT', 'SIGTERM'] as const;
  const forget = (): void => {
    for (const signal of signals) process.removeListener(signal, heard);
  };
  function heard(): void {
    forget();
    stop();
  }
  for (const signal of signals) process.on(signal, heard);
  return forget;
}
