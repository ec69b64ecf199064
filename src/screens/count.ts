/** The last bolt is out: counted before anybody pries, or STOP with what is still in. */
import { sayOnce } from '../bolt/cautions.ts';
import { kindsIn } from '../job/fit-of.ts';
import type { Refusal } from '../job/types.ts';
import type { Acts } from './act.ts';
import { OFF } from './enter.ts';
import { ask } from './field.ts';
import { type At, at, record, stay, toStep } from './moves.ts';
import type { Page } from './page.ts';
import { worstSwap } from './parts/answers.ts';
import { corrected } from './parts/both.ts';
import { stopBox } from './parts/box.ts';
import { knownRows } from './parts/known-rows.ts';
import { large } from './parts/large.ts';
import { names, stillIn } from './parts/piece-now.ts';
import { sayTrouble } from './parts/say-piece.ts';
import { bold, type Line, line, wrap } from './parts/text.ts';
import { list } from './parts/words.ts';
import type { State } from './state.ts';

export const countActs = {
  came: (state) => {
    const here = at(state);
    if (!here) return stay(state);
    // Where nothing lies in a tray there is nothing to ask.
    if (here.piece.holes.length === 0) return record(state, { do: 'off', piece: here.key });
    return ask(state, { ask: 'tray', piece: here.key, how: 'off' }, here.piece.tray ?? '');
  },
  'to-stuck': (state) => toStep(state, OFF),
  pry: (state) => {
    const here = at(state);
    if (!here) return stay(state);
    const wish = { do: 'off', piece: here.key } as const;
    return ask(state, { ask: 'why', wish, refused: refusal(here) });
  },
} satisfies Acts;

/** What the file would answer, said before it is asked. */
function refusal({ piece }: At): Refusal {
  const holes = names(stillIn(piece));
  const say = `${list(holes)} ${holes.length === 1 ? 'is' : 'are'} still in.`;
  return { code: 'still-in', say, data: { holes }, overrulable: true };
}

export function drawCount(state: State): Page {
  const here = at(state);
  if (!here) return { left: [], middle: () => [] };
  const { piece } = here;
  const inside = stillIn(piece);
  const n = piece.holes.length;
  const out = n - inside.length;
  return {
    left: line(bold(piece.spec.name)),
    right: line('off'),
    middle: (columns, rows) => {
      const body =
        inside.length > 0
          ? stopBox([`${out} of ${n} out.`, ...inside.map(stillSaid), 'Do not pry.'], columns)
          : n === 0
            ? unbolted(columns)
            : large(`${out} of ${n} out`, columns);
      const above = Math.max(0, Math.floor((rows - body.length) / 2));
      return [...Array.from({ length: above }, (): Line => []), ...body];
    },
    say: inside.length > 0 || n === 0 ? [] : sayAfter(here, state.columns),
  };
}

/** Nothing to count is no leave to pry. */
function unbolted(columns: number): Line[] {
  return [
    ...wrap('No bolts are noted here.', columns, { bold: true }),
    ...wrap('Look for what holds it before you pull: clips, dowels, a hidden screw.', columns),
  ];
}

function stillSaid(hole: {
  name: string;
  trouble: Parameters<typeof sayTrouble>[0] | null;
}): string {
  const why = hole.trouble === null ? '' : `: ${sayTrouble(hole.trouble)}`;
  return `${hole.name} is still in${why}.`;
}

function sayAfter({ job, piece }: At, columns: number): Line[] {
  const once = kindsIn(piece).flatMap((k) => {
    const kind = job.upper.kinds.get(k);
    return kind ? (sayOnce(kind) ?? []) : [];
  });
  const loose = piece.spec.loose;
  const known = knownRows(job, { piece: piece.spec.key });
  return [
    ...wrap('Now it may come off.', columns, { bold: true }),
    ...(loose.length > 0 ? wrap(`Loose in it: ${list(loose)}.`, columns) : []),
    ...corrected(
      known.filter((r) => r.figure?.what === 'loose'),
      columns,
    ),
    ...once.flatMap((t) => wrap(t, columns)),
    ...wrap(worstSwap(job, piece) ?? '', columns),
  ];
}
