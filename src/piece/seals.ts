/** Seals and gaskets that joint, loose parts or the name of a piece speak of: to be new, or a question. */
import { pattern } from '../model/pattern.ts';
import { textsIn } from '../model/said.ts';
import type { PieceSpec } from '../model/types.ts';

export interface SealNamed {
  /** `gasket`, `O-ring`. */
  what: string;
  /** Who says so: `to be new, says the joint of Head`. */
  why: string;
  /** Nobody says that it is to be new: whether there is to be one is a question. */
  ask: boolean;
}

/** What seals, by its names; `seal the joint with` is what one does. */
const NAMED =
  /\b((?:crush|copper|sealing|bonded|fibre|fiber) washers?|gaskets?|o-?rings?|(?:oil|shaft|lip|stem|dust|fork|crank|piston|rubber) seals?|seals?(?!\s+(?:with|the|it|both|off|in)\b))\b/i;
/** Most words name nothing that seals: then the long pattern is not even read. */
function namedIn(words: string): RegExpExecArray | null {
  return /seal|washer|gasket|ring/i.test(words) ? NAMED.exec(words) : null;
}

/** A thing to buy, or a part, that seals. */
export function isSeal(words: string): boolean {
  return namedIn(words) !== null;
}

/** Said of what does go back in, or is not there. */
const NOT_NEW =
  /\b(?:no|not|without|never)\b|\b(?:re-?used?|used again|same again|old one goes? back|stays?|in good order)\b/i;
/** A comma within a figure parts nothing. */
const PARTS = pattern(() => /;|\.\s+(?=\p{Lu})|(?<!\d),|,(?!\d)/u);

/** What the words of a joint say is to be new: `new gasket, dry` is a gasket. */
function toBeNew(joint: readonly string[]): string[] {
  return joint.flatMap((text) => text.split(PARTS.made)).flatMap((part) => renewed(part.trim()));
}

/** `new O-ring at the flange` is an O-ring. */
export function renewed(words: string): string[] {
  const found = /^(?:an? |the )?new (.+?)(?= (?:at|on|in|under|for|behind|to|with|of)\b|$)/i.exec(
    words,
  );
  return found?.[1] ? [found[1]] : [];
}

type Texts = Pick<PieceSpec, 'name' | 'joint' | 'loose'>;

export function sealsNamed(spec: Texts): SealNamed[] {
  const fresh = toBeNew(textsIn(spec.joint));
  const why = `to be new, says the joint of ${spec.name}`;
  return [...fresh.map((what) => ({ what, why, ask: false })), ...asked(spec, fresh)];
}

function asked(spec: Texts, fresh: readonly string[]): SealNamed[] {
  const renews = fresh.join(' ').toLowerCase();
  const clauses = [
    ...textsIn(spec.joint).map((text) => ['joint', text] as const),
    ...textsIn(spec.loose).map((text) => ['loose parts', text] as const),
  ].flatMap(([where, text]) => text.split(/[;,]/).map((clause) => [where, clause] as const));
  const own = namedIn(spec.name);
  const isSeal = own !== null && own.index + own[0].length === spec.name.length;
  const itIs = isSeal && !fresh.some((what) => spec.name.toLowerCase().includes(bare(what)));
  const found = new Map<string, string>(
    itIs ? [[spec.name.toLowerCase(), 'comes off itself']] : [],
  );
  for (const [where, clause] of clauses) {
    const what = namedIn(clause)?.[1];
    if (what === undefined || NOT_NEW.test(clause) || renews.includes(bare(what))) continue;
    if (!found.has(bare(what))) found.set(bare(what), `named by the ${where} of ${spec.name}`);
  }
  return [...found].map(([what, why]) => {
    return { what: what.replace(/^o-ring/, 'O-ring'), why, ask: true };
  });
}

/** `O-rings` is `o-ring`. */
function bare(what: string): string {
  return what
    .toLowerCase()
    .replace(/s$/, '')
    .replace(/^oring/, 'o-ring');
}
