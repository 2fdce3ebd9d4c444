import fc from "fast-check";

/** What a person types into a cell, and what must then stand in it, worked out without any spreadsheet. */
export type Entry = { typed: string } & ({ formula: true } | { formula: false; value: number | string | boolean });

/** Cells that the formulas read, on two sheets; the second sheet's name needs quotes. */
export const dataSheets = ["Sheet 1", "Other sheet"] as const;
export const dataCells: Readonly<Record<string, number | string>> = {
  A1: 1.05,
  A2: 1.01,
  A3: 20,
  A4: "SG",
  B1: 2.5,
  B2: 19,
  B3: 0.5,
  B4: 'say "yes"',
};

const digits = fc.nat({ max: 9 });
const zeros = fc.constantFrom("", "0", "00");
/** Numbers as people write them: 1.050, 10.00, .5, 007, 1.0E-2. */
const number = fc.oneof(
  {
    weight: 6,
    arbitrary: fc
      .tuple(fc.constantFrom("0", "1", "10", "20", "100"), digits, digits, zeros)
      .map(([whole, a, b, end]) => `${whole}.${a}${b}${end}`),
  },
  { weight: 2, arbitrary: fc.tuple(fc.integer({ min: 1, max: 900 }), zeros).map(([whole, end]) => `${whole}${end}`) },
  { weight: 1, arbitrary: digits.map((digit) => `.${digit}0`) },
  { weight: 1, arbitrary: fc.tuple(digits, fc.integer({ min: -3, max: 3 })).map(([digit, power]) => `1.${digit}0E${power}`) },
);
const percent = fc.tuple(number, fc.constantFrom("%", " %")).map((parts) => parts.join(""));

const textParts = [
  "SG",
  "us",
  "yes",
  "no",
  "1.10",
  "50%",
  "TRUE",
  "a1",
  "SUM(",
  ")",
  ",",
  ";",
  "{",
  "}",
  "!",
  "'",
  '""',
  " ",
  "=",
  "é",
  "°P",
];
const text = fc.array(fc.constantFrom(...textParts), { maxLength: 4 }).map((parts) => `"${parts.join("")}"`);
const boolean = fc.constantFrom("TRUE", "FALSE", "true", "false", "True");
const sheet = fc.constantFrom("", "", "'Other sheet'!", "'Sheet 1'!");
const cell = fc.constantFrom("A1", "A2", "A3", "B1", "B2", "B3", "$A$1", "a1", "b$2", "$B3");
const textCell = fc.constantFrom("A4", "B4", "a4", "$b$4");
const block = fc.constantFrom("A1:A3", "B1:B3", "$A$1:$B$3", "a1:b3");
const reference = (inner: fc.Arbitrary<string>) => fc.tuple(sheet, inner).map((parts) => parts.join(""));
const arrayConstant = fc.constantFrom("{1,2;3,4}", "{1.50,2.0}", "{10.00;20;0.50}", '{"a","1.10"}', '{TRUE,1.0;"x",-2}', "{1,2,3}");

const gap = fc.constantFrom("", "", "", " ");
/** A call in one of three manners of writing it: as it is called, in small letters, with spaces. */
const call = (name: string, ...given: fc.Arbitrary<string>[]) =>
  fc
    .tuple(fc.constantFrom("as it is", "small", "spaced"), fc.tuple(...given))
    .map(
      ([manner, values]) =>
        `${manner === "small" ? name.toLowerCase() : name}(${(values as string[]).join(manner === "spaced" ? ", " : ",")})`,
    );

