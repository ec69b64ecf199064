/**
 * A table of fits, or a diary, asks what the same few words mean thousands of times. Remembers answers of a pure function of one text,
 * at most a thousand of them.
 */
export function remembering<T>(answer: (text: string) => T): (text: string) => T {
  const known = new Map<string, { value: T }>();
  return (text) => {
    const had = known.get(text);
    if (had) return had.value;
    const value = answer(text);
    if (known.size >= 1000) known.clear();
    known.set(text, { value });
    return value;
  };
}

/** Code units. A text that is longer is looked through anew for each picture only where nobody remembers what came of it. */
const LONG = 2000;
const FEW = 16;

/** The same for what is asked of a few long texts again and again; what is asked of a short one is not kept. */
export function rememberingLong<T>(answer: (text: string) => T): (text: string) => T {
  const known = new Map<string, { value: T }>();
  return (text) => {
    if (text.length < LONG) return answer(text);
    const had = known.get(text) ?? { value: answer(text) };
    // The one that was asked for last goes last.
    known.delete(text);
    known.set(text, had);
    const [first] = known.keys();
    if (known.size > FEW && first !== undefined) known.delete(first);
    return had.value;
  };
}
