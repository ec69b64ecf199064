/** May this entry be taken back? Not while later entries rest on it. */

import type { Edit, Entry, Job, Verdict } from '../../model/types.ts';
import { namesKinds, verbRow } from '../../model/verbs/verbs.ts';
import { printItem } from '../../piece/row.ts';
import { togetherWith } from '../diary/living.ts';
import { sayEntryOf } from '../fold/say-entry.ts';
import { isGoneKey, mendKey, proofKey } from '../form/trace-keys.ts';
import {
  already,
  list,
  refuse,
  type Stamp,
  type Undone,
  type UndoWay,
  type Wished,
  write,
  wrong,
} from './base/verdict.ts';
import { outBack } from './marks/out-back.ts';
import { addedBy } from './person/add.ts';
import { figuredBack } from './person/figures.ts';
import { renamedBack } from './person/rename.ts';
import { takeAgain, takeUndone } from './person/take.ts';
import { writtenBack } from './person/write.ts';
import { chosenBack } from './tasks/chosen.ts';
import { startedBy } from './tasks/start.ts';
import { tracedBack } from './tasks/trace.ts';

/** The latest entry that counts and takes nothing back itself, or what it came along with: what a plain undo is about. */
function latest(job: Job): Entry | null {
  const counts = job.entries.filter((e) => job.living.has(e.id) && e.verb !== 'undo');
  const last = counts.at(-1);
  return last ? togetherWith(last, counts) : null;
}

export function judgeUndo(job: Job, wish: Wished<'undo'>, stamp: Stamp): Verdict {
  const target = wish.id === undefined ? latest(job) : job.entries.find((e) => e.id === wish.id);
  if (!target) {
    if (wish.id === undefined) return wrong('nothing', 'There is nothing to take back.');
    return wrong('no-such-entry', `No entry ${wish.id} in the diary.`, { id: wish.id });
  }
  if (!job.living.has(target.id)) return already();
  const rest = restingOn(job, target);
  if (rest.length > 0 && wish.because === undefined) {
    const one = rest.length === 1;
    const named = rest.slice(-MOST_NAMED).map((e) => `${sayEntryOf(e, job)} (${e.id})`);
    const more = rest.length - named.length;
    const said = list([...named.reverse(), ...(more > 0 ? [`${more} more`] : [])]);
    const say = `On it ${one ? 'rests' : 'rest'}: ${said}. Take ${one ? 'that' : 'those'} back first.`;
    return refuse('depends', say, { ids: rest.map((e) => e.id) });
  }
  const meant = meantBy(job, target);
  if (meant.verb === 'taken' && !job.living.has(meant.id)) return takeAgain(meant);
  return write(stamp, wish, { verb: 'undo', value: target.id }, back(job, target));
}

/** So many that rest on a mark are named, the last ones first. */
const MOST_NAMED = 5;

/** What the undo does to the person's part. */
function back(job: Job, target: Entry): Partial<Undone> {
  const meant = meantBy(job, target);
  const way = job.living.has(meant.id) ? 'back' : 'again';
  switch (meant.verb) {
    case 'written':
      return writtenBack(job, meant, way);
    case 'taken':
      return takeUndone(meant);
    case 'renamed':
      return { edits: renamedBack(job, meant, way) };
    case 'out':
      return { edits: outBack(job, meant, way) };
    case 'settle':
      return { edits: settledBack(job, meant, way) };
    case 'chosen':
      return chosenBack(job, meant, way);
    case 'figured':
      return figuredBack(job, meant, way);
    case 'found':
    case 'listed':
      return tracedBack(job, meant, way);
    default:
      return {};
  }
}

/** A settled row goes back to what it said before, or forward again with a redo, if nobody changed it since. */
function settledBack(job: Job, settled: Entry, way: UndoWay): Edit[] {
  const hole = settled.hole?.[0];
  const piece = job.pieces.get(settled.piece ?? '');
  if (settled.was === undefined || !piece || hole === undefined) return [];
  const [was, word] = way === 'back' ? [settled.value, settled.was] : [settled.was, settled.value];
  const index = piece.holes.findIndex((h) => h.name === hole);
  const now = piece.spec.row?.[index];
  if (!now || printItem(now) !== was) return [];
  return [{ edit: 'row-word', piece: piece.spec.key, hole, index, was, word }];
}

