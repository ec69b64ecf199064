/** In the built program the texts of the faults are loaded when there is a fault. */
import * as late from './table.ts';

export const faultTexts = () => late;
