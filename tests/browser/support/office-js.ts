import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import type { Page } from "playwright-core";
import { root } from "../../../src/build/run.mjs";

/** Where Microsoft insists that office.js comes from; the page that ships asks for it there. */
export const officeJsFolder = "https://appsforoffice.microsoft.com/lib/1/hosted/";

const installed = path.join(root, "node_modules/@microsoft/office-js/dist");

/** Answers for Microsoft's address with the files of the package @microsoft/office-js, unchanged. Nothing reaches the network. */
export async function serveOfficeJs(page: Page, ownAddress: string): Promise<void> {
  await page.route(
    (url) => !url.href.startsWith(ownAddress),
    (route) => {
      const address = route
        .request()
        .url()
        .replace(/[?#].*$/, "");
      const file = address.startsWith(officeJsFolder) ? path.join(installed, address.slice(officeJsFolder.length)) : "";
      if (file === "" || !existsSync(file)) return route.abort();
      return route.fulfill({
        contentType: file.endsWith(".js") ? "text/javascript" : "text/html",
        body: readFileSync(file),
        headers: { "access-control-allow-origin": "*" },
      });
    },
  );
}

/** A request of the page's Excel library: what it asks of the workbook, by the names in Excel's object model. */
export interface ExcelRequest {
  readonly names: string[];
  readonly actions: number;
}

/** The far side of the bridge, Excel: what it has been asked, and a way to speak to the page as Excel does. */
export interface ExcelSide {
  readonly requests: ExcelRequest[];
  readonly results: unknown[][];
  sendToPage(message: unknown): void;
}

declare global {
  interface Window {
    excelSide: ExcelSide;
  }
}

/**
 * Runs in the page before anything else: gives office.js the objects by which Excel on Windows makes itself known
 * (`window.external`, the bridge), as excel-win32-16.01.debug.js of the package reads them. Behind them is no workbook, only a
 * new one's list of sheets: a request is noted and answered as if it had been done, or refused as Excel refuses.
 */
export function actAsExcelOnWindows({ refuseWith }: { refuseWith?: string }): void {
  interface Action {
    Id: number;
    Name: string;
    ActionType: number;
    ObjectPathId: number;
    ArgumentInfo?: { Arguments: unknown[][][] };
  }
  interface Body {
    Actions: Action[];
    ObjectPaths: Record<string, { Name: string }>;
  }
  const requests: ExcelSide["requests"] = [];
  const results: ExcelSide["results"] = [];
  const query = 2;
  const bridge = {
    onMessageFromHost: (_: string): void => undefined,
    sendMessageToHost(text: string): void {
      const { id, message } = JSON.parse(text) as { id: number; message: { body: Body } };
      const { Actions, ObjectPaths } = message.body;
      const names = [...Object.values(ObjectPaths), ...Actions].map(({ Name }) => Name).filter((name) => name !== "");
      requests.push({ names, actions: Actions.length });
      for (const { Name, ArgumentInfo } of Actions)
        if (Name === "SetInvocationArrayResults") results.push(...(ArgumentInfo?.Arguments[0] ?? []));
      const ofWorkbook = !names.some((name) => name.startsWith("Microsoft."));
      const items = (path: number) => ({
        _Items: ObjectPaths[path]?.Name === "Worksheets" ? [{ Id: "{1}", Name: "Sheet1" }] : [],
        Values: [[1.04]],
      });
      const done = {
        Results: Actions.map(({ Id, ActionType, ObjectPathId }) => ({
          ActionId: Id,
          Value: ActionType === query ? items(ObjectPathId) : null,
        })),
      };
      const refused = ofWorkbook && refuseWith !== undefined;
      const body = JSON.stringify(refused ? { Error: { Code: "AccessDenied", Message: refuseWith, Location: "" }, Results: [] } : done);
      setTimeout(() => bridge.onMessageFromHost(JSON.stringify({ id, type: 1, message: { statusCode: 200, headers: {}, body } })), 0);
    },
  };
  const context = {
    GetAppType: () => 1,
    GetSolutionRef: () => "gylebook",
    GetAppVersionMajor: () => 16,
    GetAppVersionMinor: () => 1,
    GetAppUILocale: () => 1033,
    GetAppDataLocale: () => 1033,
    GetDocUrl: () => "C:\\Batches.xlsx",
    GetAppCapabilities: () => 1,
    GetActivationMode: () => 1,
    GetControlIntegrationLevel: () => 1,
    // Dark, as whole numbers. A host that refuses is taken for one that is too old to tell.
    ...(refuseWith === undefined && {
      GetOfficeThemeInfo: () =>
        JSON.stringify({
          bodyBackgroundColor: 0x262626,
          bodyForegroundColor: 0xffffff,
          controlBackgroundColor: 0x363636,
          controlForegroundColor: 0xffffff,
        }),
    }),
    GetSettings: () => ({ Read: () => undefined }),
    // The requirement sets that our manifest asks for, and what the pane's calls belong to.
    GetSupportedMatrix: () =>
      JSON.stringify({
        ExcelApi: "1.17",
        CustomFunctions: "1.12",
        CustomFunctionsRuntime: "1.3",
        SharedRuntime: "1.1",
        RichApiRuntime: "1.2",
      }),
  };
  Object.assign(window, {
    _richApiNativeBridge: bridge,
    excelSide: { requests, results, sendToPage: (message: unknown) => bridge.onMessageFromHost(JSON.stringify(message)) },
  });
  Object.defineProperty(window, "external", { value: { GetContext: () => context, GetHostInfo: () => "Excel$Win32$16.01$en-US" } });
}
