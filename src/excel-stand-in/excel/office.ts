import { DocumentFiles } from "./document-file";
import type { Host } from "./host";
import { isSetSupported } from "./requirement-sets";

/** The part of the global `Office` that an Excel pane touches outside Excel.run. */
export function createOffice(host: Host) {
  const info = { host: "Excel", platform: "OfficeOnline" } as const;
  const actions = new Map<string, (event: unknown) => void>();
  const files = new DocumentFiles(host);
  return {
    HostType: { Excel: "Excel", Word: "Word", PowerPoint: "PowerPoint", Outlook: "Outlook" },
    AsyncResultStatus: { Succeeded: "succeeded", Failed: "failed" },
    FileType: { Text: "text", Compressed: "compressed", Pdf: "pdf" },
    onReady: async (callback?: (about: typeof info) => unknown): Promise<typeof info> => {
      await callback?.(info);
      return info;
    },
    context: {
      requirements: {
        isSetSupported: (name: string, version?: string | number) => isSetSupported(name, version, host.switches.excelApi),
      },
      /** What the page around it says of itself may take its place. */
      diagnostics: { platform: info.platform as string },
      /** The theme of the moment. Excel tells nobody when it changes; a pane must look again. */
      get officeTheme() {
        return { ...host.theme };
      },
      document: {
        getFileAsync: files.getFileAsync.bind(files),
      },
    },
    actions: {
      associate: (id: string, action: (event: unknown) => void): void => {
        actions.set(id, action);
      },
    },
    /** What a ribbon button would run; for the bench's own buttons. */
    runAction: (id: string): void => actions.get(id)?.({ completed: () => undefined }),
    addin: { showAsTaskpane: async (): Promise<void> => undefined, hide: async (): Promise<void> => undefined },
  };
}

export type OfficeGlobal = ReturnType<typeof createOffice>;
