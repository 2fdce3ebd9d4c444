import { afterEach, describe, expect, it } from "vitest";
import { howToPrint } from "../../src/pane/look/how-to-print";
import { newWorkbookWords } from "../../src/pane/unplug/new-workbook-words";

/* On the bench a file is downloaded and there is no File menu; in Excel a window opens, and the bench's bar is not there. */
const within = (platform: string | undefined) =>
  Object.assign(globalThis, { Office: { context: platform === undefined ? {} : { diagnostics: { platform } } } });
afterEach(() => void Reflect.deleteProperty(globalThis, "Office"));

describe("what the pane says of the program around it", () => {
  // An Excel that says nothing of itself is one all the same.
  it.each(["PC", "Mac", "OfficeOnline", undefined])("in Excel (%s)", (platform) => {
    within(platform);
    expect(newWorkbookWords("2 sheets")).toMatch(/^The new workbook is open, with 2 sheets/);
    expect(howToPrint()).toBe("from Excel's File menu");
  });

  it("on the bench", () => {
    within("Bench");
    expect(newWorkbookWords("2 sheets")).toBe("A new workbook with 2 sheets was saved as a file: hand that on.");
    expect(howToPrint()).not.toMatch(/Excel|File menu/);
  });
});
