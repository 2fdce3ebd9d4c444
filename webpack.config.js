// @ts-check
// Three sets of bundles, one file each under src/build/webpack/. `npm run build` (src/build/build.ts) runs them and adds
// what is not a bundle: functions.json, icons, manifest. This file alone is enough for a tool that wants the configuration.
import { functionsConfig, paneConfig } from "./src/build/webpack/addin.js";
import { benchConfig } from "./src/build/webpack/bench.js";
import { headlessConfig } from "./src/build/webpack/headless.js";

/** In the order in which they are built. */
export const parts = { addin: [functionsConfig(), paneConfig()], bench: [benchConfig()], headless: [headlessConfig()] };

export default Object.values(parts).flat();
