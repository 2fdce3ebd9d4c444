/**
 * The guide's pictures. Each is taken by the step of the same name in tests/browser/support/guide-steps.ts (`npm run guide`
 * writes them into pictures/); the tests walk the same steps, so that a picture of a screen that is gone cannot stay.
 */
export const pictures = {
  "first-formula": "A formula being typed into a cell of the bench. Below it a list of functions that fit, with the description of the first.",
  "error-explained": "The pointer rests on a cell that shows #VALUE!. A note beside it says which argument is wrong, and what is allowed.",
  "functions-screen": "The pane's screen Functions with one function open: arguments with units and ranges, equation, sources, an example.",
  "new-batch": "The pane's screen New batch, filled in: name, date, volume, units, method.",
  "batch-sheet": "A batch sheet as the pane writes it: the card at the top, then water, malt and hops.",
} as const;

export type PictureName = keyof typeof pictures;
