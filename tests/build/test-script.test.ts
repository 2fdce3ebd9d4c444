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
  project.write("tests/reference/README.md", "# Check values\n\nWhat they are.\n\n| function | document |\n|---|---|\n| SOME.FUNCTION | 3 |\n\nMore.\n\n| another | table |\n");
  project.write("package.json", JSON.stringify({ type: "module", scripts: { lint: nothing, typecheck: nothing, generate: nothing, build: nothing, ...steps } }));
}

const lastLine = (output: string): string => output.trim().split("\n").at(-1) ?? "";
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

  it("stops at the first step that fails", async () => {
    withSteps({ typecheck: 'node -e "process.exit(2)"', generate: "node -e \"console.log('too far')\"" });
    const script = project.test();
    expect(await script.ended).not.toBe(0);
    expect(script.output()).toContain("Stopped at: typecheck");
    expect(script.output()).not.toContain("too far");
    expect(lastLine(script.output())).toBe("0 passed, 1 failed");
  });
});
