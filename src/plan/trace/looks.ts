/** What the diary says of a fault: looks in their order, and what was found. */
import { kept } from '../../model/kept.ts';
import { oneLine } from '../../model/safe.ts';
import type { Entry, Job, Looked } from '../../model/types.ts';
import type { TraceMark } from '../../trace/types.ts';

export interface LookMade {
  /** Name of the check; for a part changed to try `plug tried`. */
  check: string;
  says: Looked;
  reading: string | null;
  /** The limit that the reading was held against, as it stood then. */
  limit: string | null;
  /** Why a reading that is beyond it was let through; it stays bad. Null where it was not. */
  because: string | null;
  /** RFC 3339. */
  at: string;
  id: string;
  /** 1 until something was found and put right, then 2. */
  round: number;
  /** What it was, that was found after the rounds before. */
  suspect: string | null;
}

export interface FoundMade {
  suspect: string;
  at: string;
  id: string;
  /** Looks that were made before it. */
  after: number;
}

/** The name of a trial among the checks; it cannot clash, since no name of the file has a blank in it. */
export const triedName = (suspect: string): string => `${suspect} tried`;

interface Looks {
  looks: readonly LookMade[];
  found: readonly FoundMade[];
}

export function looksOf(job: Job): Looks {
  return kept(job, 'looks', () => findLooks(job));
}

function findLooks(job: Job): Looks {
  const looks: LookMade[] = [];
  const found: FoundMade[] = [];
  for (const entry of job.entries) {
    if (!job.living.has(entry.id)) continue;
    const { verb, suspect, at, id } = entry;
    if (verb === 'found' && suspect !== undefined) {
      found.push({ suspect, at, id, after: looks.length });
    }
    const said = saidBy(entry, job);
    if (said.length === 0) continue;
    const result = oneLine(entry.result ?? '');
    const reading = result === '' || WORDS.includes(result) ? null : result;
    const limit = oneLine(entry.limit ?? '') || null;
    const because = entry.verb === 'done' && isBeyond(entry) ? (entry.because ?? null) : null;
    const rest = { reading, limit, because, at, id, round: found.length + 1 };
    for (const [check, says] of said) {
      looks.push({ check, says, suspect: suspect ?? null, ...rest });
    }
  }
  return { looks, found };
}

/** What only says how a test came out, and is no reading. */
const WORDS: readonly string[] = ['passed', 'failed'];

/** Checks that an entry says something of; a test that makes some again says it of each. */
function saidBy(entry: Entry, job: Job): [string, Looked][] {
  const { verb, value, check, suspect, task } = entry;
  if (verb === 'looked') {
    const name = check ?? (suspect === undefined ? null : triedName(suspect));
    return name === null ? [] : [[name, value as Looked]];
  }
  const proves = verb === 'done' ? (job.tasks.get(task ?? '')?.spec.proves ?? []) : [];
  const isBad = value === 'failed' || isBeyond(entry);
  return proves.map((name) => [name, isBad ? 'bad' : 'good']);
}

/** No reason makes the reading another one. */
const isBeyond = ({ judged }: Entry): boolean => judged === 'beyond';

/**
 * The marks that still speak. What was found explains the bad looks before it that show it: they say nothing of the
 * machine as it is now. Good ones stand.
 */
export function stillSpeaking(
  looks: readonly LookMade[],
  found: readonly FoundMade[],
  shows: (check: string) => ReadonlySet<string>,
): TraceMark[] {
  return looks.flatMap(({ check, says }, i) => {
    const explained = found.some((f) => i < f.after && shows(check).has(f.suspect));
    return says === 'bad' && explained ? [] : [{ check, says }];
  });
}
