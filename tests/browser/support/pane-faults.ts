import type { Frame } from "playwright-core";
import type { Switches } from "../../../src/excel-stand-in/excel/switches";
import type { Host } from "../../../src/excel-stand-in/excel/host";

/** The n-th round trip to the workbook from now (1 is the next) fails as Excel's do, before anything in it is applied. */
export const failAtSync = (pane: Frame, n: number, error: { readonly code: string; readonly message: string }): Promise<void> =>
  pane.evaluate(
    ([n, { code, message }]) => {
      // The stand-in's contexts know the host that they speak to; Excel's own have no such thing.
      const { host } = new Excel.RequestContext() as unknown as { readonly host: Host };
      host.faults.failAtSync(n, Object.assign(new Error(message), { code }));
    },
    [n, error] as const,
  );

/** Makes the Excel of this pane worse in these ways, and in no others. */
export const behave = (pane: Frame, switches: Partial<Switches>): Promise<void> =>
  pane.evaluate((given) => (new Excel.RequestContext() as unknown as { readonly host: Host }).host.behave(given), switches);
