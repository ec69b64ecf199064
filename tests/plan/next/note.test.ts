import { describe, expect, it } from 'vitest';
import { backAfter } from '../../../src/plan/next/back.ts';
import { noteRows } from '../../../src/plan/next/note.ts';
import { boltsOff, jobOf, off, type Said } from '../make.ts';

const LATER = '2026-05-23T10:00:00+02:00';
const TEXT = `
bolts: {S: M6x25}
pieces:
  hose: {}
  cover: {name: Left cover, under: hose, bolts: S S S S S S S, takes: 1 h}
tasks:
  scrape: {do: Scrape the face, while: cover off, takes: 30 min}
buy:
  gasket: {what: cover gasket, for: cover on}`;

function rows(text: string, lines: Said[]): Record<string, string[]> {
  const job = jobOf(text, lines);
  return Object.fromEntries(
    noteRows(job, backAfter(job, LATER), LATER).map((r) => [
      r.loud ? `${r.label}!` : r.label,
      r.texts,
    ]),
  );
}

describe('the note of a good workmate', () => {
  const away = [off('hose'), ...boltsOff('cover', 'S S S S S S S')];

  it('says what is off, inside, awaited and noted, and when it can be ready', () => {
    const lines: Said[] = [
      ...away,
      { piece: 'cover', inside: '1 rag' },
      { piece: 'cover', hole: ['3'], state: 'pulled', says: 'insert on Friday' },
      { buy: 'gasket', done: 'ordered', promised: '2026-05-25' },
      { piece: 'cover', note: 'edge was bent before' },
    ];
    expect(rows(TEXT, lines)).toEqual({
      Off: ['Hose', 'Left cover'],
      'Inside!': ['1 rag (Left cover) since 2 May'],
      Trouble: ['Left cover, 3: thread pulled since 2 May (insert on Friday)'],
      'Finger-tight': ['nothing'],
      Awaited: ['cover gasket, promised 25 May'],
      Ready: ['25 May, 01:00 at the earliest'],
      'Last note': ['edge was bent before (2 May)'],
    });
  });

  it('shouts what is only finger-tight, by name or, for many, by number', () => {
    const some = [...away, { piece: 'cover', hole: ['1', '2'], in: 'S' }];
    expect(rows(TEXT, some)['Finger-tight!']).toEqual(['Left cover: 1 and 2']);
    const all = [...away, { piece: 'cover', in: 'S' }];
    expect(rows(TEXT, all)['Finger-tight!']).toEqual(['Left cover: 7 bolts']);
  });

  it('says what is listed and not here though no step waits for it, and what the work takes', () => {
    const text = `${TEXT}
  rubbers: cush rubbers`
      .replace('takes: 1 h}', 'takes: 1 h, joint: sealant on both faces}')
      .replace(
        '  scrape:',
        '  lock: {do: Threadlocker medium on the two bolts, while: cover off}\n  old: {do: Scrape the old grease off, while: cover off}\n  scrape:',
      );
    const lines: Said[] = [...away, { buy: 'gasket', done: 'here' }];
    expect(rows(text, lines)).toMatchObject({
      Awaited: ['cush rubbers, not ordered yet'],
      'In the house?': ['sealant', 'threadlocker, medium strength'],
      Here: ['cover gasket'],
    });
    const had: Said[] = [
      ...lines,
      { buy: 'sealant', done: 'here' },
      { buy: 'threadlocker-medium', done: 'here' },
    ];
    expect(rows(text, had)).not.toHaveProperty('In the house?');
  });

  it('names no hour of a finish that hangs on a day alone', () => {
    const text = 'pieces: {hose: {}}\nbuy: {clip: {what: Clip, for: hose on}}';
    const lines = [off('hose'), { buy: 'clip', done: 'ordered', promised: '2026-05-25' }];
    expect(rows(text, lines).Ready).toEqual(['25 May at the earliest']);
  });

  it('says nothing of a finish that nobody can know', () => {
    const lines = [...away, { buy: 'gasket', done: 'ordered' }];
    expect(rows(TEXT, lines)).not.toHaveProperty('Ready');
  });
});
