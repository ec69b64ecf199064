/** Drawing the holes by walking round the piece: arrows move the mark, Space puts the next hole under it. */
import {
  type Drawing,
  drawingOf,
  holeAt,
  lift,
  MOST,
  nextHole,
  put,
  type Spot,
  textOf,
  walk,
} from '../../piece/drawing.ts';
import type { Acts } from '../base/act.ts';
import { draftOfDrawing, dropDraft, keepDraft } from '../base/drafts.ts';
import { at, pieceNamed, record, say, show, someThingInside, stay } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import type { State, Updated, View } from '../base/state.ts';
import { drawField } from '../kit/drawn-field.ts';
import { bold, type Line, line, width, wrap } from '../kit/text.ts';
import { list, many } from '../kit/words.ts';
import { layoutOf, names } from '../now/piece-now.ts';

type DrawView = Extract<View, { screen: 'draw' }>;

/** What is being drawn, and which holes it needs. */
interface Now {
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

function nowOf(state: State): Now | null {
  const { view, open: file } = state;
  if (view.screen !== 'draw' || !file) return null;
  const piece = pieceNamed(file.job, view.piece);
  const open = piece.spec.row === null;
  // Without a row only those that something is known of are sure to be there.
  const sure = piece.holes.filter((h) => !open || h.by !== null || piece.spec.holes.has(h.name));
  const must = names(sure);
  const { drawing } = view;
  const there = drawing.holes.map((h) => h.name);
  return {
    view,
    drawing,
    name: piece.spec.name,
    must,
    open,
    missing: must.filter((name) => !there.includes(name)),
    next: nextHole(there, must, open),
    under: holeAt(drawing, drawing.mark),
  };
}

/** Its holes are not measured, so that a picture is what shows them; and it has some, as far as is known. */
export function canDraw(state: State): boolean {
  const here = at(state);
  if (!here || here.piece.spec.row?.length === 0) return false;
  return layoutOf(here.piece).from !== 'at';
}

/** Fewer holes than this are told apart without a picture. */
const FEW = 3;

/** Offered at the foot as long as the piece is shown as a ring; what was left inside comes before it. */
export function drawLabel(state: State): string {
  const here = at(state);
  if (someThingInside(state)) return '';
  const holes = here?.piece.holes.length ?? 0;
  // Of a piece without bolts there is more to say first; while its row is typed it has some.
  const some = holes >= FEW || (holes === 0 && here?.view.step.step === 'off-row');
  return here?.piece.spec.map === null && some ? 'draw the holes' : '';
}

function open(state: State): Updated {
  const here = at(state);
  if (!here) return stay(state);
  const draft = draftOfDrawing(state, here.key);
  const drawing = drawingOf(draft ?? here.piece.spec.map ?? '');
  const view = { screen: 'draw', piece: here.key, drawing, under: state.view } as const;
  const opened: State = { ...state, view };
  const now = nowOf(opened);
  const known = names(here.piece.holes);
  // What was left by half may name holes that a row has done away with since.
  const holes = now?.open ? drawing.holes : drawing.holes.filter((h) => known.includes(h.name));
  const last = holes.at(-1);
  // Going on where it was left; a whole picture begins at its first hole.
  const half = now !== null && last !== undefined && (draft !== null || now.missing.length > 0);
  const mark = half ? { column: last.column, row: last.row } : drawing.mark;
  const shown = show(opened, { ...view, drawing: { holes, mark } });
  return draft === null ? shown : say(shown.state, 'As you left it.');
}

function redraw(state: State, drawing: Drawing): Updated {
  const { view } = state;
  return view.screen === 'draw' ? show(state, { ...view, drawing }) : stay(state);
}

const STEPS: Readonly<Record<string, Spot>> = {
  left: { column: -1, row: 0 },
  right: { column: 1, row: 0 },
  up: { column: 0, row: -1 },
  down: { column: 0, row: 1 },
};

export const drawActs = {
  draw: open,
  'draw-row': open,
  walk: (state, press) => {
    const now = nowOf(state);
    const step = STEPS[press];
    if (!now || !step) return stay(state);
    const walked = walk(now.drawing, step);
    if (walked) return redraw(state, walked);
    if (now.drawing.holes.length === 0) return say(state, 'This is the edge.');
    return say(state, `This is the edge: ${MOST.columns} by ${MOST.rows} at most.`);
  },
  put: (state) => {
    const now = nowOf(state);
    if (!now) return stay(state);
    if (now.under !== null) return say(state, `${now.under} is here already.`);
    if (now.next === null) return say(state, allSaid(now));
    return redraw(state, put(now.drawing, now.next));
  },
  lift: (state) => {
    const now = nowOf(state);
    const lifted = now && lift(now.drawing);
    if (!lifted) return say(state, 'Nothing is drawn.');
    return say(redraw(state, lifted.drawing).state, `${lifted.name} is taken away.`);
  },
  'keep-drawing': (state) => {
    const now = nowOf(state);
    if (!now) return stay(state);
    if (now.missing.length > 0) return say(state, `Not drawn yet: ${list(now.missing)}.`);
    const text = textOf(now.drawing);
    if (text === '') return say(state, 'Nothing is drawn yet.');
    // A draft until it is on disk: the file may be one that cannot be read just now.
    return record(keepDraft(state), { do: 'write', piece: now.view.piece, key: 'map', text });
  },
} satisfies Acts;

/** The picture is on disk: back to where it was asked for. */
export function afterDrawing(state: State, changed: boolean): Updated {
  const { view } = state;
  if (view.screen !== 'draw') return stay(state);
  const n = view.drawing.holes.length;
  return say(
    { ...dropDraft(state), view: view.under },
    changed ? `Drawn: ${many(n, 'hole')} as they lie.` : 'It was drawn like this already.',
  );
}

// ---------------------------------------------------------------- picture

/** Head and foot, two lines said under the field, and a quiet one. */
const AROUND = 6;
/** Columns of a name, so that the field does not move when the tenth hole comes. */
const ROOM = 2;

export function drawDraw(state: State): Page {
  const now = nowOf(state);
  if (!now) return { left: [], middle: () => [] };
  const { drawing, must, open: isOpen } = now;
  const n = drawing.holes.length;
  const room = Math.max(ROOM, ...[...must, ...drawing.holes.map((h) => h.name)].map(width));
  const rows = Math.max(1, state.rows - AROUND);
  return {
    left: line(bold(now.name)),
    right: line(isOpen ? `${n} drawn` : `${n} of ${must.length}`),
    middle: (columns) => {
      const field = drawField(drawing, columns, rows, room);
      const blank = Array.from({ length: Math.max(0, rows - field.length) }, () => []);
      return [...field, ...blank, ...saidUnder(now, columns)];
    },
  };
}

function saidUnder(now: Now, columns: number): Line[] {
  const [first, second] = saying(now);
  return [...wrap(first, columns, { bold: true }), ...wrap(second, columns)];
}

/** What the hand does next, and a word beside it. */
function saying(now: Now): [string, string] {
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

function allSaid({ must }: Now): string {
  return must.length === 1 ? 'Its hole is there.' : `All ${must.length} are there.`;
}

/** `hole 5 is here`. */
export function putLabel(state: State): string {
  const now = nowOf(state);
  return now && now.under === null && now.next !== null ? `hole ${now.next} is here` : '';
}

export function keepLabel(state: State): string {
  const now = nowOf(state);
  return now && now.missing.length === 0 && now.drawing.holes.length > 0 ? 'keep the picture' : '';
}

/** `take 4 away`: the one under the mark, else the last. */
export function liftLabel(state: State): string {
  const now = nowOf(state);
  const lifted = now && lift(now.drawing);
  return lifted ? `take ${lifted.name} away` : '';
}
