/** Texts that are asked for about the whole job: what went in, what else is to be seen to. */

import { readCounter } from '../../bolt/read/counter.ts';
import { looksLikeLimit } from '../../bolt/read/reading-limit.ts';
import { noSuchDay } from '../../model/no-such-day.ts';
import { daysBetween } from '../../model/time.ts';
import { typedDate } from '../../model/typed-date.ts';
import { buysNow } from '../../plan/buy/list.ts';
import { buyWish } from '../../plan/buy/wish.ts';
import { coverSaid } from '../../plan/order/openings.ts';
import { taskSaid } from '../../plan/order/say.ts';
import { taskHere } from '../../plan/task/task-now.ts';
import { isJudged, resultWish } from '../../plan/task/task-wish.ts';
import { sayDate } from '../../plan/time/days.ts';
import { typedJob } from '../../plan/typed/job.ts';
import { minutesTyped } from '../../plan/typed/minutes.ts';
import type { JobAsks } from '../base/asks.ts';
import { JOB_DRAFT, keepDraft } from '../base/drafts.ts';
import { requestMark, say, show, stay } from '../base/moves.ts';
import type { State, Updated } from '../base/state.ts';
import { bothSaid } from '../kit/both.ts';

/** Minutes, where nobody says how many. */
const SHORT_WHILE = '20';

export function doneOfJob(state: State, below: State, asks: JobAsks, text: string): Updated {
  if (asks.ask === 'promised') return ordered(state, below, asks, text);
  if (asks.ask === 'misfit') {
    const buy = below.open && buysNow(below.open.job, below.now).find((b) => b.buy === asks.buy);
    const says = text === '' ? {} : { says: text };
    return buy ? requestMark(below, buyWish(buy, 'wrong', says)) : stay(below);
  }
  if (asks.ask === 'number') {
    const buy = below.open && buysNow(below.open.job, below.now).find((b) => b.buy === asks.buy);
    const says = text === '' ? {} : { says: `now ${text}` };
    return buy ? requestMark(below, buyWish(buy, 'superseded', says)) : stay(below);
  }
  if (asks.ask === 'result') {
    const now = below.open && taskHere(below.open.job, asks.task, below.now);
    if (!now || (text === '' && now.verb === 'decide')) return stay(below);
    const wish = resultWish(now, asks.how, text);
    if (wish) return requestMark(below, wish);
    if (state.view.screen !== 'field') return stay(below);
    const fault = 'Whether it passed is not said yet. Begin with “passed” or “failed”.';
    return show(state, { ...state.view, asks: { ...asks, say: fault } });
  }
  if (asks.ask === 'minutes') {
    const minutes = minutesTyped(text === '' ? SHORT_WHILE : text);
    if (minutes !== null) {
      return show(below, { screen: 'within', minutes, under: below.view });
    }
    if (state.view.screen !== 'field') return stay(below);
    const fault = 'That is no time yet: 20, 45 min, 1 h.';
    return show(state, { ...state.view, asks: { ...asks, say: fault } });
  }
  if (asks.ask === 'counter') {
    if (text === '') return stay(below);
    if (readCounter(text) !== null) return requestMark(state, { do: 'reading', reading: text });
    if (state.view.screen !== 'field') return stay(below);
    const fault = 'That is no reading yet: 41400 km, 25700 mi, 120 h.';
    return show(state, { ...state.view, asks: { ...asks, say: fault } });
  }
  if (asks.ask === 'covered') return covered(below, asks.piece, text);
  if (text === '') return stay(below);
  if (asks.ask === 'job') return startJob(state, below, text);
  const place = asks.piece === null ? {} : { piece: asks.piece };
  switch (asks.ask) {
    case 'inside':
    case 'cleared':
      return requestMark(below, { do: asks.ask, ...place, what: text });
    case 'add': {
      const { piece, hole, moment } = asks;
      return show(below, { screen: 'add', text, piece, hole, moment, under: below.view });
    }
  }
}

/** What went in is asked for before it closes; how it is covered is a note on it. Open, it is asked about again. */
function covered(below: State, piece: string, text: string): Updated {
  const said = coverSaid(text);
  if (said === null)
    return say(below, 'It stands open, and is asked about again. Look in before it closes.');
  return 'inside' in said
    ? requestMark(below, { do: 'inside', piece, what: said.inside })
    : requestMark(below, { do: 'note', piece, text: said.note });
}

/** Written, and opened. */
function startJob(state: State, below: State, text: string): Updated {
  const jobs = state.bench?.jobs ?? [];
  const { file, job, machine } = typedJob(
    text,
    jobs.map((j) => j.file),
  );
  if (file === null) {
    const { view } = state;
    if (view.screen !== 'field') return stay(below);
    const say = 'That makes no name for a file: letters or digits are wanted.';
    return show(state, { ...view, asks: { ask: 'job', say } });
  }
  return {
    state: { ...keepDraft(below, JOB_DRAFT, text), waiting: { for: 'file', file, starts: true } },
    effects: [{ do: 'start', file, job, machine }],
  };
}

