import { describe, expect, it } from 'vitest';
import { readTestWord } from '../../src/model/test-word.ts';

describe('the word of a test', () => {
  it.each([
    ['passed', 'passed', null],
    [' Failed ', 'failed', null],
    ['passed, dry after 20 minutes', 'passed', 'dry after 20 minutes'],
    ['failed: a drop at 3', 'failed', 'a drop at 3'],
    ['dry after 10 min hot, passed', 'passed', 'dry after 10 min hot'],
    ['still stalls; failed.', 'failed', 'still stalls'],
  ])('%s', (text, is, says) => {
    expect(readTestWord(text)).toEqual({ is, says });
  });

  it.each([
    'still stalls',
    'leaks',
    '8 kohm',
    'not passed',
    'failed to drip',
    'passed, then failed',
    '',
  ])('%s: says neither', (text) => {
    expect(readTestWord(text)).toBeNull();
  });
});