/** Living entries behind it that would not stand, or would mean something else, without it. */
function restingOn(job: Job, target: Entry): Entry[] {
  const at = job.entries.indexOf(target);
  const on = meantBy(job, target);
  // What was marked on a task, a look or a thing to buy rests on the line that made it.
  const made = on.verb === 'written' ? addedBy(job, on) : null;
  const restsOn = (e: Entry) =>
    made
      ? e[MARKED_AS[made.section]] === made.key
      : restsOnMark(e, on) || restsOnTraced(job, e, on);
  const along = job.entries.filter((e) => e.came === on.id && job.living.has(e.id));
  const restsOnAny = (e: Entry) =>
    restsOn(e) ||
    along.some((one) => job.entries.indexOf(one) < job.entries.indexOf(e) && restsOnMark(e, one));
  return job.entries
    .slice(at + 1)
    .filter((e) => job.living.has(e.id) && !along.includes(e) && restsOnAny(e));
}

/** What an entry names one of them by. */
const MARKED_AS = { tasks: 'task', checks: 'check', buy: 'buy' } as const;

/** What an undo is about in the end: taking it back brings that entry back, or takes it away again. */
function meantBy(job: Job, entry: Entry): Entry {
  let on = entry;
  for (let steps = job.entries.length; on.verb === 'undo' && steps > 0; steps -= 1) {
    const id = on.value;
    on = job.entries.find((e) => e.id === id) ?? on;
  }
  return on;
}

function restsOnMark(later: Entry, on: Entry): boolean {
  if (later.verb === 'corrected') return corrects(later, on);
  // What names the kind by its new letter, or gives it another one.
  if (on.verb === 'renamed') {
    const letters = later.verb === 'renamed' ? [later.was ?? '', later.value] : kindsNamed(later);
    return letters.some((letter) => letter === on.value || letter === on.was);
  }
  // What was marked of its bolts rests on how many there are.
  if (on.verb === 'written' && on.value === 'bolts') {
    return later.piece === on.piece && !verbRow(later.verb).standsAlone;
  }
  if (verbRow(later.verb).standsAlone || verbRow(on.verb).standsAlone) return false;
  // How it went, and where the old part is, rest on what was put in.
  if (on.verb === 'tried') return later.verb === 'looked' && later.suspect === on.suspect;
  if (on.task !== undefined) return later.task === on.task;
  if (later.piece === undefined || later.piece !== on.piece) return false;
  // A trouble tells of its hole only; nothing of the piece as a whole rests on it.
  if (on.verb === 'state' && later.hole === undefined) return false;
  if (!later.hole || !on.hole) return true;
  return later.hole.some((h) => on.hole?.includes(h));
}

/**
 * Marks of a suspect or a check that was typed, and checks that were typed after it and name it; the tests that prove
 * what was found.
 */
function restsOnTraced({ printed }: Job, later: Entry, on: Entry): boolean {
  if (on.verb === 'found') {
    const { suspect = '' } = on;
    const { task = '' } = later;
    if (task === proofKey(suspect) || task === mendKey(suspect)) return true;
    return isGoneKey(task) && !!printed.tasks.get(task)?.after.includes(proofKey(suspect));
  }
  if (on.verb !== 'listed') return false;
  const brought = startedBy(on);
  if (brought.suspects.has(later.suspect ?? '') || brought.checks.has(later.check ?? ''))
    return true;
  if (on.suspect !== undefined && later.suspect === on.suspect) return true;
  if (on.check !== undefined && later.check === on.check) return true;
  if (later.verb !== 'listed') return false;
  const check = printed.checks.get(later.check ?? '');
  const named = [...(check?.along ?? []), ...(on.suspect === undefined ? [] : (check?.bad ?? []))];
  return named.includes(on.suspect ?? on.check ?? '');
}

function kindsNamed({ verb, value }: Entry): string[] {
  return namesKinds(verb) ? value.split(' ').map((word) => word.split('+')[0] ?? '') : [];
}

/** What was said to be true, or was put in, and then was corrected. */
function corrects(later: Entry, on: Entry): boolean {
  if (on.verb !== 'corrected' && on.verb !== 'written') return false;
  if (on.value !== later.value || on.piece !== later.piece || on.task !== later.task) return false;
  const same = on.hole === undefined || on.hole.some((h) => later.hole?.includes(h));
  return same && (on.says ?? '').trim() === (later.was ?? '').trim();
}
