/** Whole pages of the practice jobs, compared with what lies in `pages/`: `npx vitest run tests/paper -u` makes them anew. */
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PAPERS } from '../../src/paper/ask.ts';
import { mapFile } from '../../src/paper/map-picture.ts';
import { sheetText } from '../../src/paper/sheet.ts';
import { allPapers, htmlOf } from './all-papers.ts';
import { NOW, pieceIn, practice } from './jobs.ts';

const pages = join(import.meta.dirname, 'pages');

describe('pages of the practice jobs', () => {
  const job = practice('hollin-left-cover');

  it.each(PAPERS)('%s', async (name) => {
    const made = allPapers(job, 'alternator', 'a4')[name];
    await expect(htmlOf(made)).toMatchFileSnapshot(join(pages, `${name}.html`));
  });

  it('the report of a job that went back together', async () => {
    const made = allPapers(practice('tarn-idle'), 'float-bowl', 'letter').report;
    await expect(htmlOf(made)).toMatchFileSnapshot(join(pages, 'report-again.html'));
  });

  it('the sheet to paste', async () => {
    const ask = { job, now: NOW, size: 'a4', wrenches: [], piece: null } as const;
    const text = sheetText({ ...ask, question: 'Heat, or a puller?', show: new Set() });
    await expect(`${text}\n`).toMatchFileSnapshot(join(pages, 'sheet.md'));
  });

  it('the picture of a piece', async () => {
    const svg = mapFile(pieceIn(job, 'alternator')) ?? '';
    await expect(svg).toMatchFileSnapshot(join(pages, 'map.svg'));
  });
});
