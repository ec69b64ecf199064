/** What all commands share that write into a diary. */
import { realpathSync } from 'node:fs';
import { resolve } from 'node:path';
import { commitMilestone } from '../../diary/milestone.ts';
import { disk } from '../../job/save/disk.ts';
import { lookAt, NotPlain } from '../../job/save/plain.ts';
import { record } from '../../job/save/record.ts';
import type { HoleNow, PieceNow, Recorded, Warning, Wish } from '../../model/types.ts';
import { printItem } from '../../piece/row.ts';
import {
  type Answer,
  answer,
  type Call,
  faultsJson,
  misuse,
  optionText,
  refused,
  unsaved,
} from './command.ts';
import { faultsText, noFile, openPiece } from './open-job.ts';
import { noteUnread } from './unread.ts';

/** `says` and `because` as the command line gives them. */
export function beside(call: Call): { says?: string; because?: string } {
  const says = optionText(call, 'says');
  const because = optionText(call, 'because');
  return { ...(says === undefined ? {} : { says }), ...(because === undefined ? {} : { because }) };
}

/** Holes from the command line: `3 4`, `3,4`, `3-6`. */
export function holeWords(words: readonly string[]): string[] {
  return words
    .flatMap((word) => word.split(','))
    .flatMap((word) => {
      const [, from, to] = /^(\d{1,3})-(\d{1,3})$/.exec(word) ?? [];
      if (from === undefined || to === undefined || Number(to) < Number(from))
        return word === '' ? [] : [word];
      return Array.from({ length: Number(to) - Number(from) + 1 }, (_, i) => `${Number(from) + i}`);
    });
}

/** The holes a mark is about: named ones, or all with `--all`; a refusal when neither is said. */
export function whichHoles(call: Call, extra = false): { holes?: string[] } | { answer: Answer } {
  const named = holeWords(call.words.slice(2));
  const all = call.options.all === true;
  if (named.length > 0 && all)
    return { answer: misuse('usage', 'Name the holes or say --all, not both.') };
  if (named.length === 0 && !all && !extra) {
    // Which piece, first: of one that is not there nobody can name a hole.
    const opened = openPiece(call);
    if ('answer' in opened) return opened;
    return { answer: misuse('usage', 'Which holes? Name them, or say --all.') };
  }
  return named.length > 0 ? { holes: named } : {};
}

/** Records the wish; `done` says what was noted, `more` stands in the JSON, `warn` adds to what the judge warns of. */
export async function mark(
  call: Call,
  wish: Wish,
  done: (result: Extract<Recorded, { ok: true }>) => string,
  more: Record<string, unknown> = {},
  warn: (result: Extract<Recorded, { ok: true }>) => readonly Warning[] = () => [],
): Promise<Answer> {
  const name = call.words[0] ?? '';
  const file = resolve(call.world.folder, name);
  const odd = oddFile(file);
  if (odd) return noFile(name, call.world, odd);
  const result = await record(file, wish, call.world);
  if ('job' in result && result.job) noteUnread(call.world, name, result.job);
  if (!result.ok) return failed(result, name);
  const key = pieceMeant(wish, result);
  const piece = key === undefined ? undefined : result.job.pieces.get(key);
  const quiet =
    result.changed && piece ? await commitMilestone(file, result, piece.spec.key) : null;
  const warnings = [...(result.changed ? warn(result) : []), ...result.warnings];
  const lines = [
    result.changed ? done(result) : 'Already so.',
    ...warnings.map((w) => w.say),
    ...(quiet ? [quiet] : []),
  ];
  const json = {
    changed: result.changed,
    ...more,
    ...(piece ? { piece: piece.spec.key, holes: holesJson(piece, wish, result.entry?.hole) } : {}),
    warnings: [...warnings, ...(quiet ? [{ code: 'git', say: quiet }] : [])],
    id: result.entry?.id ?? null,
  };
  return answer(json, lines.join('\n'));
}

/** Why no job can be there: it is no plain file, or what the system says. Null: one may be. */
function oddFile(file: string): unknown {
  try {
    const path = realpathSync(file);
    const is = lookAt(disk, path)?.odd ?? null;
    return is === null ? null : new NotPlain(path, is);
  } catch (error) {
    return error;
  }
}

/** The piece that a mark is about; for an undo the one that its entry is about. */
function pieceMeant(wish: Wish, result: Extract<Recorded, { ok: true }>): string | undefined {
  if (wish.do !== 'undo') return 'piece' in wish ? wish.piece : undefined;
  return result.job.entries.find((e) => e.id === result.entry?.value)?.piece;
}

export function failed(result: Extract<Recorded, { ok: false }>, name: string): Answer {
  if ('faults' in result) {
    const faults = result.faults.map((f) => ({ ...f, file: name }));
    return {
      exit: 1,
      json: { ok: false, faults: faultsJson(faults) },
      text: '',
      error: faultsText(faults),
    };
  }
  if ('unsaved' in result) return unsaved(result.unsaved);
  // No reason lets a washer be left out of several bolts at once: that refusal names the way itself.
  const hint = 'If it is so all the same, say why with --because.';
  return refused(result.refused, result.refused.code === 'not-under' ? '' : hint);
}

/** The holes that the mark was about, as they are now. */
function holesJson(piece: PieceNow, wish: Wish, written: string[] | undefined): object[] {
  const asked =
    'hole' in wish && wish.hole !== undefined
      ? [wish.hole]
      : 'holes' in wish
        ? wish.holes
        : undefined;
  // One more line for the piece tells nothing of its bolts.
  const names = wish.do === 'add' && asked === undefined ? [] : (asked ?? written);
  return piece.holes.filter((h) => names === undefined || names.includes(h.name)).map(holeJson);
}

function holeJson(hole: HoleNow): object {
  const item = hole.state === 'out' ? (hole.found ?? hole.belongs) : (hole.holds ?? hole.belongs);
  return {
    hole: hole.name,
    state: hole.state,
    kind: item ? printItem(item) : null,
    passes: hole.passes,
    trouble: hole.trouble,
  };
}

/** `Alternator cover: 10 of 11 out.` */
export function countSaid(piece: PieceNow | undefined, state: 'out' | 'in' | 'tight'): string {
  if (!piece) return 'Noted.';
  const n = piece.holes.filter(
    (h) => h.state === state || (state === 'in' && h.state === 'tight'),
  ).length;
  const words = { out: 'out', in: 'in', tight: 'tight' }[state];
  return `${piece.spec.name}: ${n} of ${piece.holes.length} ${words}.`;
}
