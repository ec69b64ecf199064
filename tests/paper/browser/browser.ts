/** A browser that is installed here, driven without its window; null where there is none. */
import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

export function installed(): string | null {
  return PLACES.find((path) => existsSync(path)) ?? null;
}

export async function start(): Promise<Browser | null> {
  const path = installed();
  if (path === null) {
    process.stdout.write(
      'Not run: no Chromium or Chrome is installed here, so no page was printed and measured.\n',
    );
    return null;
  }
  return await chromium.launch({ executablePath: path, args: ['--no-sandbox'] });
}
