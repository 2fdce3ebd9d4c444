import type { IWorkbookData } from "@univerjs/core";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { startAutosave } from "../../../src/bench/page/keep/autosave";
import { keep } from "../../../src/bench/page/keep/storage";

vi.mock("../../../src/bench/page/keep/storage", () => ({ keep: vi.fn(() => Promise.resolve(new Date(0))) }));

const page = { addEventListener: () => undefined, visibilityState: "visible" };
const autosave = () =>
  startAutosave({
    state: () => ({ name: "Book", snapshot: {} as IWorkbookData }),
    mayWrite: () => true,
    written: () => undefined,
    failed: () => undefined,
  });

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal("document", page);
  vi.stubGlobal("window", page);
  vi.mocked(keep).mockClear();
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test("work is written once there is half a second of quiet", async () => {
  const { touch } = autosave();
  touch();
  await vi.advanceTimersByTimeAsync(400);
  touch();
  await vi.advanceTimersByTimeAsync(400);
  expect(keep).toHaveBeenCalledTimes(0);
  await vi.advanceTimersByTimeAsync(100);
  expect(keep).toHaveBeenCalledTimes(1);
  await vi.advanceTimersByTimeAsync(5000);
  expect(keep).toHaveBeenCalledTimes(1);
});

test("somebody who never pauses is kept all the same, two seconds after the first change", async () => {
  const { touch } = autosave();
  for (let passed = 0; passed < 6000; passed += 200) {
    touch();
    await vi.advanceTimersByTimeAsync(200);
    if (passed === 1600) expect(keep).toHaveBeenCalledTimes(0);
    if (passed === 2000) expect(keep).toHaveBeenCalledTimes(1);
  }
  expect(vi.mocked(keep).mock.calls.length).toBeGreaterThanOrEqual(2);
});
