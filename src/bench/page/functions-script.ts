import type { FunctionsMetadata } from "../../excel-stand-in/engine/custom-functions-metadata";

/** What Excel would read to learn the functions' names, arguments and descriptions. */
export async function fetchFunctionsMetadata(): Promise<FunctionsMetadata> {
  const answer = await fetch("../functions.json");
  if (!answer.ok) throw new Error(`functions.json could not be read (${answer.status}).`);
  return (await answer.json()) as FunctionsMetadata;
}

/** Runs functions.js, the very file that Excel loads; it registers its functions with the global `CustomFunctions`. */
export function runFunctionsScript(): Promise<void> {
  return new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = "../functions.js";
    script.onload = () => resolve();
    script.onerror = () => reject(new Error("functions.js could not be read."));
    document.head.append(script);
  });
}
