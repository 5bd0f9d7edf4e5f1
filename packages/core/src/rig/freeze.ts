/**
 * Freezes plain data through and through and gives it back. Rigs and setups pass from room to room as values:
 * whoever tries to change one in place is making a mistake of ours and is told so by the engine.
 */
export function deepFreeze<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const part of Object.values(value)) deepFreeze(part);
  return value;
}
