/** Drawing the holes by walking round the piece: arrows move the mark, Space puts the next hole under it. */
import {
  type Drawing,
  type DrawnSpot,
  drawingOf,
  drawnText,
  holeAt,
  lift,
  MOST,
  nextDrawn,
  put,
  walkHoles,
} from '../../piece/drawing.ts';
import { names } from '../../plan/piece/piece-now.ts';
import { draftOf, drawingDraft, dropDraft, keepDraft } from '../base/drafts.ts';
import { pieceNamed, requestMark, say, show, stay } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { type MadeMark, screenOver } from '../base/screen.ts';
import type { State, Updated, View } from '../base/state.ts';
import { drawGround } from '../kit/drawn-field.ts';
import { bold, type Line, line, width, wrap } from '../kit/text.ts';
import { list, many } from '../kit/words.ts';

type DrawView = Extract<View, { screen: 'draw' }>;

/** What is being drawn, and which holes it needs. */
interface Drawn {
  state: State;
  view: DrawView;
  drawing: Drawing;
  name: string;
  /** Holes that must be there, in their order. */
  must: readonly string[];
  /** Nobody has said yet how many holes there are. */
  open: boolean;
  missing: readonly string[];
  next: string | null;
  /** The hole under the mark. */
  under: string | null;
}

function drawHere(state: State, view: DrawView): Drawn | null {
  const { open: file } = state;
  if (!file) return null;
  const piece = pieceNamed(file.job, view.piece);
  const open = piece.spec.row === null;
  // Without a row only holes of which something is known are sure to be there.
  const sure = piece.holes.filter((h) => !open || h.by !== null || piece.spec.holes.has(h.name));
  const must = names(sure);
  const { drawing } = view;
  const there = drawing.holes.map((h) => h.name);
  return {
    state,
    view,
    drawing,
    name: piece.spec.name,
    must,
    open,
    missing: must.filter((name) => !there.includes(name)),
    next: nextDrawn(there, must, open),
    under: holeAt(drawing, drawing.mark),
  };
}

/** Opens the field on a piece, with what was left half drawn. */
export function openDrawing(state: State, piece: string): Updated {
  const now = state.open && pieceNamed(state.open.job, piece);
  if (!now) return stay(state);
  const draft = draftOf(state, drawingDraft(piece));
  const drawing = drawingOf(draft ?? now.spec.map ?? '');
  const view = { screen: 'draw', piece, drawing, under: state.view } as const;
  const here = drawHere(state, view);
  const known = names(now.holes);
  // A draft may name holes that are gone since a row was typed.
  const holes = here?.open ? drawing.holes : drawing.holes.filter((h) => known.includes(h.name));
  const last = holes.at(-1);
  // The mark stands at the last hole of a half drawn picture, at the first hole of a whole one.
  const half = here !== null && last !== undefined && (draft !== null || here.missing.length > 0);
  const mark = half ? { column: last.column, row: last.row } : drawing.mark;
  const shown = show(state, { ...view, drawing: { holes, mark } });
  return draft === null ? shown : say(shown.state, 'As you left it.');
}

function redraw({ state, view }: Drawn, drawing: Drawing): Updated {
  return show(state, { ...view, drawing });
}

const STEPS: Readonly<Record<string, DrawnSpot>> = {
  left: { column: -1, row: 0 },
  right: { column: 1, row: 0 },
  up: { column: 0, row: -1 },
  down: { column: 0, row: 1 },
};

function walkOn(here: Drawn, press: string): Updated {
  const { state, drawing } = here;
  const step = STEPS[press];
  const walked = step ? walkHoles(drawing, step) : drawing;
  if (walked) return redraw(here, walked);
  if (drawing.holes.length === 0) return say(state, 'This is the edge.');
  return say(state, `This is the edge: ${MOST.columns} by ${MOST.rows} at most.`);
}

function putHole(here: Drawn): Updated {
  const { state, drawing, under, next } = here;
  if (under !== null) return say(state, `${under} is here already.`);
  return next === null ? say(state, allSaid(here)) : redraw(here, put(drawing, next));
}

function liftHole(here: Drawn): Updated {
  const lifted = lift(here.drawing);
  if (!lifted) return say(here.state, 'Nothing is drawn.');
  return say(redraw(here, lifted.drawing).state, `${lifted.name} is taken away.`);
}

function keepPicture(here: Drawn): Updated {
  const { state, view, missing, drawing } = here;
  if (missing.length > 0) return say(state, `Not drawn yet: ${list(missing)}.`);
  const text = drawnText(drawing);
  if (text === '') return say(state, 'Nothing is drawn yet.');
  // Kept as a draft until it is on disk: the file may be unreadable just now.
  return requestMark(keptHalf(here), { do: 'write', piece: view.piece, key: 'map', text });
}

