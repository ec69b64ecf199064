/**
 * A large pattern, made when it is first held against a text: many a run never does that, and to read a pattern of many
 * words or of the letters of all alphabets takes longest of all that a file does when it is loaded.
 */
export interface Pattern {
  /** The pattern itself, for what asks for one. */
  readonly made: RegExp;
  exec(text: string): RegExpExecArray | null;
  test(text: string): boolean;
}

/** `source`: the pattern, or what makes its source; `flags` as those of a RegExp, without `g` and `y`. */
export function pattern(source: () => string | RegExp, flags?: string): Pattern {
  let made: RegExp | null = null;
  const make = () => (made ??= new RegExp(source(), flags));
  return {
    get made() {
      return make();
    },
    exec: (text) => make().exec(text),
    test: (text) => make().test(text),
  };
}
