/** Photographs to the piece that was at hand when they were taken, by the camera's clock. */
import { dirname, resolve } from 'node:path';
import { findBench } from '../../diary/bench.ts';
import { errorCode } from '../../job/save/disk.ts';
import { failOf } from '../../job/save/fail.ts';
import { record } from '../../job/save/record.ts';
import { safe } from '../../model/safe.ts';
import type { Instant } from '../../model/time.ts';
import type { Job } from '../../model/types.ts';
import { list, many } from '../../model/words.ts';
import { type Camera, noPhotograph, readCamera } from '../../paper/desk/camera.ts';
import { copyBeside, noted, picturesIn } from '../../paper/desk/photo-files.ts';
import { notedOnes, sameAs } from '../../paper/desk/sweep.ts';
import { type AtHand, atHand, handled } from '../../plan/photos/at-hand.ts';
import { readShift, sayShot, takenAt } from '../../plan/photos/photo-time.ts';
import { type Answer, type Call, misuse, optionText, unsaved } from '../base/command.ts';
import { failed } from '../base/mark.ts';
import { openJob, unknownPiece } from '../base/open-job.ts';

interface Placed {
  picture: string;
  taken: string | null;
  piece: string | null;
  hole: string | null;
  id: string | null;
}
interface Unplaced {
  picture: string;
  taken: string | null;
  why: string;
  candidates: string[];
}

/** What is to be done with each picture, as the words and the bench say. */
interface Doing {
  call: Call;
  job: Job;
  file: string;
  /** Of this piece, whatever the clock says. */
  piece: string | undefined;
  hole: string | undefined;
  /** Seconds. */
  shift: number;
  copy: boolean;
  git: 'ignore' | 'add';
  /** From a camera's folder: only what was not noted before, and what falls into this job. */
  sweep: boolean;
  marks: ReturnType<typeof handled>;
  known: ReadonlySet<string>;
}

export async function run(call: Call): Promise<Answer> {
  const { world } = call;
  const [name = '', ...said] = call.words;
  const opened = openJob(name, world);
  if ('answer' in opened) return opened.answer;
  const { job, file } = opened;
  const [piece, hole] = [optionText(call, 'piece'), optionText(call, 'hole')];
  const wrong = wrongPlace(job, piece, hole);
  if (wrong) return wrong;
  const shiftSaid = optionText(call, 'shift') ?? '0s';
  const shift = readShift(shiftSaid);
  if (shift === null)
    return misuse('no-shift', `--shift ${shiftSaid} is no time, like 3m20s or -1h.`);
  const bench = findBench(dirname(file));
  const from = bench?.['photos-from'] ?? [];
  const sweep = said.length === 0;
  if (sweep && from.length === 0) {
    return misuse('usage', 'Which photographs? Name them, or say photos-from: in bench.yaml.');
  }
  const paths = sweep
    ? from.flatMap((folder) => picturesIn(resolve(bench?.folder ?? world.folder, folder)))
    : said.map((path) => resolve(world.folder, path));
  const [toCopy, toStay] = [call.options.copy === true, call.options.stay === true];
  const copy = toCopy || (!toStay && bench?.photos === 'copy');
  const git = bench?.['photos-git'] ?? 'ignore';
  const place = { piece, hole, shift, copy, git, sweep };
  const doing = { call, job, file, ...place, marks: handled(job), known: notedOnes(job) };
  const told = await noteAll(doing, paths);
  const asksOnce = !copy && !toStay && bench?.photos == null;
  return answerOf(doing, told, { none: paths.length === 0, asksOnce });
}

interface Told {
  placed: Placed[];
  unplaced: Unplaced[];
  /** What could not be read. */
  odd: string[];
  /** Of a camera's folder, what is not for this job or was noted before. */
  others: number;
  changed: boolean;
  /** What ended it before its end. */
  stopped: Answer | null;
}

async function noteAll(doing: Doing, paths: readonly string[]): Promise<Told> {
  const { call, job, piece, sweep, known, marks, shift } = doing;
  const told: Told = {
    placed: [],
    unplaced: [],
    odd: [],
    others: 0,
    changed: false,
    stopped: null,
  };
  for (const path of paths) {
    const seen = lookAtPhoto(path);
    if ('odd' in seen) {
      told.odd.push(seen.odd);
      continue;
    }
    const taken = timeOf(seen, shift, job, call.world.now());
    const time = taken === null ? null : sayShot(taken);
    const at = piece === undefined ? atHandAt(marks, taken) : { piece, candidates: [piece] };
    if (sweep && (known.has(sameAs(path, time ?? undefined)) || at.candidates.length === 0)) {
      told.others += 1;
    } else if (at.piece === null) {
      const why = whyNot(job, at, time);
      told.unplaced.push({ picture: path, taken: time, why, candidates: at.candidates });
    } else {
      const done = await note(doing, path, at.piece, time);
      if ('exit' in done) return { ...told, stopped: done };
      told.changed ||= done.changed;
      told.placed.push(done.placed);
    }
  }
  return told;
}

