import { describe, expect, it } from 'vitest';
import type { Half, Wish } from '../../src/model/types.ts';
import { begunJob, halfMade } from '../../src/screens/show/half-made.ts';
import { Bench } from '../job/bench.ts';
import { Desk, FILE } from './desk.ts';

const full = { code: 'no-space', say: 'The disk is full.', fix: 'Make room.' };
const NOTHING: Half = { drafts: {}, wish: null };

/** The same job opened later, with what was half done before. */
function opened(half: Half): Desk {
  const desk = new Desk(new Bench());
  const { open } = desk.state;
  if (open === null) throw new Error('the job opens by itself');
  const state = { ...desk.state, open: null, waiting: { for: 'file', file: FILE } as const };
  desk.state = state;
  return desk.happen({
    on: 'file',
    file: FILE,
    read: { ok: true, job: open.job, faults: [] },
    half,
  });
}

describe('what is half made', () => {
  it('is the text being typed, letter by letter, also while its keys are looked at', () => {
    const desk = new Desk(new Bench()).open('cover');
    expect(halfMade(desk.state)).toEqual(NOTHING);
    desk.press('n').type('weeps at 4');
    expect(Object.values(halfMade(desk.state).drafts)).toEqual(['weeps at 4']);
    desk.press('tab');
    expect(desk.screen).toBe('keys');
    expect(Object.values(halfMade(desk.state).drafts)).toEqual(['weeps at 4']);
    desk.press('escape enter');
    expect(halfMade(desk.state)).toEqual(NOTHING);
  });

  it('is not what was taken out again, nor what nobody touched', () => {
    const desk = new Desk(new Bench()).open('cover').press('n').type('w').press('backspace');
    expect(halfMade(desk.state)).toEqual(NOTHING);
    desk.press('escape');
    expect(halfMade(desk.state)).toEqual(NOTHING);
  });

  it('is a piece that was only named, until something of it is in the file', () => {
    const desk = new Desk(new Bench()).press('o').type('side lid').press('enter');
    expect(desk.frame).toContain('Side lid');
    expect(halfMade(desk.state)).toEqual({ drafts: { piece: 'Side lid' }, wish: null });
    desk.press('n');
    expect(halfMade(desk.state).drafts).toEqual({ piece: 'Side lid' });
    const again = opened(halfMade(desk.state)).press('o');
    expect(again.frame).toContain('Side lid');
    again.press('enter').press('v');
    expect(again.bench.entries.at(-1)).toMatchObject({ piece: 'side-lid' });
    expect(halfMade(again.state)).toEqual(NOTHING);
  });

  it('is a mark that was not saved, until it is saved or given up', () => {
    const desk = new Desk(new Bench()).open('cover').press('n').type('weeps');
    desk.broken = { ok: false, unsaved: full };
    desk.press('enter');
    const wish = { do: 'note', piece: 'cover', text: 'weeps' };
    expect(halfMade(desk.state)).toEqual({ drafts: {}, wish });
    expect(halfMade(desk.press('q').state).wish).toEqual(wish);
    desk.press('escape');
    expect(halfMade(desk.state)).toEqual(NOTHING);
  });
});

describe('a job that is opened again', () => {
  it('has the text where it was typed', () => {
    const first = new Desk(new Bench()).open('cover').press('n').type('weeps at 4');
    const desk = opened(halfMade(first.state));
    expect(desk.frame).toContain('A text you were typing is kept');
    desk.open('cover').press('n');
    expect(desk.frame).toContain('> weeps at 4');
  });

  it('asks about the mark that was not saved, and makes it only when somebody says so', () => {
    const wish: Wish = { do: 'out', piece: 'cover', holes: ['4'] };
    const desk = opened({ drafts: {}, wish });
    expect(desk.frame).toContain('Cover: 4 out: L');
    expect(desk.frame).toContain('was not in the file when putback last ended');
    desk.happen({ on: 'again' }).press('space space');
    expect(desk.bench.entries).toHaveLength(0);
    desk.press('enter');
    expect(desk.bench.entries).toHaveLength(1);
    expect(desk.screen).toBe('job');
    expect(opened({ drafts: {}, wish }).press('escape').bench.entries).toHaveLength(0);
  });

  it('does not show texts of another job', () => {
    const desk = opened({ drafts: { 'row cover': 'S S' }, wish: null });
    const { open } = desk.state;
    const other = { screen: 'wait' } as const;
    desk.state = { ...desk.state, view: other, waiting: { for: 'file', file: 'other.yaml' } };
    if (open === null) throw new Error('the job is open');
    desk.happen({ on: 'file', file: 'other.yaml', read: { ok: true, job: open.job, faults: [] } });
    expect(halfMade(desk.state)).toEqual(NOTHING);
  });
});

describe('a new job that is half typed', () => {
  const onBench = (begun?: string) =>
    new Desk(new Bench(), { on: { folder: '/bench' }, ...(begun === undefined ? {} : { begun }) });

  it('is kept for the bench, letter by letter, and + goes on with it', () => {
    const desk = onBench().press('+').type('weeps, Hollin');
    expect(begunJob(desk.state)).toBe('weeps, Hollin');
    expect(begunJob(desk.press('tab').state)).toBe('weeps, Hollin');
    desk.press('escape escape');
    expect(desk.screen).toBe('bench');
    expect(desk.frame).toContain('+ on with the new job');
    expect(begunJob(desk.state)).toBe('weeps, Hollin');
    expect(desk.press('+').frame).toContain('> weeps, Hollin');
  });

  it('outlasts another job that is opened meanwhile, and is none of its texts', () => {
    const desk = onBench().press('+').type('weeps').press('escape space');
    expect(desk.screen).toBe('job');
    expect(halfMade(desk.state)).toEqual(NOTHING);
    desk.press('escape +');
    expect(desk.frame).toContain('> weeps');
  });

  it('is there in the next sitting, which says so', () => {
    const desk = onBench('weeps');
    expect(desk.frame).toContain('What you were typing of a new job is kept');
    expect(desk.press('+').frame).toContain('> weeps');
  });

  it('stays where the job could not be started, and goes with what is taken out', () => {
    const desk = onBench().press('+').type('weeps').press('enter');
    expect(desk.screen).toBe('bench');
    expect(desk.frame).toMatch(/No job was started\. weeps\.yaml is there already\./);
    expect(desk.press('+').frame).toContain('> weeps');
    desk.press('ctrl-u escape');
    expect(begunJob(desk.state)).toBe(null);
  });
});
