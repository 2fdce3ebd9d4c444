import { describe, expect, it } from "vitest";
import { registry } from "../../../src/functions/registry";
import { plainForms } from "../../../src/workbook/exchange/unplug/plain";
import { isValueOnly } from "../../../src/workbook/exchange/unplug/plain/plain-form";

describe("plain forms", () => {
  it.each(registry.map(({ id }) => id))("%s has one, or a written reason why it becomes a value", (id) => {
    const form = plainForms.get(id);
    expect(form).toBeDefined();
    if (form !== undefined && isValueOnly(form)) expect(form.value).toMatch(/^it /);
    else expect(typeof form?.sum).toBe("function");
  });

  it("belong to functions that exist", () => {
    const ids = new Set(registry.map(({ id }) => id));
    expect([...plainForms.keys()].filter((id) => !ids.has(id))).toEqual([]);
  });

  it("are there for all but these", () => {
    // Verdicts that could harm somebody if they stood still, LOG.STEADY and PACK.CHECK, are not among them, nor is the clock of the day.
    expect([...plainForms].filter(([, form]) => isValueOnly(form)).map(([id]) => id)).toEqual([
      "WATER.TARGET",
      "MASH.ACIDITY",
      "MASH.CORRECT",
      "MASH.RUNNINGS",
      "HEAT.COIL",
      "LOG.FORECAST",
      "LOG.CURVE",
      "BEER.BLEND",
      "BEER.STYLE",
      "TASTE.AGREE",
    ]);
  });
});
