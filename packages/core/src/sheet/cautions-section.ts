import { type SheetSection, warn } from './sheet.ts';

/** Said on every sheet: whoever reads only the last page reads this. */
export const cautionsSection = (): SheetSection => ({
  id: 'cautions',
  title: 'Cautions',
  blocks: [
    warn(
      'This sheet is advice from your own readings, not a certificate. Law and the inspection where you drive come first: a change of height, brakes, steering or frame may need approval.',
    ),
    warn(
      'Welds on frame or axle, brakes and steering belong to people who are qualified and licensed for them.',
    ),
    warn(
      'A squeezed coil, a loaded press and a charged shock can kill. Guards, compressors made for it, nobody in line.',
    ),
    warn('Height and soft springs make a rig roll sooner. Side slopes with belts on, slowly, or not at all.'),
    warn(
      'A printed part only with solid metal behind it that the bracket bears. Look at it before each trip, carry a spare.',
    ),
    warn(
      'Not checked here: frame rails under the loads, welds as they were made, what nobody measured, how it steers and brakes.',
    ),
  ],
});