/** Ordered, with the day for which it is promised; without one where nothing was said. */
function ordered(
  state: State,
  below: State,
  asks: Extract<JobAsks, { ask: 'promised' }>,
  text: string,
): Updated {
  const { open, view } = state;
  const buy = open && buysNow(open.job, state.now).find((b) => b.buy === asks.buy);
  if (!buy || view.screen !== 'field') return stay(below);
  const promised = text === '' ? null : typedDate(text, state.now);
  if (text !== '' && promised === null) {
    const fault =
      noSuchDay(text)?.say ?? 'That is no day yet: 25 April, 25.4., 5 days, 2026-04-25.';
    return show(state, { ...view, asks: { ...asks, say: fault } });
  }
  const odd = promised === null ? null : oddDay(promised, state.now);
  if (odd !== null && asks.say !== odd)
    return show(state, { ...view, asks: { ...asks, say: odd } });
  return requestMark(below, buyWish(buy, 'ordered', promised === null ? {} : { promised }));
}

/** A day that nobody is likely to have meant is read back before it counts; null: it is a usual one. */
function oddDay(day: string, now: string): string | null {
  const today = now.slice(0, 10);
  const far = daysBetween(today, day) > HALF_A_YEAR;
  if (day >= today && !far) return null;
  return `${sayDate(day, now)} is ${far ? `in ${daysBetween(today, day)} days` : 'over'}. Enter again if it is so.`;
}
const HALF_A_YEAR = 183;

export function questionOfJob(state: State, asks: JobAsks): string[] {
  if (asks.ask === 'promised') {
    return ['For when is it promised?', '25 April, 5 days. It may stay empty.', asks.say ?? ''];
  }
  if (asks.ask === 'misfit') {
    return ['Why does it not fit?', 'And its number: HL-1142 A, one hole less. It may stay empty.'];
  }
  if (asks.ask === 'number') {
    return ['Which number has it now?', 'As the shop has it: HL-1142-01. It may stay empty.'];
  }
  if (asks.ask === 'covered') {
    const name = state.open?.job.pieces.get(asks.piece)?.spec.name ?? asks.piece;
    return [
      `${name} has stood open over night: covered, plugged?`,
      'Foil over it. 2 rags, 1 plug: those are asked for before it closes.',
      'No, or nothing: it stands open. Look in before it closes.',
    ];
  }
  if (asks.ask === 'minutes')
    return ['How long have you?', '20, 45 min, 1 h. Nothing is 20.', asks.say ?? ''];
  if (asks.ask === 'counter')
    return ['What does its counter say?', '41400 km, 25700 mi, 120 h.', asks.say ?? ''];
  if (asks.ask === 'job') {
    return [
      'What is wrong, and with what?',
      'Left cover weeps oil, Hollin 400 Twin 1998. The machine stands behind a comma.',
      asks.say ?? '',
    ];
  }
  if (asks.ask === 'result') return resultAsked(state, asks);
  const piece = asks.piece === null ? null : state.open?.job.pieces.get(asks.piece)?.spec.name;
  const where = piece ? `, behind ${piece}` : '';
  switch (asks.ask) {
    case 'inside':
      return [
        `What goes in${where}?`,
        '2 rags, 1 plug. It is asked for before anything closes over it.',
      ];
    case 'cleared':
      return [`What came out again${where}?`, 'As it stands, or fewer: 1 rag.'];
    case 'add':
      return [
        asks.moment === null ? 'What is to be added?' : 'What else is to be seen to here?',
        asks.moment === null
          ? '6204 bearing. Spring, goggles! Chain slack 20..30 mm. What it is, is asked next.'
          : 'Washer under the clip. It is asked for at this gate from now on; or what else it is.',
      ];
  }
}

function resultAsked(state: State, asks: Extract<JobAsks, { ask: 'result' }>): string[] {
  const now = state.open && taskHere(state.open.job, asks.task, state.now);
  const job = state.open?.job;
  const said = job && now ? taskSaid(job, now).limit : null;
  const limit = said ? bothSaid(`Limit: ${said.text}.`, said.printed) : '';
  const fault = asks.say ?? '';
  if (asks.how === 'failed') return ['What did it show?', now?.say ?? '', limit];
  if (now?.verb === 'decide') return ['What is decided?', now.say];
  if (now?.verb === 'adjust') {
    return [
      'What was it, and what is it set to?',
      limit,
      'was 35, set 25; or 35 25. What else came of it behind a comma.',
    ];
  }
  if (now?.limit && looksLikeLimit(now.limit)) {
    return isJudged(now)
      ? ['What does it read?', now.say, limit]
      : ['What does it read? Did it pass?', now.say, limit, WORDED, fault];
  }
  if (now?.verb === 'test') return ['Passed, or failed?', now.say, limit, WORDED, fault];
  return ['What came of it?', now?.say ?? '', limit, 'It may stay empty.'];
}

const WORDED =
  '“passed, dry after 20 minutes” or “failed, a drop at 3”: that word, then what it showed.';
