import type { FunctionsFile } from '../../core/metadata.ts';
import { installCustomFunctions } from './host.ts';
import { start } from './start.ts';

const functionsFile = document.getElementById('functions-file')?.textContent;
installCustomFunctions(JSON.parse(functionsFile ?? '') as FunctionsFile);

/** dist/functions.js follows this script and associates its functions; the workbook needs them. */
document.addEventListener('DOMContentLoaded', () => void start());
