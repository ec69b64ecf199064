import { describe, expect, it } from 'vitest';
import { Bench, COVER } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const BROKEN = COVER.replace('  hose:\n', '  Hose: {care: brake}\n');
const LINE = 'Not all of the job could be read: line 9 (bad-name) does not count.';
const words = (desk: Desk) => desk.frame.replace(/[\s|]+/g, ' ');

describe('a job of which a line could not be read', () => {
  it('says so on its page, for as long as it is so', () => {
    expect(words(new Desk(new Bench(BROKEN)))).toContain(LINE);
    expect(words(new Desk(new Bench()))).not.toContain('could not be read');
  });

  it('stops before the first bolt, says how it is mended, and goes on with a reason only', () => {
    const desk = new Desk(new Bench(BROKEN)).open('lever').press('go');
    expect(desk.screen).toBe('gate');
    expect(words(desk)).toContain(LINE);
    const marks = desk.bench.entries.length;
    desk.press('enter');
    expect(words(desk)).toContain('Mend the file in an editor: putback check says what is wrong');
    expect(desk.screen).toBe('gate');
    expect(desk.bench.entries.length).toBe(marks);
  });
});
