/** Minutes of checks and covers where some are not known. */
import type { TraceShown } from './read.ts';
import type { Cover, Expected } from './types.ts';
import { meanOf } from './weights.ts';

/** A check with its minutes. */
export interface Timed extends TraceShown {
  minutes: number;
}

export interface Times {
  checks: Timed[];
  covers: Map<string, number>;
  unit: Expected['unit'];
}

/** Known, and a time: neither negative nor without end. */
export const timeOf = (takes: number | null): number | null =>
  takes !== null && takes >= 0 && Number.isFinite(takes) ? takes : null;

/** A time not known is the mean of its like: of checks or of covers, else of all, else each counts as one look. */
export function timesOf(checks: readonly TraceShown[], covers: readonly Cover[]): Times {
  const mean = (all: readonly { takes: number | null }[]) =>
    meanOf(all.map(({ takes }) => timeOf(takes)));
  const [ofChecks, ofCovers] = [mean(checks), mean(covers)];
  const check = ofChecks ?? ofCovers ?? 1;
  const cover = ofCovers ?? check;
  return {
    checks: checks.map((one) => ({ ...one, minutes: timeOf(one.takes) ?? check })),
    covers: new Map(covers.map(({ name, takes }) => [name, timeOf(takes) ?? cover])),
    unit: ofChecks === null && ofCovers === null ? 'looks' : 'minutes',
  };
}
