import { expect, it } from "vitest";
import { sentenceOf } from "../../src/workbook/grid/words/sentence";

it("leaves an argument's name as Excel shows it, and begins any other sentence with a capital", () => {
  expect(sentenceOf("original_gravity is 12.4; it must be from 0.98 to 1.2", ["original_gravity", "final_gravity"])).toBe(
    "original_gravity is 12.4; it must be from 0.98 to 1.2.",
  );
  expect(sentenceOf("there is no finite answer", ["original_gravity"])).toBe("There is no finite answer.");
  // A name must be the whole first word.
  expect(sentenceOf("gravity_points is -3; it must be at least 0", ["gravity"])).toBe("Gravity_points is -3; it must be at least 0.");
  expect(sentenceOf('malt row 2 must be a number, not the text "x"', ["malt"])).toBe('malt row 2 must be a number, not the text "x".');
});
