/** Pages in a real browser, printed to PDF: what is life size is so on paper, nothing is cut, nothing is asked for. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PAPERS } from '../../../src/paper/ask.ts';
import { card } from '../../../src/paper/card.ts';
import { SIZES, type SizeName, within } from '../../../src/paper/page.ts';
import { FLANGES, flangeJob } from '../../published/flanges.ts';
import { allPapers, htmlOf } from '../all-papers.ts';
import { HOSTILE, hostileJob, jobOf, NOW, pieceIn, practice } from '../jobs.ts';
import { start } from './browser.ts';
import { type Path, type PdfPage, readPdf } from './pdf.ts';

let browser: Browser | null = null;
/** One for all that is printed: a new one costs as much as the printing. */
let page: Page | null = null;
let folder = '';
let file = '';
let asked: string[] = [];
let said: string[] = [];
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'putback-paper-'));
  browser = await start();
  page = (await browser?.newPage()) ?? null;
  file = join(folder, 'page.html');
  const url = pathToFileURL(file).href;
  page?.on(
    'request',
    (r) => r.url() !== url && !r.url().startsWith('data:') && asked.push(r.url()),
  );
  page?.on('dialog', (d) => said.push(d.message()));
  page?.on('console', (c) => said.push(c.text()));
  page?.on('pageerror', (e) => said.push(e.message));
});
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

const SIZE_NAMES = Object.keys(SIZES) as SizeName[];
/** Half of what the scale may be off on paper, mm. */
const NEAR = 0.1;

interface Seen {
  pages: PdfPage[];
  /** Addresses that were asked for beside the page's own. */
  asked: string[];
  /** Dialogs, errors and what the page says on its console. */
  said: string[];
  /** Texts that do not fit into the page or their box. */
  cut: string[];
}

/** Null: there is no browser. */
async function printed(html: string, size: SizeName): Promise<Seen | null> {
  if (!page) return null;
  [asked, said] = [[], []];
  writeFileSync(file, html);
  await page.emulateMedia({ media: 'screen' });
  // As wide as what is printed on, so that lines break as on paper.
  const free = /@page\{[^}]*margin:0mm/.test(html) ? SIZES[size].width : within(size).width;
  await page.setViewportSize({ width: Math.floor((free * 96) / 25.4), height: 1000 });
  await page.goto(pathToFileURL(file).href);
  const cut = await cutTexts(page);
  const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: false });
  return { pages: readPdf(pdf), asked, said, cut };
}

/** Texts wider than the body, or outside of the nearest box that hides what runs over. */
async function cutTexts(page: Page): Promise<string[]> {
  await page.emulateMedia({ media: 'print' });
  return await page.evaluate(`(() => {
    const over = [];
    const right = document.documentElement.clientWidth + 0.5;
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      if (!node.data.trim()) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      const box = range.getBoundingClientRect();
      const hides = node.parentElement.closest('svg, .label, .sheet');
      const frame = hides ? hides.getBoundingClientRect() : null;
      const out = frame && getComputedStyle(hides).overflow !== 'visible' &&
        (box.left < frame.left - 0.5 || box.right > frame.right + 0.5 || box.top < frame.top - 0.5 || box.bottom > frame.bottom + 0.5);
      if (box.left < -0.5 || box.right > right || out) over.push(node.data.slice(0, 60));
    }
    return over;
  })()`);
}

function expectWhole(seen: Seen, size: SizeName): void {
  expect(seen.asked).toEqual([]);
  expect(seen.said).toEqual([]);
  expect(seen.cut).toEqual([]);
  const { width, height } = SIZES[size];
  for (const page of seen.pages) {
    expect(Math.abs(page.width - width)).toBeLessThan(0.5);
    expect(Math.abs(page.height - height)).toBeLessThan(0.5);
  }
}

const isProof = (p: Path) =>
  p.points.length === 2 && p.height < 0.01 && p.width > 95 && p.width < 105;

