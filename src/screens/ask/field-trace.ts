/** Texts about a fault: what it may be and what can be looked at, a reading, a part changed to try. */
import { readFigures } from '../../job/form/typed-figures.ts';
import { readCheckLine, readSuspectLine } from '../../job/form/typed-trace.ts';
import {
  type Job,
  LOOKED,
  type Named,
  type OldPart,
  type Tried,
  type Wish,
} from '../../model/types.ts';
import { oddFigure } from '../../plan/trace/odd-figure.ts';
import { suspectSaid } from '../../plan/trace/say.ts';
import { traced } from '../../plan/trace/traced.ts';
import { decidedWish } from '../../plan/trace/weigh-say.ts';
import { weighedOf } from '../../plan/trace/weighed.ts';
import type { TraceAsks } from '../base/asks.ts';
import { requestMark, say, show, stay } from '../base/moves.ts';
import type { MadeMark, WishTo } from '../base/screen.ts';
import type { State, Updated } from '../base/state.ts';
import { field } from '../kit/field.ts';

export function doneTrace(state: State, below: State, asks: TraceAsks, text: string): Updated {
  const job = below.open?.job;
  if (!job) return stay(below);
  switch (asks.ask) {
    case 'listed': {
      if (text === '') return afterEmpty(state, below, asks.of);
      const read = readLine(job, text, asks.of);
      return 'say' in read ? tracedFault(state, read.say) : requestMark(state, read);
    }
    case 'reading':
      if (text === '') return stay(below);
      return requestMark(state, readingWish(asks.check, text));
    case 'put':
      return text === ''
        ? stay(below)
        : requestMark(below, { do: 'try', suspect: asks.suspect, put: text });
    case 'left-so': {
      const { piece, what } = asks;
      const says = text === '' ? {} : { says: text };
      return requestMark(below, { do: 'choose', piece, what, answer: 'leave', ...says });
    }
    case 'leaving': {
      const of = weighedOf(job, asks.task, state.hour);
      return of ? requestMark(below, decidedWish(of, 'leave it', text)) : stay(below);
    }
    case 'figures': {
      const texts = readFigures(text);
      const odd = oddFigure(texts);
      if (odd !== null) return tracedFault(state, odd.say);
      return requestMark(below, { do: 'figures', task: asks.task, texts });
    }
    case 'went': {
      const read = wentTyped(text);
      if (text === '') return stay(below);
      if (!read)
        return tracedFault(state, 'Say same, gone or unclear; and back or stays: same, back.');
      return requestMark(below, { do: 'tried', suspect: asks.suspect, ...read });
    }
  }
}

/** The question again, with what is wrong and what was typed. */
export function tracedFault(state: State, fault: string): Updated {
  const { view } = state;
  if (view.screen !== 'field' || !('say' in view.asks)) return say(state, fault);
  return show(state, { ...view, asks: { ...view.asks, say: fault } });
}

/** Behind the suspects come the looks; behind those, and where nothing is suspected, it ends. */
function afterEmpty(state: State, below: State, of: 'suspects' | 'looks'): Updated {
  const { view, open } = state;
  const none = open === null || open.job.upper.suspects.size === 0;
  if (of === 'looks' || none || view.screen !== 'field') return stay(below);
  return show(state, {
    ...view,
    field: field(''),
    asks: { ask: 'listed', of: 'looks', say: null },
  });
}

/** With what it would show behind a colon it is a look; without one a suspect, or a look of which that is still to be said. */
function readLine(
  job: Job,
  text: string,
  of: 'suspects' | 'looks',
): Extract<Wish, { do: 'list' }> | { say: string } {
  const isLook = of === 'looks' || /:(?:\s|$)/.test(text);
  const section = isLook ? 'checks' : 'suspects';
  const read: Named | { say: string } = isLook
    ? readCheckLine(text, job.upper, numbered(job))
    : readSuspectLine(text, job.upper);
  return 'say' in read ? read : { do: 'list', section, ...read };
}

/** Suspects as the question numbers them. */
const numbered = (job: Job): string[] => [...job.upper.suspects.keys()];

const HOW = /^(good|bad|unclear)\b[\s,;:]*/i;

/** `0.4 ohm`; or with how it came out before it: `bad, 0.4 ohm`. */
function readingWish(check: string, text: string): Extract<Wish, { do: 'look' }> {
  const said = HOW.exec(text)?.[1]?.toLowerCase();
  const how = LOOKED.find((one) => one === said);
  const reading = text.replace(HOW, '');
  return {
    do: 'look',
    check,
    ...(how === undefined ? {} : { how }),
    ...(reading === '' ? {} : { reading }),
  };
}

