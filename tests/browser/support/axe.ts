import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Frame } from "playwright-core";

const source = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

export interface Finding {
  readonly rule: string;
  readonly where: string;
  readonly why: string;
}

/** What axe finds in the pane against WCAG 2.2, A and AA. */
export async function findingsIn(pane: Frame): Promise<Finding[]> {
  if (!(await pane.evaluate(() => "axe" in window))) await pane.evaluate(source);
  return pane.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: {
        run(
          where: Document,
          how: object,
        ): Promise<{ violations: { id: string; nodes: { target: string[]; failureSummary?: string }[] }[] }>;
      };
    };
    const { violations } = await axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] });
    return violations.flatMap(({ id, nodes }) =>
      nodes.map(({ target, failureSummary }) => ({ rule: id, where: target.join(" "), why: failureSummary ?? "" })),
    );
  });
}
