import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createCleaner } from '../../../src/screens/terminal/stdin.ts';

const ESC = '\u{1B}';
const ESCAPE = `${ESC}[27u`;
const paste = (text: string) => `${ESC}[200~${text}${ESC}[201~`;

/** Pieces as they arrive; a number is so many ms of silence. */
function send(...pieces: (string | number)[]): string {
  const cleaner = createCleaner();
  let out = '';
  for (const piece of pieces) {
    if (typeof piece === 'string') {
      out += cleaner.push(piece);
      continue;
    }
    let left = piece;
    for (let due = cleaner.wait(); due !== null && due <= left; due = cleaner.wait()) {
      left -= due;
      out += cleaner.quiet();
    }
  }
  return out;
}

describe('a paste', () => {
  it('comes through whole, in however many pieces', () => {
    expect(send(paste('two\nlines'))).toBe(paste('two\nlines'));
    expect(send(`${ESC}[20`, '0~two', '\nlines', `${ESC}[2`, '01~')).toBe(paste('two\nlines'));
  });

  it('ends after 0.4 s of silence when its end mark is lost, and the keys work again', () => {
    expect(send(`${ESC}[200~abc`, 399, 'd')).toBe('');
    expect(send(`${ESC}[200~abc`, 400, 'q')).toBe(`${paste('abc')}q`);
    expect(send(`${ESC}[200~abc${ESC}[2`, 400, 'q')).toBe(`${paste('abc')}q`);
  });

  it('that was given up too early is not run as commands when the rest arrives', () => {
    expect(send(`${ESC}[200~ab`, 400, `dd\ny${ESC}[201~`, 'q')).toBe(
      `${paste('ab')}${paste('dd\ny')}q`,
    );
  });

  it('cannot end itself from inside, and a second end mark says nothing', () => {
    expect(send(`${ESC}[200~a${ESC}[Ab${ESC}[201~${ESC}[201~q`)).toBe(`${paste('a[Ab')}q`);
  });

  it('is cut at a million characters', () => {
    const sent = send(`${ESC}[200~`, 'x'.repeat(999_999), 'yyy', `${ESC}[201~q`);
    expect(sent).toBe(`${paste(`${'x'.repeat(999_999)}y`)}q`);
  });
});

describe('a mouse that an earlier program left on', () => {
  it.each([
    ['as xterm began it', `${ESC}[M !!`],
    ['far to the right', `${ESC}[M\u0020\u00ff\u00ff`],
    ['with a q and a y for its place', `${ESC}[M#qy`],
    ['with numbers', `${ESC}[<0;12;5M`],
    ['let go', `${ESC}[<0;12;5m`],
    ['with numbers, as another program began it', `${ESC}[32;12;5M`],
  ])('presses no key: %s, in one piece or cut anywhere', (_, report) => {
    expect(send(`a${report}b`)).toBe('ab');
    for (let at = 1; at < report.length; at++) {
      // A cut behind ESC alone is a press of Esc if it stays so.
      expect(send(`a${report.slice(0, at)}`, 20, `${report.slice(at)}b`)).toBe('ab');
    }
  });
});

describe('answers of the terminal', () => {
  it.each([
    ['a colour, ended by BEL', `${ESC}]11;rgb:1e1e/1e1e/1e1e\x07`],
    ['a colour, ended by ST', `${ESC}]10;rgb:ffff/ffff/ffff${ESC}\\`],
    ['a name and version', `${ESC}P>|term 1.2${ESC}\\`],
    ['a picture report', `${ESC}_Gi=1;OK${ESC}\\`],
  ])('%s: nothing is typed, whole or in any two pieces', (_, answer) => {
    expect(send(`a${answer}b`)).toBe('ab');
    for (let cut = 1; cut < answer.length; cut++) {
      const second = answer.slice(cut);
      expect(send(`a${answer.slice(0, cut)}`, 20, `${second}b`), `cut at ${cut}`).toBe('ab');
    }
  });

  it('that break off swallow no key pressed later', () => {
    expect(send(`${ESC}]11;rgb:1e1e`, 400, 'q')).toBe('q');
    expect(send(`${ESC}]11;rgb:1e${ESC}[A`)).toBe(`${ESC}[A`);
    expect(send(`${ESC}]11;${'x'.repeat(9000)}`, 'q')).toBe('q');
  });

  it('a chord such as Alt-] stays a chord', () => {
    expect(send(`${ESC}]q`)).toBe(`${ESC}]q`);
  });
});

describe('Esc and arrow keys', () => {
  it('a lone Esc is Esc, 40 ms later', () => {
    expect(send(ESC)).toBe('');
    expect(send(ESC, 40)).toBe(ESCAPE);
    expect(send(ESC, 40, 'q')).toBe(`${ESCAPE}q`);
  });

  it('twenty of them at once are twenty', () => {
    expect(send(ESC.repeat(20), 40)).toBe(ESCAPE.repeat(20));
  });

  it('an arrow key cut in two is an arrow key when the rest comes soon', () => {
    expect(send(ESC, 39, '[A')).toBe(`${ESC}[A`);
    expect(send(`${ESC}[`, 100, 'A')).toBe(`${ESC}[A`);
    expect(send(`${ESC}[1;`, 100, '5A')).toBe(`${ESC}[1;5A`);
    expect(send(`${ESC}O`, 100, 'A')).toBe(`${ESC}OA`);
  });

  it('and Esc, never text, when it comes late', () => {
    expect(send(ESC, 60, '[A', 'q')).toBe(`${ESCAPE}q`);
    expect(send(ESC, 60, '[', 60, 'A', 'q')).toBe(`${ESCAPE}q`);
    expect(send(ESC, 60, 'OB')).toBe(ESCAPE);
    expect(send(`${ESC}[`, 400, 'q')).toBe('q');
  });

  it('a bracket typed well after Esc is a bracket', () => {
    expect(send(ESC, 200, '[A')).toBe(`${ESCAPE}[A`);
    expect(send(ESC, 60, '[', 160)).toBe(`${ESCAPE}[`);
  });

  it('with Alt they stay what Ink knows as Alt', () => {
    expect(send(`${ESC}${ESC}[A`)).toBe(`${ESC}${ESC}[A`);
    expect(send(`${ESC}b`)).toBe(`${ESC}b`);
    expect(send(`${ESC}😀`)).toBe(`${ESC}😀`);
  });

  it('the beginning of a sequence that broke off says nothing', () => {
    expect(send(`${ESC}[é`, 'q')).toBe('éq');
  });
});

describe('whatever arrives', () => {
  const piece = fc.oneof(
    fc.constantFrom(
      ESC,
      '[',
      ']11;',
      'O',
      'A',
      '200~',
      '201~',
      `${ESC}[200~`,
      `${ESC}[201~`,
      '\x07',
    ),
    fc.string({ maxLength: 3 }),
    fc.constantFrom(20, 50, 200, 500),
  );

  it('keys work again after a second of silence, and no paste stays open', () => {
    fc.assert(
      fc.property(fc.array(piece), (pieces) => {
        const out = send(...pieces, 1000, 'q');
        expect(out.endsWith('q')).toBe(true);
        expect(out.split(`${ESC}[200~`).length).toBe(out.split(`${ESC}[201~`).length);
      }),
      { numRuns: 2000 },
    );
  });

  it('plain text is never changed or kept back', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'grapheme' })), (pieces) => {
        fc.pre(!pieces.join('').includes(ESC));
        expect(send(...pieces)).toBe(pieces.join(''));
      }),
    );
  });
});
