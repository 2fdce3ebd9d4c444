import { emptyName, type Session } from "../session";
import { fileNameFor } from "./file-name";

/** A moment after the last change, since looking takes the engine's time. */
const quietMs = 1500;

/** A workbook that nobody has named is called by its batch or its season, as its file and its print are then, too. */
export function nameByContent(session: Session): void {
  let given: string | undefined;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const look = async (): Promise<void> => {
    const { contentName } = await import(/* webpackChunkName: "content-name" */ "./content-name");
    const name = (await Excel.run({ delayForCellEdit: true }, contentName)) ?? emptyName;
    if (!isOurs() || name === session.name) return;
    given = name;
    session.nameByContent(name);
  };
  const isOurs = (): boolean => session.name === emptyName || session.name === given;
  session.onOpened(() => (given = undefined));
  // Who types into a cell just then is not disturbed: the change that ends the typing looks again.
  session.onChanged(() => {
    clearTimeout(waiting);
    if (isOurs()) waiting = setTimeout(() => void look().catch(() => undefined), quietMs);
  });
  // What a browser makes of a printed page is called by the page's title.
  let title = "";
  window.addEventListener("beforeprint", () => {
    title = document.title;
    document.title = fileNameFor(session.name);
  });
  window.addEventListener("afterprint", () => (document.title = title));
}
