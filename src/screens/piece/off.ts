/** Off, a key a bolt: in loosening order, each out as the file has it, or as the person says it is. */
import { sayTrouble } from '../../job/fold/say-hole.ts';
import { troubleOf } from '../../model/states/troubles.ts';
import type { Wish } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { orderCare } from '../../piece/care.ts';
import { leavesLast } from '../../piece/sequence/tips.ts';
import { names, nextOut, stillIn, tipsOf } from '../../plan/piece/piece-now.ts';
import { sayTakes } from '../../plan/piece/say-piece.ts';
import { turnSaid } from '../../plan/piece/say-tight.ts';
import { sayNotYet } from '../../plan/typed/hand.ts';
import { noteKey } from '../ask/note.ts';
import { rowStep } from '../base/enter.ts';
import { ENTER, GO } from '../base/key.ts';
import { holeNamed, requestMark, say, stay, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { piecePage } from '../base/piece-page.ts';
import type { State, Updated } from '../base/state.ts';
import { bold, type Line, line, wrap } from '../kit/text.ts';
import { sayItem } from '../kit/words.ts';
import { nameAlikes } from './alike.ts';
import { farKey, farPage } from './far.ts';
import { handKey, noKindKey, noLengthKey, type OnHand, onHand } from './hand-key.ts';
import { namePhotograph } from './photograph.ts';
import { goKey, pointKey } from './point.ts';
import { noteOf, ownTip } from './said.ts';
import { type OnHoles, type StepView, stepScreen } from './step.ts';
import { adviceKey, mendedKey, troubleKey } from './step-keys.ts';
import { redoKey, undoKey } from './undo.ts';
import { marksKey, restsSaid, unmarkKey } from './unmark.ts';

type OnOff = OnHand<'off'> & OnHoles<'off'>;

/** The next one in loosening order is lit, where none is pointed at. */
function onOff(state: State, view: StepView<'off'>): OnOff | null {
  const here = onHand(state, view);
  return here && { ...here, lit: here.step.here ?? nextOut(here.piece, here.job.upper.kinds) };
}

function takeOut({ state, key, step, hand: read, lit }: OnOff): Updated {
  if (lit === null) return stay(state);
  const wish: Wish = { do: 'out', piece: key, holes: [lit] };
  if (read.is === 'part') return say(state, sayNotYet(step.hand));
  if (read.is === 'none') return requestMark(state, wish);
  const word = read.is === 'kind' ? [read.item.kind, ...read.item.with].join('+') : read.word;
  return requestMark(state, { ...wish, row: word });
}

/** Something is noted of the lit hole: a held Space must not say that its bolt came out. */
function isHurt({ piece, lit }: OnOff): boolean {
  return piece.holes.some((h) => h.name === lit && h.trouble !== null);
}

/** It holds the piece: nobody pries before it is out. */
function isStuck({ piece, lit }: OnOff): boolean {
  const hole = piece.holes.find((h) => h.name === lit);
  return hole?.trouble != null && troubleOf(hole.trouble).bolt === 'in';
}

const free = ({ piece }: OnOff) => stillIn(piece).filter((h) => h.trouble === null);

export const offScreen = stepScreen({
  here: onOff,
  keys: [
    noLengthKey,
    handKey,
    pointKey,
    {
      id: 'out',
      presses: GO,
      anew: ENTER,
      label: 'this one is out',
      help: 'the lit bolt is out, as said or as the file has it',
      holds: (here) => !isHurt(here),
      does: takeOut,
    },
    {
      // Its own letter: Enter led here, and once more it must not say that a stuck bolt came out.
      id: 'stuck-out',
      presses: ['o', '\\'],
      alone: true,
      label: 'it is out after all',
      help: 'the lit bolt, of which something is noted, is out',
      holds: isStuck,
      does: takeOut,
    },
    {
      id: 'stuck-how',
      presses: ENTER,
      label: '',
      help: 'on a stuck bolt: says by which letter it is out',
      holds: isStuck,
      does: ({ state, piece, lit }) => {
        const trouble = piece.holes.find((h) => h.name === lit)?.trouble;
        const what = trouble ? sayTrouble(trouble) : '';
        return say(state, `${lit}: ${what}. o when it is out after all.`);
      },
    },
    {
      id: 'hurt-out',
      presses: ENTER,
      anew: ENTER,
      label: 'it is out after all',
      help: 'the lit bolt, of which something is noted, is out',
      holds: (here) => isHurt(here) && !isStuck(here),
      does: takeOut,
    },
    undoKey,
    troubleKey,
    mendedKey,
    adviceKey,
    {
      id: 'all-out',
      // A letter that is a kind of this job is in the hand first.
      presses: ['a', 'end'],
      label: 'all out',
      help: 'all bolts that are still in are out, but for those in trouble',
      holds: (here) => free(here).length > 0,
      does: (here) =>
        requestMark(here.state, { do: 'out', piece: here.key, holes: names(free(here)) }),
    },
    {
      id: 'to-row',
      presses: ['tab'],
      label: 'type the row',
      help: 'type the whole row as it came out',
      does: ({ state }) => toStep(state, rowStep(state)),
    },
    farKey,
    redoKey,
    unmarkKey,
    marksKey,
    noteKey,
    goKey,
    noKindKey,
  ],
  draw: drawOff,
  greeting: (here) => namePhotograph({ ...here, state: nameAlikes(here) }),
});

function drawOff(here: OnOff): Page {
  const { state, piece, lit } = here;
  const left = stillIn(piece).length;
  const rest = {
    right: line(outSaid(piece.holes.length - left, piece.holes.length)),
    under: line(piece.tray ?? ''),
    say: [
      ...sayNext(here),
      ...restsSaid(here),
      ...noteOf(here, lit, state.columns),
      ...ownTip(here, 'removal', state.columns),
      ...tipsSaid(here).flatMap((t) => wrap(t, state.columns)),
    ],
  };
  if (state.far) {
    const item = holeNamed(piece, lit)?.belongs ?? null;
    return farPage(here, { hole: lit, item, figure: null, left, leftSaid: 'still in' }, rest);
  }
  return piecePage(
    here,
    (h) => {
      const item = h.state === 'out' ? (h.found ?? h.belongs) : h.belongs;
      return { here: h.name === lit, label: item ? sayItem(item) : '', short: item?.kind ?? '' };
    },
    rest,
  );
}

const outSaid = (out: number, of: number): string =>
  of === 0 ? 'coming off' : `coming off, ${out} of ${of} out`;

/** What will not come stays last, whatever the order says: then the piece hangs on that. */
function hangsOn({ holes }: OnOff['piece']): string | null {
  const stuck = holes.filter((h) => h.state !== 'out' && h.trouble !== null);
  if (stuck.length === 0) return null;
  const which = list(names(stuck));
  return `${which} ${stuck.length === 1 ? 'comes' : 'come'} out last: on an upright face hold the piece when it gives.`;
}

/** What is said beside the order before the first bolt is out, and for a spring all the way. */
function tipsSaid({ piece, job }: OnOff): string[] {
  const { sequence } = piece.spec;
  const care = orderCare(piece.spec);
  const own = piece.spec.tip.removal[0];
  const begun = piece.holes.some((h) => h.state === 'out');
  const [first, ...more] = tipsOf(piece, job.upper.kinds).loosen;
  const beside = care === 'spring' || !begun ? [first] : [];
  const held = hangsOn(piece);
  const order = [...beside, ...(begun ? [] : more)].filter((t) => t !== undefined);
  const hangs = held === null ? order : [...order.filter((t) => !leavesLast(t)), held];
  // Whoever wrote a tip knows better which bolt is left until last.
  const all = own === undefined ? hangs : beside;
  const maker = care !== null && care !== 'spring' && sequence === null && !begun;
  return [
    ...(maker ? ["Not the maker's order: its list, from the end, goes first."] : []),
    ...all.filter((t) => t !== undefined),
  ];
}

function sayNext({ state, job, piece, step, hand: read, lit }: OnOff): Line[] {
  const hole = piece.holes.find((h) => h.name === lit);
  if (!hole) {
    const none =
      piece.holes.length === 0 ? 'Nobody has noted its bolts yet. Tab types the row.' : '';
    return wrap(none, state.columns, { bold: true });
  }
  if (step.hand !== '') {
    const item = read.is === 'kind' ? sayTakes(job, read.item) : step.hand;
    const turn = turnSaid(read.is === 'kind' ? (read.kind ?? undefined) : undefined);
    return [
      ...wrap(`${hole.name}: you say it is ${item}.`, state.columns, { bold: true }),
      ...wrap(turn ?? '', state.columns, { bold: true }),
    ];
  }
  if (hole.state === 'out') return [line(bold(`${hole.name} is out.`))];
  const is = hole.belongs
    ? sayTakes(job, hole.belongs)
    : 'Nobody has noted what it is: its length says it, .25, or .25+washer';
  const stuck = hole.trouble === null ? '' : ` It is ${hole.trouble}.`;
  const which = stillIn(piece).length === 1 ? 'Last to come out' : 'Next out';
  const turn = turnSaid(job.upper.kinds.get(hole.belongs?.kind ?? ''));
  return [
    ...wrap(`${which}: ${hole.name}.  ${is}.${stuck}`, state.columns, { bold: true }),
    ...wrap(turn ?? '', state.columns, { bold: true }),
  ];
}
