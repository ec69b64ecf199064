/** One try of a save, under the file's lock. */
import { basename } from 'node:path';
import { stands } from './attributes.ts';
import type { Change, Saved, SaveOptions } from './change.ts';
import { type Disk, drop } from './disk.ts';
import { type SaveFail, saveFail } from './fail.ts';
import type { Hold } from './hold.ts';
import { recover, writeInPlace } from './inplace.ts';
import { type Bytes, readPlain, stampOf } from './plain.ts';
import { cleanTemps, prepare, type Renamed, renameOver, tempName } from './replace.ts';
import type { Side } from './side.ts';
import { makeStateFolder } from './state.ts';
import { bytesOfText, textOfBytes } from './text.ts';

/** Windows holds files for up to about a second; elsewhere nothing holds a rename for long. */
const RENAME_TRIES = process.platform === 'win32' ? 12 : 2;

/** `again`: somebody else wrote the file under way. `waits`: it looks as if somebody were about to. */
export async function saveOnce<T>(
  d: Disk,
  file: string,
  side: Side,
  held: Hold,
  change: Change<T>,
  options: SaveOptions,
): Promise<Saved<T> | 'again' | 'waits'> {
  cleanTemps(d, side);
  recover(d, file, options.state);
  const read = readPlain(file, undefined, d);
  const { bytes: before, stat } = read;
  // Somebody gave the file a second name while its lock was being taken.
  if (stat.nlink > 1n && !held.shared) return 'again';
  const text = textOfBytes(before, file);
  if (typeof text !== 'string') return text;
  const stamp = stampOf(stat);
  const answer = change(text, Date.now() - Number(stat.mtimeMs));
  if ('wait' in answer) return 'waits';
  if ('stop' in answer) return { ok: true, stopped: answer.stop, text, stamp };
  if (answer.text === text) return { ok: true, changed: false, text, stamp };
  const no = unfit(answer.text, read, file);
  if (no) return no;
  // A file that its owner has made read-only stays so; a rename alone would not care.
  if ((stat.mode & 0o222n) === 0n)
    throw Object.assign(new Error('write-protected'), { code: 'EACCES' });
  const after = bytesOfText(answer.text);
  const still = () => held.isOurs() && readPlain(file, undefined, d).bytes.equals(before);
  const renamed =
    side.beside && stat.nlink === 1n
      ? await replace(d, file, side, stat, after, still, options.renameTries ?? RENAME_TRIES)
      : { how: 'refused' as const, stamp: null };
  const now =
    renamed.how === 'refused'
      ? writeInPlace(d, file, makeStateFolder(d, options.state), before, after, still)
      : renamed.how === 'done'
        ? renamed.stamp
        : null;
  return now === null ? 'again' : { ok: true, changed: true, text: answer.text, stamp: now };
}

function unfit(text: string, read: Bytes, file: string): SaveFail | null {
  if (!read.whole) {
    return saveFail('io', `${basename(file)} is too large for a job file.`, 'Name a job file.');
  }
  if (text.isWellFormed()) return null;
  return saveFail(
    'not-text',
    'The text holds half a character.',
    'Type it again without that character.',
  );
}

/** `refused`: the folder cannot be written though ours in it can, or what belongs to the old file could not be kept. */
async function replace(
  d: Disk,
  file: string,
  side: Side,
  stat: Bytes['stat'],
  after: Uint8Array,
  still: () => boolean,
  tries: number,
): Promise<{ how: Renamed; stamp: string | null }> {
  const temp = tempName(side);
  let how: Renamed = 'refused';
  try {
    const like = { file, mode: Number(stat.mode), uid: Number(stat.uid), gid: Number(stat.gid) };
    const stamp = prepare(d, temp, after, like);
    if (stamp !== null) how = await renameOver(d, temp, file, tries, still);
    if (stamp !== null && how === 'done') stands(file, (now) => stampOf(now) === stamp);
    return { how, stamp };
  } finally {
    if (how !== 'done') drop(d, temp);
  }
}
