import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkJob } from '../../src/job/check.ts';
import { addEntry, isFail } from '../../src/job/edit/splice.ts';
import { fold } from '../../src/job/fold/fold.ts';
import { judge } from '../../src/job/judge/judge.ts';
import { readJob } from '../../src/job/read.ts';
import { PIECE_CARRIED } from '../../src/memory/carried.ts';
import { learntFrom } from '../../src/memory/learnt.ts';
import { takeOver } from '../../src/memory/take.ts';
import { templateOf } from '../../src/memory/template.ts';
import { PIECE_KEYS } from '../../src/model/keys/keys.ts';
import { asPrinted } from '../../src/model/said.ts';
import type { Job, Wish } from '../../src/model/types.ts';
import { runs } from '../runs.ts';
import { anyJob } from './jobs.ts';

const jobOf = (text: string): Job => {
  const { upper, entries } = readJob(text, 'job.yaml');
  return fold(upper, entries);
};
const faults = (text: string) => checkJob(text, 'job.yaml').map((f) => `${f.code}: ${f.say}`);
const wanted = { job: 'New', machine: 'Hollin 400 Twin', head: ['from a test'] };

function marked(text: string, wish: Wish, id: string): string {
  const verdict = judge(jobOf(text), wish, { at: '2026-11-03T10:00:00+01:00', id });
  if (!verdict.ok || !verdict.entry) throw new Error(JSON.stringify(verdict));
  const next = addEntry(text, verdict.entry, verdict.edits);
  if (isFail(next)) throw new Error(next.fault);
  return next;
}

describe('a template of any job', () => {
  it('is a file that check finds no fault in, and whose diary is empty', () => {
    let whole = 0;
    fc.assert(
      fc.property(anyJob, (text) => {
        const job = jobOf(text);
        const { text: made, leftOut } = templateOf(learntFrom(text, job), wanted);
        expect(faults(made)).toEqual([]);
        const read = readJob(made, 'new.yaml');
        expect(read.entries).toEqual([]);
        if (leftOut.length === 0) whole++;
        // Nothing is left out that was no fault; without a row, the one that came out shows which holes there are not.
        const row = job.upper.pieces.get('cover')?.row;
        if (faults(text).length === 0 && row) expect(leftOut).toEqual([]);
      }),
      { numRuns: runs(150) },
    );
    expect(whole).toBeGreaterThan(5);
  });

  it('of the practice jobs: all of them whole, with what is true and what is printed', () => {
    for (const name of ['hollin-left-cover', 'ostrell-gearbox', 'tarn-idle']) {
      const text = readFileSync(`jobs/${name}.yaml`, 'utf8');
      const { text: made, leftOut } = templateOf(learntFrom(text, jobOf(text)), wanted);
      expect([name, leftOut, faults(made)]).toEqual([name, [], []]);
      const [old, now] = [jobOf(text), jobOf(made)];
      expect([...now.upper.pieces.keys()]).toEqual([...old.upper.pieces.keys()]);
      for (const [key, { spec, holes }] of now.pieces) {
        const before = old.pieces.get(key);
        expect(spec.torque?.text).toBe(before?.spec.torque?.text);
        expect(holes.map((h) => h.belongs)).toEqual(before?.holes.map((h) => h.belongs));
        expect(spec.map?.trim()).toBe(before?.spec.map?.trim());
      }
    }
  });
});

