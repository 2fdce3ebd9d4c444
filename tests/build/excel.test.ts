import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import https from "node:https";
import net from "node:net";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { clicks, sideload, unregister } from "../../src/build/excel-tools.mjs";
import { findOnPath } from "../../src/build/find-programs.mjs";
import { smallProject, type SmallProject, type StartedScript } from "./small-project";

let project: SmallProject;
let script: StartedScript | undefined;
beforeEach(() => {
  project = smallProject();
});
afterEach(async () => {
  script?.process.kill("SIGKILL");
  await script?.ended;
  script = undefined;
  project.remove();
});

/** Stands for npm: notes what it was asked to run, and leaves the certificate that Microsoft's tool would leave. */
function npmThat(makes: "a certificate" | "nothing"): string {
  const certify = `const folder = path.join(process.env.HOME, ".office-addin-dev-certs"); fs.mkdirSync(folder, { recursive: true });
    spawnSync("openssl", ["req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes", "-days", "2", "-subj", "/CN=localhost", "-keyout", path.join(folder, "localhost.key"), "-out", path.join(folder, "localhost.crt")]);`;
  project.write(
    "npm.js",
    `import fs from "node:fs"; import path from "node:path"; import { spawnSync } from "node:child_process";
    fs.appendFileSync("npm-log", process.argv.slice(2).join(" ") + "\\n");
    if (process.argv.join(" ").includes("dev-certs")) { ${makes === "nothing" ? "process.exit(1);" : certify} }`,
  );
  return "npm.js";
}

const get = (place: string) =>
  new Promise<{ status: number | undefined; origin: string | undefined; body: string }>((resolve, reject) => {
    // The certificate is the test's own; nothing but this computer is asked.
    https
      .get(`https://127.0.0.1:3000/${place}`, { rejectUnauthorized: false }, (answer) => {
        let body = "";
        answer
          .on("data", (chunk) => (body += String(chunk)))
          .on("end", () => resolve({ status: answer.statusCode, origin: answer.headers["access-control-allow-origin"], body }));
      })
      .on("error", reject);
  });

const isFree = (port: number) =>
  new Promise<boolean>((resolve) => {
    const server = net
      .createServer()
      .once("error", () => resolve(false))
      .listen(port, "127.0.0.1", () => server.close(() => resolve(true)));
  });

const canServe = findOnPath("openssl") !== undefined && (await isFree(3000));

describe("npm run excel", () => {
  it.skipIf(!canServe)(
    "serves dist over https where manifest.xml points, says how to get it into Excel, and goes when told to stop",
    async () => {
      const npm = npmThat("a certificate");
      project.write("dist/functions.json", "{}");
      project.write("dist/taskpane.html", "<p>the pane</p>");
      project.age("dist/.built", 60);
      script = project.excel(npm);
      await script.printed(/Serving dist\/ at https:\/\/localhost:3000\//);
      expect(await get("taskpane.html")).toEqual({ status: 200, origin: undefined, body: "<p>the pane</p>" });
      // Excel on the web asks from another address.
      expect(await get("functions.json")).toEqual({ status: 200, origin: "*", body: "{}" });
      if (process.platform === "linux") await script.printed(/Upload My Add-in/);

      const stopped = project.excelStop(npm);
      expect(await stopped.ended).toBe(0);
      expect(await script.ended).toBe(0);
      await expect(get("taskpane.html")).rejects.toThrow();
      expect(readFileSync(path.join(project.folder, "npm-log"), "utf8")).toMatch(/^exec --no -- office-addin-dev-certs install\n/);
    },
  );

  it("goes no further without a certificate", async () => {
    script = project.excel(npmThat("nothing"));
    expect(await script.ended).toBe(1);
    expect(script.output()).toContain("There is no certificate for https://localhost");
    expect(script.output()).not.toContain("Serving");
  });

  it("refuses a workbook that is not there, and a web address that is none", async () => {
    const npm = npmThat("nothing");
    for (const [args, reason] of [
      [["--workbook", "gone.xlsx"], "there is no file gone.xlsx"],
      [["--web", "http://x/"], "https address"],
    ] as const) {
      script = project.excel(npm, ...args);
      expect(await script.ended).toBe(1);
      expect(script.output()).toContain(reason);
    }
  });
});

describe("Microsoft's tool for loading the add-in", () => {
  it("opens Excel on Windows and Mac, with a workbook where one is named", () => {
    expect(sideload("win32", {})?.join(" ")).toBe(
      "exec --yes --package=office-addin-dev-settings@4.0.0 -- office-addin-dev-settings sideload manifest.xml desktop --app excel",
    );
    expect(sideload("darwin", { document: "batches.xlsx" })?.slice(-2)).toEqual(["--document", path.resolve("batches.xlsx")]);
    expect(sideload("linux", {})).toBeUndefined();
  });

  it("opens a workbook on the web from any computer", () => {
    expect(sideload("linux", { web: true, document: "https://example.sharepoint.com/x" })?.slice(-6)).toEqual([
      "manifest.xml",
      "web",
      "--app",
      "excel",
      "--document",
      "https://example.sharepoint.com/x",
    ]);
  });

  it("takes the add-in off again where it put it", () => {
    expect(unregister("win32")?.slice(-2)).toEqual(["unregister", "manifest.xml"]);
    expect(unregister("linux")).toBeUndefined();
  });

  it("is replaced by clicks for the web, Mac and Windows where it cannot be had", () => {
    for (const word of ["/here/manifest.xml", "Upload My Add-in", "Documents/wef", "Trusted Add-in Catalogs"])
      expect(clicks("/here/manifest.xml")).toContain(word);
  });
});

describe("a build for a developer's eyes", () => {
  it("is refused for a site", () => {
    const { status, stderr } = spawnSync(
      process.execPath,
      ["--import", "tsx", "src/build/build.ts", "--debug", "--base", "https://club.example/"],
      { encoding: "utf8" },
    );
    expect([status, stderr]).toEqual([1, "--debug is for your own computer, not for a site\n"]);
  });
});
