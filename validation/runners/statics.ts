import { type End, stanceOf } from '@lastinch/core';
import type { Runner } from '../runner.ts';
import { text } from './inputs.ts';
import { type Known, knownSetup } from './known-rig.ts';

const stance = (readings: unknown) => stanceOf(knownSetup(readings as Known));

/** Weights, settled springs and frequencies. */
export const statics: Runner = {
  weights: ({ readings }) => {
    const { totalMass, sprungMass, frontShare, crossShare, cg, sprungCg } = stance(readings);
    const place = ({ behindFrontAxle, left, height }: typeof cg) => ({
      behindFrontAxle: behindFrontAxle.value,
      left: left.value,
      height: height.value,
    });
    return {
      totalMass: totalMass.value,
      sprungMass: sprungMass.value,
      frontShare: frontShare.value,
      crossShare: crossShare.value,
      cg: place(cg),
      sprungCg: place(sprungCg),
    };
  },
  'settled-spring': ({ end, readings }) => {
    const { springLoad, settledDeflection, settledLength, rateAtAxle } =
      stance(readings).ends[text(end) as End];
    return {
      loadLeft: springLoad.left.value,
      deflection: settledDeflection.value,
      length: settledLength?.value ?? Number.NaN,
      rateAtAxle: rateAtAxle.value,
    };
  },
  'end-frequencies': ({ end, readings }) => {
    const { rideFrequency, hopFrequency } = stance(readings).ends[text(end) as End];
    return { ride: rideFrequency.value, hop: hopFrequency.value };
  },
  'end-damping': ({ end, readings }) => {
    const { dampingRatio } = stance(readings).ends[text(end) as End];
    return { compression: dampingRatio.compression.value, rebound: dampingRatio.rebound.value };
  },
};
