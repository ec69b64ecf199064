/** What earlier jobs on this machine know, and what of it is taken over. */
import { readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { sayTaken } from '../../job/fold/say-taken.ts';
import { record } from '../../job/save/record.ts';
import { type Earlier, earlierJobs, type Jobs } from '../../memory/bench/earlier.ts';
import { type LastTime, lastTime, lastWith, quietOf } from '../../memory/last.ts';
import { learntFrom } from '../../memory/learnt.ts';
import { ABOUTS } from '../../memory/remember.ts';
import { sayLeft, takeOver, truthsFor } from '../../memory/take.ts';
import { near } from '../../model/nearword.ts';
import { quoted, safe } from '../../model/safe.ts';
import type { Correction, Job } from '../../model/types.ts';
import { many } from '../../model/words.ts';
import { nowHere } from '../../world.ts';
import { type Answer, answer, type Call, misuse, optionText } from '../base/command.ts';
import { mark } from '../base/mark.ts';
import { openJob, unknownPiece } from '../base/open-job.ts';
import { noteUnread } from '../base/unread.ts';

export async function run(call: Call): Promise<Answer> {
  const [name = '', key] = call.words;
  const opened = openJob(name, call.world);
  if ('answer' in opened) return opened.answer;
  const { job, file } = opened;
  if (key !== undefined && !job.pieces.has(key)) return unknownPiece(key, job);
  const theirs = optionText(call, 'their');
  const all = earlierJobs(file, job);
  const from = optionText(call, 'from');
  const jobs = from === undefined ? all.jobs : all.jobs.filter((j) => j.file === basename(from));
  if (from !== undefined && jobs.length === 0) return noSuchJob(from, all);
  if (theirs !== undefined && !jobs.some((j) => j.job.pieces.has(theirs)))
    return noSuchPiece(theirs, jobs);
  if (call.options.take === true) return await takeLast(call, job, jobs, file, key, theirs);
  const of = {
    ...(key === undefined ? {} : { piece: key }),
    ...(theirs === undefined ? {} : { theirs }),
  };
  for (const earlier of jobs)
    noteUnread(call.world, join(dirname(name), earlier.file), earlier.job);
  const { known, maybe } = lastTime(job, jobs, of);
  const quiet = quietOf(job, jobs, nowHere(call.world), key);
  const json = {
    machine: job.upper.machine,
    quiet,
    jobs: jobs.map(jobJson),
    known: known.map(knownJson),
    maybe,
    older: all.older,
    unread: all.unread,
  };
  const nothing = known.length === 0 && maybe.length === 0;
  const lines = nothing ? [none(job, jobs)] : saidByPiece(job, known);
  for (const m of maybe) {
    const holes = many(m.holes, 'hole');
    lines.push(`Is ${m.piece} the ${m.name} of ${m.job} (${holes})? Then: --their ${m.theirs}`);
  }
  if (all.older > 0) lines.push(`${many(all.older, 'older job')} on this machine not looked at.`);
  for (const f of all.unread)
    lines.push(`Not read: ${f}. putback check ${quoted(join(dirname(name), f))} says why.`);
  return { ...answer(json, lines.join('\n')), exit: nothing ? 1 : 0 };
}

function jobJson({ file, job: { upper }, same, day }: Earlier) {
  return { file, job: upper.job, machine: upper.machine, same, day };
}

function knownJson({ about, mine, theirs, hole, text, day, job, file, id }: LastTime) {
  return { about, piece: mine, theirs, hole, text, day, job, file, id };
}

function none(job: Job, jobs: readonly Earlier[]): string {
  if (job.upper.machine === null && job.upper.machineId === null && job.upper.like.length === 0)
    return 'This job names no machine: write machine: into its file.';
  if (jobs.length === 0) return `No other job on ${job.upper.machine ?? 'this machine'} here.`;
  return `${many(jobs.length, 'earlier job')} on this machine, and nothing that was learnt.`;
}

function saidByPiece(job: Job, known: readonly LastTime[]): string[] {
  const groups = Map.groupBy(known, (k) => k.mine);
  return [...groups].flatMap(([key, all]) => {
    const name = key === null ? 'Elsewhere on it' : (job.pieces.get(key)?.spec.name ?? key);
    const width = Math.max(...all.map((k) => ABOUTS[k.about].length));
    return [
      name,
      ...all.map((k) => {
        const when = [k.job, k.day].filter((t) => t !== null).join(', ');
        return `  ${ABOUTS[k.about].padEnd(width)}  ${k.text}   (${when})`;
      }),
    ];
  });
}

function noSuchJob(from: string, { jobs }: Jobs): Answer {
  const names = jobs.map((j) => j.file);
  const say = `${from} is no earlier job on this machine. ${hint(from, names)}`;
  return misuse('no-such-job', say, { file: from });
}

function noSuchPiece(theirs: string, jobs: readonly Earlier[]): Answer {
  const names = [...new Set(jobs.flatMap((j) => [...j.job.pieces.keys()]))];
  const say = `No earlier piece ${theirs}. ${hint(theirs, names)}`;
  return misuse('no-such-piece', say, { piece: theirs });
}

/** The name that may have been meant, or all there are. */
function hint(said: string, names: readonly string[]): string {
  const close = near(said, names);
  return close ? `Did you mean ${close}?` : `There are ${names.join(', ') || 'none'}.`;
}

async function takeLast(
  call: Call,
  job: Job,
  jobs: readonly Earlier[],
  file: string,
  key: string | undefined,
  theirs: string | undefined,
): Promise<Answer> {
  const piece = key === undefined ? undefined : job.pieces.get(key);
  if (key === undefined || !piece)
    return misuse('usage', 'Which piece? --take goes piece by piece.');
  const found = lastWith(piece, jobs, theirs);
  const source = found && jobs.find((j) => j.file === found.before.file);
  if (!found || !source) {
    const { maybe } = lastTime(job, jobs, { piece: key });
    const which = maybe.map((m) => `--their ${m.theirs} (${m.name}, ${many(m.holes, 'hole')})`);
    const say =
      which.length === 0
        ? `No earlier job on this machine has ${key}.`
        : `Which one is it? ${which.join('; ')}`;
    return {
      exit: 1,
      json: { ok: false, refused: { code: 'which-piece', say, maybe } },
      text: '',
      error: say,
    };
  }
  noteUnread(call.world, join(dirname(call.words[0] ?? ''), source.file), source.job);
  const text = readFileSync(file, 'utf8');
  const learnt = learntFrom(source.text, source.job);
  const { pairs, left } = takeOver(text, job, key, learnt, found.piece.spec.key);
  const what = truthsFor(job, key, source.job, found.piece.spec.key);
  const wish = {
    do: 'take',
    piece: key,
    from: source.file,
    pairs,
    truths: what.length > 0,
  } as const;
  const made = await mark(call, wish, (result) => {
    const of = `${source.job.upper.job}${source.day === null ? '' : `, ${source.day}`}`;
    return `Taken over from ${of} (${source.file}): ${result.entry ? sayTaken(result.entry) : ''}. putback undo takes it back.`;
  });
  const id = typeof made.json.id === 'string' ? made.json.id : null;
  const corrected = id === null ? [] : await truths(call, file, key, id, what);
  const paths = pairs.map(({ path }) => path.join('.'));
  // What comes along as not so is not left behind.
  const stay = left.filter((l) => !corrected.some((c) => c.what === l.key));
  const stays = stay.length === 0 ? '' : `\n${safe(sayLeft(stay))}`;
  return {
    ...made,
    json: { ...made.json, from: source.file, taken: paths, corrected, left: stay },
    text: [made.text + (made.exit === 0 ? stays : ''), ...corrected.map((c) => c.say)].join('\n'),
  };
}

interface Corrected {
  what: string;
  truth: string;
  printed: string;
  say: string;
}

/** What this file prints as the earlier one did, and was not so there: each a correction, all taken back with the mark `came`. */
async function truths(
  call: Call,
  file: string,
  piece: string,
  came: string,
  what: readonly Correction[],
): Promise<Corrected[]> {
  const all: Corrected[] = [];
  for (const { what: key, printed, says: truth, hole } of what) {
    const of = { piece, ...(hole === undefined ? {} : { hole }), what: key, printed, truth, came };
    const done = await record(file, { do: 'correct', ...of }, call.world);
    const say = done.ok
      ? `Not as printed, as last time: ${key}, ${truth} (printed ${printed}).`
      : `Not taken over: ${key}, ${truth}. putback correct says why.`;
    if (!done.ok || done.changed) all.push({ what: key, truth, printed, say });
  }
  return all;
}
