/** Off, the whole row typed at once, as it lies on the card or in the tray. */

import { isHeld } from '../../job/judge/marks/out.ts';
import { troubleOf } from '../../model/states/troubles.ts';
import type { HoleNow, PieceNow } from '../../model/types.ts';
import { STILL_IN } from '../../piece/row.ts';
import { names } from '../../plan/piece/piece-now.ts';
import { readTyped, shortWord, type TypedWord } from '../../plan/typed/row.ts';
import { ask } from '../ask/field.ts';
import { claimUnder, nextAsked, rowWish } from '../ask/row-under.ts';
import { dropDraft, keepDraft, rowDraft } from '../base/drafts.ts';
import { ENTER } from '../base/key.ts';
import { at, requestMark, stay, stepNow, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import type { State, Updated } from '../base/state.ts';
import { drawKeyWhileTyping } from '../draw/draw-key.ts';
import { drawField, fieldText } from '../kit/field.ts';
import { linesAround } from '../kit/scroll.ts';
import { bold, cutTo, type Line, line, pad, width, wrap } from '../kit/text.ts';
import { list, many, sayUnder } from '../kit/words.ts';
import { ON_A_PIECE, refusedOnPiece } from './after.ts';
import { namePhotograph } from './photograph.ts';
import { rowMap } from './row-map.ts';
import { type OnPiece, onPiece, type StepView, stepScreen } from './step.ts';

interface OnRow extends OnPiece<'off-row'> {
  words: readonly TypedWord[];
}

function onRow(state: State, view: StepView<'off-row'>): OnRow | null {
  const here = onPiece(state, view);
  if (!here) return null;
  return { ...here, words: readTyped(fieldText(here.step.field), here.job, here.piece) };
}

function keep(here: OnRow): Updated {
  const { state, key, piece, step, words: typed } = here;
  const words = typed.map((w) => w.word);
  const n = piece.holes.length;
  const odd = n > 0 && words.length !== n && words.length !== 1;
  // Who says so twice has counted again: there are more holes, and then what came out of them is noted. Fewer there
  // never are by this: what is not typed was not said to be out, so it is in.
  if (odd && step.again === true && words.length > n) {
    return requestMark(state, { do: 'write', piece: key, key: 'bolts', text: `${words.length}` });
  }
  if (odd && step.again === true) return keepRow(here, words);
  // Who says so twice has looked: what holds it is still to be looked for.
  if (n === 0 && words.length === 0 && step.none === true)
    return toStep(state, { step: 'off-count' });
  if (n === 0 && words.length === 0) {
    return toStep(state, {
      ...step,
      say: 'Nothing is typed yet. Enter again if it has no bolts.',
      none: true,
    });
  }
  const one = words.length === 1 && n > 1 ? words[0] : undefined;
  if (one !== undefined && step.again !== true) {
    const say = `1 of ${n} typed so far. Enter again if all ${n} are ${one}, and out.`;
    return toStep(state, { ...step, say, again: true });
  }
  if (words.length === 0 || odd) {
    const say = countSaid(words.length, piece);
    return toStep(state, { ...step, say, ...(odd ? { again: true } : {}) });
  }
  return keepRow(here, words);
}

/** What lay under a head is asked first; behind the last word all is still in. */
function keepRow({ state, key, piece }: OnRow, words: readonly string[]): Updated {
  const next = nextAsked(words);
  if (next !== null) {
    return ask(state, { ask: 'under', words, at: next }, claimUnder(piece, next));
  }
  const kept = dropDraft(state, rowDraft(key));
  return requestMark(kept, rowWish(piece, words));
}

/** It has as many holes as were typed now: what came out of them is noted next. */
function resized(state: State): Updated {
  const here = at(state);
  const step = stepNow(state, 'off-row');
  if (!here || !step) return stay(state);
  const { again: _, ...plain } = step;
  const next = toStep(state, plain).state;
  const row = onRow(next, { ...here.view, step: plain });
  return row ? keep(row) : stay(next);
}

export const rowScreen = stepScreen({
  here: onRow,
  keys: [
    {
      id: 'keep',
      presses: ENTER,
      anew: ENTER,
      label: ({ step }) => (step.none ? 'it has no bolts' : 'keep the row'),
      help: 'note this row as what came out',
      does: keep,
    },
    drawKeyWhileTyping,
  ],
  draw: drawRow,
  greeting: namePhotograph,
  text: {
    field: ({ step }) => step.field,
    retype: ({ state }, field) => toStep(state, { step: 'off-row', field, say: null }),
  },
  draft: ({ state, key, step }) => keepDraft(state, rowDraft(key), fieldText(step.field)),
  after: { ...ON_A_PIECE, write: resized },
  // What was typed stays where it can be mended.
  refused: (state, why, wish) => {
    const { view } = state;
    const step = view.screen === 'piece' && view.step.step === 'off-row' ? view.step : null;
    if (!step || why.overrulable) return refusedOnPiece(state, why, wish);
    return toStep(state, { ...step, say: why.say });
  },
});

function countSaid(words: number, { holes }: PieceNow): string {
  const n = holes.length;
  if (words === 0) return 'Nothing is typed yet.';
  if (words > n)
    return `${many(words, 'word')}, and the piece has ${many(n, 'hole')}. Enter again if it has ${words}.`;
  const held = names(holes.slice(0, words).filter(isHeld));
  const rest = names(holes.slice(words).filter((h) => h.state !== 'out'));
  const inside = [...held, ...rest];
  const these = held.length === 0 ? 'these are out' : 'the others are out';
  const still = `${list(inside)} ${inside.length === 1 ? 'is' : 'are'} still in`;
  const said = inside.length === 0 ? these : `${these}, and ${still}`;
  return `${words} of ${n} typed so far. Enter again: ${said}. Another number of holes: Esc, k, its bolts.`;
}

function drawRow({ state, piece, step, words }: OnRow): Page {
  const typed = drawField(step.field, state.columns - PROMPT.length);
  const how = piece.spec.map === null ? ", clockwise from 12 o'clock" : ', hole by hole';
  const held = names(staysIn(piece));
  const inside = words
    .filter((w) => w.word === STILL_IN || held.includes(w.hole))
    .map((w) => w.hole);
  const prompt = line(PROMPT, typed.line);
  return {
    kind: 'plain',
    left: line(bold(piece.spec.name)),
    right: line('coming off'),
    under: line(counted(words, piece)),
    above: [line(`How it came out${how}`), line(SIGNS_SAID), prompt, []],
    middle: (columns, rows) => {
      const table = columnsOf(words, piece, columns);
      const last = table.findLastIndex((l) => l.filled);
      return [
        ...linesAround(
          table.map((l) => l.line),
          Math.max(0, last),
          Math.max(2, rows),
        ),
        ...rowMap(words, piece, columns, rows - table.length),
      ];
    },
    spoken: () => words.map(({ hole, word }) => line(`${hole}: ${word}`)),
    say: [
      ...underLines(words, state.columns),
      ...(inside.length > 0
        ? wrap(`STOP before you pry: ${list(inside)} still in.`, state.columns, {
            colour: 'red',
            bold: true,
          })
        : []),
      ...wrap(step.say ?? newSaid(words), state.columns, { bold: true }),
    ],
    cursor: { line: prompt, column: PROMPT.length + typed.column },
  };
}

const PROMPT = '> ';
const SIGNS_SAID = '! still in   - found empty   ? out, and nobody knows which';

/** `8 of 9 out; 7 stuck`. */
function counted(words: readonly TypedWord[], piece: PieceNow): string {
  const n = Math.max(piece.holes.length, words.length);
  const out = Array.from({ length: n }, (_, i) => i).filter((i) =>
    isOut(piece.holes[i], words[i], piece),
  ).length;
  const held = staysIn(piece).map((h) => `${h.name} ${troubleOf(h.trouble ?? 'stuck').said}`);
  return n === 0 ? '' : [`${out} of ${n} out`, ...held].join('; ');
}

/** Noted as what will not come: a row says nothing of it, unless the piece has that bolt alone. */
function staysIn({ holes }: PieceNow): HoleNow[] {
  return holes.length > 1 ? holes.filter(isHeld) : [];
}

/** Said to be out by its word, or noted as out before. */
function isOut(hole: HoleNow | undefined, typed: TypedWord | undefined, piece: PieceNow): boolean {
  if (hole && staysIn(piece).includes(hole)) return false;
  return hole?.state === 'out' || (typed !== undefined && typed.word !== STILL_IN);
}

function newSaid(words: readonly TypedWord[]): string {
  const fresh = [...new Set(words.filter((w) => w.isNew).map((w) => w.word.split('+')[0] ?? ''))];
  if (fresh.length === 0) return '';
  return `${list(fresh)}: new in this job.`;
}

/** `4 + clip   7 + copper washer`: what is said to lie under a head, and where it is not said yet. */
function underLines(words: readonly TypedWord[], columns: number): Line[] {
  const said = words.flatMap((w) => {
    const [, ...unders] = w.word.split('+');
    if (unders.length === 0) return [];
    const what = unders.filter((u) => u !== '').map(sayUnder);
    return [`${w.hole} + ${what.length === 0 ? '?' : what.join(' + ')}`];
  });
  return said.length === 0 ? [] : [cutTo(line(said.join('    ')), columns)];
}

/** Numbers over words, in as many pairs of lines as are needed. */
function columnsOf(
  words: readonly TypedWord[],
  piece: PieceNow,
  columns: number,
): { line: Line; filled: boolean }[] {
  const names = piece.holes.map((h) => h.name);
  const holes = words.length > names.length ? words.map((w, i) => names[i] ?? w.hole) : names;
  const short = (w: TypedWord | undefined) => (w === undefined ? '_' : shortWord(w));
  const room = 2 + Math.max(1, ...holes.map((h) => width(h)), ...words.map((w) => width(short(w))));
  const each = Math.max(1, Math.floor(columns / room));
  const lines: { line: Line; filled: boolean }[] = [];
  for (let i = 0; i < holes.length; i += each) {
    const part = holes.slice(i, i + each);
    const numbers = part.flatMap((h) => pad(line(h), room));
    const kinds = part.flatMap((_, k) => pad(line(bold(short(words[i + k]))), room));
    lines.push({ line: numbers, filled: false });
    lines.push({ line: kinds, filled: words.length > i });
    lines.push({ line: [], filled: false });
  }
  return lines;
}
