import fc from "fast-check";
import { describe, expect, it } from "vitest";
import "../../support/fixed-seed";
import { dayNumber, isoDay } from "../../../src/workbook/grid/words/day-number";
import { logForecast } from "../../../src/workbook/exchange/readings-file/log-forecast";
import { decodeText } from "../../../src/workbook/exchange/readings-file/decode-text";
import { CommasUnsure, parseTable, TableRefused } from "../../../src/workbook/exchange/readings-file/parse-table";
import { readLog, type LogRow } from "../../../src/workbook/exchange/readings-file/read-log";
import { readMoment, wallClockHere, type WallClock } from "../../../src/workbook/exchange/readings-file/read-moment";
import { recognise } from "../../../src/workbook/exchange/readings-file/recognise";
import { thinned } from "../../../src/workbook/exchange/readings-file/thin";

/** A wall two hours ahead of universal time. */
const wallClock: WallClock = (utc) => 25569 + (utc + 2 * 3_600_000) / 86_400_000;
const read = (text: string, change: Partial<ReturnType<typeof recognise>["choices"]> = {}) => {
  const table = parseTable(text);
  const { choices, orderUnsure } = recognise(table);
  return { ...readLog(table, { ...choices, ...change }, wallClock), choices, orderUnsure };
};

describe("moments", () => {
  it.each([
    ["2026-09-05 14:30", "2026-09-05T14:30"],
    ["2026-09-05T14:30:00", "2026-09-05T14:30"],
    ["2026/9/5 14:30", "2026-09-05T14:30"],
    ["05.09.2026 14:30", "2026-09-05T14:30"],
    ["5/9/2026, 2:30 pm", "2026-09-05T14:30"],
    ["5/9/26 12:05 AM", "2026-09-05T00:05"],
    ["2026-09-05T12:30:00Z", "2026-09-05T14:30"],
    ["2026-09-05T14:30:00+02:00", "2026-09-05T14:30"],
    ["2026-09-05T22:30:00.000Z", "2026-09-06T00:30"],
    ["1788611400", "2026-09-05T14:30"],
    ["1788611400000", "2026-09-05T14:30"],
    ["46270.6041666667", "2026-09-05T14:30"],
  ])("%s is %s on the wall", (text, iso) => {
    expect(readMoment(text, "day first", "wall", wallClock)).toBeCloseTo(dayNumber(iso), 6);
  });
  it("the order of day and month, and the zone, are the user's to tell", () => {
    expect(isoDay(readMoment("9/5/2026", "month first", "wall", wallClock) ?? 0)).toBe("2026-09-05");
    expect(readMoment("2026-09-05 12:30", "day first", "utc", wallClock)).toBeCloseTo(dayNumber("2026-09-05T14:30"), 6);
  });
  it.each(["", "soon", "31.02.2026", "2026-13-01", "25:00", "5/9/2026 25:00", "12", "1.048"])("%j is none", (text) => {
    expect(readMoment(text, "day first", "wall", wallClock)).toBeUndefined();
  });
  it("here, the wall clock is this computer's", () => {
    const date = new Date(2026, 6, 1, 18, 45);
    expect(wallClockHere(date.getTime())).toBeCloseTo(dayNumber("2026-07-01T18:45"), 6);
  });
});

