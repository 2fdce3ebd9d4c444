import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { expect, it } from "vitest";
import { enums } from "../../../src/excel-stand-in/excel/enums";

/** Microsoft's declarations (@types/office-js) are the source of the names and their values. */
const declarations = readFileSync(createRequire(import.meta.url).resolve("@types/office-js/index.d.ts"), "utf8");

it.each(Object.entries(enums))("Excel.%s has Excel's names and values", (name, members) => {
  const body = new RegExp(`enum ${name} \\{([\\s\\S]*?)\\n    \\}`, "u").exec(
    declarations.slice(declarations.indexOf("declare namespace Excel {")),
  )?.[1];
  expect(body).toBeDefined();
  for (const [member, value] of Object.entries(members)) {
    expect(body).toMatch(new RegExp(`\\b${member} = "${value}"`, "u"));
  }
});
