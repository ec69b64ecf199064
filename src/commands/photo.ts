/** Photographs to the piece that was at hand when they were taken, by the camera's clock. */
import { dirname, resolve } from 'node:path';
import { findBench } from '../diary/bench.ts';
import { errorCode } from '../job/save/disk.ts';
import { failOf } from '../job/save/fail.ts';
import { record } from '../job/save/record.ts';
import { safe } from '../model/safe.ts';
import type { Instant } from '../model/time.ts';
import type { Job } from '../model/types.ts';
import { list, many } from '../model/words.ts';
import { type Camera, readCamera } from '../paper/desk/camera.ts';
import { copyBeside, noted, picturesIn } from '../paper/desk/photo-files.ts';
import { notedOnes, sameAs } from '../paper/desk/sweep.ts';
import { type AtHand, atHand, handled } from '../plan/at-hand.ts';
import { readShift, sayTaken, takenAt } from '../plan/photo-time.ts';
import { type Answer, type Call, misuse, optionText, unsaved } from './command.ts';
import { failed } from './mark.ts';
import { openJob, unknownPiece } from './open-job.ts';

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
  if (said.length === 0 && from.length === 0) {
    return misuse('usage', 'Which photographs? Name them, or say photos-from: in bench.yaml.');
  }
  const copy =
    call.options.copy === true || (call.options.stay !== true && bench?.photos === 'copy');
  // Of a camera's folder only what was not noted before, and what falls into this job.
  const sweep = said.length === 0;
  const paths = sweep
    ? from.flatMap((folder) => picturesIn(resolve(bench?.folder ?? world.folder, folder)))
    : said.map((path) => resolve(world.folder, path));
  const known = notedOnes(job);
  const marks = handled(job);
  const placed: Placed[] = [];
  const unplaced: Unplaced[] = [];
  const odd: string[] = [];
  let changed = false;
  let others = 0;
  for (const path of paths) {
    const seen = look(path);
    if ('odd' in seen) {
      odd.push(seen.odd);
      continue;
    }
    const taken = timeOf(seen, shift, job, world.now());
    const time = taken === null ? null : sayTaken(taken);
    const at: AtHand =
      piece !== undefined
        ? { piece, candidates: [piece] }
        : taken === null
          ? { piece: null, candidates: [] }
          : atHand(marks, taken.seconds);
    if (sweep && (known.has(sameAs(path, time ?? undefined)) || at.candidates.length === 0)) {
      others += 1;
      continue;
    }
    if (at.piece === null) {
      unplaced.push({
        picture: path,
        taken: time,
        why: whyNot(job, at, time),
        candidates: at.candidates,
      });
      continue;
    }
    let kept: string;
    try {
      kept = copy ? copyBeside(file, path, bench?.['photos-git'] ?? 'ignore') : path;
    } catch (error) {
      return unsaved(failOf(error, path));
    }
    const picture = noted(file, kept);
    const wish = {
      do: 'photo',
      picture,
      piece: at.piece,
      ...(hole === undefined ? {} : { hole }),
      ...(time === null ? {} : { taken: time }),
      ...(optionText(call, 'says') === undefined ? {} : { says: optionText(call, 'says') ?? '' }),
    } as const;
    const result = await record(file, wish, world);
    if (!result.ok) return failed(result, name);
    changed ||= result.changed;
    placed.push({
      picture,
      taken: time,
      piece: at.piece,
      hole: hole ?? null,
      id: result.entry?.id ?? null,
    });
  }
  const ok = unplaced.length === 0 && odd.length === 0;
  const json = { ok, changed, placed, unplaced, unread: odd, others };
  const stays = placed.length > 0 && !copy && call.options.stay !== true && bench?.photos == null;
  const lines = [
    ...placedLines(job, placed),
    ...(sweep && others > 0
      ? [`${many(others, 'other')}: noted already, or not of this job.`]
      : []),
    ...(paths.length === 0 ? ['No photographs there.'] : []),
    ...(stays ? ['They stay where they are; --copy copies them to photos/ beside the job.'] : []),
  ];
  const asked = [
    ...odd,
    ...unplaced.map((u) => `${u.picture}: ${u.why}`),
    ...(unplaced.length > 0
      ? ['Say which with --piece, or put the clock right with --shift.']
      : []),
  ];
  return {
    exit: ok ? 0 : 1,
    json,
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

function look(path: string): Camera | { odd: string } {
  try {
    return readCamera(path);
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
