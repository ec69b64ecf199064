/** Texts about what is known: what is true where something else is printed, and what nobody has written down yet. */
import { truthFault } from '../../job/truth/corrections.ts';
import { asksOf, labelOf, namesPieces } from '../../model/keys/known-keys.ts';
import type { Job, Wish } from '../../model/types.ts';
import { knownRows } from '../../plan/known/rows.ts';
import { figureLabel } from '../../plan/known/words.ts';
import { readDuration } from '../../plan/time/duration.ts';
import { namesOffered, typedNames } from '../../plan/typed/names.ts';
import type { Put } from '../../plan/typed/runs.ts';
import { typedRuns } from '../../plan/typed/runs.ts';
import type { KnownAsks } from '../base/asks.ts';
import { requestMark, say, show, stay } from '../base/moves.ts';
import type { MadeMark } from '../base/screen.ts';
import type { State, Updated } from '../base/state.ts';
import { bothSaid } from '../kit/both.ts';

/** The field stays until the mark is on disk: what was typed is there still, should it be refused. */
export function doneKnown(state: State, below: State, asks: KnownAsks, text: string): Updated {
  if (asks.ask === 'truth') return truth(state, below, asks, text);
  const { open, view } = state;
  if (!open || view.screen !== 'field' || text === '') return stay(below);
  const puts = readPuts(open.job, asks, text);
  if ('fault' in puts) return withFault(state, puts.fault);
  const [first, ...more] = puts.puts;
  if (!first) return stay(below);
  const asked: State = { ...state, view: { ...view, asks: { ...asks, more, say: null } } };
  return requestMark(asked, { do: 'write', piece: asks.piece, ...first });
}

function truth(
  state: State,
  below: State,
  { figure }: Extract<KnownAsks, { ask: 'truth' }>,
  text: string,
): Updated {
  if (text === '') return withFault(state, NOTHING);
  if (text === figure.text) return say(below, 'Left as it is.');
  const fault = timeFault(figure.what, text) ?? truthFault(figure.what, text);
  if (fault !== null) return withFault(state, fault);
  const { what, piece, hole, task, text: printed } = figure;
  const of = {
    ...(piece === undefined ? {} : { piece }),
    ...(hole === undefined ? {} : { hole }),
    ...(task === undefined ? {} : { task }),
  };
  return requestMark(state, { do: 'correct', ...of, what, printed, truth: text });
}

/** The file would take any words, but only a time can be planned with. */
function timeFault(what: string, text: string): string | null {
  const unread = what === 'takes' && readDuration(text) === null;
  return unread ? 'That is no time yet: 20 min, 1 h.' : null;
}

const NOTHING = 'Something is true here: write it, or "none" where there is nothing to it.';

/** The question again, with what is wrong and what was typed. */
export function withFault(state: State, fault: string): Updated {
  const { view } = state;
  if (view.screen !== 'field') return say(state, fault);
  const { asks } = view;
  if (asks.ask !== 'truth' && asks.ask !== 'write') return say(state, fault);
  return show(state, { ...view, asks: { ...asks, say: fault } });
}

function readPuts(
  job: Job,
  { piece, key, runs }: Extract<KnownAsks, { ask: 'write' }>,
  text: string,
): { puts: Put[] } | { fault: string } {
  if (runs) return { puts: typedRuns(text) };
  if (!namesPieces(key)) {
    const fault = timeFault(key, text);
    return fault === null ? { puts: [{ key, text }] } : { fault };
  }
  const names = typedNames(text, job, piece);
  return 'fault' in names ? names : { puts: names.keys.map((name) => ({ key, text: name })) };
}

// ---------------------------------------------------------------- after a mark

type Text = Extract<Wish, { do: 'write' | 'correct' }>;

/** Back where it was asked, now showing what is true and what is printed. */
export function afterText(state: State, { wish, entry }: MadeMark<Text>): Updated {
  const { view } = state;
  if (view.screen !== 'field') return say(state, 'Noted.');
  const { asks, under } = view;
  if (asks.ask === 'write' && asks.more.length > 0) {
    const [next, ...more] = asks.more;
    const left: State = { ...state, view: { ...view, asks: { ...asks, more } } };
    if (next) return requestMark(left, { do: 'write', piece: asks.piece, ...next });
  }
  const back = under.screen === 'known' && under.first.length > 0 ? under.under : under;
  const quiet = entry ? saidOf(state, wish) : 'So it stands already.';
  return say(marked({ ...state, view: back }, wish), quiet);
}

function saidOf({ open }: State, wish: Text): string {
  if (wish.do === 'correct') return `Noted: ${wish.truth}`;
  const named = namesPieces(wish.key) ? open?.job.pieces.get(wish.text)?.spec.name : null;
  return `${labelOf(wish.key)}: ${named ?? wish.text}`;
}

/** The row that was written is marked, on a page that shows it. */
function marked(state: State, wish: Text): State {
  const { view, open } = state;
  if (view.screen !== 'known' || !open || wish.do !== 'write') return state;
  const row = knownRows(open.job, view.of).findLast((r) => r.said && r.write === wish.key);
  return row ? { ...state, view: { ...view, here: row.id } } : state;
}

// ---------------------------------------------------------------- picture

export function questionKnown(state: State, asks: KnownAsks): string[] {
  const say = asks.say ?? '';
  const job = state.open?.job;
  if (asks.ask === 'truth') {
    const { figure } = asks;
    return [
      'What is true here?',
      `${figureLabel(figure)}: ${bothSaid(figure.text, figure.printed)}`,
      ...(figure.what === 'torque' ? ['And where that stands: 8 N·m, bulletin 12.'] : []),
      'Both are shown from then on, the printed one struck.',
      say,
    ];
  }
  if (asks.runs) {
    return [
      'How does it run?',
      'Behind the starter cable, over the frame tube. It may stay empty.',
      'Marked too? over the frame tube; marks: blue paint.',
      say,
    ];
  }
  const names = namesPieces(asks.key) && job ? namesOffered(job, asks.piece) : '';
  return [...asksOf(asks.key), names, say];
}
