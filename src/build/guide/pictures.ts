/**
 * The guide's pictures. Each is taken by the step of the same name in tests/browser/support/guide-steps.ts (`npm run guide`
 * writes them into pictures/); the tests walk the same steps, so that a picture of a screen that is gone cannot stay.
 */
export const pictures = {
  "first-formula":
    "A formula being typed into a cell of the bench. Below it a list of functions that fit, with the description of the first.",
  "error-explained": "The pointer rests on a cell that shows #VALUE!. A note beside it says which argument is wrong, and what is allowed.",
  "functions-screen": "The pane's screen Functions with one function open: arguments with units and ranges, equation, sources, an example.",
  "new-batch": "The pane's screen New batch, filled in: name, date, volume, units, method.",
  "batch-sheet": "A batch sheet as the pane writes it: the card at the top, then water, malt and hops.",
  "water-block":
    "A batch sheet's block Water treatment, filled in: what is dissolved before and after, the salts, the pH to expect in the mash.",
  "season-sheet":
    "The season sheet of the sample workbook: a summary at the top, then one line for each batch, with the pane's screen Season.",
  "stores-sheet": "The stores sheet: shelves with what was bought, drawn and is left, beside the pane's screen Stores.",
  "kit-sheet": "The kit sheet: typed figures beside those learned from batches, and on how many batches each rests.",
  "hand-out": "A blank for adults who learn on a sheet of its own, made of a batch by the pane's screen Hand-out.",
  "unplugged-sheet": "A batch sheet that calculates without Gylebook, and the pane's screen Unplug.",
  "club-sheet": "The club sheet: a column for each member's batch, written by the pane's screen Club.",
} as const;

export type PictureName = keyof typeof pictures;
