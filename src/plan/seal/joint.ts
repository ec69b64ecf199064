/**
 * What the words of `joint:` ask for. The words themselves are shown as they stand; only what has to be had, and
 * what has to be hurried or waited for, is read out of them.
 */

import { kept } from '../../model/kept.ts';
import { pattern } from '../../model/pattern.ts';
import { textsIn } from '../../model/said.ts';
import type { PieceSpec } from '../../model/types.ts';
import { renewed } from '../../piece/seals.ts';
import { readDuration } from '../time/duration.ts';

export interface Joint {
  /** What stands between semicolons, as written. */
  parts: string[];
  /** What is to be new: `gasket`, `flange O-ring`. */
  renew: string[];
  /** Tubes and tins it takes. */
  consumables: Consumable[];
  /** Seconds in which the joint must be closed once the sealant is on, of a range the fewer; null when not said. */
  open: number | null;
  /** Seconds that it has to stand once it is on, before it is closed; null when not said. */
  stand: number | null;
  /** Seconds until it may be loaded, of a range the more; null when not said. */
  cure: number | null;
  /** What the file says of that, with what cures where the words leave it out: `sealant cures 12 h`. */
  cures: string | null;
  /** It cures, and how long is not said, or not read: `sealant cures overnight`, `sealant, 24 h`; null otherwise. */
  untimed: string | null;
  /** Something with a lip or a side that can be put in the wrong way. */
  lip: boolean;
}

export interface Consumable {
  what: 'sealant' | 'threadlocker' | 'grease' | 'anti-seize';
  /** Of threadlocker: low, medium or high strength. */
  grade: string | null;
}

const CONSUMABLES: readonly [Consumable['what'], RegExp][] = [
  ['sealant', /\bseal(?:ant|ed with|er)\b|\bsealing (?:compound|paste)\b|\bsilicone\b/i],
  ['threadlocker', /\bthread[ -]?lock(?:er|ing|ed)?\b/i],
  ['grease', /\bgreas(?:e|ed)\b/i],
  ['anti-seize', /\banti[ -]?seize\b/i],
];
/** Said of what has to stand before it is loaded. */
export const CURES = /\bcur(?:e|es|ed|ing)\b|\bset(?:s|ting)?\b/i;
/** The same where no time was read: what is only set may be a dowel. */
const VAGUE =
  /\bcur(?:e|es|ing)\b|\b(?:over ?night|until (?:tomorrow|morning|it is (?:dry|hard)))\b/i;
const NOT_CURED = /\b(?:no|not|never|without|non)\b/i;
/** Words that with a time behind them say the same. */
const LOADED =
  /\bdr(?:y|ies|ying)\b|\bharden\w*|\bfull strength\b|\b(?:load|driv|rid|run|used?|ready|fill)\w*\b.*\bafter\b|\bno (?:oil|load|water|fuel)\b.*\bfor\b/i;
/** Said of how long one has to close it. */
const OPEN =
  /\bopen|\bwithin\b|\bskin|\bworking time\b|\bpot life\b|\bclosed? in\b|\bassembled? in\b/i;
/** Said of how long one has to wait before it is closed: `let it set 10 min, then close`. */
const CLOSE =
  '(?:clos(?:e|ing)|fit(?:ting)?|assembl(?:e|ing|y)|join(?:ing)?|mat(?:e|ing)|put(?:ting)? (?:it )?(?:on|together|back)|press(?:ing)?|bolt(?:ing)?)';
const THEN_CLOSE = pattern(
  () =>
    String.raw`\b(?:then|and) (?:then )?${CLOSE}\b|\bbefore (?:it is )?${CLOSE}|\b${CLOSE} (?:it )?(?:only )?after\b`,
  'i',
);
const BEGINS_THEN = pattern(
  () => String.raw`^(?:and )?then ${CLOSE}\b|^before (?:it is )?${CLOSE}`,
  'i',
);
/** What cures, as the file may call it. */
const STUFF = /\b(?:seal(?:ant|er)|silicone|thread[ -]?lock(?:er|ing)?|adhesive|compound|paste)\b/i;
const NONE =
  /\b(?:no|not|never|without|clean(?:ed)? (?:of|from)|free (?:of|from)|wiped? off)\b[^,;]*$/i;

/** Of a piece. */
export function jointOf({ joint }: Pick<PieceSpec, 'joint'>): Joint {
  return kept(joint, 'joint', () => readJoint(textsIn(joint)));
}

