/**
 * Marks a job file again and again, each judged and on disk before the next, once a line comes in. Arguments: file,
 * number of marks.
 */
import { record } from '../../../src/job/save/record.ts';
import { makeWorld } from '../../../src/main.ts';

const [file = '', count = '0'] = process.argv.slice(2);
process.stdout.write('ready\n');
// All begin at once: how long a process takes to start is no part of marking.
await new Promise((go) => process.stdin.once('data', go));
process.stdin.destroy();
for (let n = 0; n < Number(count); n++) {
  const done = await record(file, { do: 'note', piece: 'cover', text: `mark ${n}` }, makeWorld());
  if (!done.ok) process.stdout.write(`failed ${JSON.stringify(done).slice(0, 300)}\n`);
}
