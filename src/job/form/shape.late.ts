/** In the built program the shapes are loaded when they are asked for: when something is wrong. */
import * as late from './shape.ts';

export const shapes = () => late;
