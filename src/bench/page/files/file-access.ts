import type { FileAccess } from "../../../excel-stand-in/excel/host";
import { showNotice } from "../words/notices";
import type { Session } from "../session";
import { xlsxType } from "./commands";
import { fileNameFor } from "../naming/file-name";
import { download } from "./download";

/** What the pane may ask of the bench: the workbook's bytes, and another workbook, which the bench has no window for. */
export function fileAccess(session: Session): FileAccess {
  return {
    save: () => session.toFile(),
    openAnother: async (bytes) => {
      if (bytes === undefined) throw new Error("The bench shows one workbook at a time. Start a new one with its own button.");
      download(bytes as Uint8Array<ArrayBuffer>, `${fileNameFor(`${session.name} copy`)}.xlsx`, xlsxType);
      showNotice({
        text: "Excel would open the new workbook in a window of its own. The bench has one window, so it was saved as a file: open it from there.",
      });
    },
  };
}
