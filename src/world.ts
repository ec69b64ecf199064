/** What a run of the program takes from outside: made once, in putback.ts, and handed down. */
export interface World {
  /** RFC 3339 with offset, whole seconds: `2026-05-02T10:11:05+02:00`. */
  now(): string;
  /** Name of the zone of this machine, `Europe/Berlin`; none where it is not known. */
  zone?: string;
  /** A new id of 8 characters. */
  id(): string;
  /** Absolute path of the folder the program was started in. */
  folder: string;
  /** Environment variables that putback heeds: NO_COLOR, TERM, LANG, LC_ALL, CI, MSYSTEM, EDITOR … */
  env: Readonly<Record<string, string | undefined>>;
  stdin: NodeJS.ReadStream;
  stdout: NodeJS.WriteStream;
  stderr: NodeJS.WriteStream;
  /**
   * Writes to the output of that number without its stream, which costs some milliseconds to be made; gives what is
   * left to be written, and throws as the system says. None where only a stream writes rightly.
   */
  writeAtOnce?(output: 1 | 2, text: string): Uint8Array;
  platform: NodeJS.Platform;
  /** After a fault of the program itself: what it kept of itself goes, lest the next run meets the same. */
  forget?(): void;
  /** How a shell calls this program: `putback` where that is on the path, else Node and its file, quoted. */
  program: string;
}

/** Now with its zone (RFC 9557), for what tells a time on another day: summer time may end before. */
export function nowHere({ now, zone }: Pick<World, 'now' | 'zone'>): string {
  return zone === undefined ? now() : `${now()}[${zone}]`;
}
