/** Lists to start from: what it mostly is, and how that is looked at. A job file with suspects and checks is one. */
import { checkFields, suspectFields } from '../../job/form/trace-fields.ts';
import type { Named, Upper } from '../../model/types.ts';

export interface Start {
  /** Name of its file: `engine-wont-start`. */
  name: string;
  /** What it is about, as its job: `Small petrol engine won't start`. */
  say: string;
  suspects: Named[];
  checks: Named[];
}

/** Null where a file lists nothing that it may be. */
export function startNamed(name: string, { job, suspects, checks }: Upper): Start | null {
  if (suspects.size === 0) return null;
  return {
    name,
    say: job,
    suspects: [...suspects.values()].map(suspectFields),
    checks: [...checks.values()].map(checkFields),
  };
}
