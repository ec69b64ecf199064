/**
 * What is tested after a thing of some sort was disturbed. Common practice of the trade, no source; what the maker
 * says goes first.
 */
import type { Sort } from './disturbed.ts';

export interface Rule {
  sort: Sort;
  /** Last word of the key. */
  key: string;
  say: string;
  when: string | null;
  /** A test of the file that says one of these about the piece stands in for it. */
  covers: RegExp;
}

export const RULES: readonly Rule[] = [
  {
    sort: 'cover',
    key: 'weeps',
    say: 'weeps when hot?',
    when: 'hot',
    covers: /weep|leak|oil|drop|drip/i,
  },
  {
    sort: 'hose',
    key: 'leaks',
    say: 'leaks under pressure?',
    when: 'under pressure',
    covers: /leak|drop|drip|pressure/i,
  },
  {
    sort: 'cable',
    key: 'play',
    say: 'play at both locks?',
    when: null,
    covers: /play|slack|lock/i,
  },
  {
    sort: 'lever',
    key: 'moves',
    say: 'moves free and comes back?',
    when: null,
    covers: /free|play|move/i,
  },
  {
    sort: 'switch',
    key: 'lights',
    say: 'switch and light work?',
    when: null,
    covers: /light|lamp|switch/i,
  },
  {
    sort: 'fuel',
    key: 'smell',
    say: 'smell or drop of fuel?',
    when: 'fuel on',
    covers: /smell|leak|drop|fuel/i,
  },
  {
    sort: 'wiring',
    key: 'works',
    say: 'what it feeds works?',
    when: null,
    covers: /work|function|spark|charge|light/i,
  },
  {
    sort: 'exhaust',
    key: 'blows',
    say: 'blows at the joint?',
    when: 'running',
    covers: /blow|exhaust/i,
  },
  {
    sort: 'brake',
    key: 'holds',
    say: 'firm, and holds at a walk?',
    when: null,
    covers: /brake|firm|hold/i,
  },
  {
    sort: 'steering',
    key: 'turns',
    say: 'free from lock to lock, no play?',
    when: null,
    covers: /lock|play|turn/i,
  },
];
