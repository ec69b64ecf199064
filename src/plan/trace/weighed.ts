/** Renew it now or leave it: the figures of the file, filled up by what the plan and this diary know. */
import { fold } from '../../job/fold/fold.ts';
import { safetySaid } from '../../model/states/cares.ts';
import { type BuySpec, CARE_WORDS, type Care, type Job, type TaskSpec } from '../../model/types.ts';
import type { Amount, Weighed } from '../../trace/weigh/types.ts';
import { weigh } from '../../trace/weigh/weigh.ts';
import { caresOf } from '../care/care.ts';
import { reach } from '../order/reach.ts';
import { measured } from './clock.ts';
import { minutesIn } from './input.ts';
import { moneyIn } from './money.ts';

/** What has to come off again to be here, from a machine that is whole. */
interface Again {
  pieces: string[];
  /** Minutes off and on again, as far as known; null where nothing is. */
  takes: number | null;
  /** Some of them are from this diary's clock. */
  measured: boolean;
  /** Steps of which no time is known, and which are not counted: `cover off`. */
  untimed: string[];
  /** Things that are used once, with their prices. */
  once: { buy: string; what: string; price: number | null }[];
}

export interface WeighedJob {
  task: string;
  say: string;
  now: Amount;
  later: Amount;
  harm: (Amount & { chance: string | null }) | null;
  /** As the person wrote it. */
  chance: string | null;
  hour: number | null;
  /** What of it keeps somebody alive; empty: figures may weigh it. */
  safety: Care[];
  /** Null where the file itself says what later costs. */
  again: Again | null;
  /** Figures of the file that were not read, as they stand there. While more than the chance is among them nothing is advised. */
  unread: { figure: string; text: string }[];
  weighed: Weighed;
}

/** Null where there is no such question. `hour`: what an hour is worth, in the money of the bench. */
export function weighedOf(job: Job, key: string, hour: number | null): WeighedJob | null {
  const spec = job.upper.tasks.get(key);
  if (spec?.verb !== 'decide') return null;
  const { weigh: said } = spec;
  const safety = safetyOf(job, spec);
  const itself = partsFor(job, (steps) => steps.includes(key));
  const now: Amount = {
    price: moneyIn(said?.now?.price ?? null) ?? sumOf(itself),
    takes: minutesIn(said?.now?.takes ?? null),
  };
  const again = againOf(job, spec);
  const own = {
    price: moneyIn(said?.later?.price ?? null),
    takes: minutesIn(said?.later?.takes ?? null),
  };
  const filled: Amount = {
    price: now.price === null ? null : now.price + (sumOf(again?.once ?? []) ?? 0),
    takes: again?.takes == null || now.takes === null ? null : now.takes + again.takes,
  };
  const later: Amount = { price: own.price ?? filled.price, takes: own.takes ?? filled.takes };
  const harm = said?.harm
    ? {
        chance: said.harm.chance,
        price: moneyIn(said.harm.price),
        takes: minutesIn(said.harm.takes),
      }
    : null;
  const chance = said?.chance ?? null;
  const input = { now, later, chance, harm, hour, safety: safety.length > 0 };
  const weighed = weigh(input);
  const unread = safety.length > 0 ? [] : [...unreadIn(said), ...chancesIn(weighed, said)];
  const usesPlan = own.price === null || own.takes === null;
  return {
    ...{ task: key, say: spec.say.text, now, later, harm, chance, hour, safety },
    again: usesPlan ? again : null,
    unread,
    // The chance of failing may be unknown too: all else is part of the sum.
    weighed: unread.some((u) => u.figure !== 'chance') ? { ...weighed, ...NOT_WEIGHED } : weighed,
  };
}

/** What a cost that was not read would say nobody knows: what the others say is not the answer. */
const NOT_WEIGHED = {
  turning: { chance: null, money: null, time: null },
  ...{ advice: null, by: null, turnsAt: { harm: null, hour: null } },
} satisfies Partial<Weighed>;

