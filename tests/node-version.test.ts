import { describe, expect, it } from 'vitest';
import { nodeTooOld } from '../src/node-version.ts';

describe('the Node it runs on', () => {
  it.each(['22.12.0', '22.13.1', '24.21.0', '30.0.0'])('%s will do', (version) => {
    expect(nodeTooOld(version, () => true)).toBeFalsy();
  });

  it.each(['0.12.18', '18.20.2', '20.20.2', '22.11.0', '22.9.0'])(
    '%s is too old: one line with both versions',
    (version) => {
      const said = nodeTooOld(version, () => true);
      expect(said).toContain(version);
      expect(said).toContain('22.12');
      expect(said).not.toContain('\n');
      expect(said).toContain('npm start');
      const installed = nodeTooOld(version, () => false);
      expect(installed).toContain('Install a newer one');
      expect(installed).not.toContain('npm start');
    },
  );
});
