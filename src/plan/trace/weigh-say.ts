/** Renew it or leave it, in words: for the command and the page. */
import { safetySaid } from '../../model/states/cares.ts';
import type { Job, Wish } from '../../model/types.ts';
import { capital, list } from '../../model/words.ts';
import { sayChance } from '../../trace/weigh/chance.ts';
import type { Amount, Unknown } from '../../trace/weigh/types.ts';
import { sayStepName } from '../order/say.ts';
import { sayDuration } from '../time/duration.ts';
import type { WeighedJob } from './weighed.ts';

const money = (price: number): string => price.toFixed(2);

function amountSaid({ price, takes }: Amount): string {
  const parts = [
    ...(price === null ? [] : [money(price)]),
    ...(takes === null || (takes === 0 && price !== null) ? [] : [sayDuration(takes * 60)]),
  ];
  return parts.length === 0 ? 'not known' : list(parts);
}

/** `1 time in 9` where there is such a chance to say. */
function chanceSaid(p: number): string {
  const said = sayChance(p) ?? (p > 1 ? 'always' : 'never');
  return said.replace(/^(\d+) in /, (_, n: string) => `${n} ${n === '1' ? 'time' : 'times'} in `);
}

export interface WeighRow {
  what: string;
  say: string;
}

/** The figures, each with where it comes from; none where safety goes first. */
export function figuresSaid(job: Job, of: WeighedJob): WeighRow[] {
  if (of.safety.length > 0) return [];
  const { now, later, chance, harm, hour, again } = of;
  const fails =
    chance === null ? 'not said' : `${chance} before you are in here anyway, as you said`;
  const harmed =
    harm === null
      ? []
      : [
          {
            what: 'by touching',
            say: `${harm.chance ?? 'how often is not said'}: ${amountSaid(harm)}`,
          },
        ];
  return [
    { what: 'now', say: amountSaid(now) },
    { what: 'later', say: amountSaid(later) },
    ...(again === null ? [] : againSaid(job, again).map((say) => ({ what: '', say }))),
    { what: 'it may fail', say: fails },
    ...harmed,
    ...(hour === null ? [] : [{ what: 'an hour', say: `is worth ${money(hour)} (bench.yaml)` }]),
  ];
}

function againSaid(
  job: Job,
  { pieces, takes, measured, untimed, once }: NonNullable<WeighedJob['again']>,
): string[] {
  const names = pieces.map((key) => job.pieces.get(key)?.spec.name ?? key);
  const from = measured ? ', by the times of this diary' : '';
  const priced = once.filter(({ price }) => price !== null);
  const bare = once.filter(({ price }) => price === null);
  return [
    ...(takes === null
      ? []
      : [`with ${sayDuration(takes * 60)} for ${list(names)} off and on again${from}`]),
    ...(priced.length === 0
      ? []
      : [`and ${list(priced.map(({ what, price }) => `${what} again, ${money(price ?? 0)}`))}`]),
    ...(bare.length === 0
      ? []
      : [`no price is known for ${list(bare.map(({ what }) => what))}: not counted`]),
    ...(untimed.length === 0
      ? []
      : [
          `no time is known for ${list(untimed.map((step) => sayStepName(job, step)))}: not counted`,
        ]),
  ];
}

/** What it turns on, sentence by sentence. */
export function adviceSaid(of: WeighedJob): string[] {
  const { safety, weighed } = of;
  if (safety.length > 0) {
    const what = list(safety.map((care) => safetySaid(care) ?? care));
    return [
      `It is about ${what}: renew it as the maker's manual says, whatever it costs.`,
      'No figure weighs that. Local rules and a licensed mechanic go first.',
    ];
  }
  const notRead = unreadSaid(of);
  if (of.unread.some(({ figure }) => figure !== 'chance')) return notRead;
  return [
    ...notRead,
    ...turningSaid(of),
    ...roundSaid(of),
    ...unknownSaid(weighed.unknown, weighed.matter),
  ];
}

