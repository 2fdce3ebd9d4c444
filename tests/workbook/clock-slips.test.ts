import { describe, expect, it } from "vitest";
import { CellError } from "../../src/functions/cell-error";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { block, columnLetters } from "../../src/workbook/grid/plan/addresses";
import { paperGrid } from "../support/paper-grid";
import { troubles, type Line } from "../support/kettle";

/* One slip beside the malt must not take the lines of the day, and with them what they say of steam and fire. */
const days = (["metric", "us"] as const).flatMap((units) =>
  (["extract", "all-grain"] as const).map((method) => ({
    units,
    method,
    plan: planBatch(
      exampleBatch({
        id: "slip",
        sheetName: "Slips",
        batchName: "Any",
        brewedOn: 46270,
        volume: units === "us" ? 5 : 20,
        units,
        topUp: 0,
        method,
      }),
    ),
  })),
);

function typed(plan: (typeof days)[number]["plan"], changed: Readonly<Record<string, string | number>>) {
  const cellOf = (name: string): string => plan.names.find((found) => found.name === name)?.range.split(":")[0] ?? "";
  const paper = paperGrid(plan, new Map(Object.entries(changed).map(([name, value]) => [cellOf(name), value])));
  const { from, to } = block(plan.names.find(({ name }) => name === "timeline")?.range ?? "");
  const rows = Array.from({ length: to.row - from.row + 1 }, (_, down) =>
    Array.from({ length: 5 }, (__, right) => paper.at(`${columnLetters(from.column + right)}${from.row + down}`)),
  );
  const label = plan.cells.find(({ content }) => content === "Clock of the brew day")?.address ?? "";
  const row = label.replace(/[A-Z]+/, "");
  const check = plan.cells
    .filter(({ address }) => address.replace(/[A-Z]+/, "") === row)
    .map(({ address }) => paper.at(address))
    .join(" | ");
  const texts = rows.map(([, , what, , caution]) =>
    what instanceof CellError ? what.code : `${String(what ?? "")}: ${String(caution ?? "")}`,
  );
  return { rows, texts, check, dose: paper.at(cellOf("sanitiser_dose")) };
}

describe.each(days)("the clock of a day ($method, $units)", ({ units, method, plan }) => {
  it.each(["1 oz in 5 gal", -3, 1000])("keeps its lines with a sanitiser dose of %s, and says so on its check line", (dose) => {
    const { texts, check } = typed(plan, { sanitiser_per_volume: dose });
    expect(texts.join("\n")).toContain("Steam or scalding water comes out first");
    expect(texts.join("\n")).toContain("Soak hoses, lid in sanitiser by its label");
    expect(check).toMatch(
      dose === 1000
        ? /whole bucket/
        : dose === -3
          ? /less than nothing/
          : /is a text\. Type only the number of (mL for one L|US fl oz for one US gal)/,
    );
  });

  it("asks at a dose out of all reason, and at none that a label may have", () => {
    const [fine, doubtful] = units === "us" ? [2.4, 2.6] : [19, 21];
    expect(typed(plan, { sanitiser_per_volume: fine }).check).not.toContain("whole bucket");
    expect(typed(plan, { sanitiser_per_volume: doubtful }).check).toContain("is that for the whole bucket?");
    expect(typed(plan, { sanitiser_per_volume: "" })).toMatchObject({ dose: "" });
    expect(typed(plan, { sanitiser_volume: units === "us" ? "5 gal" : "20 L", sanitiser_per_volume: 0.5 })).toMatchObject({
      dose: "",
      check: expect.stringContaining("Sanitiser bucket") as string,
    });
    expect(typed(plan, { sanitiser_per_volume: 0.5 }).dose).toBeGreaterThan(0);
  });

  it.each([0, 30])("keeps its lines with hops of 60 minutes and a boil of %i, and says where they went", (boilMinutes) => {
    const { texts, check } = typed(plan, { boil_minutes: boilMinutes, hop_minutes: 60 });
    expect(texts.join("\n")).toContain("Steam or scalding water comes out first");
    expect(texts.filter((line) => line.startsWith("Add ")).length).toBeGreaterThan(0);
    expect(check).toContain("A hop is to boil longer than the boil lasts");
  });

  it.each([0, 60])("can be walked with a boil of %i minutes, and speaks of no boil where there is none", (boilMinutes) => {
    const bill = block(plan.names.find(({ name }) => name === "hop_plan")?.range ?? "");
    const withoutHops = plan.cells.map((cell) => {
      const { row, column } = block(cell.address).from;
      return row >= bill.from.row && row <= bill.to.row && column <= bill.to.column ? { ...cell, content: "" } : cell;
    });
    const { rows } = typed({ ...plan, cells: withoutHops }, { boil_minutes: boilMinutes });
    const start = Number(rows[0]?.[0]);
    const lines = rows
      .filter(([, , what]) => what !== null && what !== "")
      .map(([time, boilMinute, what, , caution]): Line => ({
        minute: typeof time === "number" ? Math.round((time - start) * 1440 * 1000) / 1000 : undefined,
        boilMinute: typeof boilMinute === "number" ? boilMinute : undefined,
        what: String(what),
        caution: String(caution ?? ""),
      }));
    expect(troubles(lines, { boilMinutes, boilsAtC: 100, standMinutes: 0, hops: [] })).toEqual([]);
    for (const { what, caution } of lines) expect([what.length <= 45, caution.length <= 76], `${what}: ${caution}`).toEqual([true, true]);
    if (boilMinutes === 0) expect(lines.map(({ caution }) => caution).join("\n")).not.toMatch(/before it boils|it steams/);
    if (method === "all-grain") expect(lines.some(({ what }) => /^Mash for \d+ min; heat /.test(what))).toBe(true);
  });
});
