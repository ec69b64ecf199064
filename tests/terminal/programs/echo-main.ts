/** The echo show, started as the program starts its screens. */
import { play, refuseToOpen } from '../../../src/screens/terminal/open.ts';

const world = {
  now: () => '2026-05-02T10:11:05+02:00',
  id: () => 'k3Vb9xQe',
  folder: process.cwd(),
  env: process.env,
  stdin: process.stdin,
  stdout: process.stdout,
  stderr: process.stderr,
  platform: process.platform,
  program: 'putback',
};

const refused = refuseToOpen({ file: 'job.yaml' }, world);
process.exitCode = refused ?? (await play(async () => (await import('./echo.tsx')).load(), world));
