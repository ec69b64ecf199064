/** What it may be, what is cleared and by what, and what to look at next; and the marks of looks. */
import { openTries } from '../../job/fold/tries.ts';
import { readCheckLine, readSuspectLine } from '../../job/form/typed-trace.ts';
import { meant } from '../../job/judge/base/verdict.ts';
import {
  type Job,
  LOOKED,
  type Looked,
  OLD_PARTS,
  type OldPart,
  TRIED,
  type Tried,
  type Wish,
} from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { foundWish } from '../../plan/trace/found.ts';
import * as say from '../../plan/trace/say.ts';
import { checkSaid, type Traced, traced } from '../../plan/trace/traced.ts';
import { type Answer, answer, type Call, misuse, optionText } from '../base/command.ts';
import { beside, mark } from '../base/mark.ts';
import { openJob } from '../base/open-job.ts';

export function run(call: Call): Answer | Promise<Answer> {
  const [file = '', name, how] = call.words;
  const opened = openJob(file, call.world);
  if ('answer' in opened) return opened.answer;
  const { job } = opened;
  const typed = typedWish(call, job);
  if (typed) return 'exit' in typed ? typed : mark(call, typed, noted);
  if (name === undefined) return answerOf(job);
  const wish = wishOf(call, job, name, how);
  return 'exit' in wish ? wish : mark(call, { ...wish, ...beside(call) }, noted);
}

/** Behind a mark: what is left, and the next look. */
function noted({ job }: { job: Job }): string {
  const now = traced(job);
  const { conflict } = now.answer;
  const odd = conflict ? say.conflictSaid(job, conflict) : [];
  return [...leftSaid(job, now), ...nextSaid(job, now), ...odd].join('\n');
}

function leftSaid(job: Job, now: Traced): string[] {
  const left = now.answer.suspects.filter(({ cleared }) => cleared.length === 0);
  if (left.length === 0) return [];
  return [`Left: ${list(left.map(({ name }) => say.suspectSaid(job, name)))}.`];
}

/** A line that lists one more suspect or check. */
function typedWish(call: Call, job: Job): Wish | Answer | null {
  const [suspect, check] = [optionText(call, 'suspect'), optionText(call, 'check')];
  if (suspect === undefined && check === undefined) return null;
  if ((suspect !== undefined && check !== undefined) || call.words.length > 1) {
    return misuse('usage', 'One line at a time: --suspect LINE, or --check LINE.');
  }
  const read =
    suspect === undefined
      ? readCheckLine(check ?? '', job.upper, [...job.upper.suspects.keys()])
      : readSuspectLine(suspect, job.upper);
  if ('say' in read) return misuse('bad-line', read.say);
  return { do: 'list', section: suspect === undefined ? 'checks' : 'suspects', ...read };
}

/** What a word behind a check or a suspect notes. */
function wishOf(call: Call, job: Job, name: string, how: string | undefined): Wish | Answer {
  const { checks, suspects } = job.upper;
  const reading = optionText(call, 'reading');
  const [put, old] = [optionText(call, 'put'), optionText(call, 'old')];
  if (old !== undefined && !(OLD_PARTS as readonly string[]).includes(old))
    return misuse('bad-word', '--old back, or --old out.');
  const ofSuspect = how === 'found' || how === 'same' || how === 'gone' || put !== undefined;
  if (!ofSuspect && old === undefined && checks.has(name)) {
    if (how === undefined && reading === undefined) {
      return misuse(
        'usage',
        `How did it come out? ${list(LOOKED, 'or')}, or --reading with its figure.`,
      );
    }
    if (how !== undefined && !(LOOKED as readonly string[]).includes(how)) {
      return misuse('bad-word', `A look is ${list(LOOKED, 'or')}, not ${how}.`);
    }
    const said = how === undefined ? {} : { how: how as Looked };
    return { do: 'look', check: name, ...said, ...(reading === undefined ? {} : { reading }) };
  }
  if (!suspects.has(name)) {
    const known = [...checks.keys(), ...suspects.keys()];
    return misuse(
      'no-such-check',
      `No check or suspect ${name} in this job.${meant(name, known)}`,
      {
        check: name,
      },
    );
  }
  if (how === 'found') return foundWish(job, name);
  if (put !== undefined) return { do: 'try', suspect: name, put };
  if (how === undefined ? old === undefined : !(TRIED as readonly string[]).includes(how)) {
    return misuse(
      'bad-word',
      `${name} is a suspect: found; or --put TEXT for what was put in to try, then same, gone or unclear.`,
    );
  }
  const went = how === undefined ? {} : { how: how as Tried };
  return {
    do: 'tried',
    suspect: name,
    ...went,
    ...(old === undefined ? {} : { old: old as OldPart }),
  };
}

function nextSaid(job: Job, now: Traced): string[] {
  const { next, answer: a } = now;
  if (!next || now.mending) return say.endSaid(job, now);
  const { good, bad } = say.outcomesSaid(job, next, now.next !== a.next);
  const { unit } = a.expected;
  return [
    `Look next: ${next.check}: ${checkSaid(job, next.check)} (${say.takesSaid(job, next.check, next.minutes, unit)})`,
    `  good: ${good}`,
    `  bad:  ${bad}`,
    ...say.onceMoreSaid(now).map((line) => `  ${line}`),
    ...say.needsSaid(job, next).map((line) => `  ${line}`),
  ];
}
function answerOf(job: Job): Answer {
  const now = traced(job);
  const { answer: a, next } = now;
  const { unit, ratio, ...expected } = a.expected;
  const json = {
    suspects: [
      ...a.suspects,
      ...now.found.map(({ suspect }) => ({ name: suspect, share: 'found', cleared: [] })),
    ],
    next: next && { check: next.check, minutes: next.minutes, good: next.good, bad: next.bad },
    expected,
    order: a.order,
    conflict: a.conflict && { diagnoses: a.conflict.diagnoses, doubts: a.conflict.doubts },
    ...{ unit, ratio, opens: next?.opens ?? [], needs: next ? say.needsSaid(job, next) : [] },
    ...{ way: a.way, again: a.conflict?.again ?? null, untimed: a.untimed },
    looks: now.looks,
    tries: openTries(job),
    found: now.found.map(({ suspect, at, id, proved }) => ({ suspect, at, id, proved })),
    proof: now.proof,
    ...{ proved: now.proved, complaint: now.complaint },
  };
  return answer(json, textOf(job, now));
}

function textOf(job: Job, now: Traced): string {
  const rows = say.traceRows(job, now);
  const wide = Math.max(...rows.map(({ share }) => share.length), 0);
  const { way, expected, conflict } = now.answer;
  const after = way && now.next === now.answer.next ? say.waySaid(job, way, expected.unit) : [];
  const paragraphs = [
    rows.map(({ name, share, what, by }) => {
      return `${share.padEnd(wide)}  ${name}: ${what}${by === null ? '' : ` (${by})`}`;
    }),
    openTries(job).map(({ suspect, put, how }) => {
      const went = how === null ? 'how did it go?' : 'did the old one go back?';
      return `${put} is in for ${say.suspectSaid(job, suspect)}: ${went}`;
    }),
    nextSaid(job, now),
    after.length > 2 ? ['After that:', ...after.map((line) => `  ${line}`)] : [],
    now.next && now.next === now.answer.next
      ? [say.expectedSaid(now), say.untimedSaid(job, now)].filter((line) => line !== '')
      : [],
    conflict ? say.conflictSaid(job, conflict) : [],
    say.besideSaid(job, now),
  ];
  return paragraphs
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}
