/** On, by fingers: what is in the hand is said, where it belongs lights up, a wrong hole is stopped. */
import { sayOnce } from '../../bolt/cautions.ts';
import type { HoleNow } from '../../model/types.ts';
import { UNKNOWN } from '../../piece/row.ts';
import type { Acts } from '../base/act.ts';
import { LOOK, TIGHT } from '../base/enter.ts';
import { litHole } from '../base/lit.ts';
import { type At, at, holeNamed, record, say, stay, stepOf, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { piecePage } from '../base/piece-page.ts';
import type { State, Updated } from '../base/state.ts';
import { bold, cut, type Line, line, spread, width, wrap } from '../kit/text.ts';
import { list, many, sayCounts, sayItem } from '../kit/words.ts';
import { handWish, readHand } from '../now/hand.ts';
import { fingerTight } from '../now/job-now.ts';
import { fitting, names, toFill, unknownOnly } from '../now/piece-now.ts';
import { sayTakes } from '../now/say-piece.ts';
import { turnSaid } from '../now/say-tight.ts';
import { sealantSaid } from '../now/sealant.ts';
import { lacking, trayNow } from '../now/tray.ts';
import { noteOf, ownTip } from './off.ts';

export const onActs = {
  in: (state) => {
    const here = at(state);
    return here ? putIn(state, here, (hole) => [hole]) : stay(state);
  },
  all: (state) => {
    const here = at(state);
    if (!here) return stay(state);
    const hand = stepOf(state, 'on')?.hand ?? '';
    const any = hand === '' && unknownOnly(here.piece);
    const fits = names(any ? toFill(here.piece) : fitting(here.job, here.piece, hand));
    return fits.length === 0
      ? say(state, 'No empty hole takes it.')
      : putIn(state, here, () => fits);
  },
  'to-tight': (state) => toStep(state, TIGHT),
} satisfies Acts;

function putIn(state: State, here: At, which: (lit: string) => string[]): Updated {
  const typed = stepOf(state, 'on')?.hand ?? '';
  const any = typed === '' && unknownOnly(here.piece) ? { kind: UNKNOWN } : null;
  const hand = any ?? handWish(typed, here.job);
  if (hand === null) return stay(state);
  // With a bolt that belongs nowhere, the first empty hole: the answer says why it does not.
  const hole = litHole(here) ?? toFill(here.piece)[0]?.name;
  if (hole === undefined) return say(state, 'No hole is empty.');
  return record(state, { do: 'in', piece: here.key, holes: which(hole), hand });
}

/**
 * After a bolt went in: the same hand while it still belongs somewhere, else an empty hand.
 * At the end one more press must not mark a bolt as tight, so the piece is looked at in between.
 */
export function nextOn(state: State): Updated {
  const here = at(state);
  const step = stepOf(state, 'on');
  if (!here || !step) return stay(state);
  if (toFill(here.piece).length === 0) {
    const n = fingerTight(here.piece).length;
    return toStep({ ...state, quiet: `All in, ${n} of them by fingers only.` }, LOOK);
  }
  const hand = fitting(here.job, here.piece, step.hand).length > 0 ? step.hand : '';
  return toStep(state, { ...step, here: null, typed: '', hand, fresh: false });
}

export function drawOn(state: State): Page {
  const here = at(state);
  const step = stepOf(state, 'on');
  if (!here || !step) return { left: [], middle: () => [] };
  const { piece, job } = here;
  const lit = litHole(here);
  const fits = fitting(job, piece, step.hand);
  const n = piece.holes.length;
  return piecePage(
    piece,
    (h) => ({
      here: h.name === lit,
      lit: fits.includes(h),
      label: h.belongs ? sayItem(h.belongs) : '',
      short: h.belongs?.kind ?? '',
    }),
    {
      right: line(
        `on, by fingers, ${n - piece.holes.filter((h) => h.state === 'out').length} of ${n}`,
      ),
      under: line(sealantSaid(job, piece, state.now) ?? ''),
      say: [
        ...sayHand(here, step.hand, fits, state.columns),
        ...sayLit(here, lit, step.hand, state),
        ...left(here, state.columns),
        line('In means turned by fingers, three turns at least.'),
        ...ownTip(here, 'fitting', state.columns),
      ],
    },
  );
}

function sayHand({ job, piece }: At, hand: string, fits: HoleNow[], columns: number): Line[] {
  const read = readHand(hand, job);
  if (read.is === 'none' && unknownOnly(piece)) {
    return wrap('Nobody noted which is which: any of them, or say its length.', columns, {
      bold: true,
    });
  }
  if (read.is === 'none') {
    const kinds = [...new Set(toFill(piece).flatMap((h) => (h.belongs ? [h.belongs.kind] : [])))];
    const texts = kinds.map((k) => [k, job.upper.kinds.get(k)?.lengthText ?? ''].join(' ').trim());
    return [cut(line(bold('What is in your hand?'), `   ${texts.join('   ')}   .length`), columns)];
  }
  if (read.is === 'part') return [line(bold(`In your hand: ${hand}_`))];
  const what = read.is === 'kind' ? sayTakes(job, read.item) : `${read.mm} mm long`;
  const where =
    fits.length === 0
      ? 'No empty hole takes it.'
      : fits.length <= 4
        ? `It belongs in ${list(names(fits))}.`
        : `It belongs in ${many(fits.length, 'hole')}.`;
  const one = line(bold(`In your hand: ${what}.`));
  if (width(one) + width(where) + 2 <= columns) return [spread(one, line(bold(where)), columns)];
  return [...wrap(`In your hand: ${what}.`, columns, { bold: true }), line(bold(where))];
}

/** What the lit hole takes, where the hand alone does not say it. */
function sayLit({ job, piece }: At, lit: string | null, hand: string, state: State): Line[] {
  const hole = holeNamed(piece, lit);
  if (!hole) return [];
  const under = hole.belongs?.with ?? [];
  const kind = job.upper.kinds.get(hole.belongs?.kind ?? '');
  const said = hand === '' || under.length > 0 || !fitting(job, piece, hand).includes(hole);
  return [
    ...(said ? wrap(`${hole.name} takes ${sayTakes(job, hole.belongs)}.`, state.columns) : []),
    ...wrap(turnSaid(kind) ?? '', state.columns, { bold: true }),
    ...wrap((kind && sayOnce(kind)) ?? '', state.columns),
    ...noteOf(state, lit),
  ];
}

function left({ piece }: At, columns: number): Line[] {
  const lies = trayNow(piece);
  const tray = piece.tray === null ? 'Left' : `Left in ${piece.tray}`;
  const lacks = lacking(piece);
  return [
    ...wrap(`${tray}: ${lies.length === 0 ? 'nothing' : sayCounts(lies)}.`, columns),
    ...wrap(lacks.length === 0 ? '' : `Not there: ${sayCounts(lacks)}.`, columns, { bold: true }),
  ];
}
