// `npm run validate`: checks the committed manifest, the built one, and that of a site to upload where there is one.
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { builtSite } from "./manifest/site";
import { root } from "./run.mjs";
import { validateManifest } from "./validate-manifest";

const site = "dist/site/manifest.xml";
const files = ["manifest.xml", "dist/manifest.xml", ...(existsSync(path.join(root, site)) ? [site] : [])];
if (!files.every((file) => existsSync(path.join(root, file)))) {
  console.error("There is no build to check against: run `npm run build` first.");
  process.exit(1);
}
for (const file of files) {
  const problems = validateManifest(readFileSync(path.join(root, file), "utf8"), builtSite(root, file === site ? "dist/site" : "dist"));
  for (const problem of problems) console.error(`${file}: ${problem}`);
  if (problems.length > 0) process.exitCode = 1;
  else console.log(`${file} is in order.`);
}
