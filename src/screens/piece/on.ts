/** On, by fingers: what is in the hand is said, where it belongs lights up, a wrong hole is stopped. */

import { sayOnce } from '../../bolt/torque/cautions.ts';
import { isUsedOnce } from '../../job/fold/once.ts';
import type { HoleNow } from '../../model/types.ts';
import { inPlace } from '../../model/words.ts';
import { sameItem, UNKNOWN } from '../../piece/row.ts';
import { wheelOffSaid } from '../../plan/care/still-off.ts';
import { fitting, isUnnoted, names, toFill } from '../../plan/piece/piece-now.ts';
import { sayTakes } from '../../plan/piece/say-piece.ts';
import { turnSaid } from '../../plan/piece/say-tight.ts';
import { lacking, trayNow } from '../../plan/piece/tray.ts';
import { sealantSaid } from '../../plan/seal/sealant.ts';
import { type HandRead, handWish, sayNotYet } from '../../plan/typed/hand.ts';
import { noteKey } from '../ask/note.ts';
import { TIGHT } from '../base/enter.ts';
import { ENTER, GO } from '../base/key.ts';
import { type At, holeNamed, requestMark, say, stay, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { piecePage } from '../base/piece-page.ts';
import type { State, Updated } from '../base/state.ts';
import { bold, cutTo, type Line, line, spread, width, wrap } from '../kit/text.ts';
import { list, many, sayCounts, sayItem } from '../kit/words.ts';
import { asItWasKey } from '../paper/photos.ts';
import { nameAlikes } from './alike.ts';
import { farKey, farPage } from './far.ts';
import { handKey, noKindKey, noLengthKey, type OnHand, onHand } from './hand-key.ts';
import { goKey, pointKey } from './point.ts';
import { noteOf, ownTip } from './said.ts';
import { type OnHoles, type StepView, stepScreen } from './step.ts';
import { adviceKey, heightsKey, leftKey, mendedKey, someIn, troubleKey } from './step-keys.ts';
import { redoKey, undoKey } from './undo.ts';
import { marksKey, restsSaid, unmarkKey } from './unmark.ts';

interface OnOn extends OnHand<'on'>, OnHoles<'on'> {
  /** Empty holes where what is in the hand belongs. */
  fits: readonly HoleNow[];
  /** The hand is empty, and nobody noted which bolt is which: any of them goes in. */
  any: boolean;
}

/** The first hole where the hand's bolt belongs is lit, where none is pointed at. */
function onOn(state: State, view: StepView<'on'>): OnOn | null {
  const here = onHand(state, view);
  if (!here) return null;
  const { job, piece, step, hand } = here;
  const fits = fitting(job, piece, hand);
  const empty = toFill(piece);
  const meant = step.here === null ? empty : empty.filter(({ name }) => name === step.here);
  // One of those that nobody has noted goes where nobody noted one: pointed at, or where no other hole is left.
  const any = step.hand === '' && meant.length > 0 && meant.every(isUnnoted);
  const first = fits[0] ?? (any ? empty[0] : undefined);
  return { ...here, fits, any, lit: step.here ?? first?.name ?? null };
}

/** `which`: the holes, where the lit one is not the only one. */
function putIn({ state, job, key, piece, step, lit, any }: OnOn, which?: string[]): Updated {
  const hand = any ? { kind: UNKNOWN } : handWish(step.hand, job);
  if (hand === null) {
    return step.hand === '' ? stay(state) : say(state, sayNotYet(step.hand));
  }
  // With a bolt that belongs nowhere, the first empty hole: the answer says why it does not.
  const hole = lit ?? toFill(piece)[0]?.name;
  if (hole === undefined) return say(state, 'No hole is empty.');
  const one = { do: 'in', piece: key, hand } as const;
  return requestMark(
    state,
    which ? { ...one, holes: which, spares: 'Space' } : { ...one, holes: [hole] },
  );
}

/** What lies under the head, where it was said with the bolt; null: the bolt alone was said. */
function underSaid(hand: HandRead): readonly string[] | null {
  if (hand.is === 'kind') return hand.unders ? hand.item.with : null;
  return hand.is === 'length' && hand.with.length > 0 ? hand.with : null;
}

function putAllIn(here: OnOn): Updated {
  const { state, piece, fits, any, hand } = here;
  const under = underSaid(hand);
  const its = fits.filter(
    ({ belongs }) =>
      under === null || (belongs && sameItem(belongs, { kind: belongs.kind, with: [...under] })),
  );
  const holes = names(any ? toFill(piece).filter(isUnnoted) : its);
  return holes.length === 0 ? say(state, 'No empty hole takes it.') : putIn(here, holes);
}

function isSaid({ hand, any }: OnOn): boolean {
  return any || hand.is === 'kind' || hand.is === 'length';
}

/** `all M in`. */
function allLabel({ hand }: OnOn): string {
  if (hand.is === 'kind') return `all ${hand.item.kind} in`;
  return hand.is === 'length' ? `all ${hand.mm} mm in` : 'all in';
}

export const onScreen = stepScreen({
  here: onOn,
  keys: [
    noLengthKey,
    handKey,
    pointKey,
    {
      id: 'in',
      presses: GO,
      anew: ENTER,
      label: 'in, three turns',
      help: 'what is in the hand goes into the lit hole',
      // What is typed by half is told of.
      holds: (here) => isSaid(here) || here.hand.is === 'part',
      does: (here) => putIn(here),
    },
    {
      id: 'all',
      presses: ['a', 'end'],
      label: allLabel,
      help: 'all of the kind in the hand are in',
      holds: isSaid,
      does: putAllIn,
    },
    undoKey,
    redoKey,
    unmarkKey,
    marksKey,
    farKey,
    troubleKey,
    mendedKey,
    adviceKey,
    {
      id: 'to-tight',
      presses: ['tab'],
      label: 'tighten',
      help: 'on to tightening what is in',
      holds: someIn,
      does: ({ state }) => toStep(state, TIGHT),
    },
    leftKey,
    asItWasKey,
    heightsKey,
    noteKey,
    goKey,
    noKindKey,
  ],
  draw: drawOn,
  greeting: nameAlikes,
});

function drawOn(here: OnOn): Page {
  const { state, piece, job, lit, fits } = here;
  const n = piece.holes.length;
  const empty = piece.holes.filter((h) => h.state === 'out').length;
  const rest = {
    right: line(`going on, ${n - empty} of ${n} in by fingers`),
    under: line(sealantSaid(job, piece, state.now) ?? ''),
    say: [
      ...sayHand(here),
      ...sayLit(here),
      ...wrap(wheelOffSaid(here.job, piece) ?? '', state.columns, { bold: true }),
      ...restsSaid(here),
      ...left(here, state.columns),
      line('In means turned by fingers, three turns at least.'),
      ...ownTip(here, 'fitting', state.columns),
    ],
  };
  if (state.far) {
    const hole = lit ?? toFill(piece)[0]?.name ?? null;
    const item = holeNamed(piece, hole)?.belongs ?? null;
    return farPage(here, { hole, item, figure: null, left: empty, leftSaid: 'still empty' }, rest);
  }
  return piecePage(
    here,
    (h) => ({
      here: h.name === lit,
      lit: fits.includes(h),
      label: h.belongs ? sayItem(h.belongs) : '',
      short: h.belongs?.kind ?? '',
    }),
    rest,
  );
}

function sayHand({ state: { columns }, job, piece, step, hand: read, fits, any }: OnOn): Line[] {
  if (any) {
    return wrap('Nobody noted which is which: any of them, or say its length.', columns, {
      bold: true,
    });
  }
  if (read.is === 'none') {
    const noted = toFill(piece).filter((h) => !isUnnoted(h));
    const kinds = [...new Set(noted.flatMap((h) => (h.belongs ? [h.belongs.kind] : [])))];
    // One that nobody has noted is said by its hole.
    const more = noted.length < toFill(piece).length ? '   or its hole' : '';
    const texts = kinds.map((k) => [k, job.upper.kinds.get(k)?.lengthText ?? ''].join(' ').trim());
    return [
      cutTo(
        line(bold('What is in your hand?'), `   ${texts.join('   ')}   .length${more}`),
        columns,
      ),
    ];
  }
  if (read.is === 'part') return [line(bold(`In your hand: ${step.hand}_`))];
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
function sayLit(here: OnOn): Line[] {
  const { state, job, piece, step, lit, fits } = here;
  const hole = holeNamed(piece, lit);
  if (!hole) return [];
  const under = hole.belongs?.with ?? [];
  const kind = job.upper.kinds.get(hole.belongs?.kind ?? '');
  const said = step.hand === '' || under.length > 0 || !fits.includes(hole);
  return [
    ...(said ? wrap(`${hole.name} takes ${sayTakes(job, hole.belongs)}.`, state.columns) : []),
    ...wrap(turnSaid(kind) ?? '', state.columns, { bold: true }),
    ...wrap((kind && sayOnce(kind, isUsedOnce(piece, hole.name, kind))) ?? '', state.columns),
    ...noteOf(here, lit, state.columns),
  ];
}

function left({ piece }: At, columns: number): Line[] {
  const lies = trayNow(piece);
  const tray = piece.tray === null ? 'Left' : `Left ${inPlace(piece.tray)}`;
  const lacks = lacking(piece);
  return [
    ...wrap(`${tray}: ${lies.length === 0 ? 'nothing' : sayCounts(lies)}.`, columns),
    ...wrap(lacks.length === 0 ? '' : `Not there: ${sayCounts(lacks)}.`, columns, { bold: true }),
  ];
}
