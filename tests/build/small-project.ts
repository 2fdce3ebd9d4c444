import { spawn, type ChildProcess } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, utimesSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { root } from "../../src/build/run.mjs";

/** A project folder with our scripts and dependencies, but files of its own: `npm start` can be tried in it in a second. */
export interface SmallProject {
  readonly folder: string;
  write: (place: string, content: string) => void;
  /** Moves a file's time of change, in seconds from now. */
  age: (place: string, seconds: number) => void;
  start: (...args: string[]) => StartedScript;
  /** As npm does it on Unix: through a shell that is there until the script ends. */
  startThroughShell: () => StartedScript;
  test: (...args: string[]) => StartedScript;
  /** `npm run excel` or `excel:stop`, with this script in the place of npm. */
  excel: (npm: string, ...args: string[]) => StartedScript;
  excelStop: (npm: string) => StartedScript;
  remove: () => void;
}

export interface StartedScript {
  readonly process: ChildProcess;
  readonly output: () => string;
  /** Resolves with the first match in what was printed so far or is still to come; fails when the script ends first. */
  printed: (pattern: RegExp) => Promise<RegExpMatchArray>;
  readonly ended: Promise<number | null>;
}

export function smallProject(): SmallProject {
  const folder = mkdtempSync(path.join(os.tmpdir(), "gylebook-start-"));
  const write = (place: string, content: string): void => {
    mkdirSync(path.dirname(path.join(folder, place)), { recursive: true });
    writeFileSync(path.join(folder, place), content);
  };
  const age = (place: string, seconds: number): void => {
    const time = Date.now() / 1000 + seconds;
    utimesSync(path.join(folder, place), time, time);
  };
  cpSync(path.join(root, "src/build"), path.join(folder, "src/build"), { recursive: true, filter: (file) => !/\.tsx?$/.test(file) });
  symlinkSync(path.join(root, "node_modules"), path.join(folder, "node_modules"), "junction");
  write("package.json", '{ "type": "module" }');
  write("package-lock.json", "{}");
  // Older than any install, so that nothing is installed here.
  utimesSync(path.join(folder, "package-lock.json"), 0, 0);
  write("dist/bench/index.html", "<p>the bench</p>");
  write("dist/.built", "");
  age("dist/.built", 60);

  const begin = (program: string, ...args: string[]): StartedScript => beginWith({}, program, ...args);
  const beginWith = (env: Record<string, string>, program: string, ...args: string[]): StartedScript => {
    const child = spawn(program, args, {
      cwd: folder,
      env: { ...process.env, HOME: folder, USERPROFILE: folder, npm_lifecycle_event: "start", ...env },
    });
    let output = "";
    child.stdout.on("data", (chunk) => (output += String(chunk)));
    child.stderr.on("data", (chunk) => (output += String(chunk)));
    const ended = new Promise<number | null>((resolve) => child.on("close", (code) => resolve(code)));
    const printed = (pattern: RegExp): Promise<RegExpMatchArray> =>
      new Promise((resolve, reject) => {
        const look = (): void => {
          const match = output.match(pattern);
          if (match) resolve(match);
        };
        look();
        child.stdout.on("data", look);
        child.stderr.on("data", look);
        void ended.then((code) => reject(new Error(`ended with ${String(code)} before printing ${String(pattern)}: ${output}`)));
      });
    return { process: child, output: () => output, printed, ended };
  };
  return {
    folder,
    write,
    age,
    start: (...args) => begin(process.execPath, "src/build/start.mjs", "--no-open", ...args),
    startThroughShell: () => begin("sh", "-c", `"${process.execPath}" src/build/start.mjs --no-open; true`),
    excel: (npm, ...args) => beginWith({ npm_execpath: path.join(folder, npm) }, process.execPath, "src/build/excel.mjs", ...args),
    excelStop: (npm) => beginWith({ npm_execpath: path.join(folder, npm) }, process.execPath, "src/build/excel-stop.mjs"),
    // Without fetching a package for tests that are not there.
    test: (...args) => beginWith({ GYLEBOOK_OPEN_XML: "none" }, process.execPath, "src/build/test.mjs", ...args),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
