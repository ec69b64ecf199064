/**
 * What can hurt somebody at a step, beside what the file itself says. Common practice of the trade, no source: the
 * maker's manual, local rules and licensed mechanics go first, and the screens say so.
 */
import { MAKER_FIRST } from '../../bolt/torque/cautions.ts';
import { asPrinted } from '../../model/said.ts';
import type { Care, CheckSpec, PieceSpec, TaskSpec, TextSaid } from '../../model/types.ts';
import { CARES, caresOf } from './care.ts';
import { letOut } from './fluids.ts';

type Named = 'maker' | 'pressure' | 'hot' | 'magnet' | 'air' | 'stand' | 'near';
/** A care, a name of its own, or one of the file's. A gate that has no row for it does not compile. */
export type CautionKey = Care | Named | `caution-${number}`;

export interface Caution {
  /** Read once for each key, piece and round; at a gate the name of its item. */
  key: CautionKey;
  say: string;
}

/** Of a task, which has no gate. */
interface TaskCaution {
  key: string;
  say: string;
}

/** Of what keeps somebody alive: whose word goes before anything that is said here. */
const MAKER: Caution = { key: 'maker', say: `${MAKER_FIRST} Local rules go before both.` };

/** What stays hot or under pressure after a run, by its name. */
const HOT_PIECES: readonly (readonly [RegExp, Caution])[] = [
  [
    /\b(?:pressure|expansion(?: tank)?|header(?: tank)?) caps?\b/,
    {
      key: 'pressure',
      say: 'Under pressure while it is hot: only cold, under a rag, to the first stop.',
    },
  ],
  [
    /\b(?:exhausts?|silencers?|mufflers?|manifolds?|downpipes?)\b/,
    { key: 'hot', say: 'Stays hot long after a run: only cold, or with gloves.' },
  ],
];

/** What pushes or pulls by itself once the piece comes away, by what the file says is loose behind it. */
const LOOSE: readonly (readonly [RegExp, Caution])[] = [
  [
    /\bsprings?\b/i,
    { key: 'spring', say: 'A spring is behind it: eyes covered, and let it come slowly.' },
  ],
  [/\bmagnets?\b/i, { key: 'magnet', say: 'A magnet pulls it: no finger between the edges.' }],
];

/** For a piece that comes off or goes on: the file's own first. */
export function cautionsFor(spec: PieceSpec, way: 'off' | 'on'): Caution[] {
  const own = (way === 'off' ? spec.caution.removal : spec.caution.fitting).map(
    ({ text }, i): Caution => ({ key: `caution-${i + 1}`, say: text }),
  );
  const { care } = caresOf(spec);
  const known = care.map((c): Caution => ({ key: c, say: CARES[c].say }));
  const name = `${spec.key.replaceAll('-', ' ')} ; ${spec.name}`.toLowerCase();
  const hot = HOT_PIECES.filter(([names]) => names.test(name)).map(([, caution]) => caution);
  const loose = LOOSE.filter(([names]) => spec.loose.some((thing) => names.test(thing.text)));
  const pushes = loose.map(([, caution]) => caution).filter((c) => !care.some((k) => k === c.key));
  const maker = care.some((c) => CARES[c].licensed) ? [MAKER] : [];
  return [...own, ...known, ...hot, ...pushes, ...maker];
}

/** The same, each of the file's own with how it is printed where that is not so. */
export function cautionsSaid(
  spec: PieceSpec,
  way: 'off' | 'on',
): { key: CautionKey; said: TextSaid }[] {
  const own = way === 'off' ? spec.caution.removal : spec.caution.fitting;
  return cautionsFor(spec, way).map(({ key, say }, i) => ({
    key,
    said: own[i] ?? asPrinted(say),
  }));
}

const FUEL: Caution = { key: 'fuel', say: CARES.fuel.say };

