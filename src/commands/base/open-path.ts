/** What a path leads to. */
import { statSync } from 'node:fs';
import { resolve } from 'node:path';
import type { World } from '../../world.ts';

export function pathKind(path: string, world: World): 'file' | 'folder' | null {
  const found = lookUp(path, world);
  return 'error' in found ? null : found.kind;
}

/** The same, or what the system said of it. */
export function lookUp(
  path: string,
  world: World,
): { kind: 'file' | 'folder' } | { error: unknown } {
  try {
    return { kind: statSync(resolve(world.folder, path)).isDirectory() ? 'folder' : 'file' };
  } catch (error) {
    return { error };
  }
}
