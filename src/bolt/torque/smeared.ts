/** What oil, threadlocker and anti-seize do to a torque: words and a range, never a figure to set. */
import { type OneOf, oneOf } from '../../model/one-of.ts';

export type Smear = 'oil' | 'threadlocker' | 'anti-seize';

/**
 * Nut factors K: dry 0.20–0.25, oiled 0.15–0.20, anti-seize 0.12–0.16 (handbook ranges after Shigley and Machinery's
 * Handbook). Wet threadlocker slides about as oil does: common practice, no source.
 */
const K = {
  dry: [0.2, 0.25],
  oil: [0.15, 0.2],
  threadlocker: [0.15, 0.2],
  'anti-seize': [0.12, 0.16],
} as const;

const ASK =
  'Ask the manual whether its torque is for dry threads; nothing here is a figure to set.';

/** How many times as hard the same torque pulls as on dry threads, from and to, and a sentence. */
export function smeared(what: Smear): { from: number; to: number; say: string } {
  const [dryLow, dryHigh] = K.dry;
  const [low, high] = K[what];
  const [from, to] = [dryLow / high, dryHigh / low];
  const times = `${from.toFixed(1)} to ${to.toFixed(1)} times as hard`;
  return { from, to, say: `With ${what} the same torque pulls ${times} as dry. ${ASK}` };
}

const WORDS: readonly [Smear, OneOf][] = [
  [
    'anti-seize',
    oneOf('anti-?sei[zs]e|copper (?:grease|paste)|moly(?:bdenum)? (?:grease|paste)', 'i'),
  ],
  ['threadlocker', oneOf('thread-?lock(?:er|ing)?|thread lock(?:er|ing)?|locking compound', 'i')],
  ['oil', oneOf('oil(?:ed)?|greased?|lubricated|waxed', 'i')],
  ['oil', /geölt|gefettet|huilé|graissé|engrasad|aceitad|lubri[fc]a[td]|oliat/i],
];
/** Dry, as German, French, Spanish and Italian manuals print it. */
const OTHER_DRY = /^\s*\(?(?:trocken|à sec|en seco|asciutt[oaie]|a secco)\)?\s*$/i;

/** Words by which a clause says that there is to be none, or that it is wiped off. */
const NONE =
  /\b(?:dry|no|not|never|without|don['’]?t|avoid|keep (?:\S+ ){0,3}(?:off|away)|free (?:of|from)|clean(?:ed)? (?:of|from)|wiped? (?:\S+ ){0,3}(?:off|away)|un(?:oiled|lubricated|greased)|oil-free|de-?greased?)\b/i;
/** What else is oiled and greased at a bench. */
const OTHER =
  /\b(?:o-?rings?|seals?|lips?|gaskets?|bearings?|bush(?:es|ings?)?|shafts?|splines?|pins?|dowels?|spigots?|cables?|chains?|gears?|cogs?|springs?|pistons?|rings?|bores?|liners?|hoses?|grommets?|rubbers?|pivots?|rollers?|cams?|lobes?|sleeves?|levers?|faces?|felt|filter|jets?|sprockets?|rockers?|followers?)\b/i;
/** Words that name the thread. */
const THREAD = /\b(?:threads?|bolts?|screws?|studs?|nuts?|heads?)\b/i;
/** Oil in a passage, a seal or a pan is on no thread. */
const ELSEWHERE =
  /\boil[ -]?(?:passage|way|gallery|galleries|feed|drain|return|pump|pan|filter|seal|level|line|pipe|hole|jet|side|cooler|tank|bath)\w*/gi;

/**
 * What a note says is on the thread: oil, threadlocker, anti-seize; null when it says nothing of the kind. Clause by
 * clause: a greased O-ring, a lip without grease and "clean of oil" are no lubricated threads.
 */
export function smearIn(text: string): Smear | null {
  if (text === '') return null;
  for (const clause of clauses(text)) {
    const said = /oil/i.test(clause) ? clause.replace(ELSEWHERE, '') : clause;
    const found = WORDS.find(([, pattern]) => pattern.test(said))?.[0];
    if (!found || NONE.test(said)) continue;
    if (!OTHER.test(said) || THREAD.test(said)) return found;
  }
  return null;
}

/** Oil or grease on something that is no thread: `greased O-ring`. */
export function smearElsewhere(text: string): boolean {
  return clauses(text).every(
    (clause) =>
      OTHER.test(clause) &&
      !THREAD.test(clause) &&
      WORDS.some(([, pattern]) => pattern.test(clause)),
  );
}

/** Whether a note says that the thread is to be dry: `dry`, `dry threads`, `no oil on the thread`. */
export function drySaid(text: string): boolean {
  return clauses(text).some((clause) => {
    const bare = /^\s*(?:fit(?:ted)? |clean(?:ed)?(?: and)? )?dry\s*$/i.test(clause);
    const none = THREAD.test(clause) && NONE.test(clause) && !OTHER.test(clause);
    return bare || OTHER_DRY.test(clause) || (none && /\bdry\b|oil|greas|lubric/i.test(clause));
  });
}

function clauses(text: string): string[] {
  return text.split(/[;,.]\s+|[;,]|\bbut\b|\bthen\b/i);
}