const { numeric, textual } = fc.letrec<{ numeric: string; textual: string }>((tie) => ({
  numeric: fc.oneof(
    { maxDepth: 3, depthSize: "small" },
    { weight: 4, arbitrary: number },
    { weight: 1, arbitrary: percent },
    { weight: 3, arbitrary: reference(cell) },
    {
      weight: 3,
      arbitrary: fc
        .tuple(tie("numeric"), gap, fc.constantFrom("+", "-", "*", "/", ">", "<=", "<>"), gap, tie("numeric"))
        .map((parts) => parts.join("")),
    },
    { weight: 1, arbitrary: fc.tuple(gap, tie("numeric")).map(([space, inner]) => `(${space}${inner})`) },
    { weight: 1, arbitrary: tie("numeric").map((inner) => `-${inner}`) },
    { weight: 1, arbitrary: call("SUM", reference(block), tie("numeric")) },
    { weight: 1, arbitrary: call("SUM", arrayConstant) },
    { weight: 1, arbitrary: call("ROUND", tie("numeric"), fc.constantFrom("0", "1", "2")) },
    { weight: 1, arbitrary: call("LEN", tie("textual")) },
    { weight: 1, arbitrary: call("IF", boolean, tie("numeric"), tie("numeric")) },
    { weight: 1, arbitrary: call("DATE", fc.constant("2026"), fc.constantFrom("9", "09"), fc.constantFrom("10", "01")) },
    { weight: 1, arbitrary: call("INDEX", reference(block), fc.constantFrom("1", "2"), fc.constant("1")) },
    {
      weight: 1,
      arbitrary: call("GYLE.BEER.ABV", fc.constantFrom("1.050", "1.10", "A1", "'Other sheet'!A1"), fc.constantFrom("1.010", "1.00", "a2")),
    },
    {
      weight: 1,
      arbitrary: call(
        "GYLE.WORT.HYDROMETER",
        fc.constantFrom("1.050", "1.0400", "A1"),
        fc.constantFrom("74", "70.0"),
        fc.constantFrom("60", "60.00"),
        fc.constantFrom('"SG"', "A4"),
        fc.constant('"us"'),
      ),
    },
  ),
  textual: fc.oneof(
    { maxDepth: 3, depthSize: "small" },
    { weight: 4, arbitrary: text },
    { weight: 1, arbitrary: reference(textCell) },
    {
      weight: 2,
      arbitrary: fc.tuple(tie("textual"), gap, tie("textual")).map(([first, space, second]) => `${first}${space}&${space}${second}`),
    },
    { weight: 1, arbitrary: fc.tuple(tie("numeric"), tie("textual")).map(([first, second]) => `(${first})&${second}`) },
    {
      weight: 3,
      arbitrary: call(
        "IF",
        fc.tuple(number, fc.constantFrom(">", "<", "="), number).map((parts) => parts.join("")),
        tie("textual"),
        tie("textual"),
      ),
    },
    { weight: 1, arbitrary: call("LEFT", tie("textual"), fc.constantFrom("1", "2")) },
    { weight: 1, arbitrary: call("UPPER", tie("textual")) },
    { weight: 1, arbitrary: call("IFERROR", fc.constant("1.0/0"), tie("textual")) },
  ),
}));

export const formula: fc.Arbitrary<Entry> = fc
  .tuple(
    gap,
    fc.oneof(
      numeric,
      textual,
      boolean,
      arrayConstant.filter((written) => !written.includes(";")),
    ),
  )
  .map(([space, inner]) => ({ typed: `=${space}${inner}`, formula: true as const }))
  .filter(({ typed }) => typed.length <= 80);

/** The days from 1899-12-30, as spreadsheets count them from March 1900 on. */
const serial = (iso: string) => Math.round((Date.parse(`${iso}T00:00:00Z`) - Date.UTC(1899, 11, 30)) / 86_400_000);
const isoDate = fc
  .date({ min: new Date("2020-01-01"), max: new Date("2030-12-31"), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));
const word = fc
  .array(fc.constantFrom("pale", "malt", "yes", "no", "1.10", "Quillmarsh", "SG", "two-row", "é", '"', "(", "#3"), {
    minLength: 1,
    maxLength: 3,
  })
  .map((words) => words.join(" "))
  .filter((typed) => !/^[\d.( ]+$/u.test(typed));

export const plainValue: fc.Arbitrary<Entry> = fc.oneof(
  number.map((typed) => ({ typed, formula: false as const, value: Number(typed) })),
  number.map((typed) => ({ typed: `-${typed}`, formula: false as const, value: -Number(typed) })),
  fc
    .tuple(digits, digits, zeros)
    .map(([a, b, end]) => ({ typed: `${a}.${b}${end}%`, formula: false as const, value: (a * 10 + b) / 1000 })),
  fc
    .constantFrom("TRUE", "FALSE", "true", "False")
    .map((typed) => ({ typed, formula: false as const, value: typed.toUpperCase() === "TRUE" })),
  isoDate.map((typed) => ({ typed, formula: false as const, value: serial(typed) })),
  fc
    .tuple(fc.integer({ min: 1, max: 9 }), digits)
    .map(([thousands, end]) => ({ typed: `${thousands},000.${end}0`, formula: false as const, value: thousands * 1000 + end / 10 })),
  word.map((typed) => ({ typed, formula: false as const, value: typed })),
  fc.constantFrom("007", "1.050", "TRUE", "=A1", "2026-09-10").map((kept) => ({ typed: `'${kept}`, formula: false as const, value: kept })),
);
