import { describe, expect, it } from 'vitest';
import { blank } from '../../src/paper/blank.ts';
import { gridOf, labels, readLabel } from '../../src/paper/labels.ts';
import { machineOf, report } from '../../src/paper/report.ts';
import { sheet, sheetText } from '../../src/paper/sheet.ts';
import { steps } from '../../src/paper/steps.ts';
import { htmlOf } from './all-papers.ts';
import { jobOf, NOW, pieceIn, practice } from './jobs.ts';

const ask = { now: NOW, size: 'a4' as const, wrenches: [] };

describe('labels', () => {
  const JOB = `putback: 1
job: Left cover weeps
bolts: {S: "M6x25 flange, 8 mm", M: "M6x35"}
pieces: {cover: {bolts: S S M+clip S, loose: 2 dowels}, lid: {bolts: S}, lever: {bolts: S}}
diary:
  - {at: 2026-04-11T16:00:00+02:00, id: aaaaaaa1, piece: cover, out: S S M+clip S, tray: cup 2}
  - {at: 2026-04-11T16:01:00+02:00, id: aaaaaaa2, piece: cover, hole: 4, state: sheared}
  - {at: 2026-04-11T16:02:00+02:00, id: aaaaaaa3, piece: lid, out: S}
`.replace('out: S S M+clip S,', 'out: "S S M+clip S",');
  const job = jobOf(JOB);
  const made = (more: object) =>
    labels({ ...ask, job, piece: null, all: false, label: { width: 70, height: 37 }, ...more });

  it('name the piece, its tray, what should be in the bag, the round, the day and the job', () => {
    const html = htmlOf(made({}));
    expect(html.match(/class="label"/g)).toHaveLength(2);
    for (const text of [
      'Cover',
      'cup 2 · round 1 · 2026-04-11',
      '2 × S: M6x25 flange, 8 mm',
      '1 × M+clip: M6x35',
      'loose: 2 dowels',
      'Left cover weeps',
    ]) {
      expect(html).toContain(`${text}</bdi>`);
    }
  });

  it('are made of what is off, of all, or of one', () => {
    expect(htmlOf(made({ all: true })).match(/class="label"/g)).toHaveLength(3);
    expect(htmlOf(made({ piece: pieceIn(job, 'lid') })).match(/class="label"/g)).toHaveLength(1);
    expect(
      labels({
        ...ask,
        job: jobOf('putback: 1\njob: x\n'),
        piece: null,
        all: false,
        label: { width: 70, height: 37 },
      }),
    ).toMatchObject({ code: 'nothing-off' });
  });

  it('stand 24 and 40 to a sheet of A4', () => {
    expect(gridOf({ width: 70, height: 37 }, 'a4')).toEqual({ columns: 3, rows: 8 });
    expect(gridOf({ width: 52.5, height: 29.7 }, 'a4')).toEqual({ columns: 4, rows: 10 });
    expect(readLabel('52.5 x 29.7 mm')).toEqual({ width: 52.5, height: 29.7 });
    for (const odd of ['', '70', '70x', 'axb', '-1x2']) expect(readLabel(odd)).toBeNull();
    expect(made({ label: { width: 5, height: 5 } })).toMatchObject({ code: 'label-size' });
    expect(made({ label: { width: 300, height: 50 } })).toMatchObject({ code: 'label-size' });
  });

  it('that are small use the room that the sheet leaves, part no line of a text, and say when they hold too little', () => {
    const long = jobOf(`putback: 1
job: Weeps oil after a long run
bolts: {S: "M6x25 flange, 8 mm", M: "M6x35 flange, 8 mm"}
pieces: {cover: {name: Alternator cover, bolts: S S M+clip S, loose: 2 dowels}}
`);
    const small = (width: number, height: number) =>
      labels({ ...ask, job: long, piece: null, all: true, label: { width, height } });
    const html = htmlOf(small(48, 25));
    expect(html.match(/class="label"/g)).toHaveLength(1);
    for (const text of ['3 × S: M6x25 flange, 8 mm', 'loose: 2 dowels'])
      expect(html).toContain(`${text}</bdi>`);
    expect(small(30, 20)).toMatchObject({
      code: 'label-size',
      say: expect.stringContaining('too narrow for the name of a piece'),
    });
  });

  it('are refused where one piece would go over more than nine', () => {
    const long = jobOf(`putback: 1
job: Weeps
pieces: {cover: {bolts: S, loose: [${Array.from({ length: 30 }, (_, i) => `washer ${i} of the long row`).join(', ')}]}}
`);
    const tiny = labels({
      ...ask,
      job: long,
      piece: null,
      all: true,
      label: { width: 38, height: 15 },
    });
    expect(tiny).toMatchObject({
      code: 'label-size',
      say: expect.stringContaining('Cover alone would go over'),
    });
  });

  it('go on with a second one where not all fits, and lose nothing', () => {
    const many = Array.from({ length: 26 }, (_, i) => String.fromCharCode(65 + i));
    const long = jobOf(`putback: 1
job: Many kinds
bolts: {${many.map((k, i) => `${k}: M6x${i + 10}`).join(', ')}}
pieces: {cover: {bolts: ${many.join(' ')}}}
`);
    const html = htmlOf(
      labels({ ...ask, job: long, piece: null, all: true, label: { width: 52.5, height: 29.7 } }),
    );
    expect(html).toMatch(/Cover<\/bdi> 1\/\d/);
    for (const [i, k] of many.entries()) expect(html).toContain(`1 × ${k}: M6x${i + 10}`);
  });
});

