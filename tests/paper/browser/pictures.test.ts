/** Photographs of a report in a real browser: shown, the right way up, from the page or from beside it, and nothing else is asked for. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { Pinned } from '../../commands/pinned.ts';
import { jpeg, png } from '../camera.ts';
import { start } from './browser.ts';

let browser: Browser | null = null;
const folder = mkdtempSync(join(tmpdir(), 'putback-pictures-'));
beforeAll(async () => {
  browser = await start();
});
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

interface Seen {
  asked: string[];
  said: string[];
  images: { width: number; height: number; shown: boolean }[];
}

async function seen(name: string): Promise<Seen | null> {
  if (!browser) return null;
  const page = await browser.newPage();
  const url = pathToFileURL(join(folder, name)).href;
  const asked: string[] = [];
  const said: string[] = [];
  page.on('request', (r) => r.url() !== url && !r.url().startsWith('data:') && asked.push(r.url()));
  page.on('console', (c) => said.push(c.text()));
  await page.goto(url);
  const images = await page.evaluate(
    `[...document.images].map((i) => ({width: i.naturalWidth, height: i.naturalHeight, shown: i.complete && i.naturalWidth > 0}))`,
  );
  await page.close();
  return { asked, said, images: images as Seen['images'] };
}

it('they are shown, and turned as the camera says', async () => {
  const putback = new Pinned(folder);
  writeFileSync(
    join(folder, 'job.yaml'),
    'putback: 1\njob: A cover\npieces: {cover: {}}\ndiary:\n',
  );
  const clock = '2026:04:11 16:40:12';
  writeFileSync(join(folder, 'a.jpg'), jpeg({ clock, orientation: 6, secret: 'Kim', width: 16 }));
  writeFileSync(join(folder, 'b.png'), png({ clock, orientation: 8, secret: 'Kim', width: 16 }));
  await putback.run('photo', 'job.yaml', 'a.jpg', 'b.png', '--piece', 'cover');
  await putback.run('paper', 'job.yaml', 'report', '--inside', '-o', 'inside.html');
  await putback.run('paper', 'job.yaml', 'report', '-o', 'it & that #1.html');
  const inside = await seen('inside.html');
  const beside = await seen('it & that #1.html');
  expect(readFileSync(join(folder, 'inside.html'), 'utf8')).toContain(
    'src="data:image/jpeg;base64,',
  );
  if (!inside || !beside) return;
  expect(inside.asked).toEqual([]);
  expect(beside.asked.map((url) => url.split('/').at(-1))).toEqual(['001.jpg', '002.png']);
  expect(beside.asked.every((url) => url.startsWith('file:'))).toBe(true);
  for (const { said, images } of [inside, beside]) {
    expect(said).toEqual([]);
    // 16 × 8 as it was taken, stood up.
    expect(images).toEqual([
      { width: 8, height: 16, shown: true },
      { width: 8, height: 16, shown: true },
    ]);
  }
});
