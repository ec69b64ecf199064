import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32, inflateSync } from 'node:zlib';
import ExifReader from 'exifreader';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { cameraOf, noPhotograph } from '../../../src/paper/desk/camera.ts';
import { PACKING } from '../../../src/paper/desk/pictures.ts';
import { bareProfile } from '../../../src/paper/icc.ts';
import { stripped } from '../../../src/paper/strip.ts';
import { filesIn } from '../../../src/screens/terminal/loop-files.ts';
import { shelf } from '../../../src/screens/terminal/shelf.ts';
import { Pinned } from '../../commands/pinned.ts';
import { heic, jpeg, png, profile, webp } from '../camera.ts';

const SECRET = 'Kim of 47 North Lane, serial 0815';
const FACTS = { clock: '2026:04:11 16:40:12', offset: '+02:00', orientation: 6, secret: SECRET };

describe('what a photograph tells', () => {
  it.each([
    ['JPEG', jpeg(FACTS)],
    ['PNG', png(FACTS)],
    ['WebP', webp(FACTS)],
    ['HEIC', heic(FACTS)],
  ])('%s: when it was taken and which way up it is', (_, bytes) => {
    expect(cameraOf(bytes)).toEqual({
      clock: '2026-04-11T16:40:12',
      offset: '+02:00',
      orientation: 6,
    });
  });

  it('nothing, where there is nothing or the clock was never set', () => {
    const nothing = { clock: null, offset: null, orientation: 1 };
    expect(cameraOf(Buffer.from('no picture'))).toEqual(nothing);
    expect(cameraOf(Buffer.alloc(0))).toEqual(nothing);
    expect(cameraOf(jpeg({ clock: '0000:00:00 00:00:00' }))).toEqual(nothing);
  });

  it.each([
    ['JPEG', jpeg],
    ['PNG', png],
    ['WebP', webp],
  ])('%s: stripped, it tells nothing but the picture', (name, make) => {
    const bytes = make(FACTS);
    expect(bytes.includes(SECRET)).toBe(true);
    const bare = Buffer.from(stripped(bytes, 6, PACKING) ?? []);
    expect(bare.length).toBeGreaterThan(20);
    for (const word of SECRET.split(/[ ,]+/)) expect(bare.includes(word), word).toBe(false);
    // A reader that looks for everything finds no place and no owner.
    const tags = ExifReader.load(bare, { expanded: true });
    expect(tags.gps).toBeUndefined();
    expect(tags.xmp).toBeUndefined();
    expect(
      Object.keys(tags.exif ?? {}).filter((k) => !/^(?:Orientation|Exif Version)$/.test(k)),
    ).toEqual([]);
    // What makes its colours stays, and its profile says nothing else: read back, it is as it was written.
    const icc = profileIn(name, bare);
    expect(bareProfile(icc)).toEqual(icc);
    for (const text of [bare, icc].map((b) => Buffer.from(b).toString('latin1')))
      for (const word of SECRET.split(/[ ,]+/)) expect(text.includes(word), word).toBe(false);
    // Its way up stays.
    expect(cameraOf(bare).orientation).toBe(6);
  });

  it('a profile keeps primaries, white point and curves to the bit; tables of a printer and broken ones are left out', () => {
    for (const late of [false, true]) {
      const icc = profile(SECRET, { late });
      const bare = bareProfile(icc) ?? new Uint8Array();
      const [was, now] = [tagsOf(icc), tagsOf(bare)];
      expect([...now.keys()].sort()).toEqual(
        'bTRC bXYZ cprt desc gTRC gXYZ rTRC rXYZ wtpt'.split(' '),
      );
      for (const [name, length] of Object.entries({ rXYZ: 20, wtpt: 20, bTRC: 14 })) {
        expect(now.get(name)).toEqual(was.get(name)?.subarray(0, length));
      }
      expect(now.get('rTRC')?.subarray(12)).toEqual(was.get('rTRC')?.subarray(12, 32));
      expect(Buffer.from(bare).readUInt32BE(0)).toBe(bare.length);
    }
    expect(bareProfile(profile(SECRET, { lut: true }))).toBeNull();
    const whole = profile(SECRET);
    for (let n = 0; n < whole.length; n += 7) {
      const cut = bareProfile(whole.subarray(0, n));
      if (cut) expect(Buffer.from(cut).toString('latin1')).not.toContain('North');
    }
  });

  it('nothing of what is broken or of another kind is given out', () => {
    expect(stripped(Buffer.from('text'), 1, PACKING)).toBeNull();
    expect(stripped(jpeg(FACTS).subarray(0, 60), 1, PACKING)).toBeNull();
    expect(stripped(png(FACTS).subarray(0, 40), 1, PACKING)).toBeNull();
    expect(stripped(heic(FACTS), 1, PACKING)).toBeNull();
  });
});

