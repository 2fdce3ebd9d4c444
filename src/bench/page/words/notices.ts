export interface NoticeAction {
  label: string;
  /** The notice closes afterwards, unless this answers false. */
  act: () => unknown;
}

export interface Notice {
  text: string;
  kind?: "plain" | "warning";
  actions?: NoticeAction[];
  /** Without it the notice can be closed by hand. */
  stays?: boolean;
}

/** Says something in a strip below the bar. Several notices stand below each other; the answer closes this one. */
export function showNotice({ text, kind = "plain", actions = [], stays = false }: Notice): () => void {
  const strip = document.createElement("div");
  strip.className = `bench-notice ${kind}`;
  // A warning is read out at once; the place itself is a polite live region for the rest.
  if (kind === "warning") strip.setAttribute("role", "alert");
  const words = document.createElement("p");
  words.textContent = text;
  strip.append(words);
  const close = () => strip.remove();
  const buttons = stays ? actions : [...actions, { label: "Close", act: () => true }];
  for (const { label, act } of buttons) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = label;
    button.addEventListener("click", () => {
      if (act() !== false) close();
    });
    strip.append(button);
  }
  document.getElementById("notices")!.append(strip);
  return close;
}

/** The short line at the right end of the bar. */
export function showStatus(text: string): void {
  const line = document.getElementById("status")!;
  if (line.textContent !== text) line.textContent = text;
  line.title = text;
}
