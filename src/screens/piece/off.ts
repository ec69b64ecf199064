/** Off, a key a bolt: in loosening order, each out as the file has it, or as the person says it is. */

import { printedOf } from '../../job/truth/corrections.ts';
import type { Wish } from '../../model/types.ts';
import { orderCare } from '../../piece/care.ts';
import type { Acts } from '../base/act.ts';
import { rowStep } from '../base/enter.ts';
import { litHole } from '../base/lit.ts';
import { type At, at, record, say, stay, stepOf, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { piecePage } from '../base/piece-page.ts';
import type { State, Step, Updated } from '../base/state.ts';
import { both, ended, flow } from '../kit/both.ts';
import type { Press } from '../kit/press.ts';
import { bold, type Line, line, span, wrap } from '../kit/text.ts';
import { sayItem } from '../kit/words.ts';
import { pressHand, readHand } from '../now/hand.ts';
import { onlyStuckLeft, stillIn, tipsOf } from '../now/piece-now.ts';
import { sayTakes } from '../now/say-piece.ts';
import { turnSaid } from '../now/say-tight.ts';

type OffStep = Extract<Step, { step: 'off' }>;

/** What is typed about the bolt in the hand, on the way off and on the way on. */
export function typeHand(state: State, press: Press): Updated {
  const here = at(state);
  const step = here?.view.step;
  if (!here || (step?.step !== 'off' && step?.step !== 'on')) return stay(state);
  const hand = pressHand(step.hand, press, here.job);
  if (hand === null) return stay(state);
  const typed = { ...step, hand, typed: '' };
  return toStep(state, typed.step === 'on' ? { ...typed, fresh: true } : typed);
}

export const offActs = {
  out: (state) => {
    const here = at(state);
    const step = stepOf(state, 'off');
    const hole = here ? litHole(here) : null;
    if (!here || !step || hole === null) return stay(state);
    const wish: Wish = { do: 'out', piece: here.key, holes: [hole] };
    const read = readHand(step.hand, here.job);
    if (read.is === 'part') return say(state, `${step.hand} is no kind and no length yet.`);
    if (read.is === 'none') return record(state, wish);
    const word = read.is === 'kind' ? [read.item.kind, ...read.item.with].join('+') : step.hand;
    return record(state, { ...wish, row: word });
  },
  'to-row': (state) => toStep(state, rowStep(state)),
  hand: typeHand,
} satisfies Acts;

/** After a mark on the way off: the next bolt; after the last one, or a whole row, the count. */
export function nextOff(state: State): Updated {
  const here = at(state);
  if (!here) return stay(state);
  const { piece } = here;
  const all = stepOf(state, 'off-row') !== null;
  if (!all && !onlyStuckLeft(piece)) {
    return toStep(state, { step: 'off', here: null, typed: '', hand: '' });
  }
  const counted = toStep(state, { step: 'off-count' });
  return stillIn(piece).length === 0 ? counted : { ...counted, effects: [{ do: 'ring' }] };
}

export function drawOff(state: State): Page {
  const here = at(state);
  const step = stepOf(state, 'off');
  if (!here || !step) return { left: [], middle: () => [] };
  const { piece } = here;
  const lit = litHole(here);
  const out = piece.holes.length - stillIn(piece).length;
  return piecePage(
    piece,
    (h) => {
      const item = h.state === 'out' ? (h.found ?? h.belongs) : h.belongs;
      return { here: h.name === lit, label: item ? sayItem(item) : '', short: item?.kind ?? '' };
    },
    {
      right: line(`off, ${out} of ${piece.holes.length} out`),
      under: line(piece.tray ?? ''),
      say: [
        ...sayNext(state, lit, step),
        ...noteOf(state, lit),
        ...ownTip(here, 'removal', state.columns),
        ...tipsSaid(here).flatMap((t) => wrap(t, state.columns)),
      ],
    },
  );
}

/** The file's tip for this way, and how it is printed where that is not so. */
export function ownTip(
  { job, key, piece }: At,
  way: 'removal' | 'fitting',
  columns: number,
): Line[] {
  const own = piece.spec.tip[way][0];
  if (own === undefined) return [];
  return flow([span('Tip: '), ...both(own, printedOf(job, { piece: key }, 'tip', own))], columns);
}

/** What is said beside the order before the first bolt is out, and for a spring all the way. */
function tipsSaid({ piece }: At): string[] {
  const { sequence } = piece.spec;
  const care = orderCare(piece.spec);
  const own = piece.spec.tip.removal[0];
  const begun = piece.holes.some((h) => h.state === 'out');
  const [first, ...hang] = tipsOf(piece).loosen;
  const beside = care === 'spring' || !begun ? [first] : [];
  // Whoever wrote a tip knows better which bolt is left until last.
  const all = own === undefined ? [...beside, ...(begun ? [] : hang)] : beside;
  const list = care !== null && care !== 'spring' && sequence === null && !begun;
  return [
    ...(list ? ["Not the maker's order: its list, from the end, goes first."] : []),
    ...all.filter((t) => t !== undefined),
  ];
}

function sayNext(state: State, lit: string | null, step: OffStep): Line[] {
  const here = at(state);
  const hole = here?.piece.holes.find((h) => h.name === lit);
  if (!here || !hole) return [];
  const { job, piece } = here;
  if (step.hand !== '') {
    const read = readHand(step.hand, job);
    const item = read.is === 'kind' ? sayTakes(job, read.item) : step.hand;
    const turn = turnSaid(read.is === 'kind' ? (read.kind ?? undefined) : undefined);
    return [
      ...wrap(`${hole.name}: you say it is ${item}.`, state.columns, { bold: true }),
      ...wrap(turn ?? '', state.columns, { bold: true }),
    ];
  }
  if (hole.state === 'out') return [line(bold(`${hole.name} is out.`))];
  const is = hole.belongs ? sayTakes(job, hole.belongs) : 'Nobody has noted what it is';
  const stuck = hole.trouble === null ? '' : ` It is ${hole.trouble}.`;
  const which = stillIn(piece).length === 1 ? 'Last' : 'Next';
  const turn = turnSaid(job.upper.kinds.get(hole.belongs?.kind ?? ''));
  return [
    ...wrap(`${which} out: ${hole.name}.  ${is}.${stuck}`, state.columns, { bold: true }),
    ...wrap(turn ?? '', state.columns, { bold: true }),
  ];
}

/** What the file says of this hole alone. */
export function noteOf(state: State, lit: string | null): Line[] {
  const here = at(state);
  const note = here?.piece.spec.holes.get(lit ?? '')?.note ?? null;
  if (!here || note === null || lit === null) return [];
  const printed = printedOf(here.job, { piece: here.key, hole: lit }, 'note', note);
  return flow([span(`${lit}: `), ...both(ended(note), printed)], state.columns);
}
