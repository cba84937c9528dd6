/** What went wrong in Excel, as a sentence with what to do, by Excel's own code for it. */
const sentences: Readonly<Record<string, string>> = {
  InvalidOperationInCellEditMode: 'A cell is being typed in. Press Enter or Esc, then try again.',
  AccessDenied: 'Excel did not allow this. The sheet or workbook may be protected: unprotect it on the Review tab, then try again.',
  ItemNotFound: 'The sheet is no longer there. It may have been renamed or deleted.',
  InvalidReference: 'The place no longer exists. Choose a cell again.',
  InvalidSelection: 'Select one cell or one block of cells, then try again.',
  InactiveWorkbook: 'Another workbook came to the front. Go back to the one with the panel, then try again.',
  UnsupportedSheet: 'This is a chart or macro sheet. Choose a sheet with cells.',
  MergedRangeConflict: 'There are merged cells in the way. Choose cells that are not merged.',
  RequestPayloadSizeLimitExceeded: 'That is more than Excel on the web takes in one go. Choose fewer cells.',
  ResponsePayloadSizeLimitExceeded: 'That is more than Excel on the web gives in one go. Choose fewer cells.',
  ApiNotFound: 'This version of Excel is too old for that. Update Excel, or use Excel on the web.',
  NotImplemented: 'This version of Excel cannot do that. Update Excel, or use Excel on the web.',
  UnsupportedOperation: 'This version of Excel cannot do that. Update Excel, or use Excel on the web.',
  RequestAborted: 'Excel was busy and gave up. Try again.',
  ActivityLimitReached: 'Excel is busy. Wait a moment, then try again.',
};

/** A failed call as an error whose message is for the user. Our own errors already are, and pass as they stand. */
export function told(fault: unknown): Error {
  const code = typeof fault === 'object' && fault !== null && 'code' in fault ? String(fault.code) : undefined;
  if (code === undefined) return fault instanceof Error ? fault : new Error(String(fault));
  const protectedSheet = fault instanceof Error && /protected/i.test(fault.message);
  const sentence = sentences[protectedSheet ? 'AccessDenied' : code];
  return new Error(sentence ?? `Excel could not do this (${code}). Try again; if it stays so, save the workbook and start Excel anew.`, {
    cause: fault,
  });
}

/** Runs a batch of calls to Excel; what fails is told in words. */
export async function inExcel<Result>(batch: (context: Excel.RequestContext) => Promise<Result>): Promise<Result> {
  try {
    return await Excel.run(batch);
  } catch (fault) {
    throw told(fault);
  }
}