describe('a template', () => {
  const text = `putback: 1
job: Cover weeps
pieces:
  cover: {bolts: S S}
  tank: {bolts: M}
suspects:
  seal: {what: Shaft seal hard, piece: cover}
  face: Face bent
  tap: {what: Tap weeps, piece: tank}
checks:
  shaft: {check: Oil at the shaft, bad: [seal, face], under: cover}
  drip: {check: Drip at the seal, bad: seal}
  both: {check: Fuel or oil, bad: [seal, tap], under: [cover, tank]}
tasks:
  weep: {test: Five minutes at idle, after: cover on}
diary:
`;

  it('of a whole job has its suspects and checks too', () => {
    const { text: made, leftOut } = templateOf(learntFrom(text, jobOf(text)), wanted);
    expect([leftOut, faults(made)]).toEqual([[], []]);
    const { upper } = jobOf(made);
    expect([[...upper.suspects.keys()], [...upper.checks.keys()]]).toEqual([
      ['seal', 'face', 'tap'],
      ['shaft', 'drip', 'both'],
    ]);
  });

  it('of one piece has what may be wrong with it, and the looks that need no other piece', () => {
    const only = { ...wanted, piece: 'cover' };
    const { text: made, leftOut } = templateOf(learntFrom(text, jobOf(text)), only);
    expect([leftOut, faults(made)]).toEqual([[], []]);
    const { upper } = jobOf(made);
    expect([...upper.pieces.keys()]).toEqual(['cover']);
    expect([[...upper.suspects.keys()], [...upper.checks.keys()]]).toEqual([
      ['seal', 'face'],
      ['shaft', 'drip'],
    ]);
  });

  it('says of each key of a piece whether it is carried over: all but the tray', () => {
    expect(Object.keys(PIECE_KEYS).filter((key) => !PIECE_CARRIED.includes(key as never))).toEqual([
      'tray',
    ]);
  });
});