/** The tags of a profile, by name. */
function tagsOf(bytes: Uint8Array): Map<string, Buffer> {
  const icc = Buffer.from(bytes);
  return new Map(
    Array.from({ length: icc.readUInt32BE(128) }, (_, i): [string, Buffer] => {
      const at = 132 + 12 * i;
      const from = icc.readUInt32BE(at + 4);
      return [
        icc.toString('latin1', at, at + 4),
        icc.subarray(from, from + icc.readUInt32BE(at + 8)),
      ];
    }),
  );
}

/** As a reader of that kind of picture finds it. */
function profileIn(name: string, bytes: Buffer): Uint8Array {
  if (name === 'PNG') {
    const at = bytes.indexOf('iCCP');
    const chunk = bytes.subarray(at + 4, at + 4 + bytes.readUInt32BE(at - 4));
    expect(bytes.readUInt32BE(at + 4 + chunk.length)).toBe(
      crc32(bytes.subarray(at, at + 4 + chunk.length)),
    );
    return Uint8Array.from(inflateSync(chunk.subarray(chunk.indexOf(0) + 2)));
  }
  if (name === 'WebP') {
    const at = bytes.indexOf('ICCP');
    return Uint8Array.from(bytes.subarray(at + 8, at + 8 + bytes.readUInt32LE(at + 4)));
  }
  const at = bytes.indexOf('ICC_PROFILE');
  return Uint8Array.from(bytes.subarray(at + 14, at - 2 + bytes.readUInt16BE(at - 2)));
}

const JOB = `putback: 1
job: Two covers
bolts: {S: M6x25 flange}
pieces:
  left: {bolts: S S}
  right: {bolts: S S}
diary:
  - {at: 2026-04-11T16:30:00+02:00, id: aaaaaaa1, piece: left, out: S}
  - {at: 2026-04-11T16:40:00+02:00, id: aaaaaaa2, piece: left, removed: all}
  - {at: 2026-04-11T17:00:00+02:00, id: aaaaaaa3, piece: right, out: S}
  - {at: 2026-04-11T17:10:00+02:00, id: aaaaaaa4, piece: right, removed: all}
`;

