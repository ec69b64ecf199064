import { describe, expect, it } from 'vitest';
import { cacheFolder } from '../src/compiled.ts';

describe('where compiled code is kept', () => {
  it.each([
    [{ XDG_CACHE_HOME: '/x', HOME: '/home/a' }, '/x/putback'],
    [{ HOME: '/home/a' }, '/home/a/.cache/putback'],
    [{ XDG_CACHE_HOME: '', HOME: '/home/a' }, '/home/a/.cache/putback'],
    [{ LOCALAPPDATA: 'C:/Users/a/AppData/Local' }, 'C:/Users/a/AppData/Local/putback'],
    [{}, null],
  ])('%j', (env, folder) => {
    expect(cacheFolder(env)).toBe(folder);
  });
});
