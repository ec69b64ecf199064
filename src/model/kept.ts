/** Answers kept with what they are about, so that one picture or one mark works each out once. */

interface Kept {
  beside: unknown;
  answer: unknown;
}

const all = new WeakMap<object, Map<string, Kept>>();

/**
 * The answer to a question about a job, a piece or an entry: worked out the first time, and again when `beside`, what
 * else it hangs on, is another value. What it is about must never change, and goes with its answers. A question is
 * asked in one place, under a name that no other place uses.
 */
export function kept<T>(about: object, question: string, make: () => T, beside?: unknown): T {
  const answers = all.get(about) ?? new Map<string, Kept>();
  all.set(about, answers);
  const known = answers.get(question);
  if (known && known.beside === beside) return known.answer as T;
  const answer = make();
  answers.set(question, { beside, answer });
  return answer;
}
