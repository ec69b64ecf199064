/** In the built program what tells of a wrong shape is loaded when there is one. */
import * as late from './shape-issues.ts';

export const issues = () => late;