describe('putback photo', () => {
  let folder = '';
  let putback = new Pinned('');
  const folders: string[] = [];
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'putback-photo-'));
    folders.push(folder);
    putback = new Pinned(folder);
    writeFileSync(join(folder, 'job.yaml'), JOB);
  });
  afterAll(() => {
    for (const f of folders) rmSync(f, { recursive: true, force: true });
  });
  const shot = (name: string, clock: string, more = {}) =>
    writeFileSync(join(folder, name), jpeg({ clock: `2026:04:11 ${clock}`, ...more }));
  const diary = () =>
    readFileSync(join(folder, 'job.yaml'), 'utf8')
      .split('\n')
      .filter((l) => l.includes('photo:'));

  it('puts each to the piece that was at hand, and asks where that cannot be told', async () => {
    shot('a.jpg', '16:25:00'); // before the first bolt: as it was
    shot('b.jpg', '16:35:00');
    shot('c.jpg', '16:58:30'); // just before the right one
    shot('d.jpg', '16:50:00'); // as far from one as from the other
    shot('e.jpg', '22:00:00'); // nobody was there
    const { exit, json } = await putback.json(
      'photo',
      'job.yaml',
      'a.jpg',
      'b.jpg',
      'c.jpg',
      'd.jpg',
      'e.jpg',
    );
    expect(exit).toBe(1);
    expect(json).toMatchObject({
      ok: false,
      changed: true,
      placed: [
        { picture: 'a.jpg', piece: 'left', taken: '2026-04-11T16:25:00+02:00' },
        { picture: 'b.jpg', piece: 'left' },
        { picture: 'c.jpg', piece: 'right' },
      ],
      unplaced: [
        { candidates: ['left', 'right'], taken: '2026-04-11T16:50:00+02:00' },
        { candidates: [] },
      ],
    });
    expect(diary()).toHaveLength(3);
  });

  it('puts a clock right that goes wrong, with the zone of the camera or of the nearest mark', async () => {
    shot('a.jpg', '16:31:40');
    shot('b.jpg', '14:35:00', { offset: '+00:00' });
    const { json } = await putback.json('photo', 'job.yaml', 'a.jpg', 'b.jpg', '--shift', '3m20s');
    expect(json).toMatchObject({
      ok: true,
      placed: [
        { taken: '2026-04-11T16:35:00+02:00', piece: 'left' },
        // The same moment, told on the clock of the marks around it.
        { taken: '2026-04-11T16:38:20+02:00', piece: 'left' },
      ],
    });
    expect((await putback.run('photo', 'job.yaml', 'a.jpg', '--shift=-5m')).exit).toBe(0);
    expect((await putback.run('photo', 'job.yaml', 'a.jpg', '--shift', 'soon')).exit).toBe(2);
  });

  it('goes where it is said, to a hole of it too, and is noted once', async () => {
    writeFileSync(join(folder, 'x.png'), png({}));
    const said = ['photo', 'job.yaml', 'x.png', '--piece', 'right', '--hole', '2'];
    expect((await putback.run(...said)).exit).toBe(0);
    expect(diary()).toEqual([expect.stringContaining('piece: right, hole: 2, photo: x.png')]);
    expect((await putback.json(...said)).json).toMatchObject({ ok: true, changed: false });
    expect(diary()).toHaveLength(1);
    expect((await putback.run('photo', 'job.yaml', 'x.png', '--piece', 'middle')).exit).toBe(2);
    expect(
      (await putback.run('photo', 'job.yaml', 'x.png', '--piece', 'right', '--hole', '9')).exit,
    ).toBe(2);
    expect((await putback.run('photo', 'job.yaml', 'x.png', '--hole', '2')).exit).toBe(2);
  });

  it('says what is not there, what says no time, and what is no file', async () => {
    writeFileSync(join(folder, 'x.png'), png({}));
    mkdirSync(join(folder, 'sub'));
    const { exit, err } = await putback.run('photo', 'job.yaml', 'x.png', 'gone.jpg', 'sub');
    expect(exit).toBe(1);
    expect(err).toContain('it does not say when it was taken');
    expect(err).toContain('There is no');
    expect(err).toContain('a folder');
    expect(diary()).toHaveLength(0);
  });

  it('what is no photograph is refused by what is in it and by its size, before anything is copied', async () => {
    writeFileSync(join(folder, 'empty.jpg'), '');
    writeFileSync(join(folder, 'text.jpg'), 'root:x:0:0\n');
    writeFileSync(join(folder, 'film.mp4'), '\0\0\0\x18ftypisom\0\0\0\0isommp42');
    writeFileSync(join(folder, 'huge.jpg'), Buffer.from([0xff, 0xd8, 0xff, 0xe0]));
    truncateSync(join(folder, 'huge.jpg'), 6e9);
    const names = ['empty.jpg', 'text.jpg', 'film.mp4', 'huge.jpg', '/etc/passwd'];
    const { exit, err } = await putback.run(
      ...['photo', 'job.yaml', ...names, '--copy', '--piece', 'left'],
    );
    expect(exit).toBe(1);
    for (const why of [
      'empty.jpg is empty',
      'text.jpg is no',
      'film.mp4 is no',
      'larger than 128 MB',
      '/etc/passwd is no photograph: nothing was noted',
    ])
      expect(err).toContain(why);
    expect(diary()).toHaveLength(0);
    expect(existsSync(join(folder, 'photos'))).toBe(false);
    for (const make of [jpeg, png, webp, heic]) {
      writeFileSync(join(folder, 'x.bin'), make(FACTS));
      expect(noPhotograph(join(folder, 'x.bin'))).toBeNull();
    }
  });

  it('copies beside the job where that is said, never over another, and out of the sight of git', async () => {
    mkdirSync(join(folder, 'camera'));
    shot('camera/a.jpg', '16:35:00');
    await putback.run('photo', 'job.yaml', 'camera/a.jpg', '--copy');
    shot('camera/a.jpg', '16:36:00');
    await putback.run('photo', 'job.yaml', 'camera/a.jpg', '--copy');
    expect(readdirSync(join(folder, 'photos')).sort()).toEqual(['.gitignore', 'a-2.jpg', 'a.jpg']);
    expect(readFileSync(join(folder, 'photos/.gitignore'), 'utf8')).toBe('*\n');
    expect(diary().map((l) => /photo: "?([^",]+)/.exec(l)?.[1])).toEqual([
      'photos/a.jpg',
      'photos/a-2.jpg',
    ]);
  });

  it('says what was noted before something stood in the way', async () => {
    shot('a.jpg', '16:35:00');
    mkdirSync(join(folder, 'sub'));
    shot('sub/b.jpg', '16:36:00');
    await putback.run('photo', 'job.yaml', 'a.jpg', '--stay');
    writeFileSync(join(folder, 'photos'), 'mine');
    const { exit, json } = await putback.json('photo', 'job.yaml', 'a.jpg', 'sub/b.jpg', '--copy');
    expect(exit).toBe(3);
    expect(json).toMatchObject({ ok: false, changed: false, placed: [] });
    expect(json.refused).toMatchObject({ code: expect.any(String) });
    expect(readFileSync(join(folder, 'photos'), 'utf8')).toBe('mine');
    expect(diary()).toHaveLength(1);
  });

  it('looks through the folders of the bench, once for each picture', async () => {
    mkdirSync(join(folder, 'camera/100'), { recursive: true });
    shot('camera/100/a.jpg', '16:35:00');
    shot('camera/100/holiday.jpg', '03:00:00');
    writeFileSync(
      join(folder, 'bench.yaml'),
      'photos-from: camera\nphotos: copy\nphotos-git: add\n',
    );
    expect((await putback.json('photo', 'job.yaml')).json).toMatchObject({
      ok: true,
      placed: [{ picture: 'photos/a.jpg', piece: 'left' }],
      others: 1,
    });
    expect((await putback.json('photo', 'job.yaml')).json).toMatchObject({
      changed: false,
      others: 2,
    });
    expect(readdirSync(join(folder, 'photos'))).toEqual(['a.jpg']);
  });

  it('are looked for when a job opens, and said where there is any that is not noted', async () => {
    mkdirSync(join(folder, 'camera'));
    shot('camera/a.jpg', '16:35:00');
    shot('camera/b.jpg', '16:36:00');
    shot('camera/holiday.jpg', '03:00:00');
    writeFileSync(join(folder, 'bench.yaml'), 'photos-from: camera\nphotos: stay\n');
    const screens = filesIn(
      folder,
      { now: () => '2026-04-11T18:00:00+02:00', id: () => 'x' },
      shelf,
    );
    await screens.hands.open({ do: 'open', file: 'job.yaml' });
    expect(await screens.newPhotos('job.yaml')).toBe(
      '2 new photographs of this job in the camera’s folder: putback photo notes them.',
    );
    await putback.run('photo', 'job.yaml');
    screens.expect('job.yaml');
    await screens.hands.open({ do: 'open', file: 'job.yaml' });
    expect(await screens.newPhotos('job.yaml')).toBeNull();
  });

  it('shows them in the report, stripped, in the page or in a folder beside it', async () => {
    shot('a.jpg', '16:35:00', { secret: SECRET, orientation: 6 });
    await putback.run('photo', 'job.yaml', 'a.jpg');
    await putback.run('paper', 'job.yaml', 'report', '--inside', '-o', 'inside.html');
    const inside = readFileSync(join(folder, 'inside.html'), 'utf8');
    const [, data = ''] = /src="data:image\/jpeg;base64,([^"]+)"/.exec(inside) ?? [];
    const shown = Buffer.from(data, 'base64');
    expect(shown.length).toBeGreaterThan(100);
    expect(shown.includes('Kim')).toBe(false);
    expect(cameraOf(shown).orientation).toBe(6);
    await putback.run('paper', 'job.yaml', 'report', '-o', 'beside.html');
    const beside = readFileSync(join(folder, 'beside.html'), 'utf8');
    expect(beside).toContain('<img src="beside.pictures/001.jpg"');
    expect(readFileSync(join(folder, 'beside.pictures/001.jpg'))).toEqual(shown);
    // A folder of that name that somebody else made is left.
    mkdirSync(join(folder, 'mine.pictures'));
    expect((await putback.run('paper', 'job.yaml', 'report', '-o', 'mine.html')).exit).toBe(3);
    expect(readdirSync(join(folder, 'mine.pictures'))).toEqual([]);
  });

  it('shows nothing from outside of the bench, whatever a diary says', async () => {
    const other = mkdtempSync(join(tmpdir(), 'putback-other-'));
    folders.push(other);
    writeFileSync(join(other, 'private.jpg'), jpeg({}));
    symlinkSync(join(other, 'private.jpg'), join(folder, 'link.jpg'));
    symlinkSync(other, join(folder, 'way'));
    const line = (id: string, path: string) =>
      `  - {at: 2026-04-11T18:00:00+02:00, id: ${id}, piece: left, photo: ${JSON.stringify(path)}}\n`;
    writeFileSync(
      join(folder, 'job.yaml'),
      JOB +
        line('bbbbbbb1', join(other, 'private.jpg')) +
        line('bbbbbbb2', `../${other.split('/').at(-1)}/private.jpg`) +
        line('bbbbbbb3', 'link.jpg') +
        line('bbbbbbb4', 'way/private.jpg') +
        line('bbbbbbb5', '/etc/passwd') +
        line('bbbbbbb6', 'job.yaml'),
    );
    const { exit, out } = await putback.run(
      'paper',
      'job.yaml',
      'report',
      '--inside',
      '-o',
      'r.html',
    );
    expect(exit).toBe(0);
    expect(readFileSync(join(folder, 'r.html'), 'utf8')).not.toContain('<img');
    expect(out.match(/is not shown/g)).toHaveLength(6);
  });
});
