/** Before dist/functions.js, which hands its functions over as soon as it is loaded: they wait here for sheet.js, which has their words. */
const waiting: unknown[] = [];
Object.assign(globalThis, { CustomFunctions: { waiting, associate: (...given: unknown[]) => waiting.push(given) } });
