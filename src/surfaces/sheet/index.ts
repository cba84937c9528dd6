import { start } from './start.ts';

/** Behind dist/functions.js, whose functions the workbook needs. */
void start();
