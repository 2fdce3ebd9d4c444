const shown = "gylebook-screen";
const asked = "gylebook-screen-asked";

/** Which screen was open, by its title, for as long as the pane's window lives. A host that keeps nothing opens as for the first time. */
export const rememberScreenTitle = (title: string): void => write(shown, title);
export const rememberedScreenTitle = (): string | undefined => read(shown);

/** For whoever opens another workbook beside the pane: it starts with the screen asked for, to which the keyboard goes or not, or with what serves the sheet in front. */
export function startPaneWith(screen: { readonly title: string; readonly keyboard: boolean } | undefined): void {
  write(shown, screen?.keyboard === false ? screen.title : undefined);
  write(asked, screen?.keyboard ? screen.title : undefined);
}

/** The screen to which the keyboard is to go, once. */
export function takeAskedScreenTitle(): string | undefined {
  const title = read(asked);
  write(asked, undefined);
  return title;
}

function read(key: string): string | undefined {
  try {
    return sessionStorage.getItem(key) ?? undefined;
  } catch {
    return undefined;
  }
}

function write(key: string, text: string | undefined): void {
  try {
    if (text === undefined) sessionStorage.removeItem(key);
    else sessionStorage.setItem(key, text);
  } catch {
    // As said above.
  }
}
