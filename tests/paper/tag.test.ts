import { describe, expect, it } from 'vitest';
import { tag, tagSays } from '../../src/paper/tag.ts';
import { gate } from '../../src/plan/gates/gate.ts';
import { htmlOf } from './all-papers.ts';
import { jobOf, NOW, practice } from './jobs.ts';

const JOB = `putback: 1
job: Left cover weeps
machine: Hollin 400 Twin
bolts: {S: M6x25 flange}
pieces:
  cover: {bolts: S S}
  lid: {bolts: S, care: none}
tasks:
  drain: {do: Drain the oil, before: cover off}
  fill: {do: Fill with 1.9 l of oil, after: cover on}
diary:
  - {at: 2026-04-11T16:00:00+02:00, id: aaaaaaa1, task: drain, done: done}
  - {at: 2026-04-11T16:10:00+02:00, id: aaaaaaa2, piece: cover, out: S}
  - {at: 2026-04-11T16:11:00+02:00, id: aaaaaaa3, piece: cover, removed: all}
`;
const INSIDE = '  - {at: 2026-04-11T16:12:00+02:00, id: aaaaaaa4, piece: cover, inside: 1 rag}\n';

describe('the tag on the machine', () => {
  it('says what the gate before the start says: each of its items that is open, and nothing else', () => {
    for (const job of [
      jobOf(JOB),
      jobOf(JOB + INSIDE),
      practice('hollin-left-cover'),
      practice('ostrell-gearbox'),
    ]) {
      const says = tagSays(job, NOW);
      const open = gate(job, 'start', null, NOW).items.filter((item) => !item.done);
      const said = [...(says?.stops ?? []), ...(says?.open ?? []), ...(says?.unseen ?? [])];
      expect(said.sort()).toEqual(
        open.map((item) => (item.stops ? (item.stop ?? item.say) : item.say)).sort(),
      );
    }
  });

  it('says what is to be looked at again after the start', () => {
    const more = JOB.replace(
      'diary:',
      '  retorque: {do: Go round the cover once more, when: after 50 km, after: fill}\ndiary:',
    );
    const html = htmlOf(tag({ job: jobOf(more), now: NOW, size: 'a4', wrenches: [], who: null }));
    expect(html).toContain('<h2>After the start</h2>');
    expect(html).toContain('Go round the cover once more, after 50 km');
    const without = tag({ job: jobOf(JOB), now: NOW, size: 'a4', wrenches: [], who: null });
    expect(htmlOf(without)).not.toContain('After the start');
  });

  it('a brake that is back and not tested keeps it from being moved; tested, or another piece, it may be', () => {
    const job = (care: string, done = '') =>
      jobOf(`putback: 1
job: Brake
machine: Hollin 400 Twin
bolts: {S: M8x25 flange}
pieces:
  caliper: {bolts: S S, care: ${care}}
tasks:
  brake: {test: Lever firm and wheel held, after: caliper on}
diary:
  - {at: 2026-04-11T16:10:00+02:00, id: aaaaaaa2, piece: caliper, out: S}
  - {at: 2026-04-11T16:11:00+02:00, id: aaaaaaa3, piece: caliper, removed: all}
  - {at: 2026-04-11T16:12:00+02:00, id: aaaaaaa4, piece: caliper, in: S}
  - {at: 2026-04-11T16:13:00+02:00, id: aaaaaaa5, piece: caliper, tight: snug}
  - {at: 2026-04-11T16:14:00+02:00, id: aaaaaaa6, piece: caliper, tight: full}
${done}`);
    expect(tagSays(job('brake'), NOW)?.moving).toBe(
      'Don’t move it yet: Caliper is back, and not tested.',
    );
    expect(tagSays(job('none'), NOW)?.moving).toBe('Safe to move, not to start.');
  });

  it('of a job without pieces never says that it is safe to move: nobody noted what is undone', () => {
    const job = jobOf('putback: 1\njob: Drips\ntasks: {fill: {do: Fill with oil}}\ndiary:\n');
    expect(tagSays(job, NOW)?.moving).toBe(
      'Ask before you move it: nobody noted what is undone on it.',
    );
  });

  it('says why, since when and whom to ask', () => {
    const job = jobOf(JOB + INSIDE);
    const html = htmlOf(tag({ job, now: NOW, size: 'a4', wrenches: [], who: 'Kim' }));
    expect(html).toContain('>DO NOT</text>');
    expect(html).toContain('>START</text>');
    expect(html).toContain('The oil has been out since 11 April. Fill it in.');
    expect(html).toContain('1 rag went in through the opening under Cover on 11 April');
    expect(html).toContain('11 April (21 days)');
    expect(html).toContain('<dt>Ask</dt><dd><bdi>Kim</bdi></dd>');
  });

  it('what is done once it has run is nothing that keeps it from being started; other work of a later day is', () => {
    const more = JOB.replace(
      'diary:',
      `  heat: {do: Retorque after the first heat, when: next day, after: cover on}
  oil: {do: Change the oil, when: after 50 km, after: cover on}
  bleed: {do: Bleed the brake, when: next day, after: cover on}
diary:`,
    );
    expect(tagSays(jobOf(more), NOW)?.open.filter((say) => /to do/.test(say))).toEqual([
      'Still to do: Bleed the brake, next day.',
    ]);
    const html = htmlOf(tag({ job: jobOf(more), now: NOW, size: 'a4', wrenches: [], who: null }));
    const [, after = ''] = html.split('<h2>After the start</h2>');
    expect(after).toContain('Retorque after the first heat, next day');
    expect(after).toContain('Change the oil, after 50 km');
    expect(after).not.toContain('Bleed');
  });

  it('says that it may be moved only where the file says of each piece that is off that nothing hangs on it', () => {
    const moving = (text: string) => tagSays(jobOf(text), NOW)?.moving;
    expect(moving(JOB)).toBe(
      'Ask before you move it: nobody noted whether it may stand or roll without Cover.',
    );
    expect(moving(JOB.replace('cover: {bolts: S S}', 'cover: {bolts: S S, care: none}'))).toBe(
      'Safe to move, not to start.',
    );
    expect(
      moving(JOB.replace('cover: {bolts: S S}', 'cover: {bolts: S S, care: wheel}')),
    ).toContain("Don't move it under its own weight");
    // What a name lets guess can only forbid.
    expect(moving(JOB.replaceAll('cover', 'front-wheel'))).toContain("Don't move it");
  });

  it('is not made where all was seen to', () => {
    const job = jobOf(`putback: 1
job: Nothing
diary:
  - {at: 2026-04-11T16:00:00+02:00, id: aaaaaaa1, seen: start all}
`);
    expect(tag({ job, now: NOW, size: 'a4', wrenches: [], who: null })).toMatchObject({
      code: 'nothing-open',
    });
  });
});
