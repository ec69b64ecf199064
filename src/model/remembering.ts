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

/** Code units. What comes of a longer text is worked out once for many pictures of it. */
const LONG = 2000;
const FEW = 16;

/** The same for what is asked of a few long texts again and again; what is asked of a short one is not kept. */
export function rememberingLong<T>(answer: (text: string) => T): (text: string) => T {
  const of = keptOfLong<T>();
  return (text) => of(text, () => answer(text));
}

/** What `make` makes, kept under the text that it is made of, all of it, if that is long. */
export function keptOfLong<T>(): (text: string, make: () => T) => T {
  const known = new Map<string, { value: T }>();
  return (text, make) => {
    if (text.length < LONG) return make();
    const had = known.get(text) ?? { value: make() };
    // The one that was asked for last goes last.
    known.delete(text);
    known.set(text, had);
    const [first] = known.keys();
    if (known.size > FEW && first !== undefined) known.delete(first);
    return had.value;
  };
}
