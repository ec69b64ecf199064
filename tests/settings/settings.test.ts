import { describe, expect, it } from 'vitest';
import { readBenchSettings, readUserSettings } from '../../src/settings/settings.ts';

const bench = (text: string) => readBenchSettings(text, 'bench.yaml');
const told = (text: string) =>
  bench(text).faults.map((f) => `${f.line}:${f.column} ${f.say}. ${f.fix}`);

const NO_PHOTOS = { photos: null, 'photos-from': [], 'photos-git': 'ignore' };
const NOTHING = { commit: 'never', wrenches: [], hours: null, hour: null, ...NO_PHOTOS };

describe('the settings of a bench', () => {
  it('are read whole', () => {
    const { settings, faults } = bench(
      [
        'commit: milestones',
        'wrenches:',
        '  small: {range: 5..25 N·m, step: 0.5, length: 240}',
        '  large: {range: 40..150 lbf·ft}',
        'hours: {mon-wed: "18:00-21:30", sat: "14-17, 9:00-12:00"}',
        'hour: 40.50',
        'photos: copy',
        'photos-from: /media/camera/DCIM',
        'photos-git: add',
        '',
      ].join('\n'),
    );
    expect(faults).toEqual([]);
    const evening = [{ from: 1080, to: 1290 }];
    const day = [
      { from: 540, to: 720 },
      { from: 840, to: 1020 },
    ];
    expect(settings).toEqual({
      commit: 'milestones',
      wrenches: [
        { name: 'small', from: 5, to: 25, unit: 'N·m', step: 0.5, length: 240 },
        { name: 'large', from: 40, to: 150, unit: 'lbf·ft', step: null, length: null },
      ],
      hours: [evening, evening, evening, [], [], day, []],
      hour: 40.5,
      photos: 'copy',
      'photos-from': ['/media/camera/DCIM'],
      'photos-git': 'add',
    });
  });

  it('are as if nothing was said where nothing is', () => {
    for (const text of ['', '# nothing\n', 'commit:\nwrenches:\n']) {
      expect(bench(text)).toEqual({ settings: NOTHING, faults: [] });
    }
  });

  it.each([
    ['comit: never', '1:1 comit is no key of the settings of a bench. Did you mean commit?'],
    [
      'commit: milestone',
      '1:9 milestone is no word for commit. Did you mean milestones? One of: milestones, never.',
    ],
    [
      'commit: [never]',
      '1:9 commit takes milestones or never, and here is a list. For example: commit: milestones',
    ],
    [
      'wrenches: {a: {rang: 5..9 N·m}}',
      '1:16 rang is no key of a torque wrench. Did you mean range?',
    ],
    [
      'wrenches: {a: {range: 5..25 mm}}',
      '1:23 5..25 mm cannot be read as range. For example: range: 5..25 N·m',
    ],
    [
      'wrenches: {a: {range: 5 N·m}}',
      '1:23 5 N·m cannot be read as range. For example: range: 5..25 N·m',
    ],
    [
      'wrenches: {a: {range: 5..9 N·m, step: -1}}',
      '1:39 -1 cannot be read as step. For example: step: 0.5',
    ],
    ['hours: {someday: "9-12"}', '1:9 someday cannot be read as hours.'],
    ['hours: {mon: "12-9"}', '1:14 12-9 cannot be read as hours.'],
    ['hours: {fri-mon: "9-12"}', '1:9 fri-mon cannot be read as hours.'],
    ['photos: move', '1:9 move is no word for photos. One of: stay, copy.'],
    ['hour: much', '1:7 much cannot be read as hour. For example: hour: 40'],
    ['a: &a never\ncommit: *a', '2:9 *a is a YAML anchor or alias'],
  ])('%s: told with its place and the way out, and counts as not said', (text, said) => {
    expect(told(`${text}\n`).join('\n')).toContain(said);
    expect(bench(text).settings).toMatchObject({ commit: 'never', hours: null, hour: null });
  });

  it('never throw, whatever stands there', () => {
    for (const text of [
      '\0',
      '[',
      '{{{',
      'a\n  b: c',
      '- x',
      '"',
      '---\n---\n',
      '\uFEFFcommit: never',
    ]) {
      expect(bench(text).settings).toEqual(NOTHING);
    }
  });
});

describe('a user’s own settings', () => {
  it('are read, and told of, as those of a bench', () => {
    const { settings, faults } = readUserSettings(
      'benches: ~/repairs\nsigns: ascii\ncommit: x\npaper: letter\n',
      's',
    );
    expect(settings).toMatchObject({
      benches: ['~/repairs'],
      signs: 'ascii',
      colours: 'usual',
      paper: 'letter',
    });
    expect(faults.map((f) => `${f.line} ${f.say}`)).toEqual([
      '3 commit is no key of your settings',
    ]);
  });
});