/** What stands in the file and was not read. */
function unreadSaid({ unread, weighed }: WeighedJob): string[] {
  if (unread.length === 0) return [];
  const said = unread.map(({ figure, text }) => `${UNREAD[figure] ?? figure} “${text}”`);
  const none =
    weighed.advice === null ? ' Until that is written as a figure nothing is advised.' : '';
  return [`Not read: ${list(said)}.${none}`];
}

const UNREAD: Readonly<Record<string, string>> = {
  ...{ 'now.price': 'the price now', 'now.takes': 'the time now' },
  ...{ 'later.price': 'the price later', 'later.takes': 'the time later' },
  ...{ 'harm.price': 'the price of harm', 'harm.takes': 'the time of harm' },
  ...{ chance: 'the chance', 'harm.chance': 'the chance of harm' },
};

function turningSaid({ chance, weighed }: WeighedJob): string[] {
  const { turning, advice, said, by } = weighed;
  const parts = turning.money !== null && turning.time !== null && by !== 'worth';
  if (turning.chance === null && !parts) {
    return ['What it turns on cannot be said yet.'];
  }
  if (parts && advice === null) {
    const at = `by money it turns at ${chanceSaid(turning.money ?? 0)}, by time at ${chanceSaid(turning.time ?? 0)}`;
    const hour = weighed.turnsAt.hour;
    const worth = hour === null ? '' : ` They agree where an hour is worth ${money(hour)}.`;
    return [`${capital(at)}: the two say different things.${worth}`];
  }
  const p = turning.chance ?? Math.max(turning.money ?? 0, turning.time ?? 0);
  const worth =
    p > 1
      ? 'It would not be worth it if it were sure to fail'
      : `Worth it if it would fail more often than ${chanceSaid(p)} before you are in here anyway`;
  const yours = chance !== null && said ? `you said ${chance}` : null;
  if (advice === null) return [`${worth}.`];
  const word = { renew: 'renew it', leave: 'leave it', close: 'it comes to the same, near enough' };
  return [`${worth}${yours === null ? '' : `; ${yours}`}: ${word[advice]}.`];
}

function roundSaid({ weighed, harm }: WeighedJob): string[] {
  const q = weighed.turnsAt.harm;
  if (q === null || weighed.advice === null || weighed.advice === 'close') return [];
  const often = weighed.advice === 'renew' ? 'more' : 'less';
  return harm === null
    ? []
    : [`It turns round if touching it went wrong ${often} often than ${chanceSaid(q)}.`];
}

const UNKNOWN: Readonly<Record<Unknown, string>> = {
  chance: 'how likely it is to fail',
  'now.price': 'what it costs now',
  'now.takes': 'how long it takes now',
  'later.price': 'what it costs later',
  'later.takes': 'how long it takes later',
  harm: 'what touching it may break',
  'harm.chance': 'how often touching it goes wrong',
  'harm.price': 'what putting such harm right costs',
  'harm.takes': 'how long putting such harm right takes',
  hour: 'what an hour is worth (hour: in bench.yaml)',
};

/** What is not known: first what may turn it. */
function unknownSaid(unknown: readonly Unknown[], matter: number): string[] {
  const [most] = unknown.slice(0, matter);
  if (most === undefined) return [];
  const more = unknown.slice(1, matter).map((one) => UNKNOWN[one]);
  const others = more.length === 0 ? '' : `; then ${list(more)}`;
  return [`Not known, and it matters most: ${UNKNOWN[most]}${others}.`];
}

/** In a line, to stand beside what the person decided. */
export function adviceLine({ weighed, safety }: WeighedJob): string | null {
  if (safety.length > 0) return 'renew it, by the manual';
  const { advice, turning } = weighed;
  if (advice === null) return null;
  const at = turning.chance === null ? '' : `, it turns at ${chanceSaid(turning.chance)}`;
  return `${advice === 'close' ? 'the same either way' : `${advice} it`}${at}`;
}

/** What the person decides, with what the figures said beside it. */
export function decidedWish(
  of: WeighedJob,
  result: string,
  says = '',
): Extract<Wish, { do: 'done' }> {
  const advice = adviceLine(of);
  return {
    ...{ do: 'done', task: of.task, result },
    ...(advice === null ? {} : { advised: advice }),
    ...(says === '' ? {} : { says }),
  };
}
