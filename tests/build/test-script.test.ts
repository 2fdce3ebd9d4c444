import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { smallProject, type SmallProject } from "./small-project";

let project: SmallProject;
beforeEach(() => {
  project = smallProject();
});
afterEach(() => {
  project.remove();
});

/** A project whose steps do nothing, but for those given. */
function withSteps(steps: Record<string, string>): void {
  const nothing = "node nothing.js";
  project.write("nothing.js", "");
  project.write(
    "tests/reference/README.md",
    "# Check values\n\nWhat they are.\n\n| function | document |\n|---|---|\n| SOME.FUNCTION | 3 |\n\nMore.\n\n| another | table |\n",
  );
  project.write(
    "package.json",
    JSON.stringify({ type: "module", scripts: { lint: nothing, typecheck: nothing, generate: nothing, build: nothing, ...steps } }),
  );
}

const lastLine = (output: string): string => output.trim().split("\n").at(-1) ?? "";
/** Whether a process is there; signal 0 only asks. */
function isThere(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}

const passing = 'import { expect, it } from "vitest"; it("holds", () => { expect(1).toBe(1); });';

describe("npm test", () => {
  it("counts the tests in its last line and ends with 0 when all passed", async () => {
    withSteps({});
    project.write("tests/one.test.ts", passing);
    const script = project.test();
    expect(await script.ended, script.output()).toBe(0);
    expect(lastLine(script.output())).toBe("1 passed, 0 failed");
  });

  it("shows how many check values stand behind each function, just before that line", async () => {
    withSteps({});
    project.write("tests/one.test.ts", passing);
    const script = project.test();
    await script.ended;
    expect(script.output()).toMatch(/\| function \| document \|\n\|---\|---\|\n\| SOME\.FUNCTION \| 3 \|\n\n1 passed, 0 failed\n$/);
  });

  it("ends with an error when a test failed", async () => {
    withSteps({});
    project.write("tests/one.test.ts", `${passing} it("does not", () => { expect(1).toBe(2); });`);
    const script = project.test();
    expect(await script.ended).not.toBe(0);
    expect(lastLine(script.output())).toBe("1 passed, 1 failed");
  });

  it("never says that nothing failed when a test file could not be read", async () => {
    withSteps({});
    project.write("tests/one.test.ts", passing);
    project.write("tests/two.test.ts", 'import "./not-there";');
    const script = project.test();
    expect(await script.ended).not.toBe(0);
    expect(lastLine(script.output())).toBe("1 passed, 1 failed");
  });

  it.each(["SIGINT", "SIGTERM"] as const)("takes the tests along when it is stopped by %s", async (signal) => {
    withSteps({});
    project.write(
      "tests/one.test.ts",
      'import { it } from "vitest"; it("waits", () => { process.stdout.write(`waiting in ${process.pid} .`); return new Promise(() => {}); }, 1e6);',
    );
    const script = project.test();
    const worker = Number((await script.printed(/waiting in (\d+) \./))[1]);
    script.process.kill(signal);
    expect(await script.ended).toBe(1);
    expect(lastLine(script.output())).toBe("0 passed, 1 failed");
    await expect.poll(() => isThere(worker), { timeout: 10_000 }).toBe(false);
  });

  it("lets what stands side by side come to an end, names all that failed, and goes no further", async () => {
    withSteps({ lint: 'node -e "console.log(4242);process.exit(1)"', typecheck: 'node -e "process.exit(2)"', generate: "node slow.js" });
    project.write("slow.js", "setTimeout(() => console.log('looked through'), 500);");
    project.write("tests/one.test.ts", passing);
    const script = project.test();
    expect(await script.ended).not.toBe(0);
    expect(script.output()).toMatch(/\nStopped at: (lint, typecheck|typecheck, lint)\n/);
    expect(script.output()).toMatch(/\n4242\n-- lint: failed after \d+\.\d s\n/);
    expect(script.output()).toMatch(/\nlooked through\n-- generate --check: passed after \d+\.\d s\n/);
    expect(script.output()).not.toContain("== tests");
    expect(lastLine(script.output())).toBe("0 passed, 2 failed");
  });

  it("counts what was skipped, and says where", async () => {
    withSteps({});
    project.write("tests/one.test.ts", `${passing} it.skipIf(true)("asks a program that is not here", () => { expect(1).toBe(2); });`);
    const script = project.test();
    expect(await script.ended, script.output()).toBe(0);
    expect(script.output()).toContain("\nskipped: 1 in tests/one.test.ts\n");
    expect(lastLine(script.output())).toBe("1 passed, 0 failed, 1 skipped");
  });
});

describe("npm run test:quick", () => {
  it("builds nothing, and takes a quarter of the made-up inputs for the tests that need no build", async () => {
    withSteps({ build: "node -e \"console.log('built')\"" });
    project.write(
      "vitest.config.js",
      'export default { test: { projects: ["unit", "reference", "sheets"].map((name) => ({ test: { name, include: [`tests/${name}.test.ts`] } })) } };',
    );
    for (const kind of ["unit", "reference", "sheets"])
      project.write(
        `tests/${kind}.test.ts`,
        `${passing} it("is of ${kind}", () => { expect(process.env["GYLEBOOK_DRAWN"]).toBe("0.25"); });`,
      );
    const script = project.test("--quick");
    expect(await script.ended, script.output()).toBe(0);
    expect(script.output()).not.toContain("built");
    expect(script.output()).not.toContain("check values");
    expect(lastLine(script.output())).toBe("4 passed, 0 failed");
  });
});
