import { createServer, type Server } from "node:http";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
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

const addressOf = async (started: StartedScript): Promise<string> => (await started.printed(/http:\/\/127\.0\.0\.1:\d+\//))[0];

/** Takes a port for the length of a test; it does not matter when somebody has it already. */
async function take(port: number): Promise<Server> {
  const server = createServer();
  await new Promise<void>((resolve) => server.once("error", () => resolve()).listen(port, "127.0.0.1", resolve));
  return server;
}

describe("npm start", () => {
  it("serves dist on this computer, and its root address leads to the bench", async () => {
    script = project.start();
    const address = await addressOf(script);
    const root = await fetch(address, { redirect: "manual" });
    expect([root.status, root.headers.get("location")]).toEqual([302, "/bench/"]);
    expect(await (await fetch(address)).text()).toBe("<p>the bench</p>");
    expect((await fetch(`${address}no-such-file.js`)).status).toBe(404);
  });

  it("does not serve what lies outside dist", async () => {
    script = project.start();
    const address = await addressOf(script);
    expect((await fetch(`${address}%2e%2e/package.json`)).status).toBe(404);
    expect((await fetch(`${address}bench/..%2f..%2fpackage.json`)).status).toBe(404);
  });

  it("steps over a port that is taken", async () => {
    const taken = await take(4173);
    script = project.start();
    const port = Number(new URL(await addressOf(script)).port);
    expect(port).toBeGreaterThan(4173);
    expect(port).toBeLessThan(4273);
    taken.close();
  });

  it("takes the port of last time again, and where another program has it, says that kept work is seen only there", async () => {
    script = project.start();
    const address = await addressOf(script);
    const { port } = new URL(address);
    script.process.kill("SIGINT");
    await script.ended;

    script = project.start();
    expect(await addressOf(script)).toBe(address);
    script.process.kill("SIGINT");
    await script.ended;

    const taken = await take(Number(port));
    for (let turn = 0; turn < 2; turn += 1) {
      script = project.start();
      const [, elsewhere] = await script.printed(/The bench is at (\S+)\. Ctrl-C/);
      expect(elsewhere).not.toBe(address);
      expect(script.output()).toContain(`Another program has taken port ${port}`);
      expect(script.output()).toContain(`seen only at ${address}`);
      script.process.kill("SIGINT");
      await script.ended;
    }
    taken.close();
  });

  it("uses the server of an earlier start in the same folder, and not that of another folder", async () => {
    script = project.start();
    const address = await addressOf(script);
    const again = project.start();
    expect(await again.ended).toBe(0);
    expect(again.output()).toBe(`The bench is served at ${address} already, by an earlier npm start.\n`);
    expect(await (await fetch(address)).text()).toBe("<p>the bench</p>");

    const other = smallProject();
    other.write(".cache/bench-port", new URL(address).port);
    const elsewhere = other.start();
    await elsewhere.printed(/Ctrl-C stops/);
    expect(elsewhere.output()).toContain("Another program has taken port");
    elsewhere.process.kill("SIGINT");
    await elsewhere.ended;
    other.remove();
  });

  it.each(["SIGINT", "SIGTERM"] as const)("ends cleanly on %s, with an open connection too", async (signal) => {
    script = project.start();
    const address = await addressOf(script);
    await (await fetch(address, { headers: { connection: "keep-alive" } })).text();
    script.process.kill(signal);
    expect(await script.ended).toBe(0);
    await expect(fetch(address)).rejects.toThrow();
  });

  it.skipIf(process.platform === "win32")("ends when the shell that npm put around it was killed", async () => {
    script = project.startThroughShell();
    const address = await addressOf(script);
    script.process.kill("SIGKILL");
    await script.printed(/Stopped/);
    await expect
      .poll(() =>
        fetch(address).then(
          () => "served",
          () => "gone",
        ),
      )
      .toBe("gone");
  });

  it("says so, and does nothing else, on a Node that is too old", async () => {
    project.write("package.json", '{ "type": "module", "engines": { "node": ">=99.1" } }');
    script = project.start();
    expect(await script.ended).toBe(1);
    expect(script.output()).toBe(`This is Node ${process.versions.node}: Gylebook needs 99.1 or newer.\n`);
  });

  it("builds first when a source is newer than the build, and stops when the build fails", async () => {
    project.write("src/build/build.ts", 'console.log("building now"); process.exit(3);');
    project.age("src/build/build.ts", 120);
    script = project.start();
    await script.printed(/building now/);
    await script.printed(/The build failed/);
    expect(await script.ended).toBe(1);
  });

  it("takes the build along when it is stopped meanwhile", async () => {
    project.write("src/build/build.ts", 'console.log("building in", process.pid, "."); setInterval(() => {}, 1000);');
    project.age("src/build/build.ts", 120);
    script = project.start();
    const build = Number((await script.printed(/building in (\d+) \./))[1]);
    script.process.kill("SIGINT");
    expect(await script.ended).toBe(0);
    await expect.poll(() => isRunning(build)).toBe(false);
  });
});

function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch {
    return false;
  }
}
