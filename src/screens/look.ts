/** The piece as it stands, and the ways on from here. */
import type { HoleNow, Job, PieceNow } from '../job/types.ts';
import { nextStep } from '../plan/next.ts';
import type { Acts } from './act.ts';
import { emptyRow, goWay, OFF, ON, readFirst, TIGHT, toSettleStep } from './enter.ts';
import { ask } from './field.ts';
import { at, hereOf, holeNamed, record, stay, toStep } from './moves.ts';
import type { Page } from './page.ts';
import { stillIn, toSettle } from './parts/piece-now.ts';
import { piecePage } from './parts/piece-page.ts';
import { sayDiffers, sayTakes, sayTrouble, sayWhere } from './parts/say-piece.ts';
import { type Line, line, wrap } from './parts/text.ts';
import { wayOf } from './parts/way.ts';
import { many, sayCounts, sayItem } from './parts/words.ts';
import type { State } from './state.ts';

export const lookActs = {
  forth: (state) => {
    const here = at(state);
    return here ? goWay(state, wayOf(here.piece)) : stay(state);
  },
  row: (state) => readFirst(state, 'removal', emptyRow()),
  'take-off': (state) => {
    const here = at(state);
    if (!here) return stay(state);
    const bare = here.piece.holes.length === 0 || stillIn(here.piece).length === 0;
    return readFirst(state, 'removal', bare ? { step: 'off-count' } : OFF);
  },
  'put-on': (state) => {
    const here = at(state);
    if (!here) return stay(state);
    if (here.piece.holes.length === 0) return record(state, { do: 'on', piece: here.key });
    return toSettle(here.piece).length > 0 ? toSettleStep(state) : readFirst(state, 'fitting', ON);
  },
  tighten: (state) => toStep(state, TIGHT),
  aside: (state) => {
    const here = at(state);
    return here ? record(state, { do: 'aside', piece: here.key }) : stay(state);
  },
  mended: (state) => {
    const here = at(state);
    const hole = here ? hereOf(here.view.step) : null;
    if (!here || hole === null) return stay(state);
    return record(state, { do: 'state', piece: here.key, hole, state: 'mended' });
  },
  note: (state) => {
    const here = at(state);
    return ask(state, {
      ask: 'note',
      piece: here?.key ?? null,
      hole: here ? pointedAt(here.view.step) : null,
    });
  },
} satisfies Acts;

/** The hole that the person pointed at; a note on the piece where none was. */
function pointedAt(step: Parameters<typeof hereOf>[0]): string | null {
  return 'typed' in step ? step.here : null;
}

export function drawLook(state: State): Page {
  const here = at(state);
  if (!here) return { left: [], middle: () => [] };
  const { piece, job } = here;
  const lit = hereOf(here.view.step);
  const hole = holeNamed(piece, lit);
  return piecePage(
    piece,
    (h) => ({
      here: h.name === lit,
      label: h.belongs ? sayItem(h.belongs) : '',
      short: h.belongs?.kind ?? '',
    }),
    {
      right: line(sayWhere(piece)),
      under: line(piece.spec.torque?.text ?? ''),
      say: hole ? sayHole(job, hole, piece, state.columns) : sayPiece(job, piece, state.columns),
    },
  );
}

function sayPiece(job: Job, piece: PieceNow, columns: number): Line[] {
  const n = piece.holes.length;
  const bolts =
    n > 0
      ? `${many(n, 'bolt')}: ${sayCounts(piece.holes.map((h) => h.belongs))}.`
      : piece.spec.row === null
        ? 'Nothing is noted of its bolts yet.'
        : 'No bolts.';
  const tray = piece.away !== 'no' && piece.tray !== null ? ` In ${piece.tray}.` : '';
  const odd = toSettle(piece).map((h) => `${h.name}: ${sayDiffers(h)}.`);
  const bad = piece.holes.flatMap((h) =>
    h.trouble ? [`${h.name}: ${sayTrouble(h.trouble)}.`] : [],
  );
  const next = wayOf(piece) === 'done' ? nextStep(job) : null;
  const done = wayOf(piece) === 'done' && next ? [`Next: ${next.say}`] : [];
  return [
    ...wrap(done.join(' '), columns, { bold: true }),
    ...wrap(`${bolts}${tray}`, columns),
    ...wrap([...bad, ...odd].join(' '), columns, { bold: true }),
  ];
}

/** All that is known of one hole. */
export function sayHole(job: Job, hole: HoleNow, piece: PieceNow, columns: number): Line[] {
  const note = piece.spec.holes.get(hole.name)?.note ?? null;
  const takes = `${hole.name} takes ${sayTakes(job, hole.belongs)}.`;
  const bad = hole.trouble ? ` ${sayTrouble(hole.trouble)}.` : '';
  const odd = hole.unsettled || hole.conflict ? ` ${sayDiffers(hole)}.` : '';
  return [
    ...wrap(takes, columns, { bold: true }),
    ...wrap(`${note === null ? '' : `${note}.`}${bad}${odd}`, columns),
  ];
}
