/** The last bolt is out: counted before anybody pries, or STOP with what is still in. */
import { sayOnce } from '../../bolt/torque/cautions.ts';
import { kindsIn } from '../../job/fold/fit-of.ts';
import type { Refusal } from '../../model/types.ts';
import { gateOf } from '../../plan/gates/gate.ts';
import { sortedItems } from '../../plan/gates/gate-now.ts';
import { swapsIn } from '../../plan/piece/answers.ts';
import { names, stillIn } from '../../plan/piece/piece-now.ts';
import { ask } from '../ask/field.ts';
import { goesIn } from '../ask/inside.ts';
import { noteKey } from '../ask/note.ts';
import { OFF } from '../base/enter.ts';
import { ENTER } from '../base/key.ts';
import { type At, requestMark, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import type { State, Updated } from '../base/state.ts';
import { hangingBoth } from '../kit/both.ts';
import { sentences, stopBox } from '../kit/box.ts';
import { large } from '../kit/large.ts';
import { bold, type Line, line, wrap } from '../kit/text.ts';
import { list } from '../kit/words.ts';
import { namePhotograph } from './photograph.ts';
import { type OnPiece, onPiece, stepScreen } from './step.ts';
import { asideKey, gatesKey, nothingIn } from './step-keys.ts';
import { redoKey, undoKey } from './undo.ts';

type OnCount = OnPiece<'off-count'>;

const isSomeIn = (here: OnCount): boolean => !nothingIn(here);

function cameOff({ state, key, piece }: OnCount): Updated {
  // Where nothing lies in a tray there is nothing to ask.
  if (piece.holes.length === 0) return requestMark(state, { do: 'off', piece: key });
  // Off for another round, its bolts lie where they lay.
  if (piece.round > 1 && piece.tray !== null) {
    return requestMark(state, { do: 'off', piece: key, tray: piece.tray });
  }
  return ask(state, { ask: 'tray', piece: key, how: 'off' }, piece.tray ?? '');
}

export const countScreen = stepScreen({
  here: onPiece<'off-count'>,
  keys: [
    {
      id: 'came',
      presses: ENTER,
      anew: ENTER,
      label: 'it came off',
      help: 'the piece is off',
      holds: nothingIn,
      does: cameOff,
    },
    {
      id: 'to-stuck',
      presses: ENTER,
      label: 'back to that bolt',
      help: 'back to the bolts that are in',
      holds: isSomeIn,
      does: ({ state }) => toStep(state, OFF),
    },
    {
      id: 'pry',
      presses: ['w'],
      alone: true,
      label: 'all the same, and why',
      help: 'overrule this, with a reason that is written down',
      holds: isSomeIn,
      does: (here) => {
        const wish = { do: 'off', piece: here.key } as const;
        return ask(here.state, { ask: 'why', wish, refused: refusal(here) });
      },
    },
    undoKey,
    redoKey,
    asideKey,
    gatesKey,
    goesIn,
    { ...noteKey, label: '' },
  ],
  draw: drawCount,
  greeting: namePhotograph,
});

/** The refusal that `off` would meet, said before it is asked for. */
function refusal({ piece }: At): Refusal {
  const holes = names(stillIn(piece));
  const say = `${list(holes)} ${holes.length === 1 ? 'is' : 'are'} still in.`;
  return { code: 'still-in', say, data: { holes }, overrulable: true };
}

function drawCount(here: OnCount): Page {
  const { state, piece } = here;
  const inside = stillIn(piece);
  const n = piece.holes.length;
  const out = n - inside.length;
  return {
    kind: 'plain',
    left: line(bold(piece.spec.name)),
    right: line('coming off'),
    middle: (columns, rows) => {
      const asked = sayAsked(state, here, columns);
      const counted =
        inside.length > 0
          ? stopBox([`${out} of ${n} out.`, ...stillSaid(here, state.now)], columns)
          : n === 0
            ? unbolted(columns)
            : large(`${out} of ${n} out`, columns);
      // Where there is no room for both, what is asked is worth more than large figures.
      const fits = counted.length + asked.length <= rows;
      const short = fits || inside.length > 0 || n === 0 ? counted : [counted.at(-1) ?? []];
      const body = [...short, ...asked];
      const above = Math.max(0, Math.floor((rows - body.length) / 2));
      return [...Array.from({ length: above }, (): Line => []), ...body];
    },
    spoken: () => [
      line(`${out} of ${n} out`),
      ...(inside.length > 0 ? ['STOP', ...stillSaid(here, state.now)] : []).map((text) =>
        line(text),
      ),
      ...sayAsked(state, here, state.columns),
    ],
    say: inside.length > 0 || n === 0 ? [] : sayAfter(here, state.columns),
  };
}

/** Without bolts to count one still has to look before prying. */
function unbolted(columns: number): Line[] {
  return [
    ...wrap('No bolts are noted here.', columns, { bold: true }),
    ...wrap('Look for what holds it before you pull: clips, dowels, a hidden screw.', columns),
  ];
}

/** Each that is in, with what is wrong with it and since when; the way out is at the foot. */
function stillSaid({ job, key }: At, now: string): string[] {
  const bolts = gateOf(job, 'prying', key, now).find((item) => item.key === 'bolts');
  return [...sentences(bolts?.stop ?? '').slice(0, -1), 'Do not pry.'];
}

const HURTS = { colour: 'red', bold: true } as const;

/** What else is to be seen to before anybody pries: all in sight, what can hurt first. */
function sayAsked({ now }: State, { job, piece }: At, columns: number): Line[] {
  const items = sortedItems(job, 'prying', piece, now).filter(({ item }) => item.key !== 'bolts');
  const rows = items.flatMap(({ item, caution, printed }) => {
    const first = line(item.done ? '  seen ' : '  ');
    return hangingBoth(first, { text: item.say, printed }, columns, caution ? HURTS : {});
  });
  return rows.length === 0 ? [] : [[], ...rows];
}

function sayAfter({ job, piece }: At, columns: number): Line[] {
  const once = kindsIn(piece).flatMap((k) => {
    const kind = job.upper.kinds.get(k);
    return kind ? (sayOnce(kind) ?? []) : [];
  });
  return [
    ...wrap('Now it may come off.', columns, { bold: true }),
    ...once.flatMap((t) => wrap(t, columns)),
    ...wrap(swapsIn(job, piece).say ?? '', columns),
  ];
}
