import schema from '@microsoft/app-manifest/build/json-schemas/teams/v1.30/MicrosoftTeams.schema.json' with { type: 'json' };
import Ajv04 from 'ajv-draft-04';
import { describe, expect, it } from 'vitest';
import { functionsFile } from '../../src/core/metadata.ts';
import { registry } from '../../src/functions/index.ts';

const { allowErrorForDataTypeAny, ...customFunctions } = functionsFile(registry);

describe('functions.json', () => {
  it('keeps to Microsoft’s schema for custom functions', () => {
    // @microsoft/app-manifest 1.1.2, definition extensionCustomFunctions, written in JSON Schema draft 4.
    const ajv = new Ajv04({ strict: false, allErrors: true });
    const validate = ajv.compile({ definitions: schema.definitions, $ref: '#/definitions/extensionCustomFunctions' });
    validate(customFunctions);
    expect(validate.errors ?? []).toEqual([]);
  });

  it('asks for errors as arguments at the top of the file', () => {
    // The schema above does not know this property. Microsoft, "Manually create JSON metadata for custom functions"
    // (learn.microsoft.com/office/dev/add-ins/excel/custom-functions-json, 10 July 2025) has it: "a top-level property".
    expect(allowErrorForDataTypeAny).toBe(true);
  });

  it('gives every id once, in letters, digits and periods as Microsoft’s reference asks', () => {
    const ids = customFunctions.functions.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[A-Z][A-Z0-9.]*$/);
  });

  it('puts optional arguments last, so that none has to be typed to reach another', () => {
    for (const { id, parameters } of customFunctions.functions) {
      const optionals = parameters.map((parameter) => parameter.optional === true || parameter.repeating === true);
      expect(optionals, id).toEqual([...optionals].sort());
    }
  });
});
