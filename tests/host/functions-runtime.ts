import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import vm from "node:vm";
import { root } from "../../src/build/run.mjs";

/** What Excel gets back for one call, as Microsoft's runtime sends it over the wire. */
export type HostAnswer = { ok: true; value: unknown } | { ok: false; value: unknown; errorCode: number };

/** A call as Excel sends it: every argument of ours is a matrix, and one left out is null. */
export interface HostCall {
  id: string;
  parameters: unknown[];
  address?: string;
}

export interface FunctionsRuntime {
  /** What the page's own scripts see as `window`. */
  readonly window: vm.Context;
  /** The ids that the real `CustomFunctions.associate` has taken. */
  readonly associated: string[];
  /** Sends all calls in one message, as a recalculation does. */
  call(calls: readonly HostCall[]): Promise<HostAnswer[]>;
}

/** Excel's numbers for kinds of messages on the bridge (custom-functions-runtime.debug.js, HostBridge and CustomFunctionProxy). */
const richApiRequest = 1;
const hostEvent = 3;
const functionsCategory = 1;
const invocation = 1000;
/** Bit 4 of a call's flags: errors among the arguments are handed over, as allowErrorForDataTypeAny asks. */
const allowErrors = 4;

const bundled = path.join(root, "node_modules/@microsoft/office-js/dist/custom-functions-runtime.js");

/**
 * Microsoft's own runtime for custom functions, unchanged from the package, in a context of its own, with the functions.js
 * that ships. Only the far side of the bridge, Excel, is ours: it sends calls and takes results.
 */
export function startFunctionsRuntime(): FunctionsRuntime {
  const script = path.join(root, "dist/functions.js");
  if (!existsSync(script)) throw new Error("no build to check: run `npm run build` first");
  const waiting = new Map<number, (answer: HostAnswer) => void>();
  let lastId = 0;
  const bridge = {
    onMessageFromHost: (_: string): void => undefined,
    sendMessageToHost(text: string): void {
      const { id, message } = JSON.parse(text) as { id: number; message: { body: { Actions: Action[] } } };
      for (const action of message.body.Actions) takeResults(action);
      const body = JSON.stringify({ Results: message.body.Actions.map(({ Id }) => ({ ActionId: Id, Value: null })) });
      setTimeout(
        () => this.onMessageFromHost(JSON.stringify({ id, type: richApiRequest, message: { statusCode: 200, headers: {}, body } })),
        0,
      );
    },
  };

  function takeResults({ Name, ArgumentInfo }: Action): void {
    if (Name !== "SetInvocationArrayResults") return;
    for (const [id, ok, value, errorCode] of ArgumentInfo?.Arguments[0] ?? []) {
      waiting.get(id)?.(ok ? { ok, value } : { ok, value, errorCode });
      waiting.delete(id);
    }
  }

  const window = vm.createContext(browserLike(bridge));
  vm.runInContext("self = window = globalThis", window);
  vm.runInContext(readFileSync(bundled, "utf8"), window);
  vm.runInContext(readFileSync(script, "utf8"), window);
  return {
    window,
    associated: vm.runInContext("Object.keys(CustomFunctions._association.mappings)", window) as string[],
    call(calls) {
      const answers: Promise<HostAnswer>[] = [];
      const entries = calls.map(({ id, parameters, address = "Sheet1!A1" }) => {
        const number = ++lastId;
        answers.push(new Promise((resolve) => waiting.set(number, resolve)));
        return {
          messageCategory: functionsCategory,
          messageType: invocation,
          message: JSON.stringify([number, id, parameters, address, allowErrors]),
        };
      });
      bridge.onMessageFromHost(JSON.stringify({ type: hostEvent, message: { entries } }));
      return Promise.all(answers);
    },
  };
}

interface Action {
  Id: number;
  Name: string;
  ArgumentInfo?: { Arguments: [id: number, ok: boolean, value: unknown, errorCode: number][][] };
}

/** As much of a page as the runtime looks at before it has a host. Timers are Node's own. */
function browserLike(bridge: object): Record<string, unknown> {
  const element = () => ({ setAttribute: () => undefined });
  const script = { src: "https://appsforoffice.microsoft.com/lib/1/hosted/custom-functions-runtime.js", getAttribute: () => null };
  return {
    _richApiNativeBridge: bridge,
    setTimeout,
    clearTimeout,
    console,
    location: { href: "https://quillmarsh.example/gylebook/taskpane.html", search: "", hash: "", protocol: "https:" },
    navigator: { userAgent: "" },
    history: { pushState: () => undefined, replaceState: () => undefined },
    addEventListener: () => undefined,
    XMLHttpRequest: class {},
    document: {
      readyState: "complete",
      addEventListener: () => undefined,
      createElement: element,
      getElementsByTagName: (name: string) => (name === "script" ? [script] : [{ appendChild: () => undefined }]),
    },
  };
}
