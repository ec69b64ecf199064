import { PassThrough } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { dispatch } from '../../src/commands/dispatch.ts';
import { VERSION } from '../../src/version.ts';
import type { World } from '../../src/world.ts';
import { worldWith } from './pinned.ts';

/** What reaches the outputs of `--version`, where this much of it is taken at once. */
async function said(writeAtOnce: World['writeAtOnce']) {
  const [stdout, stderr] = [new PassThrough(), new PassThrough()];
  const now = () => '2026-05-02T10:11:05+02:00';
  const taken = writeAtOnce ? { writeAtOnce } : {};
  const exit = await dispatch(
    ['--version'],
    worldWith({ now, folder: '/', stdout, stderr, ...taken }),
  );
  const text = (stream: PassThrough) => String(stream.read() ?? '');
  return { exit, out: text(stdout), err: text(stderr) };
}

describe('an answer is written without its stream', () => {
  it('and the stream gets what the reader does not take yet', async () => {
    const taken: string[] = [];
    const ran = await said((output, text) => {
      taken.push(`${output} ${text.slice(0, 2)}`);
      return Buffer.from(text).subarray(2);
    });
    expect(taken).toEqual([`1 ${VERSION.slice(0, 2)}`]);
    expect(ran).toEqual({ exit: 0, out: `${VERSION.slice(2)}\n`, err: '' });
  });

  it('nothing is left to the stream where all is taken, or nobody reads any more', async () => {
    const nothing = { exit: 0, out: '', err: '' };
    expect(await said(() => new Uint8Array())).toEqual(nothing);
    const closed = () => {
      throw Object.assign(new Error('write'), { code: 'EPIPE' });
    };
    expect(await said(closed)).toEqual(nothing);
  });

  it('a full disk is told', async () => {
    const ran = await said((output, text) => {
      if (output === 2) return Buffer.from(text);
      throw Object.assign(new Error('write'), { code: 'ENOSPC' });
    });
    expect(ran).toEqual({
      exit: 3,
      out: '',
      err: 'The answer could not be written: the disk is full.\n',
    });
  });
});
