/** Share of a swing of the rear after which front and rear are to move alike: a choice of its author, not a law. */
export const CYCLES_TO_MATCH = 1.5;

/**
 * Rear ride frequency at which a rig that crosses a bump comes to bounce flat instead of pitching: the rear starts later by
 * wheelbase ÷ speed and, being quicker, has caught up with the front after n swings of the front,
 *
 *     rear = front ÷ (1 − front·wheelbase ÷ (n·speed)),   n = 1.5
 *
 * @param front – ride frequency [Hz]
 * @param speed – [m/s]
 * @returns [Hz]; Infinity where the rear comes too late at this speed
 * @validity undamped, ends that do not couple, one bump. On rocks at walking pace it means nothing.
 * @source Olley's flat ride as in Gillespie, Fundamentals of Vehicle Dynamics, ch. 5, and Milliken, Race Car Vehicle
 *   Dynamics (from memory); the 1.5 is a design choice
 */
export function flatRearFrequency(front: number, wheelbase: number, speed: number): number {
  const left = 1 - (front * wheelbase) / (CYCLES_TO_MATCH * speed);
  return left > 0 ? front / left : Number.POSITIVE_INFINITY;
}

/**
 * Speed at which a rig rides flat as it is [m/s], by the same rule: n·speed = wheelbase·front·rear ÷ (rear − front).
 *
 * @returns Infinity where the rear is no quicker than the front: it pitches at every speed
 */
export function flatSpeed(front: number, rear: number, wheelbase: number): number {
  return rear > front
    ? (wheelbase * front * rear) / (CYCLES_TO_MATCH * (rear - front))
    : Number.POSITIVE_INFINITY;
}