describe('taking over', () => {
  const states = ['out', 'in', 'tight', 'removed', 'fitted', 'state'];
  it('puts in only what is not there, no fault more and no mark, and undo puts the bytes back', () => {
    let taken = 0;
    fc.assert(
      fc.property(anyJob, anyJob, (theirs, mine) => {
        const job = jobOf(mine);
        const before = faults(mine);
        const { pairs } = takeOver(mine, job, 'cover', learntFrom(theirs, jobOf(theirs)), 'cover');
        if (pairs.length === 0) return;
        taken++;
        const wish: Wish = { do: 'take', piece: 'cover', from: 'old.yaml', pairs };
        const next = marked(mine, wish, 'taken001');
        expect(faults(next).filter((f) => !before.includes(f))).toEqual([]);
        const now = jobOf(next);
        expect(now.entries.slice(job.entries.length).map((e) => e.verb)).toEqual(['taken']);
        for (const [key, piece] of job.pieces) {
          const after = now.pieces.get(key);
          for (const h of piece.holes) {
            if (states.includes(h.state))
              expect(after?.holes.find((a) => a.name === h.name)?.state).toBe(h.state);
          }
        }
        const back = marked(next, { do: 'undo', id: 'taken001' }, 'undo0001');
        const [upper] = back.split('diary:');
        // A section that had to be made stays, empty.
        expect(upper?.replace(/\nbolts:\n(?! )/, '\n')).toBe(mine.split('diary:')[0]);
      }),
      { numRuns: runs(150) },
    );
    expect(taken).toBeGreaterThan(50);
  });

  it('what had to be made for it goes with it: the piece, and the section of kinds', () => {
    const theirs =
      'putback: 1\njob: Old\nbolts: {S: M6x25}\npieces:\n  cover: {bolts: S S, joint: dry}\ndiary:\n';
    for (const mine of [
      'putback: 1\njob: New\npieces:\n  lever:\ndiary:\n',
      'putback: 1\njob: New\npieces: {lever: {marks: dot}}\ndiary:\n',
    ]) {
      const from = learntFrom(theirs, jobOf(theirs));
      const { pairs } = takeOver(mine, jobOf(mine), 'cover', from, 'cover');
      expect(pairs).toHaveLength(3);
      const wish: Wish = { do: 'take', piece: 'cover', from: 'old.yaml', pairs };
      const next = marked(mine, wish, 'taken001');
      expect(jobOf(next).upper.pieces.get('cover')?.joint).toEqual([asPrinted('dry')]);
      const back = marked(next, { do: 'undo' }, 'undo0001');
      expect(back.split('diary:')[0]).toBe(mine.split('diary:')[0]);
    }
  });

  it('a piece that is new here is called what it was called there, one that is here keeps its name', () => {
    const theirs =
      'putback: 1\njob: Old\npieces:\n  cover: {name: Pump cover, joint: dry}\ndiary:\n';
    const from = learntFrom(theirs, jobOf(theirs));
    const named = (mine: string) => {
      const { pairs } = takeOver(mine, jobOf(mine), 'cover', from, 'cover');
      const take: Wish = { do: 'take', piece: 'cover', from: 'old.yaml', pairs };
      return jobOf(marked(mine, take, 'mark0001')).pieces.get('cover')?.spec.name;
    };
    expect(named('putback: 1\njob: New\npieces:\ndiary:\n')).toBe('Pump cover');
    expect(named('putback: 1\njob: New\npieces:\n  cover: {name: Lid}\ndiary:\n')).toBe('Lid');
  });

  it('what somebody changed since stays when it is taken back', () => {
    const theirs = 'putback: 1\njob: Old\npieces:\n  cover: {torque: 10 N·m, joint: dry}\ndiary:\n';
    const mine = 'putback: 1\njob: New\npieces:\n  cover:\ndiary:\n';
    const { pairs } = takeOver(
      mine,
      jobOf(mine),
      'cover',
      learntFrom(theirs, jobOf(theirs)),
      'cover',
    );
    const next = marked(mine, { do: 'take', piece: 'cover', from: 'old.yaml', pairs }, 'taken001');
    expect(next).toContain('    torque: 10 N·m\n    joint: dry\n');
    const changed = next.replace('10 N·m', '9 N·m');
    const back = marked(changed, { do: 'undo' }, 'undo0001');
    expect(back).toContain('    torque: 9 N·m\n');
    expect(back).not.toContain('joint: ');
  });

  it('a letter that means another bolt here gets a new one, the same bolt its own', () => {
    const theirs =
      'putback: 1\njob: Old\nbolts: {S: M6x25, M: M8x30}\npieces:\n  cover: {bolts: S M M+clip}\ndiary:\n';
    const mine =
      'putback: 1\njob: New\nbolts:\n  S: M5x12\n  K: M8x30\npieces:\n  cover:\ndiary:\n';
    const { pairs } = takeOver(
      mine,
      jobOf(mine),
      'cover',
      learntFrom(theirs, jobOf(theirs)),
      'cover',
    );
    expect(pairs).toEqual([
      { path: ['bolts', 'A'], value: 'M6x25' },
      { path: ['pieces', 'cover', 'bolts'], value: 'A K K+clip' },
    ]);
  });

  it('a piece with another number of holes gets nothing that is about single holes', () => {
    const theirs =
      'putback: 1\njob: Old\nbolts: {S: M6x25}\npieces:\n  cover: {bolts: S S S, torque: 10 N·m, sequence: 1 2 3}\ndiary:\n';
    const mine =
      'putback: 1\njob: New\nbolts: {S: M6x25}\npieces:\n  cover: {bolts: S S}\ndiary:\n';
    const { pairs, left } = takeOver(
      mine,
      jobOf(mine),
      'cover',
      learntFrom(theirs, jobOf(theirs)),
      'cover',
    );
    expect(pairs.map((p) => p.path.at(-1))).toEqual(['torque']);
    const why = '3 holes there, 2 here';
    expect(left).toEqual([
      { key: 'bolts', why },
      { key: 'sequence', why },
    ]);
  });

  it('a piece in braces gets its picture too, and all kinds that its letters name; what it has stays and says why', () => {
    const theirs = readFileSync('jobs/hollin-left-cover.yaml', 'utf8');
    for (const piece of ['{}', '{joint: dry}', '{name: "Cover", joint: dry}']) {
      const mine = `putback: 1\njob: New\npieces:\n  alternator: ${piece}\n  lever: {bolts: P}\ndiary:\n`;
      const learnt = learntFrom(theirs, jobOf(theirs));
      const { pairs, left } = takeOver(mine, jobOf(mine), 'alternator', learnt, 'alternator');
      const next = marked(
        mine,
        { do: 'take', piece: 'alternator', from: 'o.yaml', pairs },
        'mark0001',
      );
      const [then, now] = [theirs, next].map((text) => jobOf(text).upper.pieces.get('alternator'));
      expect(now?.map?.trim()).toBe(then?.map?.trim());
      expect(faults(next)).toEqual([]);
      expect(pairs.filter(({ path }) => path[0] === 'bolts')).toHaveLength(4);
      const joint = { key: 'joint', why: 'there new gasket, dry; dowels at 2 and 8' };
      expect(left).toEqual(piece === '{}' ? [] : [joint]);
    }
  });

  it('what has several texts is told as one reads it', () => {
    const file = (caution: string) =>
      `putback: 1\njob: x\npieces:\n  cover: {caution: ${caution}}\ndiary:\n`;
    const theirs = file('{removal: It lets go at once, installation: Fingers away}');
    const mine = file('Hot');
    const learnt = learntFrom(theirs, jobOf(theirs));
    const { left } = takeOver(mine, jobOf(mine), 'cover', learnt, 'cover');
    expect(left).toEqual([
      { key: 'caution', why: 'there removal: It lets go at once; installation: Fingers away' },
    ]);
  });

  it('what would be a fault in this file is left with what would be wrong', () => {
    const theirs =
      'putback: 1\njob: Old\npieces:\n  cover: {bolts: S S S, sequence: 1 2 3}\ndiary:\n';
    const mine = `putback: 1\njob: New\npieces:\n  cover:\n    map: |\n      1 2\n      . 4\ndiary:\n`;
    const learnt = learntFrom(theirs, jobOf(theirs));
    const { left } = takeOver(mine, jobOf(mine), 'cover', learnt, 'cover');
    expect(left.find(({ key }) => key === 'sequence')?.why).toContain('this sequence leaves out 4');
  });

  it('taken back and wanted again: it is told where it came from, since the diary has it not', () => {
    const mine = 'putback: 1\njob: New\npieces:\n  cover:\ndiary:\n';
    const pairs = [{ path: ['pieces', 'cover', 'torque'], value: '10 N·m' }];
    const taken = marked(mine, { do: 'take', piece: 'cover', from: 'old.yaml', pairs }, 'mark0001');
    const back = marked(taken, { do: 'undo' }, 'mark0002');
    const stamp = { at: '2026-11-03T10:00:00+01:00', id: 'mark0003' };
    expect(judge(jobOf(back), { do: 'undo', id: 'mark0002' }, stamp)).toMatchObject({
      refused: { code: 'take-again', data: { piece: 'cover', from: 'old.yaml' } },
    });
  });

  it('what is not as printed comes along and goes with it by one undo, and alone by its own', () => {
    const mine =
      'putback: 1\njob: New\npieces:\n  cover: {torque: 10 N·m, takes: 20 min}\ndiary:\n';
    const torque = (text: string) => jobOf(text).pieces.get('cover')?.spec.torque?.text;
    // Also where nothing else is there to be taken.
    for (const pairs of [[], [{ path: ['pieces', 'cover', 'joint'], value: 'dry' }]]) {
      const take: Wish = { do: 'take', piece: 'cover', from: 'old.yaml', pairs, truths: true };
      const correct = { do: 'correct', piece: 'cover', came: 'mark0001' } as const;
      let text = marked(mine, take, 'mark0001');
      text = marked(text, { ...correct, what: 'torque', truth: '8 N·m' }, 'mark0002');
      text = marked(text, { ...correct, what: 'takes', truth: '30 min' }, 'mark0003');
      expect([faults(text), torque(text)]).toEqual([[], '8 N·m']);
      const back = marked(text, { do: 'undo' }, 'mark0004');
      expect(back.split('diary:')[0]).toBe(mine.split('diary:')[0]);
      expect([faults(back), torque(back), jobOf(back).corrections]).toEqual([[], '10 N·m', []]);
      const one = jobOf(marked(text, { do: 'undo', id: 'mark0002' }, 'mark0004'));
      expect([...one.living]).toEqual(['mark0001', 'mark0003', 'mark0004']);
      // What was said later of the same text rests on what came along.
      const later = marked(
        text,
        { do: 'correct', piece: 'cover', what: 'torque', truth: '9 N·m' },
        'mark0004',
      );
      const stamp = { at: '2026-11-03T10:00:00+01:00', id: 'mark0005' };
      expect(judge(jobOf(later), { do: 'undo', id: 'mark0001' }, stamp)).toMatchObject({
        refused: { code: 'depends', data: { ids: ['mark0004'] } },
      });
    }
  });
});
