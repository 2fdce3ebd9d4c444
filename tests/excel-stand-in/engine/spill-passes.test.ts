import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { loadHeadlessBench } from "../../support/headless-bench";

const any = { type: "any", dimensionality: "matrix" } as const;
const metadata = {
  functions: [
    { id: "TEST.COUNTUP", name: "TEST.COUNTUP", description: "1 to n", parameters: [{ name: "n", description: "", ...any }], result: any },
  ],
};
/** Spills 1…n downwards; nothing when n is blank. */
const script = `CustomFunctions.associate("TEST.COUNTUP", (n) => n[0][0] > 0 ? Array.from({ length: n[0][0] }, (_, i) => [n[0][0] * 100 + i]) : [[""]]);`;

describe("spills that hang on one another", () => {
  let bench: HeadlessBench;
  beforeAll(async () => {
    bench = (await loadHeadlessBench()).createHeadlessBench({ metadata: metadata as never, functionsScript: script });
  });
  afterAll(() => bench.dispose());

  const write = async (cells: Record<string, number | string>) => {
    await bench.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Spills");
      for (const [address, content] of Object.entries(cells)) sheet.getRange(address).formulas = [[content]];
      await context.sync();
    });
    await bench.calculate();
  };
  const at = (address: string) => bench.valueAt("Spills", address);

  beforeEach(async () => {
    await bench.Excel.run(async (context) => {
      const old = context.workbook.worksheets.getItemOrNullObject("Spills");
      await context.sync();
      if (!old.isNullObject) old.delete();
      context.workbook.worksheets.add("Spills");
      await context.sync();
    });
    // A1 → spill in C → plain → spill in E → plain → spill in G → plain
    await write({
      A1: 2,
      C1: "=GYLE.TEST.COUNTUP(A1)",
      D1: "=COUNT(C1:C9)",
      E1: "=GYLE.TEST.COUNTUP(D1)",
      F1: "=COUNT(E1:E9)",
      G1: "=GYLE.TEST.COUNTUP(F1)",
      H1: "=SUM(G1:G9)",
    });
  });

  it("all show the present answer, three spills deep", async () => {
    expect([at("D1"), at("F1"), at("G2"), at("H1")]).toEqual([2, 2, 201, 401]);
    await write({ A1: 3 });
    expect([at("D1"), at("F1"), at("G3"), at("H1")]).toEqual([3, 3, 302, 903]);
  });

  it("a spill that shrinks or is withdrawn leaves nothing behind in what reads it", async () => {
    await write({ A1: 1 });
    expect([at("D1"), at("F1"), at("G2"), at("H1")]).toEqual([1, 1, null, 100]);
    await write({ A1: "" });
    expect([at("D1"), at("F1"), at("H1")]).toEqual([0, 0, 0]);
    await write({ A1: 2 });
    expect([at("D1"), at("F1"), at("G2"), at("H1")]).toEqual([2, 2, 201, 401]);
  });

  it("two spills that feed each other come to an end", async () => {
    await write({ J1: "=GYLE.TEST.COUNTUP(COUNT(K1:K5)+1)", K1: "=GYLE.TEST.COUNTUP(COUNT(J1:J5))" });
    expect(at("J1")).not.toBeNull();
  });

  it("one that becomes an error leaves nothing behind, also in the way of another", async () => {
    await write({
      L1: "=GYLE.TEST.COUNTUP(N1)",
      N1: 5,
      L3: "=SEQUENCE(N3)",
      N3: 3,
      M1: '=IFERROR(SUM(L4:L6),"error")',
      M2: "=COUNT(L4:L6)",
    });
    expect([at("L1"), at("L3"), at("L5"), at("M1"), at("M2")]).toEqual(["#SPILL!", 1, 3, 5, 2]);
    await write({ N3: "three" });
    expect([at("L1"), at("L3"), at("L4"), at("L5"), at("M1"), at("M2")]).toEqual(["#SPILL!", "#VALUE!", null, null, 0, 0]);
    await write({ N3: 3 });
    // The formula that was there is gone, and with it how far it reached.
    await write({ L3: "=1/0" });
    expect([at("L1"), at("L3"), at("L4"), at("L5"), at("M1"), at("M2")]).toEqual(["#SPILL!", "#DIV/0!", null, null, 0, 0]);
  });

  it("one that had no room spills as soon as another one leaves it some", async () => {
    await write({ N1: 3, Q1: "=SEQUENCE(N1)", T1: "=SUM(P2:R2)" });
    await write({ P2: "=SEQUENCE(1,3)" });
    expect(["P2", "Q2", "R2", "T1"].map(at)).toEqual(["#SPILL!", 2, null, "#SPILL!"]);
    await write({ N1: 1 });
    expect(["P2", "Q2", "R2", "T1"].map(at)).toEqual([1, 2, 3, 6]);
  });
});
