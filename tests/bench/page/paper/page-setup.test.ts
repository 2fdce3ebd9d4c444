import { describe, expect, it } from "vitest";
import { filledIn, pageSetUp } from "../../../../src/bench/page/paper/page-setup";

const facts = { page: 2, pages: 3, sheet: "Batch 1", workbook: "Season", now: new Date(2026, 8, 5, 7, 4) };

describe("the page set-up", () => {
  it("takes paper, orientation and margins of the sheet", () => {
    const setUp = pageSetUp({ paperSize: "Letter", orientation: "Landscape", leftMargin: 18 });
    expect([setUp.width, setUp.height, setUp.margins.left, setUp.margins.right]).toEqual([792, 612, 18, 50.4]);
  });
  it("prints on the paper of the brewer's part of the world where the sheet names none", () => {
    expect(pageSetUp(undefined, "en-US").height).toBe(792);
    // ISO 216: 210 × 297 mm.
    expect(pageSetUp(undefined, "en-GB").height).toBeCloseTo((297 / 25.4) * 72, 1);
    expect(pageSetUp({ paperSize: "A4" }, "en-US").width).toBeCloseTo((210 / 25.4) * 72, 1);
  });
  it("tells a scale from pages to fit to", () => {
    expect(pageSetUp({ zoom: { scale: 80 } })).toMatchObject({ scale: 0.8, mostPages: undefined });
    expect(pageSetUp({ zoom: { horizontalFitToPages: 1 } })).toMatchObject({ scale: 1, mostPages: undefined });
    expect(pageSetUp({ zoom: { horizontalFitToPages: 1, verticalFitToPages: 0 } })).toMatchObject({ mostPages: undefined });
    expect(pageSetUp({ zoom: { horizontalFitToPages: 1, verticalFitToPages: 1 } })).toMatchObject({ mostPages: 1 });
  });
});

describe("a header or footer", () => {
  it("is filled in with page, pages, sheet, file, date and time", () => {
    expect(filledIn("&A · page &P of &N", facts)).toBe("Batch 1 · page 2 of 3");
    expect(filledIn("&F, &D &T", facts)).toBe("Season, 2026-09-05 07:04");
  });
  it("keeps a doubled & as one and leaves codes for looks out", () => {
    expect(filledIn("Hop && Son", facts)).toBe("Hop & Son");
    expect(filledIn('&"Calibri,Bold"&14&K1F5150Malt&B &p', facts)).toBe("Malt 2");
  });
});
