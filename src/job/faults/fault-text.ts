/** One row of the table of faults. */
import type { Severity } from '../../model/types.ts';

export interface FaultText {
  severity: Severity;
  say: string;
  fix: string;
}

export const error = (say: string, fix: string): FaultText => ({ severity: 'error', say, fix });
export const warning = (say: string, fix: string): FaultText => ({ severity: 'warning', say, fix });
