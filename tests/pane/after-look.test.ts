import { expect, it } from "vitest";
import { afterLook, type Front } from "../../src/pane/companion/use-batch-sheet";

const failed = (elsewhere: boolean): Front => ({ kind: "failed", message: "Excel refused", elsewhere });
const none: Front = { kind: "none" };
const reading: Front = { kind: "reading" };

it("what was known stays while another workbook is in front, and only then", () => {
  expect(afterLook(none, failed(true))).toBe(none);
  expect(afterLook(none, failed(false))).toEqual(failed(false));
  expect(afterLook(reading, failed(true))).toEqual(failed(true));
  expect(afterLook(failed(true), none)).toBe(none);
});
