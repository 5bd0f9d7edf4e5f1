import { randomStream } from '../numerics/random.ts';

/** The numbers 0 … count − 1 in an order of the seed. */
export function shuffled(count: number, seed: number, branch: number): number[] {
  const order = Array.from({ length: count }, (_, i) => i);
  const random = randomStream(seed, branch);
  for (let i = count - 1; i > 0; i -= 1) {
    const j = random.below(i + 1);
    const kept = order[i];
    order[i] = order[j];
    order[j] = kept;
  }
  return order;
}