/** `same, back`, `gone`, `unclear and the new one stays`. */
function wentTyped(text: string): { how?: Tried; old?: OldPart } | null {
  const words = text.toLowerCase().match(/[a-z]+/g) ?? [];
  const has = (...all: string[]) => all.some((word) => (words as string[]).includes(word));
  const how = has('same') ? 'same' : has('gone') ? 'gone' : has('unclear') ? 'unclear' : null;
  const old = has('back') ? 'back' : has('stays', 'out', 'in') ? 'out' : null;
  if (how === null && old === null) return null;
  return { ...(how === null ? {} : { how }), ...(old === null ? {} : { old }) };
}

/** The next line, in the same field; how many there are is said. */
export function afterListed(state: State, { wish }: MadeMark<WishTo<'list'>>): Updated {
  const { view } = state;
  if (view.screen !== 'field') return stay(state);
  const what = wish.section === 'suspects' ? 'It may be' : 'To look at';
  const said = wish.fields.what ?? wish.fields.check ?? wish.key;
  const next: State = {
    ...state,
    view: {
      ...view,
      field: field(''),
      asks: { ask: 'listed', of: wish.section === 'suspects' ? 'suspects' : 'looks', say: null },
    },
  };
  const all = [said, wish.fields.likely ?? []].flat();
  return say(next, `${what}: ${all.join(', ')}.`);
}

/** A look with its reading is noted: back to the trace, with what is next marked. */
export function afterReading(state: State, { entry }: MadeMark<WishTo<'look'>>): Updated {
  const { view, open } = state;
  if (view.screen !== 'field') return stay(state);
  const { under } = view;
  const back = under.screen === 'trace' ? { ...under, here: null, top: 0 } : under;
  const said = open?.job.upper.checks.get(entry?.check ?? '')?.check ?? '';
  return say({ ...state, view: back }, `${said}: ${entry?.result ?? ''}, ${entry?.value ?? ''}.`);
}

export function questionTrace(state: State, asks: TraceAsks): string[] {
  const job = state.open?.job;
  if (!job) return [];
  if (asks.ask === 'listed') {
    const all = [...job.upper.suspects.values()].map(({ what }, i) => `${i + 1} ${what}`);
    if (asks.of === 'looks') {
      return [
        'What can be looked at? A line each; an empty line ends the list.',
        'Behind a colon which of these would make it come out bad: Blue spark: 1 2, 3 min.',
        all.join('   '),
        asks.say ?? '',
      ];
    }
    return [
      'What may it be? A line each; behind an empty line come the looks.',
      'Coil open, rarely. Float leaks, often, 30 min.',
      ...(all.length === 0 ? [] : [all.join('   ')]),
      asks.say ?? '',
    ];
  }
  if (asks.ask === 'reading') {
    const check = job.upper.checks.get(asks.check);
    return [
      check?.check ?? asks.check,
      check?.limit
        ? `What was measured? Limit: ${check.limit}.`
        : 'What was measured or seen? Begin with good, bad or unclear.',
      asks.say ?? '',
    ];
  }
  if (asks.ask === 'left-so') return ['Why is it left?', asks.what, 'It may stay empty.'];
  if (asks.ask === 'leaving') {
    return ['Why is it left?', job.tasks.get(asks.task)?.spec.say.text ?? '', 'It may stay empty.'];
  }
  if (asks.ask === 'figures') {
    return [
      job.tasks.get(asks.task)?.spec.say.text ?? '',
      'What it costs now, and later; the chance that it fails before you are in here anyway; what touching it may break.',
      'now 12.50, 40 min; later 30, 3 h; chance 1 in 6; harm 1 in 20, 60.',
      'What is left out is not known; later is filled from the plan.',
      asks.say ?? '',
    ];
  }
  const what = suspectSaid(job, asks.suspect);
  if (asks.ask === 'put')
    return [`${what}: what was put in to try?`, 'New plug. Coil of the other one.'];
  const open = traced(job).looks.length;
  return [
    `${what}: how did it go with the new part in?`,
    'same, gone or unclear; and whether the old one is back, or the new one stays: same, back.',
    open === 0 ? '' : 'One thing at a time: with two changed nobody knows which it was.',
    asks.say ?? '',
  ];
}
