import type { Figure, UnitSystem } from '@lastinch/core';

export const formatFigure = (figure: Figure, { system }: { readonly system: UnitSystem }): string => {
  const shop = (metres: number): string => {
    const k = Math.round(Math.abs(metres / 0.0254) * 16);
    const whole = Math.floor(k / 16);
    let n = k % 16;
    let d = 16;
    while (n > 0 && n % 2 === 0) {
      n /= 2;
      d /= 2;
    }
    const text = n === 0 ? `${whole}` : whole === 0 ? `${n}/${d}` : `${whole} ${n}/${d}`;
    return (metres < 0 && k > 0 ? '-' : '') + text;
  };
  if (system === 'metric')
    return `${(figure.value * 1000).toFixed(0)} mm ± ${figure.tolerance === null ? 'unknown' : (figure.tolerance * 1000).toFixed(0)}`;
  return `${shop(figure.value)} in ± ${figure.tolerance === null ? 'unknown' : shop(figure.tolerance)}`;
};
