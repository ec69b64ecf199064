/** Keys, pastes and sizes through the real loop and a real terminal, in a small show of its own. */
import { rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { bundle } from './bundle.ts';
import { ALT_B, BACKSPACE, CTRL_W, ENTER, ESC, LEFT, paste, UP } from './keys.ts';
import { AT_REST, marked } from './marks.ts';
import { type How, type Person, start } from './pty.ts';

let program = '';
beforeAll(async () => {
  program = await bundle('tests/terminal/programs/echo-main.ts');
  // Only of what was made: the folder of no program is the one the tests run in.
  return () => rmSync(dirname(program), { recursive: true, force: true });
});

async function open(how: How = {}): Promise<Person> {
  const person = start([program], how);
  await person.until(/echo \d+x\d+/);
  return person;
}

describe('keys', () => {
  it('typed fast, or before the first frame, arrive one by one', async () => {
    const person = start([program]);
    person.press('jjj', `abc${ENTER}`, 'x\ty');
    await person.until('[jjjabc(enter)x(tab)y]');
  });

  it('200 characters in one write arrive exactly', async () => {
    const person = await open();
    const text = Array.from({ length: 200 }, (_, i) => 'abcdefghijklm'[i % 13]).join('');
    person.press(text);
    const screen = await person.until((s) => /\[(.{78})\]\n\[(.{78})\]\n\[(.{44})\]/.test(s));
    expect([...screen.matchAll(/\[(.+)\]/g)].map((m) => m[1]).join('')).toBe(text);
  });

  it('both Backspaces are Backspace, repeated or mixed with letters', async () => {
    const person = await open();
    person.press(`a${BACKSPACE}${BACKSPACE}b\b`);
    await person.until('[a(backspace)(backspace)b(backspace)]');
  });

  it('Ctrl and Alt never type their letter', async () => {
    const person = await open();
    person.press(CTRL_W, ALT_B, '.');
    await person.until('[(ctrl-w)(alt-b).]');
  });

  it('an arrow cut in two never types', async () => {
    const person = await open();
    /** The rest is there when the program goes on from a key, however late: what is due by then comes behind it. */
    const cut = async (begun: string, rest: string, nth: number) => {
      person.press(`S${begun}`);
      await person.untilBytes((bytes) => marked(bytes, 'waits') === nth);
      person.press(rest);
    };
    // Behind Esc, which was taken for a press of its own by then.
    await cut(ESC, '[A.', 1);
    await person.until('[(escape).]');
    await cut(`x${LEFT.slice(0, 2)}`, `${LEFT.slice(2)}${UP}.`, 2);
    await person.until('[(escape).x(left)(up).]');
  });

  it('what the terminal answers is not typed', async () => {
    const person = await open();
    person.press(`a${ESC}]11;rgb:1e1e/1e1e/1e1e\x07`, `b${ESC}[?62;22c`, `c${ESC}[I`, 'd');
    await person.until('[abcd]');
  });

  it('Esc twenty times at once is Esc twenty times', async () => {
    const person = await open();
    person.press(ESC.repeat(20));
    await person.until((s) => s.replace(/[[\]\n]/g, '').includes('(escape)'.repeat(20)));
  });
});

describe('a paste', () => {
  it('comes as one, lines and all, and presses nothing', async () => {
    const person = await open();
    person.press('a', paste('dd\ry'), 'b');
    await person.until('[a<dd|y>b]');
  });

  it('whose end mark is lost frees the keyboard again', async () => {
    const person = await open();
    person.press(`${ESC}[200~abc`);
    await person.until('[<abc>]');
    person.press('q');
    await person.until('[<abc>q]');
  });
});

describe('the frame', () => {
  it('follows the window through a storm of sizes, with nothing of an older one left', async () => {
    const person = await open();
    person.press('abcdefghi.'.repeat(60));
    await person.until('i.]');
    const sizes = [
      [20, 5],
      [1, 1],
      [200, 50],
      [3, 5],
      [250, 80],
      [80, 24],
      [60, 9],
      [132, 43],
    ] as const;
    for (let round = 0; round < 6; round++) {
      for (const [columns, rows] of sizes.slice(round)) person.resize(columns, rows);
      const said = 'abcdefghi.'.repeat(60).match(/.{1,130}/g) ?? [];
      const lines = ['colour', ...said.map((line) => `[${line}]`)];
      await person.until(
        (s) => s === [s.split('\n')[0], ...lines].join('\n').padEnd(s.length, '\n'),
      );
    }
  });

  it('is drawn for 80 × 24 where the terminal does not know its size', async () => {
    const person = start(['-c', `stty rows 0 cols 0; exec node '${program}'`], { program: 'sh' });
    await person.until('echo 80x24');
  });

  it('is drawn with CI=1 too', async () => {
    const person = await open({ env: { CI: '1' } });
    person.press('a');
    await person.until('[a]');
  });

  it('has no colour with NO_COLOR, whatever else is asked for', async () => {
    const plain = await open({ env: { NO_COLOR: '1', FORCE_COLOR: '3' } });
    expect(plain.bytes()).not.toMatch(/\x1b\[[\d;]*m/);
    const coloured = await open();
    expect(coloured.bytes()).toMatch(/\x1b\[31m/);
  });

  it('costs few bytes a key', async () => {
    const person = await open({ columns: 120, rows: 40 });
    const before = person.bytes().length;
    person.press('a');
    await person.until('[a]');
    expect(person.bytes().length - before).toBeLessThan(400);
  });

  it('survives a library that complains on the console', async () => {
    const person = await open();
    person.press('K', 'a');
    await person.until(/^echo 80x24 .*\ncolour\n\[a\]\n/);
  });

  it('costs nothing while nobody presses a key', async () => {
    const person = await open({ env: { NODE_OPTIONS: AT_REST } });
    person.press(ESC);
    await person.until('[(escape)]');
    person.kill('SIGUSR2');
    await person.untilBytes((bytes) => marked(bytes, 'at rest') > 0);
  });
});
