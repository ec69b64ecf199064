/** The commands about a fault, and about renewing a thing or leaving it. */
import type { Command } from './base/command.ts';
import { BECAUSE, SAYS } from './base/common.ts';

export const traceCommands = (): readonly Command[] => [
  {
    names: ['trace'],
    usage: 'FILE [CHECK HOW]',
    say: 'what the fault may be, and the next look',
    more: [
      'HOW of a check is good, bad or unclear; with --reading its limit says it.',
      'Of a suspect: --put TEXT for a part changed to try, then same, gone or unclear;',
      'and found, when it is it.',
    ],
    examples: [
      "trace start.yaml primary --reading '0.4 ohm'",
      "trace start.yaml --check 'Blue spark: coil, plug, 3 min'",
      "trace start.yaml plug --put 'new plug'",
      'trace start.yaml plug same --old back',
    ],
    options: {
      reading: { value: 'TEXT', say: 'what was measured: 0.4 ohm' },
      put: { value: 'TEXT', say: 'what was put in to try' },
      old: { value: 'WHERE', say: 'the old part: back, or out' },
      suspect: { value: 'LINE', say: 'one more: Coil open, rarely, 30 min, in carburettor' },
      check: { value: 'LINE', say: 'one more: WHAT: suspects, minutes, limit, behind PIECE' },
      ...SAYS,
      ...BECAUSE,
    },
    words: { least: 1, most: 3 },
    load: () => import('./trace/trace.ts'),
  },
  {
    names: ['weigh'],
    usage: 'FILE TASK',
    say: 'renew it now or leave it: what it turns on',
    more: [
      'TASK is a question to decide, with now:, later:, chance: and harm: as far as known;',
      'later: is filled by what has to come off again. hour: in bench.yaml is what an hour',
      'is worth.',
    ],
    examples: [
      'weigh cover.yaml seal',
      "weigh cover.yaml seal --now '12.50, 40 min' --chance '1 in 6'",
    ],
    options: {
      now: { value: 'COST', say: 'what it costs now: 12.50, 40 min' },
      later: { value: 'COST', say: 'what it costs if it fails later: 30, 3 h' },
      chance: { value: 'CHANCE', say: 'that it fails before you are in there anyway: 1 in 6' },
      harm: { value: 'HARM', say: 'what touching it may break: 1 in 20, 60, 2 h' },
      ...SAYS,
    },
    words: { least: 2, most: 2 },
    load: () => import('./trace/weigh.ts'),
  },
  {
    names: ['while-open'],
    usage: 'FILE PIECE [HOW TEXT]',
    say: 'what is within reach of a hand now',
    more: [
      'HOW is look, renew, leave or ask, and TEXT what: it goes among the tasks, and',
      'on the list.',
    ],
    examples: [
      'while-open cover.yaml alternator',
      "while-open cover.yaml alternator renew 'Shaft seal'",
    ],
    options: { ...SAYS },
    words: { least: 2, most: 4 },
    load: () => import('./trace/while-open.ts'),
  },
];
