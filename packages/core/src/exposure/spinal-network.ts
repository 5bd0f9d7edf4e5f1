/**
 * Coefficients of the vertical spinal response of ISO 2631-5:2004: a recurrent network of seven hidden units.
 * Rows: the last four responses (newest first), the last eight accelerations (newest first), bias.
 *
 * **Single source**: read in two versions of one open source library (BSD-3) and nowhere else. One entry (fourth row,
 * last unit) has four decimals there where all others have five; a digit may be lost.
 */
export const HIDDEN: readonly (readonly number[])[] = [
  [0.0013, 0.01841, -0.00336, 0.01471, 0.00174, 0.00137, 0.00145],
  [-0.00646, -0.00565, -0.00539, 0.01544, -0.00542, 0.00381, 0.00497],
  [-0.00091, -0.02073, 0.00708, -0.00091, 0.00255, -0.00216, 0.01001],
  [0.00898, -0.02626, 0.00438, -0.00595, -0.00774, -0.00034, 0.0128],
  [0.00201, 0.00579, 0.0033, -0.00065, -0.00459, -0.00417, -0.00468],
  [0.00158, 0.00859, 0.00166, 0.0049, -0.00546, 0.00057, -0.00797],
  [0.00361, 0.0049, 0.00452, 0.00079, -0.00604, -0.00638, -0.00529],
  [0.00167, -0.00098, 0.00743, 0.00795, -0.01095, 0.00627, -0.00341],
  [-0.00078, -0.00261, 0.00771, 0.006, -0.00908, 0.00504, 0.00135],
  [-0.00405, -0.0021, 0.0052, 0.00176, -0.00465, -0.00198, 0.00451],
  [-0.00563, 0.00218, -0.00105, 0.00195, 0.00296, -0.0019, 0.00306],
  [-0.00372, 0.00037, -0.00045, -0.00197, 0.00289, -0.00448, 0.00216],
  [-0.31088, -0.95883, -0.67105, 0.14423, 0.04063, 0.07029, 1.033],
];

/** Weights of the hidden units in the response, and its offset. */
export const OUTPUT: readonly number[] = [
  57.96539, 52.32773, 49.78227, 53.16885, 56.02619, -27.7955, 72.34446,
];
export const OFFSET = 21.51959;
