/** Set by the bundler from package.json; run from the source it is not there. */
declare const __VERSION__: string | undefined;

export const VERSION = typeof __VERSION__ === 'undefined' ? 'from source' : __VERSION__;