function chancesIn({ notRead }: Weighed, said: TaskSpec['weigh']) {
  return notRead.map((figure) => {
    return { figure, text: (figure === 'chance' ? said?.chance : said?.harm?.chance) ?? '' };
  });
}

/** Prices and times that somebody wrote and nobody read. */
function unreadIn(said: TaskSpec['weigh']): { figure: string; text: string }[] {
  const all = [
    { of: 'now', costs: said?.now },
    { of: 'later', costs: said?.later },
    { of: 'harm', costs: said?.harm },
  ];
  return all.flatMap(({ of, costs }) => {
    const [price, takes] = [costs?.price ?? null, costs?.takes ?? null];
    return [
      ...(price !== null && moneyIn(price) === null
        ? [{ figure: `${of}.price`, text: price }]
        : []),
      ...(takes !== null && minutesIn(takes) === null
        ? [{ figure: `${of}.takes`, text: takes }]
        : []),
    ];
  });
}

/** What keeps somebody alive: by the words of the question, and of the pieces that it lies under. */
function safetyOf(job: Job, spec: TaskSpec): Care[] {
  const names = herePieces(job, spec);
  const asked = caresOf({ key: '', name: spec.say.text, care: null }).care;
  const pieces = names.flatMap((key) => {
    const piece = job.upper.pieces.get(key);
    return piece ? caresOf(piece).care : [];
  });
  return CARE_WORDS.filter(
    (care) => safetySaid(care) !== null && (asked.includes(care) || pieces.includes(care)),
  );
}

const OFF = /^(.*?)\s+off$/;

/** Pieces that must be off to be at it, by `while:` and `after:`; of several the ones that nothing named lies under. */
function herePieces(job: Job, { while: during, after }: TaskSpec): string[] {
  const named = [...during, ...after].flatMap((step) => OFF.exec(step.trim())?.[1] ?? []);
  const known = [...new Set(named)].filter((key) => job.upper.pieces.has(key));
  const over = new Set(known.flatMap((key) => job.upper.pieces.get(key)?.under ?? []));
  return known.filter((key) => !over.has(key));
}

function againOf(job: Job, spec: TaskSpec): Again | null {
  const here = herePieces(job, spec);
  if (here.length === 0) return null;
  const whole = fold(job.upper, []);
  const pieces = [...new Set(here.flatMap((key) => reach(whole, key)))];
  const clock = measured(job);
  const untimed: string[] = [];
  let [takes, byClock]: [number | null, boolean] = [null, false];
  for (const key of pieces) {
    const said = minutesIn(job.upper.pieces.get(key)?.takes?.text ?? null);
    for (const way of ['off', 'on'] as const) {
      const minutes = said ?? clock.get(key)?.[way] ?? null;
      if (minutes === null) untimed.push(`${key} ${way}`);
      else {
        takes = (takes ?? 0) + minutes;
        byClock ||= said === null;
      }
    }
  }
  const steps = (of: readonly string[]) =>
    of.some((step) => pieces.some((key) => step === key || step === `${key} on`));
  const once = partsFor(job, steps).filter(({ spec: s }) => s.once);
  return {
    ...{ pieces, takes, measured: byClock, untimed },
    once: once.map(({ spec: { key, what }, price }) => ({ buy: key, what, price })),
  };
}

function partsFor(
  { upper }: Job,
  fits: (steps: readonly string[]) => boolean,
): { spec: BuySpec; price: number | null }[] {
  return [...upper.buys.values()]
    .filter((spec) => fits(spec.for.map((step) => step.trim().replace(/\s+/g, ' '))))
    .map((spec) => ({ spec, price: priceOf(spec) }));
}

/** `price:` is that of one; `count: 2` of them cost twice that. */
function priceOf({ price, count }: BuySpec): number | null {
  const one = moneyIn(price);
  const many = /^\d+$/.test(count ?? '') ? Number(count) : 1;
  return one === null ? null : one * many;
}

/** Null where no price is known. */
function sumOf(parts: readonly { price: number | null }[]): number | null {
  const known = parts.flatMap(({ price }) => price ?? []);
  return known.length === 0 ? null : known.reduce((sum, price) => sum + price, 0);
}
