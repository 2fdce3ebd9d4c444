import type { Host } from "./host";

type Callback = (result: { status: "succeeded"; value?: unknown }) => void;

/** The part of the global `Office` that an Excel pane touches outside Excel.run. */
export function createOffice(host: Host) {
  const info = { host: "Excel", platform: "OfficeOnline" } as const;
  const actions = new Map<string, (event: unknown) => void>();
  return {
    HostType: { Excel: "Excel", Word: "Word", PowerPoint: "PowerPoint", Outlook: "Outlook" },
    PlatformType: { PC: "PC", Mac: "Mac", OfficeOnline: "OfficeOnline", iOS: "iOS", Android: "Android", Universal: "Universal" },
    AsyncResultStatus: { Succeeded: "succeeded", Failed: "failed" },
    EventType: { SettingsChanged: "settingsChanged" },
    onReady: async (callback?: (about: typeof info) => unknown): Promise<typeof info> => {
      await callback?.(info);
      return info;
    },
    context: {
      ...info,
      displayLanguage: "en-US",
      contentLanguage: "en-US",
      diagnostics: { ...info, version: "bench" },
      /** The bench has what the stand-in has, whatever the requirement set is called. */
      requirements: { isSetSupported: (_name: string, _version?: string): boolean => true },
      officeTheme: { bodyBackgroundColor: "#FFFFFF", bodyForegroundColor: "#1F1F1F", controlBackgroundColor: "#F5F5F5", controlForegroundColor: "#1F1F1F", isDarkTheme: false },
      document: { url: "", settings: documentSettings(host) },
    },
    actions: { associate: (id: string, action: (event: unknown) => void): void => { actions.set(id, action); } },
    /** What a ribbon button would run; for the bench's own buttons. */
    runAction: (id: string): void => actions.get(id)?.({ completed: () => undefined }),
    addin: { showAsTaskpane: async (): Promise<void> => undefined, hide: async (): Promise<void> => undefined },
  };
}

export type OfficeGlobal = ReturnType<typeof createOffice>;

/** Settings that travel in the workbook. As in Office they are in the file once saveAsync was called; here at once. */
function documentSettings(host: Host) {
  const settings = (): Record<string, unknown> => {
    const extras = host.extras.of(host.unitId);
    return (extras.settings ??= {});
  };
  return {
    get: (name: string): unknown => settings()[name] ?? null,
    set: (name: string, value: unknown): void => { settings()[name] = value; },
    remove: (name: string): void => { delete settings()[name]; },
    saveAsync: (first?: Callback | object, second?: Callback): void => {
      const callback = typeof first === "function" ? (first as Callback) : second;
      queueMicrotask(() => callback?.({ status: "succeeded" }));
    },
    refreshAsync: (callback?: Callback): void => queueMicrotask(() => callback?.({ status: "succeeded" })),
  };
}
