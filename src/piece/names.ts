/** Names of holes: `1`…`999`, with a letter where one was drilled between two others. */

const NAME = /^([1-9][0-9]{0,2})([a-z]?)$/;

export function isHoleName(text: string): boolean {
  return NAME.test(text);
}

/** Order of names as one counts: 4, 4a, 5, 10. What is no name comes last, by its letters. */
export function compareHoles(a: string, b: string): number {
  const [, numberA, letterA = ''] = NAME.exec(a) ?? [];
  const [, numberB, letterB = ''] = NAME.exec(b) ?? [];
  const byNumber = Number(numberA ?? 1000) - Number(numberB ?? 1000);
  if (byNumber !== 0) return byNumber;
  const [x, y] = numberA === undefined ? [a, b] : [letterA, letterB];
  return x < y ? -1 : x > y ? 1 : 0;
}
