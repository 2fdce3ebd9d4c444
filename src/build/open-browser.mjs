// @ts-check
// Opens the address in the user's browser, where there is somebody to see it.

/**
 * @param {readonly string[]} args the command line
 * @param {Record<string, string | undefined>} env
 * @param {NodeJS.Platform} platform
 */
export function wantsBrowser(args, env, platform) {
  if (args.includes("--no-open") || env["BROWSER"] === "none" || (env["CI"] ?? "") !== "") return false;
  return platform === "win32" || platform === "darwin" || (env["DISPLAY"] ?? env["WAYLAND_DISPLAY"] ?? "") !== "";
}

/** @param {string} address */
export async function openBrowser(address) {
  const { default: open } = await import("open");
  try {
    const browser = await open(address);
    browser.on("error", () => console.log("No browser could be started: open the address yourself."));
  } catch {
    console.log("No browser could be started: open the address yourself.");
  }
}
