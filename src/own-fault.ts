/** What is said of a fault of the program itself: what is safe, and all that a report needs, to be copied as it stands. */
import { safe } from './model/safe.ts';
import { VERSION } from './version.ts';

/** `kept`: what of the work is safe, one sentence. */
export function ownFault(error: unknown, kept: string): string {
  const { name, message, stack = '' } = error instanceof Error ? error : new Error(String(error));
  if (name === 'NotWhole') return safe(message);
  const places = stack.split('\n').filter((l) => /^\s+at /.test(l));
  const { version, platform, arch } = process;
  return safe(
    [
      `putback stopped by a fault of its own: ${message}`,
      `${kept} To report it, send these lines, and what you did just before, to whoever gave you putback:`,
      `  putback ${VERSION}, Node ${version}, ${platform} ${arch}`,
      ...places.slice(0, 8),
    ].join('\n'),
  );
}
