import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { openerOf, openFile } from '../../../src/paper/desk/open.ts';
import { printPaper, showPicture } from '../../../src/paper/desk/print.ts';
import { writePage } from '../../../src/paper/desk/write-page.ts';
import { practice } from '../jobs.ts';

const folders: string[] = [];
let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'putback-print-'));
  folders.push(folder);
});
afterAll(() => {
  for (const f of folders) rmSync(f, { recursive: true, force: true });
});

/** A desktop whose opener writes down what it was given. */
function desktop(more = '') {
  const bin = join(folder, 'bin');
  mkdirSync(bin);
  const opener = join(bin, 'xdg-open');
  writeFileSync(
    opener,
    `#!/bin/sh\nprintf '%s\\n' "$#" "$1" > "${folder}/given.tmp"\nmv "${folder}/given.tmp" "${folder}/given"\n${more}\n`,
  );
  chmodSync(opener, 0o755);
  return { platform: 'linux' as const, env: { PATH: `${bin}:/usr/bin:/bin` } };
}

async function given(): Promise<string[]> {
  while (!existsSync(join(folder, 'given'))) await new Promise((done) => setImmediate(done));
  return readFileSync(join(folder, 'given'), 'utf8').trimEnd().split('\n');
}

const clock = { now: () => '2026-05-02T10:00:00+02:00', id: () => 'abcdefgh' };

describe('a page that is written', () => {
  it('takes the place of an older one of ours, and of nothing else', () => {
    const file = join(folder, 'page.html');
    const ours = '<!doctype html>\n<meta name="generator" content="putback">\n';
    expect(writePage(file, ours, 'n1')).toEqual({ ok: true });
    expect(writePage(file, `${ours}2`, 'n2')).toEqual({ ok: true });
    expect(readFileSync(file, 'utf8')).toBe(`${ours}2`);
    writeFileSync(file, 'by somebody');
    expect(writePage(file, ours, 'n3')).toMatchObject({ ok: false, code: 'exists' });
    expect(readFileSync(file, 'utf8')).toBe('by somebody');
    symlinkSync(file, join(folder, 'link.html'));
    expect(writePage(join(folder, 'link.html'), ours, 'n4')).toMatchObject({
      ok: false,
      code: 'exists',
    });
    mkdirSync(join(folder, 'sub'));
    expect(writePage(join(folder, 'sub'), ours, 'n5')).toMatchObject({ ok: false, code: 'exists' });
    expect(writePage(join(folder, 'none/page.html'), ours, 'n6')).toMatchObject({
      ok: false,
      code: 'gone',
    });
  });
});

describe('handing over to the desktop', () => {
  it('gives its own opener one whole path, whatever that is called', async () => {
    const file = join(folder, '; touch x -e.html');
    writeFileSync(file, '');
    expect(await openFile(file, desktop())).toBeNull();
    expect(await given()).toEqual(['1', file]);
  });

  it('says so where the opener has nothing to open it with, and waits for none that goes on', async () => {
    const file = join(folder, 'page.html');
    writeFileSync(file, '');
    expect(await openFile(file, desktop('exit 3'))).toBe('xdg-open could not: open it yourself.');
    rmSync(join(folder, 'bin'), { recursive: true });
    expect(await openFile(file, desktop(`while [ -e "${file}" ]; do sleep 0.1; done`))).toBeNull();
    rmSync(file);
  });

  it('says so where there is no opener, and takes no option for a path', async () => {
    const none = { platform: 'linux' as const, env: { PATH: folder } };
    expect(await openFile(join(folder, 'a.html'), none)).toBe(
      'xdg-open is not here: open it yourself.',
    );
    expect(await openFile('--help', none)).toBe('--help is no whole path.');
    expect(openerOf({ platform: 'win32', env: { SystemRoot: 'D:\\Win' } })).toBe(
      'D:\\Win\\explorer.exe',
    );
    expect(openerOf({ platform: 'darwin', env: {} })).toBe('/usr/bin/open');
  });
});

describe('from the screens', () => {
  const job = practice('hollin-left-cover');
  const print = { job, piece: null, open: false } as const;

  it.each(['labels', 'tag', 'steps', 'sheet', 'report', 'blank'] as const)(
    '%s lies beside the job',
    async (what) => {
      const file = join(folder, 'cover.yaml');
      const said = await printPaper({ ...print, file, what }, { ...clock, ...desktop() });
      expect(said).toBe(`Page: ${join(folder, `cover-${what}.html`)}`);
      expect(readFileSync(join(folder, `cover-${what}.html`), 'utf8')).toContain('<!doctype html>');
    },
  );

  it('a card is of its piece, and is opened where that is wanted', async () => {
    const file = join(folder, 'cover.yaml');
    const said = await printPaper(
      { ...print, file, what: 'card', piece: 'alternator', open: true },
      { ...clock, ...desktop() },
    );
    expect(said).toBe(`Page: ${join(folder, 'cover-card-alternator.html')}`);
    expect(await given()).toEqual(['1', join(folder, 'cover-card-alternator.html')]);
  });

  it('is of the size that the user has', async () => {
    const file = join(folder, 'cover.yaml');
    const config = join(folder, 'config');
    mkdirSync(join(config, 'putback'), { recursive: true });
    writeFileSync(join(config, 'putback', 'settings.yaml'), 'paper: letter\n');
    const out = { ...clock, ...desktop() };
    await printPaper(
      { ...print, file, what: 'tag' },
      { ...out, env: { ...out.env, XDG_CONFIG_HOME: config } },
    );
    expect(readFileSync(join(folder, 'cover-tag.html'), 'utf8')).toContain('size:215.9mm 279.4mm');
  });

  it('why there is no page is said, and what is there stays', async () => {
    const file = join(folder, 'cover.yaml');
    writeFileSync(join(folder, 'cover-tag.html'), 'mine');
    const out = { ...clock, ...desktop() };
    expect(await printPaper({ ...print, file, what: 'tag' }, out)).toContain('Not saved.');
    expect(readFileSync(join(folder, 'cover-tag.html'), 'utf8')).toBe('mine');
    expect(
      await printPaper({ ...print, file, what: 'card', piece: 'breather-hose' }, out),
    ).toContain('has no bolts');
  });

  it('a photograph is opened, and nothing that only calls itself one', async () => {
    const out = desktop();
    const file = join(folder, 'cover.yaml');
    writeFileSync(join(folder, 'a.jpg'), 'x');
    symlinkSync('/etc/passwd', join(folder, 'link.jpg'));
    expect(await showPicture(file, 'a.jpg', out)).toBe('Opened: a.jpg');
    expect(await given()).toEqual(['1', join(folder, 'a.jpg')]);
    expect(await showPicture(file, 'link.jpg', out)).toBe('link.jpg is a link.');
    expect(await showPicture(file, 'gone.jpg', out)).toBe('gone.jpg is not there any more.');
    expect(await showPicture(file, 'run.sh', out)).toBe('run.sh is no photograph by its name.');
    expect(await showPicture(file, 'page.html', out)).toBe(
      'page.html is no photograph by its name.',
    );
  });
});