/** For a task, by its words. */
const TASKS: readonly (readonly [RegExp, TaskCaution])[] = [
  [
    /\b(?:raise|jack|lift|hoist)\b/i,
    {
      key: 'raised',
      say: 'Raised: on stands, never on a jack alone; rocked by hand before anybody reaches under it.',
    },
  ],
  [
    /\b(?:(?<!\b(?:first|after|after the)\s)heat(?! ?(?:cycle|shield|sink))|flame|torch|blow ?lamp|weld|braze|solder|grind)(?:s|ed|ing)?\b/i,
    {
      key: 'flame',
      say: 'Heat and sparks: no fuel, rag, hose or lead near it, an extinguisher at hand, eyes covered.',
    },
  ],
  [
    /\bsparks?\b(?! ?plug (?:out|in|clean|gap))/i,
    {
      key: 'spark',
      say: 'A spark lights fuel: caps shut, what was spilt wiped up, the plug held against metal away from its hole.',
    },
  ],
  [/\bbatter(?:y|ies)\b/i, { key: 'battery', say: CARES.battery.say }],
  [/\bmains\b/i, { key: 'mains', say: CARES.mains.say }],
];

const HOT: Caution = {
  key: 'hot',
  say: 'What runs out may be hot: let it cool, wear gloves, catch all of it.',
};

export const cautionsForTask = ({ say }: TaskSpec): TaskCaution[] => cautionsForWords(say.text);

function cautionsForWords(words: string): TaskCaution[] {
  const out = letOut(words);
  // A tap that is opened to look for drops wets as well as one that is drained.
  const fuel = /\b(?:fuel|petrol|gasoline|diesel)\b/i.test(words);
  return [
    ...(out !== null && !fuel ? [HOT] : []),
    ...(fuel ? [FUEL] : []),
    ...TASKS.filter(([of]) => of.test(words)).map(([, caution]) => caution),
  ];
}

/** Before an engine runs. */
export const RUNNING: readonly Caution[] = [
  {
    key: 'air',
    say: 'An engine outdoors, or its exhaust led out: it kills in a closed room.',
  },
  {
    key: 'stand',
    say: 'It stands firm, in neutral, and nothing that is driven touches the floor.',
  },
  { key: 'near', say: 'Nothing is near what turns: hands, sleeves, hair, rags, tools, cables.' },
];

/** What is near something that runs. Where it stands is a question of the first start. */
const BESIDE_RUNNING = RUNNING.filter(({ key }) => key !== 'stand');

/** A caution of the file's own that has such a word speaks of the same. */
const SPEAKS: readonly (readonly [key: string, RegExp])[] = [
  ['hot', /\b(?:hot|cool|cold)\b/i],
  ['fuel', /\b(?:fuel|petrol|gasoline|diesel|smoking)\b/i],
  ['raised', /\b(?:stands?|jacks?)\b/i],
  ['flame', /\b(?:flames?|fire|sparks?|fuel|extinguisher)\b/i],
  ['spark', /\b(?:sparks?|flames?|fuel|petrol|gasoline)\b/i],
  ['battery', /\bbatter(?:y|ies)\b/i],
  ['mains', /\b(?:mains|plug out|locked off|dead|licensed)\b/i],
  ['air', /\b(?:outdoors|exhaust)\b/i],
  ['near', /\b(?:hands?|fingers?|hair|clothes|turns)\b/i],
];

/** For a look at a fault: the file's own, then what is usual at such words and none of its own speaks of. */
export function cautionsForLook({ check, caution, needs }: CheckSpec): string[] {
  const own = caution.join(' ');
  const running = needs.some((need) => /\brunning\b/i.test(need)) ? BESIDE_RUNNING : [];
  const usual = [...cautionsForWords(check), ...running].filter(
    ({ key }) => !SPEAKS.some(([of, words]) => of === key && words.test(own)),
  );
  return [...caution, ...usual.map(({ say }) => say)];
}
