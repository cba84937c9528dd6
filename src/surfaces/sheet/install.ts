import type { FunctionsFile } from '../../core/metadata.ts';
import { installCustomFunctions } from './host.ts';

/** Before dist/functions.js, which looks for `CustomFunctions` as soon as it is loaded. */
const functionsFile = document.getElementById('functions-file')?.textContent;
installCustomFunctions(JSON.parse(functionsFile ?? '') as FunctionsFile);
