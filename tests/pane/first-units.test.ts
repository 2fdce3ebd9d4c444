import { afterEach, describe, expect, it, vi } from "vitest";
import { firstUnits, rememberUnits, unitsOfLanguage } from "../../src/pane/parts/first-units";

afterEach(() => vi.unstubAllGlobals());

describe("the units that a form starts with", () => {
  it.each([
    ["en-US", "us"],
    ["es-US", "us"],
    ["en-LR", "us"],
    ["my-MM", "us"],
    ["en-GB", "metric"],
    ["de-DE", "metric"],
    ["en-CA", "metric"],
    ["zh-Hans-CN", "metric"],
    // No country is named: most of the world's is as good a guess as any.
    ["en", "metric"],
    ["", "metric"],
    ["not a language", "metric"],
  ])("%s: %s", (language, units) => expect(unitsOfLanguage(language)).toBe(units));

  it("are those chosen last, whatever the language", () => {
    const kept = new Map<string, string>();
    vi.stubGlobal("localStorage", {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, text: string) => void kept.set(key, text),
    });
    vi.stubGlobal("navigator", { language: "en-US" });
    expect(firstUnits()).toBe("us");
    rememberUnits("metric");
    expect(firstUnits()).toBe("metric");
  });

  it("are the language's where nothing may be kept, or nonsense is", () => {
    vi.stubGlobal("navigator", { language: "en-US" });
    vi.stubGlobal("localStorage", {
      getItem: () => {
        throw new DOMException("denied", "SecurityError");
      },
      setItem: () => {
        throw new DOMException("denied", "SecurityError");
      },
    });
    rememberUnits("metric");
    expect(firstUnits()).toBe("us");
    vi.stubGlobal("localStorage", { getItem: () => "furlongs" });
    expect(firstUnits()).toBe("us");
  });
});
