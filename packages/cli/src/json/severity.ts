import type { Finding } from '@lastinch/core';

/** 1 as soon as one finding breaks a limit of the owner. What is only unproven is said, and does not count as broken. */
export const exitFor = (findings: readonly Finding[]): 0 | 1 =>
  findings.some((finding) => finding.severity === 'over') ? 1 : 0;
