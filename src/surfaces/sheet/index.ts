import { functionsFile } from '../../core/metadata.ts';
import { registry } from '../../functions/index.ts';
import { installCustomFunctions } from './host.ts';
import { start } from './start.ts';

/** Behind dist/functions.js, whose functions wait in what install.ts made, and before the workbook that needs them. */
const { waiting } = CustomFunctions as unknown as { readonly waiting: readonly Parameters<typeof CustomFunctions.associate>[] };
installCustomFunctions(functionsFile(registry));
for (const given of waiting) CustomFunctions.associate(...given);
void start();
