/** What reading files leads to: the job, its note after days away, its faults; and the way back to the bench. */

import { daysBetween } from '../../model/time.ts';
import type { Job } from '../../model/types.ts';
import { backNow } from '../../plan/next/back.ts';
import { isUnderWay, lastMark } from '../../plan/order/job-now.ts';
import { dropDraft, JOB_DRAFT } from './drafts.ts';
import { enterPiece } from './enter.ts';
import { say, show, stay } from './moves.ts';
import type { BenchRow, Happening, State, Unsaved, Updated } from './state.ts';

/** The bench as it is now; a job that was opened by itself has none. */
export function toBench(state: State): Updated {
  if (!state.bench) return say(state, 'This is the job. Every mark is on disk.');
  const here = state.open?.file ?? null;
  return {
    state: { ...state, view: { screen: 'bench', here }, waiting: { for: 'bench' } },
    effects: [{ do: 'list', folder: state.bench.folder }],
  };
}

/** Nothing is off, but something was left inside, or a test is due. */
function isDue(job: Job, now: string): boolean {
  return job.inside.length > 0 || backNow(job, now).due.length > 0;
}

const BROKEN = 'The file was changed and cannot be read just now.';

const JOB_TYPED = 'What you were typing of a new job is kept: + goes on with it.';

const HALF_TYPED = 'A text you were typing is kept, and stands where you left it.';

/** A mark that an earlier sitting could not save: only a person says whether it still is to be made. */
export const LEFT: Unsaved = {
  code: 'left',
  say: 'This mark was not in the file when putback last ended.',
  fix: 'Is it still so? Then save it now.',
};

/** After so many days away a job opens with the note of where it stands. */
const AWAY = 1;

export function fileRead(
  state: State,
  {
    file,
    read,
    wrenches,
    hour,
    hours,
    starts,
    say: told,
    half,
    unmade,
  }: Extract<Happening, { on: 'file' }>,
): Updated {
  const asked = state.waiting?.for === 'file' && state.waiting.file === file;
  const goes = state.waiting?.for === 'file' ? (state.waiting.piece ?? null) : null;
  const now: State = asked ? { ...state, waiting: null } : state;
  if (!asked && now.open?.file !== file) return stay(now);
  if (!read.ok) {
    // Somebody is editing the file: until it can be read again, what was read last stays on the screen.
    if (!asked) return say(now, BROKEN);
    // What was typed is a draft still, and stands where it was typed.
    if (unmade && 'unread' in read) {
      const { say: why, fix } = read.unread;
      return { ...say(now, `No job was started. ${why} ${fix} ${JOB_TYPED}`), effects: [] };
    }
    return { ...show(now, { screen: 'faults', file, read }), effects: [] };
  }
  const begun = state.waiting?.for === 'file' && state.waiting.starts === true;
  const opened: State = {
    ...(asked && begun ? dropDraft(now, JOB_DRAFT) : now),
    open: { file, job: read.job },
    wrenches: wrenches ?? now.wrenches,
    // Texts of another job are kept with that.
    drafts: now.open?.file === file ? now.drafts : (half?.drafts ?? {}),
    hour: hour === undefined ? now.hour : hour,
    hours: hours === undefined ? now.hours : hours,
    starts: starts ?? now.starts,
  };
  // It can be read again, so the message that it could not goes away.
  const before = opened.quiet === BROKEN ? null : opened.quiet;
  if (!asked) return stay({ ...opened, quiet: told ?? before });
  const warned = read.faults[0];
  const typed =
    now.open?.file !== file && Object.keys(opened.drafts).length > 0 ? HALF_TYPED : null;
  const quiet =
    told ??
    typed ??
    (warned ? `Line ${warned.line} of the file: ${warned.say.replace(/:$/, '')}.` : null);
  const last = lastMark(read.job);
  const away = last !== null && daysBetween(last, state.now) >= AWAY;
  const back = away && (isUnderWay(read.job) || isDue(read.job, state.now));
  const known: State = { ...opened, quiet, earlier: null };
  const there = goes !== null && read.job.pieces.has(goes) ? enterPiece(known, goes) : null;
  const shown = there ?? show(known, back ? { screen: 'note' } : { screen: 'job', here: null });
  const wish = half?.wish ?? null;
  if (wish === null) return { ...shown, effects: [...shown.effects, { do: 'earlier', file }] };
  const under = shown.state.view;
  return { ...show(shown.state, { screen: 'unsaved', wish, why: LEFT, under }), effects: [] };
}

export function earlierRead(
  state: State,
  { file, before, older }: Extract<Happening, { on: 'earlier' }>,
): Updated {
  if (state.open?.file !== file) return stay(state);
  return stay({ ...state, earlier: before.length === 0 ? null : { file, before, older } });
}

export function benchRead(state: State, jobs: readonly BenchRow[], more = 0): Updated {
  if (!state.bench) return stay(state);
  const asked = state.waiting?.for === 'bench';
  // Whoever pressed a key before a row could be seen meant a row of the whole list.
  const goesOn = asked && (more === 0 || state.ahead.length === 0);
  const now: State = {
    ...state,
    bench: { ...state.bench, jobs, more },
    waiting: goesOn ? null : state.waiting,
  };
  if (asked && !goesOn) return stay(now);
  if (now.view.screen !== 'wait') return stay(now);
  const typed = now.bench?.begun === undefined ? null : JOB_TYPED;
  return show({ ...now, quiet: typed ?? now.quiet }, { screen: 'bench', here: null });
}