function atHandAt(marks: Doing['marks'], taken: Instant | null): AtHand {
  return taken === null ? { piece: null, candidates: [] } : atHand(marks, taken.seconds);
}

/** Copied where that is wanted, then its line in the diary. */
async function note(
  { call, file, hole, copy, git }: Doing,
  path: string,
  piece: string,
  taken: string | null,
): Promise<{ placed: Placed; changed: boolean } | Answer> {
  let kept: string;
  try {
    kept = copy ? copyBeside(file, path, git) : path;
  } catch (error) {
    return unsaved(failOf(error, path));
  }
  const picture = noted(file, kept);
  const says = optionText(call, 'says');
  const wish = {
    do: 'photo',
    picture,
    piece,
    ...(hole === undefined ? {} : { hole }),
    ...(taken === null ? {} : { taken }),
    ...(says === undefined ? {} : { says }),
  } as const;
  const result = await record(file, wish, call.world);
  if (!result.ok) return failed(result, call.words[0] ?? '');
  const placed = { picture, taken, piece, hole: hole ?? null, id: result.entry?.id ?? null };
  return { placed, changed: result.changed };
}

function answerOf(
  { job, sweep }: Doing,
  { placed, unplaced, odd, others, changed, stopped }: Told,
  { none, asksOnce }: { none: boolean; asksOnce: boolean },
): Answer {
  const ok = unplaced.length === 0 && odd.length === 0 && stopped === null;
  const json = { ok, changed, placed, unplaced, unread: odd, others };
  const lines = [
    ...placedLines(job, placed),
    ...(sweep && others > 0
      ? [`${many(others, 'other')}: noted already, or not of this job.`]
      : []),
    ...(none ? ['No photographs there.'] : []),
    ...(asksOnce && placed.length > 0
      ? ['They stay where they are; --copy copies them to photos/ beside the job.']
      : []),
  ];
  const asked = [
    ...odd,
    ...unplaced.map((u) => `${u.picture}: ${u.why}`),
    ...(unplaced.length > 0
      ? ['Say which with --piece, or put the clock right with --shift.']
      : []),
    ...(stopped === null ? [] : [stopped.error ?? '']),
  ];
  return {
    exit: stopped?.exit ?? (ok ? 0 : 1),
    json: { ...json, ...(stopped === null ? {} : { refused: stopped.json.refused }) },
    text: lines.join('\n'),
    ...(asked.length > 0 ? { error: asked.join('\n') } : {}),
  };
}

function wrongPlace(job: Job, piece: string | undefined, hole: string | undefined): Answer | null {
  if (piece === undefined) {
    return hole === undefined ? null : misuse('usage', 'Hole of which piece? --piece P --hole H');
  }
  const found = job.pieces.get(piece);
  if (!found) return unknownPiece(piece, job);
  if (hole === undefined || found.holes.some((h) => h.name === hole)) return null;
  return misuse('no-such-hole', `${found.spec.name} has no hole ${hole}.`, { hole });
}

function lookAtPhoto(path: string): Camera | { odd: string } {
  try {
    const why = noPhotograph(path);
    return why === null ? readCamera(path) : { odd: `${safe(path)} ${why}: nothing was noted.` };
  } catch (error) {
    if (errorCode(error) === null) throw error;
    if (errorCode(error) === 'ENOENT') return { odd: `There is no ${safe(path)}.` };
    return { odd: failOf(error, path, 'read').say };
  }
}

function timeOf(camera: Camera, shift: number, job: Job, now: string): Instant | null {
  return camera.clock === null ? null : takenAt(camera.clock, camera.offset, shift, job, now);
}

function whyNot(job: Job, { candidates }: AtHand, taken: string | null): string {
  if (taken === null) return 'it does not say when it was taken.';
  if (candidates.length === 0) return `taken ${taken}, when no piece was at hand.`;
  const names = candidates.map((key) => job.pieces.get(key)?.spec.name ?? key);
  return `taken ${taken}, between ${list(names)}.`;
}

function placedLines(job: Job, placed: readonly Placed[]): string[] {
  return placed.map(({ picture, taken, piece, hole }) => {
    const name = job.pieces.get(piece ?? '')?.spec.name ?? piece ?? '';
    const at = hole === null ? '' : `, hole ${hole}`;
    return `${name}${at}: ${picture}${taken === null ? '' : ` (${taken.slice(0, 16).replace('T', ' ')})`}`;
  });
}
