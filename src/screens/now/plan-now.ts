/** What the plan says of a job at a time: kept with the job, which never changes, until the time does. */
import { type Hours, NO_HOURS } from '../../model/hours.ts';
import type { Job, Moment } from '../../model/types.ts';
import { type Buy, buyList } from '../../plan/buy/list.ts';
import { gateInWords } from '../../plan/gates/gate.ts';
import type { ItemInWords } from '../../plan/gates/items.ts';
import { type Back, backAfter } from '../../plan/next/back.ts';
import { type Plan, plan } from '../../plan/plan.ts';
import { type TestItem, testList } from '../../plan/tests/testlist.ts';

export type { ItemInWords as GateItem };

const kept = new WeakMap<Job, { now: string; answers: Map<string, unknown> }>();

/** The answer to a question that was asked of this job at this time before, or a new one. */
export function atTime<T>(job: Job, now: string, question: string, make: () => T): T {
  const last = kept.get(job);
  const known = last?.now === now ? last : { now, answers: new Map<string, unknown>() };
  if (known !== last) kept.set(job, known);
  if (!known.answers.has(question)) known.answers.set(question, make());
  return known.answers.get(question) as T;
}

export function backNow(job: Job, now: string, hours: Hours = NO_HOURS): Back {
  const question = hours === NO_HOURS ? 'back' : 'back in the hours of the bench';
  return atTime(job, now, question, () => backAfter(job, now, hours));
}

export function planNow(job: Job, now: string): Plan {
  return atTime(job, now, 'plan', () => plan(job, now));
}

export function buysNow(job: Job, now: string): Buy[] {
  return atTime(job, now, 'buys', () => buyList(job, now));
}

export function testsNow(job: Job, now: string): TestItem[] {
  return atTime(job, now, 'tests', () => testList(job, now));
}

/** The items of a gate. */
export function gateOf(job: Job, moment: Moment, piece: string | null, now: string): ItemInWords[] {
  const make = () => gateInWords(job, moment, piece, now);
  return atTime(job, now, `gate ${moment} ${piece ?? ''}`, make);
}
