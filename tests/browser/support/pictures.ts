import { mkdirSync } from "node:fs";

/** Where the tests put what they saw, for a person to look at. */
export const pictures = new URL("../../../.cache/pictures/", import.meta.url).pathname;
mkdirSync(pictures, { recursive: true });