export function readJoint(joint: readonly string[]): Joint {
  const parts = joint.flatMap((text) => text.split(/;|\.\s+(?=\p{Lu})/u)).map((p) => p.trim());
  const saids = parts.flatMap((part) => saidIn(part));
  const timed = saids.flatMap(({ words, stands }) => {
    const time = timeIn(words);
    return time ? [{ words, stands, ...time }] : [];
  });
  const stands = timed.filter((said) => said.stands);
  const cures = timed.filter((said) => !said.stands && isCure(said.words));
  const opens = timed.filter(({ stands, words }) => !stands && isOpen(words));
  const known = [...stands, ...cures, ...opens];
  // Where several are said the one that is safe: the last that cures, the first that is over.
  const cure = cures.reduce<(typeof timed)[number] | null>(
    (most, said) => (most && most.seconds >= said.seconds ? most : said),
    null,
  );
  const words = saids.map((said) => said.words);
  // A time beside what cures, of which nobody says what it is for, may be just that.
  const other = timed.find((said) => !known.includes(said))?.words;
  const unsaid = other !== undefined && STUFF.test(joint.join(' ')) ? other : undefined;
  const vague =
    cure === null ? (words.find((w) => VAGUE.test(w) && !NOT_CURED.test(w)) ?? unsaid) : undefined;
  return {
    parts: parts.filter((p) => p !== ''),
    renew: words.flatMap(renewed),
    consumables: consumablesIn(parts),
    open: opens.length === 0 ? null : Math.min(...opens.map((said) => said.least)),
    stand: stands.length === 0 ? null : Math.max(...stands.map((said) => said.seconds)),
    cure: cure?.seconds ?? null,
    cures: cure === null ? null : withStuff(cure.words, parts),
    untimed: vague === undefined ? null : withStuff(vague, parts),
    lip: words.some((word) => /\blips?\b|\bseals?\b/i.test(word)),
  };
}

/** `24 h per mm`, `2 mm in 24 h`: how thick it is nobody says. */
const BY_DEPTH = /\b(?:per|\/) ?(?:\d+ ?)?mm\b|(?:\d|\b)mm ?(?:\/|per\b|in\b)/i;

/** Of several times in one clause the longest cures and the shortest is open: `cures 24 h (48 h when cold)`. */
function timeIn(words: string): { seconds: number; least: number } | null {
  if (BY_DEPTH.test(words)) return null;
  let [time, rest] = [readDuration(words), ''];
  if (time === null) return null;
  let { seconds, least } = time;
  for (let more = MOST_SAID; time !== null && more > 0; more -= 1) {
    rest = time.rest;
    time = rest.length < words.length ? readDuration(rest) : null;
    if (time === null) break;
    [seconds, least] = [Math.max(seconds, time.seconds), Math.min(least, time.least)];
  }
  return { seconds, least };
}

const isCure = (words: string) => CURES.test(words) || (LOADED.test(words) && !isOpen(words));

/** `cures within 24 h` is no hurry. */
function isOpen(words: string): boolean {
  return OPEN.test(words) && (!CURES.test(words) || /\bopen|\bskin/i.test(words));
}

interface Said {
  words: string;
  /** Its time has to pass before the joint is closed. */
  stands: boolean;
}

/** What one part says, between its commas; a comma within a figure is none. */
function saidIn(part: string): Said[] {
  const words = part
    .split(/(?<!\d),|,(?!\d)/)
    .flatMap((said) => eachWithItsTime(said))
    .map((w) => w.trim());
  return words.map((said, i) => ({
    words: said,
    stands: THEN_CLOSE.test(said) || BEGINS_THEN.test(words[i + 1] ?? ''),
  }));
}

/** Most sayings of time that are read of one joint: a long text must not take long. */
const MOST_SAID = 20;

/** `open 10 min and cures 12 h` says two things, each with a time of its own; `1 h and 30 min` is one. */
function eachWithItsTime(words: string, most = MOST_SAID): string[] {
  const at = /\s(?:and|then|but)\s/i.exec(words);
  if (!at || most === 0) return [words];
  const before = words.slice(0, at.index).trimEnd();
  const behind = words.slice(at.index + at[0].length).trimStart();
  const times = [before, behind].every((w) => (CURES.test(w) || OPEN.test(w)) && readDuration(w));
  return times ? [before, ...eachWithItsTime(behind, most - 1)] : [words];
}

/** `cures 12 h` behind `sealant on both faces` is `sealant cures 12 h`. */
function withStuff(cures: string, parts: readonly string[]): string {
  const part = parts.find((p) => p.includes(cures)) ?? '';
  const stuff = STUFF.exec(part.slice(0, part.indexOf(cures)))?.[0];
  const bare = /^(?:cur|set)/i.test(cures);
  return bare && stuff ? `${stuff} ${cures}` : cures;
}

/** Tubes and tins named in texts, but not where they are forbidden (`no grease on the lip`). */
export function consumablesIn(texts: readonly string[]): Consumable[] {
  return CONSUMABLES.flatMap(([what, said]) => {
    const named = texts.find((text) => {
      const found = said.exec(text);
      return found !== null && !NONE.test(text.slice(0, found.index));
    });
    if (named === undefined) return [];
    const grade = /\b(low|medium|high)\b/i.exec(named)?.[1]?.toLowerCase() ?? null;
    return [{ what, grade: what === 'threadlocker' ? grade : null }];
  });
}
