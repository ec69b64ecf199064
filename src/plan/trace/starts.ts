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

/** Words of nearly every fault and every list: they tell none from another. */
const EVERYWHERE = new Set(
  'small engine motor machine petrol electric something somewhere makes made when while with from over after the and wont dont isnt not'.split(
    ' ',
  ),
);
/** Of a word with several ends: `drips`, `dripping`. */
const STEM = 4;
const NOT = /n['’]?t\b|\bnot?\b|\bnever\b|\bcannot\b|\brefuses?\b|\bhard\b|\bdifficult\b/i;

function stemsOf(text: string): string[] {
  const words =
    text
      .toLowerCase()
      .replace(/['’]/g, '')
      .match(/\p{L}+/gu) ?? [];
  return words
    .filter((word) => word.length > 2 && !EVERYWHERE.has(word))
    .map((word) => word.slice(0, STEM));
}

/** The list whose title shares most words with what is complained of; null where none does. */
export function startFor(starts: readonly Start[], complaint: string): Start | null {
  const said = new Set(stemsOf(complaint));
  const shared = ({ say }: Start) =>
    NOT.test(say) && !NOT.test(complaint)
      ? 0
      : stemsOf(say).filter((stem) => said.has(stem)).length;
  const best = starts.toSorted((a, b) => shared(b) - shared(a))[0];
  return best && shared(best) > 0 ? best : null;
}

/** Not what runs too hot: that is the fault itself. */
const WARM =
  /(?<!\b(?:runs?|running|gets?|too|very) )\b(?:warm(?:s|ed|ing)?|hot)\b|\bheat(?:s|ed|ing)? up\b|\bafter (?:about )?(?:\d+|five|ten|fifteen|twenty|thirty|half an|an?) ?(?:min(?:ute)?s?|hours?|h|km|miles?)\b/i;
const WHEN_WARM = /\b(?:when|once|as|if|until|after) it (?:gets|runs|is) (?:warm|hot)\b/i;

/** Common practice, no source. Null where nothing says that the fault is only there warm. */
export function onlyWarmSaid({ complaint, job }: Pick<Upper, 'complaint' | 'job'>): string | null {
  const said = complaint ?? job;
  return WARM.test(said) || WHEN_WARM.test(said)
    ? 'If it is only there warm, a look made cold clears nothing for it: look while it is at fault, or say that you can’t tell.'
    : null;
}
