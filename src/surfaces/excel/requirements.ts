/**
 * Microsoft's names for what a version of Excel can do. Each is the lowest that states every call we make; a test
 * reads the vendor's own type definitions and compares. README.md says which Excel versions they mean.
 */
export const requirementSets = {
  /** `CustomFunctions.ErrorCode`, without which no error could carry our sentence. The manifest asks for it. */
  CustomFunctionsRuntime: '1.3',
  /** Asked for by the pane when it opens, not by the manifest, so that the functions work where the pane cannot. */
  ExcelApi: '1.12',
} as const;
