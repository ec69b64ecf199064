/**
 * The fields of a joint assembly record as ASME PCC-1 (2013, section 14, Joint Assembly Records) lists them, in our
 * words; the list is from memory: date; assemblers; location or identification; class and size; specification and
 * condition of flanges, fasteners, washers and gasket; disassembly method; adverse conditions; flatness measurements;
 * assembly procedure and tightening method with target values; unanticipated problems and their solutions; tool data;
 * recommendations for the next assembly and maintenance.
 */
import { describe, expect, it } from 'vitest';
import { JOINT_FIELDS, jointRecords } from '../../src/paper/joint-record.ts';
import { jobOf } from '../paper/jobs.ts';

const NOW = '2026-05-02T12:00:00+02:00';
const WANTED = [
  /date/i,
  /names of assemblers/i,
  /identification/i,
  /class and size/i,
  /fasteners, washers, gasket/i,
  /disassembly method/i,
  /adverse conditions/i,
  /flatness/i,
  /procedure and tightening method/i,
  /target/i,
  /problems and their solutions/i,
  /tool data/i,
  /recommendations/i,
];

const JOB = `putback: 1
job: Left cover weeps
machine: Hollin 400 Twin
bolts: {S: "M6x25 flange 8.8, 8 mm", M: "M6x35"}
pieces:
  cover: {bolts: S S M+clip, torque: "10 N·m, manual 2-17", into: cast aluminium, joint: new gasket, dry}
tasks:
  flat: {do: "Flatness with a straight edge", while: cover off}
buy: {gasket: {what: HL-1142 gasket, once: true, for: cover on}}
diary:
  - {at: 2026-04-11T16:00:00+02:00, id: aaaaaaa1, piece: cover, out: "S S M+clip", says: "with heat"}
  - {at: 2026-04-11T16:01:00+02:00, id: aaaaaaa2, piece: cover, removed: all}
  - {at: 2026-04-11T16:02:00+02:00, id: aaaaaaa3, task: flat, done: done, result: 0.03 mm}
  - {at: 2026-04-11T16:03:00+02:00, id: aaaaaaa4, buy: gasket, done: here}
  - {at: 2026-05-02T10:00:00+02:00, id: aaaaaaa5, piece: cover, hole: [1, 2], in: S}
  - {at: 2026-05-02T10:01:00+02:00, id: aaaaaaa6, piece: cover, hole: 3, in: M+clip}
  - {at: 2026-05-02T10:02:00+02:00, id: aaaaaaa7, piece: cover, tight: snug}
  - {at: 2026-05-02T10:03:00+02:00, id: aaaaaaa8, piece: cover, hole: 3, tight: full, set: 9 N·m on the small wrench}
  - {at: 2026-05-02T10:04:00+02:00, id: aaaaaaa9, undo: aaaaaaa8}
  - {at: 2026-05-02T10:05:00+02:00, id: aaaaaab1, piece: cover, tight: full, set: 10 N·m on the small wrench, because: the page is torn}
`;

describe('the joint record', () => {
  it('has the fields of the published one, in its order', () => {
    expect(JOINT_FIELDS).toHaveLength(WANTED.length);
    for (const [i, wanted] of WANTED.entries()) expect(JOINT_FIELDS[i]).toMatch(wanted);
  });

  it('fills each in from what was noted, and nothing from what was taken back', () => {
    const [record] = jointRecords(
      jobOf(JOB.replace('joint: new gasket, dry', 'joint: "new gasket, dry"')),
      NOW,
      'Kim',
    );
    expect(record?.complete).toBe(true);
    expect(record?.fields).toMatchObject({
      'Date of assembly': ['2026-05-02'],
      'Names of assemblers': ['Kim'],
      'Joint identification': ['Cover, Hollin 400 Twin'],
      'Joint class and size': ['2 × S: M6x25 flange 8.8, 8 mm', '1 × M: M6x35 (class not noted)'],
      'Disassembly method': ['with heat'],
      'Adverse conditions': ['2026-05-02: the page is torn'],
      'Flatness measurements': ['Flatness with a straight edge: 0.03 mm'],
      'Target and what was set': [
        'printed: 10 N·m, manual 2-17',
        'snug: by hand',
        'full: 10 N·m on the small wrench',
      ],
      'Tool data': ['small wrench'],
    });
    expect(record?.fields['Fasteners, washers, gasket: specification and condition']).toEqual([
      '1 × M+clip (3)',
      'into cast aluminium',
      'new gasket, dry',
      'HL-1142 gasket: here; its piece is back, not noted as fitted',
    ]);
    expect(record?.fields['Assembly procedure and tightening method']).toEqual([
      expect.stringContaining('order shown on the screen: '),
      'in which order they were tightened is not noted',
      'passes noted: snug 3 of 3, full 3 of 3, final 0 of 3',
    ]);
  });

  it('says of what nobody noted that it is not noted, and of a half tight joint that it is not complete', () => {
    const half = JOB.split('\n')
      .filter((line) => !line.includes('aaaaaab1') && !line.includes('aaaaaaa9'))
      .join('\n');
    const [record] = jointRecords(jobOf(half), NOW, null);
    expect(record?.complete).toBe(false);
    expect(record?.fields['Names of assemblers']).toEqual([]);
    expect(record?.fields['Assembly procedure and tightening method'].at(-1)).toContain(
      'NOT COMPLETE: 1 of 3 bolts tight',
    );
  });
});