describe("a table of readings", () => {
  it("with commas, points and SG is recognised by its heading", () => {
    const { rows, choices, leftOut } = read(
      "Timestamp,Temp (°C),Specific gravity\n2026-09-05 14:30,19.5,1.050\n2026-09-06 14:30,19.8,1.031\n",
    );
    expect(choices).toMatchObject({ when: 0, temperature: 1, gravity: 2, scale: "SG", degrees: "C" });
    expect(rows.map(({ gravity, temperatureC, line }) => [gravity, temperatureC, line])).toEqual([
      [1.05, 19.5, 2],
      [1.031, 19.8, 3],
    ]);
    expect(leftOut).toEqual([]);
  });
  it("with semicolons, decimal commas, °Plato and a device's own lines above is recognised by its values", () => {
    const { rows, choices } = read("Device;7\n\nDatum;Zeit;Extrakt;Temperatur\n05.09.2026;14:30;12,5;19,5\n16.09.2026;14:30;3,1;20,0\n");
    expect(choices).toMatchObject({ when: 0, time: 1, gravity: 2, temperature: 3, scale: "P", order: "day first" });
    // NBS Circular 440, table 114: 12.5 °Plato is SG 1.0505, 3.1 °Plato is 1.0122.
    expect(rows[0]?.gravity).toBeCloseTo(1.0505, 3);
    expect(rows[1]?.gravity).toBeCloseTo(1.0122, 3);
    expect(rows[0]?.when).toBeCloseTo(dayNumber("2026-09-05T14:30"), 6);
  });
  it("without a heading, with tabs, thousandths and °F is recognised too", () => {
    const { rows, choices } = read("9/25/2026 8:00 AM\t1050\t68\n9/26/2026 8:00 AM\t1031\t70\n");
    expect(choices).toMatchObject({ when: 0, gravity: 1, order: "month first" });
    expect(rows.map(({ gravity }) => gravity)).toEqual([1.05, 1.031]);
    expect(
      read("9/25/2026 8:00 AM\t1050\t68\n9/26/2026 8:00 AM\t1031\t70\n", { temperature: 2, degrees: "F" }).rows[0]?.temperatureC,
    ).toBeCloseTo(20, 6);
  });
  it("says when both orders of the date fit", () => {
    expect(read("Date,SG\n5/9/2026,1.050\n6/9/2026,1.040\n").orderUnsure).toBe(true);
    expect(read("Date,SG\n15/9/2026,1.050\n16/9/2026,1.040\n").orderUnsure).toBe(false);
  });
  it("names every row that it does not use: doubles, 0, 999, words, spikes", () => {
    const { rows, leftOut } = read(
      [
        "when,sg",
        "2026-09-05 10:00,1.050",
        "2026-09-05 10:00,1.050",
        "2026-09-05 12:00,0",
        "2026-09-05 14:00,999",
        "2026-09-05 16:00,1.049",
        "someday,1.048",
        "2026-09-05 20:00,1.048",
        "2026-09-05 22:00,1.075",
        "2026-09-06 00:00,1.047",
        "2026-09-06 02:00,1.046",
        "2026-09-06 04:00,",
      ].join("\n"),
    );
    expect(rows.map(({ gravity }) => gravity)).toEqual([1.05, 1.049, 1.048, 1.047, 1.046]);
    expect(leftOut.map(({ line, reason }) => `${line}: ${reason}`)).toEqual([
      "3: the same reading stands there already",
      "4: 0 SG cannot be: from 0.980 to 1.200 SG is possible",
      "5: 999 SG cannot be: from 0.980 to 1.200 SG is possible",
      "7: “someday” is no date",
      "9: 1.075 stands far off the readings before and after it",
      "12: no gravity",
    ]);
  });
  describe("with commas between its columns and decimal commas", () => {
    const unsure = (text: string): CommasUnsure => {
      try {
        parseTable(text);
      } catch (problem) {
        if (problem instanceof CommasUnsure) return problem;
        throw problem;
      }
      throw new Error("it was read without a question");
    };
    it.each([
      ["Date,SG\n2026-09-10,1,050\n2026-09-11,1,042\n2026-09-12,1,038\n", ["2026-09-10", "1,050"], ["2026-09-10", "1", "050"]],
      ["2026-09-10,1,050\n2026-09-11,1,042\n", ["2026-09-10", "1,050"], ["2026-09-10", "1", "050"]],
      [
        "Date,SG,Temp\n2026-09-10,1,050,20,5\n2026-09-11,0,998,19,5\n",
        ["2026-09-10", "1,050", "20,5"],
        ["2026-09-10", "1", "050", "20", "5"],
      ],
      ["Date,Temp,SG\n2026-09-10,20,1,050\n2026-09-11,19,1,042\n", ["2026-09-10", "20", "1,050"], ["2026-09-10", "20", "1", "050"]],
      ["Date,SG,Temp\n2026-09-10,1,050\n2026-09-11,1,042\n", ["2026-09-10", "1,050"], ["2026-09-10", "1", "050"]],
      ["Date,Plato\n2026-09-10,12,5\n2026-09-11,10,1\n", ["2026-09-10", "12,5"], ["2026-09-10", "12", "5"]],
    ])("asks: %j", (text, decimal, separating) => {
      const question = unsure(text);
      expect(question.decimal.rows[0]).toEqual(decimal);
      expect(question.separating.rows[0]).toEqual(separating);
    });
    it("reads it as the user says", () => {
      const { decimal } = unsure("Date,SG,Temp\n2026-09-10,1,050,20,5\n2026-09-11,0,998,19\n".replace(",19\n", ",19,0\n"));
      const { choices } = recognise(decimal);
      const { rows } = readLog(decimal, choices, wallClock);
      expect(rows.map(({ gravity, temperatureC, line }) => [gravity, temperatureC, line])).toEqual([
        [1.05, 20.5, 2],
        [0.998, 19, 3],
      ]);
    });
    it.each([["Date,Plato,Temp\n2026-09-10,12,5,20\n2026-09-11,10,20,5\n"], ["2026-09-10,1,050,20,5\n2026-09-11,1,042,19,5\n"]])(
      "refuses in words where a row can be put together in several ways: %j",
      (text) => {
        expect(() => parseTable(text)).toThrow(/commas between its columns and inside its numbers.*Save it with semicolons/);
      },
    );
    it.each([
      ["Date,SG\n2026-09-10,1.050,20\n2026-09-11,1.042,19\n"],
      ["Date,SG\n2026-09-10,1.050,\n2026-09-11,1.042,\n"],
      ["Date,SG,Note\n2026-09-10,1.050,cold, wet\n2026-09-11,1.042,still, cold\n"],
      ['Date,SG\n2026-09-10,"1,050"\n2026-09-11,"1,042"\n'],
      ["Date;SG\n2026-09-10;1,050\n2026-09-11;1,042\n"],
      ["Date,SG,Temp\n2026-09-10,1050,20\n2026-09-11,1042,19\n"],
      ["Date,Plato,Temp\n2026-09-10,12,20\n2026-09-11,10,19\n"],
    ])("does not ask where there is nothing to ask: %j", (text) => expect(parseTable(text).rows).toHaveLength(2));
  });
  it("is read in UTF-16, either end first, with its mark and without, in UTF-8, and in Western European letters", () => {
    const text = "Date,Temp °C,SG\n2026-09-10,20.5,1.050\n";
    const sixteen = (bigEndian: boolean, mark: boolean): Uint8Array => {
      const signs = [...(mark ? "\uFEFF" : ""), ...text];
      const view = new DataView(new ArrayBuffer(signs.length * 2));
      signs.forEach((sign, index) => view.setUint16(index * 2, sign.charCodeAt(0), !bigEndian));
      return new Uint8Array(view.buffer);
    };
    const utf8 = new TextEncoder().encode(text);
    const western = Uint8Array.from([...text].map((sign) => sign.charCodeAt(0)));
    const files = [sixteen(false, true), sixteen(true, true), sixteen(false, false), sixteen(true, false), utf8, western];
    for (const bytes of files) expect(decodeText(bytes)).toBe(text);
    expect(decodeText(new Uint8Array())).toBe("");
  });
  it("that is none is refused in words", () => {
    expect(() => parseTable("Dear club")).toThrow(TableRefused);
    expect(() => parseTable("when,sg\n")).toThrow("The table has a heading and no rows.");
  });
});

