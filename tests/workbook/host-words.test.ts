import { describe, expect, test } from "vitest";
import { hostWords } from "../../src/workbook/grid/words/host-words";
import { JustChanged } from "../../src/workbook/grid/write/change-ranges";

const hostError = (code: string, message: string): Error => Object.assign(new Error(message), { code });

describe("What went wrong, in words", () => {
  test("is the spreadsheet's own, and says so", () => {
    expect(hostWords(hostError("GeneralException", "The line is down."))).toBe("The spreadsheet said: The line is down.");
    expect(hostWords("odd")).toBe("The spreadsheet said: odd");
  });

  test("helps on where we know how", () => {
    expect(hostWords(hostError("AccessDenied", "You may not."))).toMatch(
      /^The spreadsheet said: You may not\. If the sheet is protected, take the protection off/,
    );
    expect(hostWords(hostError("InvalidOperationInCellEditMode", "Busy."))).toBe(
      "A cell is being edited: finish it with Enter, then try again.",
    );
    expect(hostWords(hostError("InvalidSelection", "Elsewhere."))).toMatch(/^Another workbook is in front/);
    expect(hostWords(hostError("ItemNotFound", "None."))).toMatch(/^The sheet is gone/);
  });

  test("is ours where we saw it, and is not put into the spreadsheet's mouth", () => {
    expect(hostWords(new JustChanged("Batch 4", "C7:C9"))).toBe(
      "Somebody has just changed C7:C9 on “Batch 4”. Nothing was written; look again.",
    );
  });
});