describe('the blank card', () => {
  it('has a ring and a row for each hole, with what is known', () => {
    const html = htmlOf(
      blank({
        ...ask,
        job: jobOf('putback: 1\njob: x\n'),
        row: [null, { kind: 'M', with: ['clip'] }, null],
        name: '',
      }),
    );
    expect(html.match(/class="hole"/g)).toHaveLength(3);
    expect(html).toContain('<tr><td>2</td><td><bdi>M+clip</bdi></td>');
  });

  it('wants a number that one can count to', () => {
    const job = jobOf('putback: 1\njob: x\n');
    expect(blank({ ...ask, job, row: [], name: '' })).toMatchObject({ code: 'how-many' });
    expect(blank({ ...ask, job, row: new Array(1000).fill(null), name: '' })).toMatchObject({
      code: 'how-many',
    });
  });
});

describe('the way up', () => {
  it('tells pieces in their order with bolts, what is set on which wrench, joint and cautions', () => {
    const html = htmlOf(
      steps({
        ...ask,
        job: practice('hollin-left-cover'),
        wrenches: [{ name: 'small', from: 2, to: 25, unit: 'N·m', step: 0.5, length: null }],
      }),
    );
    const at = (text: string) => html.indexOf(text);
    expect(at('<b><bdi>Alternator cover')).toBeLessThan(at('<b><bdi>Sprocket cover'));
    expect(at('<b><bdi>Sprocket cover')).toBeLessThan(at('<b><bdi>Gear lever'));
    expect(html).toContain('<p><bdi>full 10 N·m, set 10 on the small wrench');
    expect(html).toContain('joint: new gasket, dry; dowels at 2 and 8');
    expect(html).toContain('! <bdi>The magnet pulls the cover in.');
  });

  it('is not made where nothing is left to go back', () => {
    expect(steps({ ...ask, job: jobOf('putback: 1\njob: x\n') })).toMatchObject({
      code: 'all-back',
    });
  });
});

const PRIVATE = jobOf(`putback: 1
job: Left cover weeps
bolts: {S: M6x25}
pieces: {cover: {bolts: S S}}
buy: {gasket: {what: HL-1142 gasket, price: 14.20, from: Ostrell and Sons, for: cover on}}
diary:
  - {at: 2026-04-11T16:00:00+02:00, id: aaaaaaa1, piece: cover, out: S, tray: shelf at Kim's}
  - {at: 2026-04-11T16:01:00+02:00, id: aaaaaaa2, note: "Kim lends the puller"}
  - {at: 2026-04-11T16:02:00+02:00, id: aaaaaaa3, buy: gasket, done: here}
`);

