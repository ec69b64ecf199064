/**
 * Loaded into a program before anything else (`--require`): gives up root's rights, which would let it write
 * everywhere. So Node itself may lie where nobody but root comes.
 */
process.setgroups?.([]);
process.setgid?.(65534);
process.setuid?.(65534);
