/** The job: its pieces, where each is, and what is next. */
import type { PieceNow } from '../job/types.ts';
import { nextStep } from '../plan/next.ts';
import type { Acts } from './act.ts';
import { enterPiece } from './enter.ts';
import { ask } from './field.ts';
import { insideSaid } from './inside.ts';
import { hereInJob } from './marked.ts';
import { show, stay } from './moves.ts';
import type { Page } from './page.ts';
import { troubles } from './parts/job-now.ts';
import { sayTrouble, sayWhere } from './parts/say-piece.ts';
import { around } from './parts/scroll.ts';
import { bold, type Line, line, pad, span, width, wrap } from './parts/text.ts';
import type { State } from './state.ts';

export const jobActs = {
  'open-piece': (state) => {
    const here = hereInJob(state);
    return here === null ? stay(state) : enterPiece(state, here);
  },
  where: (state) => show(state, { screen: 'note', top: 0 }),
  add: (state) => ask(state, { ask: 'piece' }),
} satisfies Acts;

export function drawJob(state: State): Page {
  const job = state.open?.job;
  if (!job) return { left: [], middle: () => [] };
  const pieces = [...job.pieces.values()];
  const here = hereInJob(state);
  const next = nextStep(job);
  return {
    left: line(bold(job.upper.job)),
    right: line(job.upper.machine ?? ''),
    middle: (columns, rows) => {
      if (pieces.length === 0)
        return [[], line('No piece is noted yet: taking one off writes it.')];
      const name = Math.max(...pieces.map((p) => width(line(p.spec.name))));
      const lines = pieces.map((p) => rowOf(p, p.spec.key === here, Math.min(name, columns / 2)));
      return [
        [],
        ...around(
          lines,
          pieces.findIndex((p) => p.spec.key === here),
          rows - 1,
        ),
      ];
    },
    say: [
      ...wrap(insideSaid(job) ?? '', state.columns, { colour: 'red', bold: true }),
      ...wrap(next ? `Next: ${next.say}` : '', state.columns, { bold: true }),
    ],
  };
}

function rowOf(piece: PieceNow, marked: boolean, name: number): Line {
  const bad = troubles(piece).map((h) => `${h.name} ${h.trouble ? sayTrouble(h.trouble) : ''}`);
  return line(
    span(marked ? '> ' : '  ', { bold: true }),
    pad(line(marked ? bold(piece.spec.name) : piece.spec.name), Math.floor(name) + 3),
    sayWhere(piece),
    bad.length > 0 && '   ',
    bad.length > 0 && span(`! ${bad.join(', ')}`, { colour: 'red', bold: true }),
  );
}
