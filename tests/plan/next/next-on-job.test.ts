import { describe, expect, it } from 'vitest';
import { nextOnJob } from '../../../src/plan/next/next-on-job.ts';
import { plan } from '../../../src/plan/plan.ts';
import { curesNow } from '../../../src/plan/seal/cure.ts';
import { boltsOff, boltsOn, done, jobOf, NOW, off, on, type Said } from '../make.ts';

const TEXT = `
bolts: {S: M6x25}
pieces: {cover: {bolts: S S}}
tasks:
  scrape: {do: Scrape the face, while: cover off}
  fill: {do: Fill in the oil, after: cover on}
buy:
  gasket: {what: cover gasket, for: cover on}`;

function next(lines: Said[], text = TEXT) {
  const job = jobOf(text, lines);
  return nextOnJob(job, { plan: plan(job, NOW), cures: curesNow(job, NOW), now: NOW });
}

describe('what comes next on the whole job', () => {
  const away = boltsOff('cover', 'S S');
  const ordered: Said = { buy: 'gasket', done: 'ordered', promised: '2026-05-04' };
  const here: Said = { buy: 'gasket', done: 'here' };

  it('a task, while the piece waits for it', () => {
    expect(next([...away, here])).toMatchObject({ task: 'scrape', waits: false });
  });

  it('what the piece waits for, where nothing else can be done', () => {
    expect(next([...away, done('scrape'), ordered])).toEqual({
      piece: 'cover',
      task: null,
      waits: true,
      say: 'Cover waits for cover gasket, until 4 May.',
    });
  });

  it('the piece as soon as nothing holds it, and the task behind it', () => {
    const ready = [...away, done('scrape'), here];
    expect(next(ready)).toMatchObject({ piece: 'cover', waits: false });
    expect(next([...ready, ...boltsOn('cover', 'S S')])).toMatchObject({ task: 'fill' });
    const all = [...ready, ...boltsOn('cover', 'S S'), done('fill')];
    expect(next(all, TEXT.replace('{bolts: S S}', '{bolts: S S, torque: 8 N·m}'))).toBeNull();
    // Tightened by no figure: that is left, unless somebody noted what the wrench was set to.
    expect(next(all)?.say).toBe("Cover: torque not known: the manual's figure.");
    expect(next([...all, { piece: 'cover', tight: 'full', set: '8 N·m' }])).toBeNull();
  });
});

describe('where the piece at hand waits', () => {
  it('another that can go on is next', () => {
    const pieces = 'pieces: {lid: {}, cover: {bolts: S S, under: lid}, hose: {under: lid}}';
    const text = TEXT.replace('pieces: {cover: {bolts: S S}}', pieces);
    const lines: Said[] = [
      off('lid'),
      off('hose'),
      ...boltsOff('cover', 'S S'),
      done('scrape'),
      { buy: 'gasket', done: 'ordered' },
    ];
    expect(next(lines, text)).toEqual({
      piece: 'hose',
      task: null,
      waits: false,
      say: 'Hose goes back on.',
    });
  });

  it('one that lies there, and whose bolts may not go in yet, is not next', () => {
    const text = 'bolts: {S: M6x25}\npieces: {cover: {bolts: S S}, plate: {along: cover}}';
    const lines = [...boltsOff('cover', 'S S'), on('cover'), off('plate')];
    expect(next(lines, text)).toMatchObject({ piece: 'plate', waits: false });
  });

  it('what is inside is to come out, not to be had', () => {
    const text = 'pieces: {cover: {}}';
    expect(next([off('cover'), { piece: 'cover', inside: '2 rags' }], text)).toMatchObject({
      waits: true,
      say: 'Cover waits for 2 rags to come out.',
    });
  });
});

describe('a task whose time is over', () => {
  it('is not next: what was to be drained before the cover came off', () => {
    const text = 'pieces: {cover: {}}\ntasks: {drain: {do: Drain the oil, before: cover off}}';
    expect(next([], text)).toMatchObject({ piece: 'cover' });
    expect(next([off('cover'), on('cover')], text)).toBeNull();
  });
});
