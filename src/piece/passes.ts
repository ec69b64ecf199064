import type { Kind, PassSpec, PieceSpec } from '../job/types.ts';
export function passesOf(spec: PieceSpec, _kinds: ReadonlyMap<string, Kind>): PassSpec[] {
  return spec.passes ?? [
    { name: 'snug', torque: null, angle: null, after: null },
    { name: 'full', torque: spec.torque, angle: null, after: null },
  ];
}
export function lastPass(passes: readonly PassSpec[]): string {
  return passes.findLast((p) => p.after === null)?.name ?? '';
}
