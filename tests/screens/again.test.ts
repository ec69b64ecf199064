import { describe, expect, it } from 'vitest';
import { Bench } from '../job/bench.ts';
import { Desk } from './desk.ts';

const full = { code: 'no-space', say: 'The disk is full.', fix: 'Make room.' };

/** The cover is coming off, and a mark could not be saved. */
function unsaved(): Desk {
  const desk = new Desk(new Bench()).open('cover').press('go');
  for (let n = 0; n < 3 && desk.step !== 'off'; n++) desk.press('go');
  desk.broken = { ok: false, unsaved: full };
  desk.press('go');
  expect(desk.screen).toBe('unsaved');
  return desk;
}

describe('a mark that could not be saved, tried again by itself', () => {
  it('rings once, and says why as long as it is so', () => {
    const desk = unsaved();
    desk.broken = { ok: false, unsaved: { ...full, say: 'The disk is still full.' } };
    desk.happen({ on: 'again' }).happen({ on: 'again' });
    expect(desk.done).toEqual(['ring']);
    expect(desk.frame).toContain('The disk is still full.');
    expect(desk.frame).toContain('tried again every few seconds');
  });

  it('is marked once when it can be, and the person goes on from there', () => {
    const desk = unsaved();
    desk.broken = null;
    desk.happen({ on: 'again' });
    expect(desk.step).toBe('off');
    expect(desk.frame).toContain('1 of 5 out');
    desk.happen({ on: 'again' });
    expect(desk.frame).toContain('1 of 5 out');
    expect(desk.bench.entries).toHaveLength(1);
  });

  it('is asked about once before the program is left, whatever the disk says meanwhile', () => {
    for (const key of ['q', 'ctrl-c']) {
      const desk = unsaved().press(key);
      expect(desk.done).toEqual(['ring']);
      expect(desk.frame).toContain('Leave without it?');
      expect(desk.happen({ on: 'again' }).frame).toContain('Leave without it?');
      expect(desk.press(key).done.at(-1)).toBe('quit');
    }
  });

  it('says of its keys what they do there', () => {
    const desk = unsaved().press('?');
    expect(desk.frame).toContain('give this mark up: it is not made');
    expect(desk.frame).toContain('leave without this mark; it is asked once more');
    expect(desk.frame).not.toContain('every mark is on disk');
  });

  it('can be given up while the disk hangs', () => {
    const desk = unsaved();
    desk.holds = true;
    desk.happen({ on: 'again' }).press('escape');
    expect(desk.screen).toBe('unsaved');
    desk.answer();
    expect(desk.step).toBe('off');
    expect(desk.frame).toContain('0 of 5 out');
  });
});