/** A picture left half drawn, kept as the text of `map:`. What the file has already is no draft. */
function keptHalf({ state, view }: Drawn): State {
  const text = drawnText(view.drawing);
  const map = state.open?.job.pieces.get(view.piece)?.spec.map ?? '';
  const name = drawingDraft(view.piece);
  if (text === '' || text === drawnText(drawingOf(map))) return dropDraft(state, name);
  return keepDraft(state, name, text);
}

/** The picture is on disk: back to where it was asked for. */
function afterPicture(state: State, { entry }: MadeMark): Updated {
  const { view } = state;
  if (view.screen !== 'draw') return stay(state);
  const n = view.drawing.holes.length;
  return say(
    { ...dropDraft(state, drawingDraft(view.piece)), view: view.under },
    entry ? `Drawn: ${many(n, 'hole')} as they lie.` : 'It was drawn like this already.',
  );
}

export const drawScreen = screenOver({
  here: drawHere,
  keys: [
    {
      id: 'put',
      presses: ['space'],
      // `hole 5 is here`.
      label: ({ under, next }) => (under === null && next !== null ? `hole ${next} is here` : ''),
      help: 'the next hole is under the mark',
      does: putHole,
    },
    {
      id: 'keep-drawing',
      presses: ['enter'],
      label: ({ missing, drawing }) =>
        missing.length === 0 && drawing.holes.length > 0 ? 'keep the picture' : '',
      help: 'keep the picture, once all holes are drawn',
      does: keepPicture,
    },
    {
      id: 'lift',
      presses: ['backspace'],
      // `take 4 away`: the one under the mark, else the last.
      label: ({ drawing }) => {
        const lifted = lift(drawing);
        return lifted ? `take ${lifted.name} away` : '';
      },
      help: 'take the hole under the mark away, or else the last one drawn',
      does: liftHole,
    },
    {
      id: 'walk',
      presses: ['left', 'right', 'up', 'down'],
      label: '',
      help: 'one step over the piece',
      shown: 'arrows',
      does: walkOn,
    },
  ],
  draw: drawPicture,
  draft: keptHalf,
  after: { write: afterPicture },
});

// ---------------------------------------------------------------- picture

/** Head and foot, two lines said under the field, and a quiet one. */
const AROUND = 6;
/** Columns of a name, so that the field does not move when the tenth hole comes. */
const ROOM = 2;

function drawPicture(now: Drawn): Page {
  const { state, drawing, must, open: isOpen } = now;
  const n = drawing.holes.length;
  const room = Math.max(ROOM, ...[...must, ...drawing.holes.map((h) => h.name)].map(width));
  const rows = Math.max(1, state.rows - AROUND);
  return {
    kind: 'plain',
    left: line(bold(now.name)),
    right: line(isOpen ? `${n} drawn` : `${n} of ${must.length}`),
    middle: (columns) => {
      const field = drawGround(drawing, columns, rows, room);
      const blank = Array.from({ length: Math.max(0, rows - field.length) }, () => []);
      return [...field, ...blank, ...saidUnder(now, columns)];
    },
    spoken: () => [
      ...drawing.holes.map((h) => line(`${h.name}: ${spotSaid(h)}`)),
      line(`The mark: ${spotSaid(drawing.mark)}`),
      ...saidUnder(now, state.columns),
    ],
  };
}

/** Counted from the corner of the field as it is at the start. */
function spotSaid({ column, row }: DrawnSpot): string {
  return `column ${column + 1}, row ${row + 1}`;
}

function saidUnder(now: Drawn, columns: number): Line[] {
  const [first, second] = saying(now);
  return [...wrap(first, columns, { bold: true }), ...wrap(second, columns)];
}

/** What the hand does next, and a word beside it. */
function saying(now: Drawn): [string, string] {
  const n = now.drawing.holes.length;
  const is = now.under === null ? '' : `${now.under} is here. `;
  if (now.next === null) return [`${is}${allSaid(now)}`, 'Enter keeps the picture.'];
  if (n === 0) {
    return [
      `Walk to hole ${now.next} with the arrows, Space puts it there.`,
      'Seen from outside, as it lies: follow its edge with a finger.',
    ];
  }
  const whole = now.open && now.missing.length === 0;
  return [`${is}Next: ${now.next}.`, whole ? `Or Enter keeps ${many(n, 'hole')}.` : ''];
}

function allSaid({ must }: Drawn): string {
  return must.length === 1 ? 'Its hole is there.' : `All ${must.length} are there.`;
}
