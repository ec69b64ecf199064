/** What earlier jobs on this machine know, whole, with job and day; and what of it is taken over. */
import { type LastTime, lastTime, lastWith, type Maybe } from '../../memory/last.ts';
import { ABOUTS } from '../../memory/remember.ts';
import { ENTER } from '../base/key.ts';
import { type OnJob, onJob, pieceNamed, requestMark, say, show, stay } from '../base/moves.ts';
import { type ListLine, listLines, type Page } from '../base/page.ts';
import { screenOver } from '../base/screen.ts';
import type { State, Updated, View } from '../base/state.ts';
import { bold, hanging, line, pad, span, width } from '../kit/text.ts';
import { many } from '../kit/words.ts';

type LastView = Extract<View, { screen: 'last' }>;

/** A line of what was learnt, or a question whether a piece is this one. */
type Row = { name: string; mine: string | null } & ({ known: LastTime } | { maybe: Maybe });

interface OnLast extends OnJob<LastView> {
  rows: readonly Row[];
  row: Row | null;
}

function onLast(state: State, view: LastView): OnLast | null {
  const here = onJob(state, view);
  if (!here) return null;
  const before = state.earlier?.before ?? [];
  const { known, maybe } = lastTime(
    here.job,
    before,
    view.piece === null ? {} : { piece: view.piece },
  );
  const rows: Row[] = [
    ...known.map((k, i) => ({ name: `known-${i}`, mine: k.mine, known: k })),
    ...maybe.map((m, i) => ({ name: `maybe-${i}`, mine: m.piece, maybe: m })),
  ];
  return { ...here, rows, row: rows.find((r) => r.name === view.here) ?? rows[0] ?? null };
}

/** The piece that is asked about, or the one of the marked row. */
const pieceOf = ({ view, row }: OnLast): string | null => view.piece ?? row?.mine ?? null;

function takeIt(here: OnLast): Updated {
  const { state, job, row } = here;
  const piece = pieceOf(here);
  const before = state.earlier?.before ?? [];
  const fresh = row && 'known' in row && row.mine === null ? row.known : null;
  // A piece that this job does not know yet begins with what is known of it.
  if (piece === null && fresh && fresh.theirs !== null && !job.pieces.has(fresh.theirs))
    return requestMark(state, { do: 'take', piece: fresh.theirs, from: fresh.file, pairs: [] });
  if (piece === null)
    return say(state, 'Mark a line of a piece: what is taken over goes piece by piece.');
  const asked = row && 'maybe' in row ? row.maybe : null;
  const found = asked
    ? before.filter((b) => b.file === asked.file)[0]
    : lastWith(pieceNamed(job, piece), before)?.before;
  if (!found) return say(state, 'It is not sure which piece that was: mark the line that asks.');
  const theirs = asked ? { theirs: asked.theirs } : {};
  // What there is to take is worked out from both files as they are when it is written.
  return requestMark(state, { do: 'take', piece, from: found.file, pairs: [], ...theirs });
}

export const lastScreen = screenOver({
  here: onLast,
  keys: [
    {
      id: 'take-over',
      presses: ['t'],
      label: 'take it over',
      help: 'map, kinds, torques, truths, joint, cautions and tips of the newest job into this one; no marks',
      holds: ({ rows }) => rows.length > 0,
      does: takeIt,
    },
    {
      id: 'last-back',
      presses: ENTER,
      label: 'back',
      help: 'back to where one was',
      does: ({ state, view }) => show(state, view.under),
    },
  ],
  draw: drawLast,
  rows: ({ view, rows, row }) => ({
    names: rows.map((r) => r.name),
    marked: row?.name ?? null,
    mark: (here) => ({ ...view, here }),
  }),
  after: {
    take: (state, { entry, wish }) => {
      const { view } = state;
      const below = view.screen === 'last' ? view.under : view;
      const under = below.screen === 'job' ? { ...below, here: wish.piece } : below;
      if (entry === null)
        return stay({ ...state, quiet: 'Nothing that does not stand here already.' });
      return show(
        { ...state, quiet: `Taken over from ${entry.value}. Backspace takes it back.` },
        under,
      );
    },
  },
});

const LABEL = Math.max(...Object.values(ABOUTS).map(width)) + 2;

function drawLast({ state, job, view, rows, row }: OnLast): Page {
  const name = view.piece === null ? job.upper.job : pieceNamed(job, view.piece).spec.name;
  const { before = [], older = 0 } = state.earlier ?? {};
  const around = {
    left: line(bold(name)),
    right: line(`last time, from ${many(before.length, 'job')}`),
    under: line(older > 0 ? `${many(older, 'older job')} not looked at` : ''),
  };
  if (rows.length === 0)
    return { kind: 'plain', ...around, middle: () => [[], line('Nothing that was learnt of it.')] };
  return {
    kind: 'list',
    ...around,
    counted: true,
    middle: (columns) => {
      let head: string | null | undefined;
      return rows.flatMap((r, i): ListLine[] => {
        const marked = r === row;
        const first = head !== r.mine && view.piece === null;
        head = r.mine;
        const of = r.mine === null ? 'Elsewhere on it' : pieceNamed(job, r.mine).spec.name;
        return [
          ...(first ? [{ line: line(bold(of)), row: null, marked: false }] : []),
          ...listLines(rowLines(r, marked, columns), i, marked),
        ];
      });
    },
  };
}

function rowLines(row: Row, marked: boolean, columns: number) {
  const mark = span(marked ? '> ' : '  ', { bold: true });
  if ('maybe' in row) {
    const { name, holes, job } = row.maybe;
    const text = `Is it the ${name} of ${job} (${many(holes, 'hole')})? t takes that over.`;
    return hanging(line(mark), text, columns);
  }
  const { about, text, job, day } = row.known;
  const when = [job, day].filter((t) => t !== null).join(', ');
  return hanging(line(mark, pad(line(ABOUTS[about]), LABEL)), `${text} (${when})`, columns);
}