describe('the sheet for a second opinion', () => {
  const sheetAsk = { ...ask, job: PRIVATE, piece: null, question: 'Heat?' };

  it('leaves names, places and prices out, unless they are asked for', () => {
    const secrets = { names: ['Kim lends', 'Ostrell'], places: ['shelf at'], prices: ['14.20'] };
    const none = { ...sheetAsk, show: new Set<never>() };
    for (const text of [htmlOf(sheet(none)), sheetText(none)]) {
      for (const word of Object.values(secrets).flat()) expect(text).not.toContain(word);
      expect(text).toContain('HL-1142');
    }
    for (const [what, words] of Object.entries(secrets)) {
      const text = sheetText({ ...sheetAsk, show: new Set([what as keyof typeof secrets]) });
      for (const word of words) expect(text).toContain(word.replace("'", "'"));
    }
  });

  it('tells what it may be, what is cleared, and by which look', () => {
    const job = jobOf(`putback: 1
job: Dies at a stop
suspects: {coil: Ignition coil open, switch: Stop switch corroded}
checks:
  primary: {check: Coil primary, limit: 0.8..1.2 ohm, bad: [coil]}
  spark: {check: Spark, bad: [coil, switch]}
diary:
  - {at: 2026-04-11T16:00:00+02:00, id: aaaaaaa1, check: primary, looked: good, result: 0.94 ohm, limit: 0.8..1.2 ohm, judged: within}
  - {at: 2026-04-11T16:01:00+02:00, id: aaaaaaa2, check: spark, looked: bad}
`);
    const text = sheetText({ ...ask, job, piece: null, question: null, show: new Set() });
    expect(text).toContain('Ignition coil open: cleared, Coil primary: 0.94 ohm');
    expect(text).toMatch(/Stop switch corroded: .*not cleared/);
    // Also a look that came out bad, with its day: it is what the question is about.
    expect(text).toContain(
      '## Readings\n\n- Coil primary (limit 0.8..1.2 ohm): 0.94 ohm, good (2026-04-11)\n- Spark: bad (2026-04-11)',
    );
  });

  it('is plain Markdown in which no text of the file is more than text', () => {
    const job = jobOf('putback: 1\njob: "# *x* [a](http://b) <b> `c` | ~d~"\n');
    const text = sheetText({
      ...ask,
      job,
      piece: null,
      question: '1. no list\n## no head',
      show: new Set(),
    });
    expect(text).toBe(
      '# \\# \\*x\\* \\[a\\](http://b) \\<b\\> \\`c\\` \\| \\~d\\~\n\n## Question\n\n1\\. no list \\#\\# no head',
    );
  });
});

describe('the report', () => {
  it('makes one book of several jobs of one machine, and refuses others', () => {
    const one = jobOf('putback: 1\njob: First\nmachine: Hollin 400 Twin, 1998, 41230 km\n');
    const two = jobOf('putback: 1\njob: Second\nmachine: Hollin 400 Twin, 1998, 43 000 km\n');
    const other = jobOf('putback: 1\njob: Third\nmachine: Tarn 125\n');
    const book = { ...ask, by: null, pictures: [], inside: false };
    const html = htmlOf(report({ ...book, jobs: [one, two] }));
    expect(html).toContain('Record of 2 repairs');
    expect(html.indexOf('First')).toBeLessThan(html.indexOf('Second'));
    expect(report({ ...book, jobs: [one, other] })).toMatchObject({ code: 'other-machine' });
    // Of two of one model the numbers say that they are two, and of one that was sold as another that it is one.
    const numbered = (machine: string, id: string) =>
      jobOf(`putback: 1\njob: x\nmachine: ${machine}\nmachine-id: ${id}\ndiary:\n`);
    const [a, b, c] = [
      numbered('Hollin 400 Twin', 'HL4-1'),
      numbered('Hollin 400 Twin', 'HL4-2'),
      numbered('Hollin 400 T, 1999', 'hl4-1'),
    ];
    expect(report({ ...book, jobs: [a, b] })).toMatchObject({ code: 'other-machine' });
    expect('html' in report({ ...book, jobs: [a, c] })).toBe(true);
    expect(machineOf(one)).toBe('hollin 400 twin, 1998');
  });

  const made = (text: string) =>
    htmlOf(
      report({ ...ask, jobs: [jobOf(text)], by: null, pictures: [], inside: false }),
    ).replaceAll(/<\/?(?:bdi|td|th|tr)>/g, ' ');

  it('tells of a test that failed in an earlier round, and by what, though it passed later', () => {
    const html = made(`putback: 1
job: Weeps
tasks: {weep: {test: No oil at the edge}}
diary:
  - {at: 2026-04-11T16:00:00+02:00, id: aaaaaaa1, task: weep, done: failed, says: weeps at the lower edge near 5}
  - {at: 2026-04-18T16:00:00+02:00, id: aaaaaaa2, task: weep, done: passed}
`);
    const [first, last] = ['weeps at the lower edge near 5', 'seen, passed'].map((s) =>
      html.indexOf(s),
    );
    expect(html).toMatch(/near 5 +FAILED, 2026-04-11/);
    expect(first).toBeGreaterThan(0);
    expect(first).toBeLessThan(last ?? 0);
  });

  it('tells how the fault was looked for, with readings, what was found and how it was mended', () => {
    const html = made(`putback: 1
job: Won't start
found: Plugs fouled
pieces: {cover: {bolts: S S}}
suspects: {plug: Plugs fouled, battery: Battery flat}
checks:
  volts: {check: Battery voltage, limit: 12.4..12.8 V, bad: battery}
  spark: {check: Spark at the plug, bad: [plug, battery]}
tasks:
  mend-plug: {do: "Put right: Plugs fouled"}
diary:
  - {at: 2026-04-11T16:00:00+02:00, id: aaaaaaa1, check: volts, looked: good, result: 12.6 V, limit: 12.4..12.8 V, judged: within}
  - {at: 2026-04-11T16:01:00+02:00, id: aaaaaaa2, check: spark, looked: bad}
  - {at: 2026-04-11T16:02:00+02:00, id: aaaaaaa3, suspect: plug, found: Plugs fouled}
  - {at: 2026-04-11T16:03:00+02:00, id: aaaaaaa4, task: mend-plug, done: done, says: new plugs NX-7}
  - {at: 2026-04-11T16:04:00+02:00, id: aaaaaaa5, piece: cover, hole: 2, state: pulled}
  - {at: 2026-04-11T16:05:00+02:00, id: aaaaaaa6, piece: cover, hole: 2, state: mended, says: wire insert}
`);
    expect(html).toMatch(/Battery voltage +12\.4\.\.12\.8 V +12\.6 V +good/);
    expect(html).toMatch(/Spark at the plug +BAD/);
    for (const text of [
      'Found: Plugs fouled',
      'Put right: Plugs fouled: new plugs NX-7',
      'Mended: Cover, hole 2: wire insert.',
    ]) {
      expect(html).toContain(text);
    }
  });

  it('names the standard behind the joint record in small print at its end only', () => {
    const job = practice('tarn-idle');
    const html = htmlOf(report({ ...ask, jobs: [job], by: null, pictures: [], inside: false }));
    const said = html.match(/ASME/g)?.length ?? 0;
    expect(said).toBe(html.includes('Joint record') ? 1 : 0);
  });

  it('tells nothing that was taken back, and no ids', () => {
    const job = practice('hollin-left-cover');
    const html = htmlOf(report({ ...ask, jobs: [job], by: null, pictures: [], inside: false }));
    for (const { id } of job.entries) expect(html).not.toContain(id);
    expect(html).toContain('It is no proof of what nobody looked at');
    expect(html).not.toMatch(/proved|proven/);
  });
});

