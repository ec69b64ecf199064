/** Whether a test passed is said by one of two words; what came of it may stand beside that. */

export interface TestWord {
  is: 'passed' | 'failed';
  /** What else was said. */
  says: string | null;
}

const AHEAD = /^\s*(passed|failed)\s*(?:[.,;:]\s*(.*?)\s*)?$/is;
const BEHIND = /^\s*(.*?)\s*[.,;:]\s*(passed|failed)[.!]?\s*$/is;
const BOTH = /\bpassed\b.*\bfailed\b|\bfailed\b.*\bpassed\b/is;

/** `passed`, `failed, a drop at 3`, `dry after 10 min, passed`; null where neither is said, or both are. */
export function readTestWord(text: string): TestWord | null {
  if (BOTH.test(text)) return null;
  const [, ahead, behind = ''] = AHEAD.exec(text) ?? [];
  if (ahead) return { is: word(ahead), says: behind === '' ? null : behind };
  const [, before = '', last] = BEHIND.exec(text) ?? [];
  return last ? { is: word(last), says: before === '' ? null : before } : null;
}

const word = (said: string): TestWord['is'] =>
  said.toLowerCase() === 'failed' ? 'failed' : 'passed';
