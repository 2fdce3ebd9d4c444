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

/** Long enough to be read twice, slowly: what is said must not be chased (WCAG 2.2, 2.2.1). */
const readingMs = (text: string): number => 5000 + 60 * text.length;

/**
 * Says something in a strip below the bar. Several notices stand below each other; the answer closes this one. What is no warning and
 * asks nothing leaves by itself, but never while the pointer or the keyboard is on it; a warning stays until it is closed or put right.
 */
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
  if (kind === "plain" && !stays && actions.length === 0) leaveAfter(readingMs(text), strip, close);
  return close;
}

/** Closes after so long without pointer and keyboard on the strip; from their leaving on the time counts anew. */
function leaveAfter(ms: number, strip: HTMLElement, close: () => void): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const wait = (): void => {
    clearTimeout(timer);
    if (!strip.matches(":hover, :focus-within")) timer = setTimeout(close, ms);
  };
  const hold = (): void => clearTimeout(timer);
  strip.addEventListener("pointerenter", hold);
  strip.addEventListener("focusin", hold);
  // The browser tells of the leaving before it has happened.
  strip.addEventListener("pointerleave", () => requestAnimationFrame(wait));
  strip.addEventListener("focusout", () => requestAnimationFrame(wait));
  wait();
}

/** The short line at the right end of the bar. */
export function showStatus(text: string): void {
  const line = document.getElementById("status")!;
  if (line.textContent !== text) line.textContent = text;
  line.title = text;
}