describe('the record of a second round', () => {
  it('keeps what was set and tightened in the first one', () => {
    const text = `putback: 1
job: Pump cover drips
pieces: {cover: {bolts: M M}}
tasks:
  gap: {adjust: Valve gap, limit: 0.08..0.12 mm, while: cover off}
diary:
  - {at: 2026-04-01T10:00:00+02:00, id: mark0001, piece: cover, out: M}
  - {at: 2026-04-01T10:00:01+02:00, id: mark0002, piece: cover, removed: all}
  - {at: 2026-04-01T10:00:02+02:00, id: mark0003, task: gap, done: done, was: 0.16 mm, set: 0.10 mm}
  - {at: 2026-04-01T10:01:00+02:00, id: mark0004, piece: cover, in: M}
  - {at: 2026-04-01T10:02:00+02:00, id: mark0005, piece: cover, tight: snug}
  - {at: 2026-04-01T10:03:00+02:00, id: mark0006, piece: cover, tight: full, set: 22 N·m}
`;
    const again = `  - {at: 2026-04-09T10:00:00+02:00, id: mark0007, piece: cover, out: M}
  - {at: 2026-04-09T10:00:01+02:00, id: mark0008, piece: cover, removed: all}
`;
    const made = (file: string) =>
      htmlOf(report({ ...ask, jobs: [jobOf(file)], by: null, pictures: [[]], inside: true }));
    expect(made(text)).not.toContain('Earlier rounds');
    const html = made(text + again);
    expect(html).toContain('2026-04-01, Valve gap: before 0.16 mm, set to 0.10 mm');
    expect(html).toContain('2026-04-01, Cover, round 1: tightened, last pass full, 22 N·m set');
    const undone = made(
      `${text}${again}  - {at: 2026-04-09T10:00:02+02:00, id: mark0009, undo: mark0003}\n`,
    );
    expect(undone).not.toContain('Valve gap: before');
  });
});