/** A log of a device: one reading every ten minutes for twelve days, with noise that only chance can make. */
const deviceLog = (noise: readonly number[]): LogRow[] =>
  Array.from({ length: 1728 }, (_, index) => ({
    when: 46270 + index / 144,
    gravity: 1.01 + 0.04 / (1 + Math.exp(1.5 * (index / 144 - 2.5))) + (noise[index % noise.length] ?? 0),
    temperatureC: 20,
    line: index + 2,
  }));

describe("thousands of rows", () => {
  it("are thinned to readings that keep the course, the ends and the day before the last", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -0.0005, max: 0.0005, noNaN: true }), { minLength: 7, maxLength: 97 }),
        fc.integer({ min: 3, max: 12 }),
        (noise, most) => {
          const rows = deviceLog(noise);
          const few = thinned(rows, most);
          expect(few).toHaveLength(most);
          expect(few.every((row) => rows.includes(row))).toBe(true);
          expect([few[0], few.at(-1)]).toEqual([rows[0], rows.at(-1)]);
          expect(few.some(({ when }) => when <= (rows.at(-1)?.when ?? 0) - 1 && when > (rows.at(-1)?.when ?? 0) - 1.02)).toBe(true);
          if (most < 8) return;
          const between = (when: number): number => {
            const after = few.findIndex((row) => row.when >= when);
            const [left, right] = [few[Math.max(0, after - 1)], few[after]];
            return !left || !right || left === right
              ? (right?.gravity ?? 0)
              : left.gravity + ((right.gravity - left.gravity) * (when - left.when)) / (right.when - left.when);
          };
          expect(Math.max(...rows.map(({ when, gravity }) => Math.abs(between(when) - gravity)))).toBeLessThan(0.004);
        },
      ),
      { numRuns: 25 },
    );
  });
  it("are all fitted: the curve they were made from comes out, better than from the few", () => {
    const rows = deviceLog([0.0004, -0.0003, 0.0001, -0.0004, 0.0002, 0]);
    const forecast = logForecast(rows, undefined, undefined);
    expect(forecast?.state).toBe("steady");
    expect(forecast?.finalGravity).toBeCloseTo(1.01, 3);
    expect(forecast?.finalGravityPlusOrMinus).toBe(0.001);
    // Made from a logistic with ends 1.050 and 1.010, 1.5 a day, half way on day 2.5: there on day 2.5 + ln 39 / 1.5.
    const onTheWay = logForecast(
      rows.filter(({ when }) => when < 46274),
      1.05,
      1.01,
    );
    const there = 46270 + 2.5 + Math.log(39) / 1.5;
    expect(onTheWay?.state).toBe("working");
    expect(Math.abs((onTheWay?.day ?? 0) - there)).toBeLessThan(onTheWay?.dayPlusOrMinus ?? 0);
    expect(onTheWay?.dayPlusOrMinus).toBeLessThan(2);
  });
});
