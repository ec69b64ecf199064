import { describe, expect, it } from 'vitest';
import { changedLines, readOut } from '../../src/screens/show/read-out.ts';
import { Bench } from '../job/bench.ts';
import { LEFT_COVER } from './covers.ts';
import { Desk } from './desk.ts';
import { everyScreen } from './every-screen.ts';
import { long } from './long-screens.ts';

describe('a screen that is read out', () => {
  it.each(everyScreen().map((s) => [s.name, s.state] as const))(
    '%s: says its name and its keys, and nothing for the eye alone',
    (_, state) => {
      const lines = readOut(state);
      expect(lines.length).toBeGreaterThan(1);
      expect(lines.at(-1)).toMatch(/(\?|Tab) keys$/);
      for (const text of lines) {
        expect(text).not.toMatch(/[\x00-\x1f\x7f]/);
        expect(text).not.toMatch(/[#*=|+_-]{3,}| {2}/);
      }
    },
  );

  it('says STOP, and each hole with its state in words', () => {
    const at = (name: string) => readOut(everyScreen().find((s) => s.name === name)!.state);
    expect(at('stop').join('\n')).toMatch(/^STOP$/m);
    const tight = at('tight, second pass').join('\n');
    expect(tight).toMatch(/^1: .*in, by fingers/m);
    expect(at('on, in the hand').join('\n')).toMatch(/takes what is in your hand/);
  });

  it('leaves out nothing of a text that no screen holds', () => {
    const text = long('Fault');
    const bench = new Bench(LEFT_COVER.replace(/^job:.*$/m, `job: ${JSON.stringify(text)}`));
    const read = readOut(new Desk(bench).state).join(' ');
    expect(read).toContain(text.replace(/\s+/g, ' '));
    expect(read).not.toContain('below)');
  });

  it('after a mark says what is new, after another screen all of it', () => {
    const desk = new Desk(new Bench()).open('cover').press('go');
    const before = desk.press('go').state;
    const after = desk.press('go').state;
    const changed = changedLines(before, after);
    expect(changed.length).toBeLessThan(readOut(after).length);
    expect(changed.join('\n')).toMatch(/of 5 out/);
    expect(changedLines(before, desk.press('?').state)).toEqual(readOut(desk.state));
    expect(changedLines(before, before)).toEqual([]);
  });
});
