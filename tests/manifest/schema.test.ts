import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";
import { findOnPath } from "../../src/build/find-programs.mjs";
import { root } from "../../src/build/run.mjs";

/** The schemas of the open specification [MS-OWEMXML] lie beside the project where it is worked on; they are not shipped. */
const schema = path.join(root, "../shared/schemas/driver.xsd");
const xmllint = findOnPath("xmllint");
const missing = xmllint === undefined ? "xmllint was not found" : existsSync(schema) ? undefined : "the schemas are not here";

it.skipIf(missing !== undefined).each(["manifest.xml", "dist/manifest.xml"])("%s is valid by Microsoft's schema", (file) => {
  if (xmllint === undefined) throw new Error(missing);
  const { status, stderr } = spawnSync(xmllint, ["--noout", "--schema", schema, path.join(root, file)], { encoding: "utf8" });
  expect(stderr).toContain("validates");
  expect(status).toBe(0);
});
