/** A frame of a page with one word of a megabyte in it, of each sort of letters, against what a person feels as at once. */
import { rowsOf } from '../../src/screens/show/picture.ts';
import { Bench } from '../job/bench.ts';
import { Desk } from '../screens/desk.ts';
import { type Figures, ms, type Row, time } from './measure.ts';

const BYTES = 1_000_000;
/** ms. */
const AT_ONCE = 50;

const word = (sign: string): string => sign.repeat(Math.ceil(BYTES / Buffer.byteLength(sign)));

const WORDS: Readonly<Record<string, string>> = {
  letters: word('a'),
  Han: word('漢'),
  Hebrew: word('ש'),
  emoji: word('😀'),
  'emoji that are joined': word('👩‍🔧'),
  'one letter with combining marks': `a${word('\u0301')}`,
  'letters with a joiner behind each': word('a\u200d'),
};

/** Screens with the word in them, by the keys that lead there from the piece. */
const PAGES: readonly string[] = ['', '1', 'k', 'go', 'go go'];

export const figures: Figures = async () => {
  const rows: Row[] = [];
  for (const [name, text] of Object.entries(WORDS)) {
    const frames: number[] = [];
    for (const keys of PAGES) frames.push(await first(text, keys));
    const slowest = Math.max(...frames);
    rows.push({
      what: `a frame with one word of a megabyte: ${name}`,
      against: `${AT_ONCE} ms`,
      ratio: slowest / AT_ONCE,
      goal: 1,
      measured: `${ms(slowest)}, the slowest of ${PAGES.length} pages as they are opened`,
    });
  }
  return rows;
};

/** ms of the first picture of a page: the next ones know what came of the word. */
async function first(text: string, keys: string): Promise<number> {
  const desk = new Desk(new Bench(job(JSON.stringify(text)))).open('cover').press(keys);
  return time(() => rowsOf(desk.state));
}

const job = (text: string): string => `putback: 1
job: Case weeps
bolts: {S: M6x25}
pieces:
  cover:
    bolts: S S
    torque: 10 N·m
    joint: ${text}
    tip: {removal: ${text}}
    note: ${text}
    holes: {1: {note: ${text}}}
diary:
`;
