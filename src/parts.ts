/** The texts of the program's parts, out of the one packed file in which they come. */
import { readFileSync, readSync } from 'node:fs';

/** The parts of the program one behind the other, each the text of a function, packed by Brotli. */
export interface Pack {
  file: string;
  /** Bytes of each part; one a letter. */
  sizes: readonly number[];
  /** Names the content of the file. */
  stamp: string;
}

export interface Texts {
  /** Puts the text of a part into the bytes at this place. */
  copy(part: number, into: Buffer, at: number): void;
  /** All of them, where this run unpacked them; null where it found them so. */
  unpacked(): Buffer | null;
  /** Whether they were found; after that they are unpacked anew. */
  distrusted(): boolean;
}

/** What was installed is not all there: no fault of the program, and nothing that it could mend. */
export class NotWhole extends Error {
  constructor(file: string, how: string) {
    super(`putback is not whole: ${file} ${how}. Install it again.`);
    this.name = 'NotWhole';
  }
}

/** The first and the last letter of each part. */
const [FIRST, LAST] = [...Buffer.from('f}')];

/**
 * `found`: the same unpacked by an earlier run, open. It is read piece by piece; what is not as long as it should be, or of
 * which a part was never written, is unpacked anew.
 */
export function textsOf(
  { file, sizes }: Pack,
  found: { handle: number; size: number } | null,
): Texts {
  const starts = [0];
  for (const size of sizes) starts.push((starts.at(-1) ?? 0) + size);
  const all = starts.at(-1) ?? 0;
  let whole: Buffer | null = null;
  let trusted = found?.size === all;

  const unpack = (): Buffer => {
    // Not imported: only a first run asks for it.
    const { brotliDecompressSync } = process.getBuiltinModule('node:zlib');
    let bytes: Buffer | null = null;
    try {
      bytes = brotliDecompressSync(readFileSync(file));
    } catch (error) {
      const { code, message } = error as NodeJS.ErrnoException;
      if (code === 'ENOENT') throw new NotWhole(file, 'is missing');
      if (code?.startsWith('E') && !code.startsWith('ERR_'))
        throw new NotWhole(file, `cannot be read (${message})`);
    }
    if (bytes?.length !== all) throw new NotWhole(file, 'is damaged');
    return bytes;
  };
  const isRead = (part: number, into: Buffer, at: number): boolean => {
    const size = sizes[part] ?? 0;
    if (whole !== null || found === null || !trusted) return false;
    const read = readSync(found.handle, into, at, size, starts[part] ?? 0);
    return read === size && into[at] === FIRST && into[at + size - 1] === LAST;
  };
  return {
    copy: (part, into, at) => {
      if (isRead(part, into, at)) return;
      whole ??= unpack();
      whole.copy(into, at, starts[part] ?? 0, starts[part + 1] ?? 0);
    },
    unpacked: () => whole,
    distrusted: () => {
      const was = trusted;
      trusted = false;
      return was;
    },
  };
}
