import type { Stage } from '../../../src/bolt/torque/stage-types.ts';

/** `20 N·m | +90° | loosen 180° | snug`. */
export function said(stages: readonly Stage[]): string {
  return stages
    .map((s) => {
      if (s.do === 'snug') return 'snug';
      if (s.do === 'angle') return `+${s.degrees}${s.to === null ? '' : `..${s.to}`}°`;
      if (s.do === 'loosen') return s.degrees === null ? 'loosen' : `loosen ${s.degrees}°`;
      const { value, to, unit } = s.quantity;
      return `${s.most ? 'max ' : ''}${value}${to === null ? '' : `..${to}`} ${unit}`;
    })
    .join(' | ');
}
