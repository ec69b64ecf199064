/**
 * Marks a job file again and again and says each id once its save has returned.
 * Arguments: file, prefix of the ids (4 characters), number of marks; and, to die there, the number of a step of
 * the disk, or, to stop there once, its name.
 */

import { appendEntry } from '../../../src/job/edit/splice.ts';
import { type Disk, disk } from '../../../src/job/save/disk.ts';
import { PATIENCE } from '../../../src/job/save/lock.ts';
import { saveFile } from '../../../src/job/save/save.ts';

const [file = '', prefix = '', count = '0', dieAt = '0'] = process.argv.slice(2);

let step = 0;
let stopped = false;
const dying = new Proxy(disk, {
  get(target, key: keyof Disk) {
    return (...args: unknown[]) => {
      if (++step === Number(dieAt)) process.kill(process.pid, 'SIGKILL');
      if (key === dieAt && !stopped) {
        stopped = true;
        process.stdout.write('stopping\n');
        process.kill(process.pid, 'SIGSTOP');
      }
      return (target[key] as (...args: unknown[]) => unknown)(...args);
    };
  },
});

process.stdout.write('ready\n');
for (let n = 0; n < Number(count); n++) {
  const id = prefix + String(n).padStart(4, '0');
  const entry = `- {at: 2026-05-02T10:11:05+02:00, id: ${id}, piece: cover, hole: ${(n % 40) + 1}, in: S}`;
  const saved = await saveFile(file, (text) => ({ text: appendEntry(text, entry) }), {
    // On a busy machine eight at once wait long for one another; none of them gives up.
    patience: { ...PATIENCE, wait: 60_000 },
    ...(dieAt === '0' ? {} : { disk: dying }),
  });
  process.stdout.write(saved.ok ? `done ${id}\n` : `failed ${saved.code} ${saved.say}\n`);
}
if (dieAt !== '0') process.stdout.write(`steps ${step}\n`);
