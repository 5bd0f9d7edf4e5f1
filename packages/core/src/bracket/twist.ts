import type { SectionMeasures } from './measures.ts';

/**
 * Largest shear stress of a section by turning: closed thin tube T/(2·A_m·t), solid bar T/(w·d²)·(3 + 1.8·d/w) with d the
 * shorter side.
 *
 * @param moment – about the beam's axis [N·m]
 * @validity ends free to warp
 * @source Bredt's formula; bar: Shigley, Mechanical Engineering Design, 9th ed., eq. 3-40 (both from memory)
 */
export function twistStress(section: SectionMeasures, moment: number): number {
  if (section.shape === 'bar') {
    const [short, long] = [Math.min(section.width, section.depth), Math.max(section.width, section.depth)];
    return (moment / (long * short ** 2)) * (3 + (1.8 * short) / long);
  }
  const { wall } = section;
  const enclosed =
    section.shape === 'box'
      ? (section.width - wall) * (section.depth - wall)
      : (Math.PI / 4) * (section.diameter - wall) ** 2;
  return moment / (2 * enclosed * wall);
}
