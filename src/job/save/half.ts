/** What was half done when the screens ended, however they ended: texts being typed, and a mark that was not saved. */
import type { Half } from '../../model/types.ts';
import { dropOwn, keepOwn, readOwn } from './own.ts';

const NOTHING_HALF: Half = { drafts: {}, wish: null };

const isNothing = ({ drafts, wish }: Half): boolean =>
  wish === null && Object.keys(drafts).length === 0;

/** Replaces what was kept before, or removes it where nothing is half done. False: it could not be kept. */
export function keepHalf(file: string, half: Half, state?: string): boolean {
  if (!isNothing(half)) return keepOwn(file, 'half', JSON.stringify(half), state);
  dropOwn(file, 'half', state);
  return true;
}

/** `file`: the real path of the job. What cannot be read counts as nothing: only this program writes it. */
export function readHalf(file: string, state?: string): Half {
  const text = readOwn(file, 'half', state)?.text;
  if (text === undefined) return NOTHING_HALF;
  try {
    const { drafts, wish } = JSON.parse(text) as Partial<Half>;
    const texts = Object.entries(drafts ?? {}).filter(([, draft]) => typeof draft === 'string');
    return {
      drafts: Object.fromEntries(texts),
      wish: typeof wish?.do === 'string' ? wish : null,
    };
  } catch {
    return NOTHING_HALF;
  }
}