describe.each(SIZE_NAMES)('printed on %s', (size) => {
  const job = practice('hollin-left-cover');
  const odd = hostileJob();

  it.each(PAPERS)('%s: nothing is cut and nothing is asked for', async (name) => {
    const seen = await printed(htmlOf(allPapers(job, 'alternator', size)[name]), size);
    if (!seen) return;
    expectWhole(seen, size);
    expect(seen.pages.length).toBeGreaterThan(0);
  });

  it.each(PAPERS)('%s: the same with texts that try to be more than texts', async (name) => {
    const papers = allPapers(odd, 'cover', size, HOSTILE.join(' '));
    const seen = await printed(htmlOf(papers[name]), size);
    if (seen) expectWhole(seen, size);
  });

  it('a single sheet stays a single sheet', async () => {
    for (const name of ['card', 'labels', 'tag', 'steps'] as const) {
      const seen = await printed(htmlOf(allPapers(job, 'alternator', size)[name]), size);
      if (seen) expect(seen.pages.length, name).toBe(1);
    }
  });

  it.each(FLANGES.map((f) => [f.name, f] as const))(
    'the card of %s lies true over its drawing',
    async (_, flange) => {
      const made = card({ ...cardAsk(flangeJob(flange)), size, across: flange.circle });
      const seen = await printed(htmlOf(made), size);
      if (!seen) return;
      expectWhole(seen, size);
      const sheets = 'sheets' in made ? (made.sheets ?? 0) : 0;
      for (const page of seen.pages.slice(0, sheets)) {
        const [proof] = page.paths.filter(isProof);
        expect(Math.abs((proof?.width ?? 0) - 100)).toBeLessThan(NEAR);
      }
      const rings = laid(seen.pages.slice(0, sheets), flange.bolt);
      expect(rings).toHaveLength(flange.holes);
      const [cx, cy] = [mean(rings.map((r) => r.x)), mean(rings.map((r) => r.y))];
      for (const { x, y } of rings) {
        expect(Math.abs(2 * Math.hypot(x - cx, y - cy) - flange.circle)).toBeLessThan(NEAR);
      }
      const chord = flange.circle * Math.sin(Math.PI / flange.holes);
      for (const ring of rings) {
        const next = rings.filter(
          (r) => Math.abs(Math.hypot(r.x - ring.x, r.y - ring.y) - chord) < NEAR,
        );
        expect(next).toHaveLength(2);
      }
    },
  );

  it('a bolt lies on its line at true length', async () => {
    const text = `putback: 1
job: Lengths
bolts: {S: "M6x25 flange", M: "M8x120 hex", L: "1/4-20 x 1-1/2"}
pieces: {cover: {bolts: S M L}}
`;
    const made = card({ ...cardAsk(jobOf(text)), size, across: null });
    const seen = await printed(htmlOf(made), size);
    if (!seen) return;
    const lines = seen.pages
      .flatMap((p) => p.paths)
      .filter((p) => p.points.length === 2 && p.height < 0.01);
    for (const mm of [25, 120, 38.1]) {
      expect(
        lines.some((l) => Math.abs(l.width - mm) < NEAR),
        `${mm} mm`,
      ).toBe(true);
    }
  });
});

function cardAsk(job: ReturnType<typeof jobOf>) {
  return { job, now: NOW, wrenches: [], piece: pieceIn(job, 'cover') };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, v) => sum + v, 0) / values.length;
}

const isRound = (p: Path, d: number) =>
  p.curved && Math.abs(p.width - d) < 0.05 && Math.abs(p.height - d) < 0.05;
const centre = (p: Path) => ({ x: p.x + p.width / 2, y: p.y + p.height / 2 });
/** Diameter of the ring of an overlap mark. */
const MARK = 5;

/** Rings of all sheets in the place of the first, laid mark upon mark; each hole once. */
function laid(pages: readonly PdfPage[], bolt: number): { x: number; y: number }[] {
  const sheets = pages.map(({ paths }) => ({
    rings: paths.filter((p) => isRound(p, bolt)).map(centre),
    marks: paths.filter((p) => isRound(p, MARK)).map(centre),
  }));
  const found: { x: number; y: number }[] = [...(sheets[0]?.rings ?? [])];
  if (sheets.length === 1) return found;
  // Two sheets beside or below each other show the same marks in the same order.
  const [first, second] = sheets;
  const [a, b] = [first?.marks[0], second?.marks[0]];
  if (!first || !second || !a || !b) return found;
  expect(first.marks.length).toBe(second.marks.length);
  const [dx, dy] = [a.x - b.x, a.y - b.y];
  for (const [i, mark] of first.marks.entries()) {
    const other = second.marks[i];
    expect(Math.hypot(mark.x - (other?.x ?? 0) - dx, mark.y - (other?.y ?? 0) - dy)).toBeLessThan(
      NEAR,
    );
  }
  for (const { x, y } of second.rings) {
    const moved = { x: x + dx, y: y + dy };
    if (!found.some((f) => Math.hypot(f.x - moved.x, f.y - moved.y) < NEAR)) found.push(moved);
  }
  return found;
}
