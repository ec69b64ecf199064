/** A key that is held down, in a real terminal. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ENTER } from './keys.ts';
import { newFolder, start } from './pty.ts';
import { PUTBACK } from './world.ts';

/** Sixty Enters in one burst, as a terminal hands on a key that is held down. */
it('Enter held down takes no caliper off', async () => {
  const folder = newFolder();
  const text = `putback: 1
job: Brakes
bolts: {C: M8x30}
pieces:
  front-brake-caliper: {bolts: C C, torque: 26 N·m}
diary:
`;
  writeFileSync(join(folder, 'job.yaml'), text);
  const person = start([PUTBACK, 'job.yaml'], { folder });
  await person.until('Next: Front brake caliper: 2 bolts to come out.');
  person.press(ENTER.repeat(60));
  await person.until('That key was still down');
  expect(readFileSync(join(folder, 'job.yaml'), 'utf8')).toBe(text);
  person.press('q');
  await person.exit();
});
