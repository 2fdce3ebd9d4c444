import { startPaneWith } from "../../../pane/screen-memory";
import { recall, remember } from "../look/memory";

const step = 20;
const narrowest = 260;
const widest = () => Math.round(window.innerWidth * 0.7);
const memory = "gylebook-bench-pane";

export interface PaneSide {
  /** Loads the pane beside the workbook of this id. Resolves when it is there. */
  load(workbook: string): Promise<void>;
  /** For another workbook, which in Excel would have a window and a pane of its own: nothing of the one before is left in it. */
  loadAnew(workbook: string): void;
  /** When another workbook is opened next, the pane is shown with this screen, and the keyboard goes there. */
  startNextWith(title: string): void;
  /** Shows the pane with this screen; the keyboard stays where it is. Resolves when the pane is there. */
  showScreen(title: string, workbook: string): Promise<void>;
}

/** The side with the task pane: shown or hidden, and as wide as the user likes. The choice outlives a reload. */
export function setUpPaneSide({ leaving }: { readonly leaving: () => void }): PaneSide {
  const side = document.getElementById("pane-side")!;
  const divider = document.getElementById("pane-divider")!;
  const button = document.getElementById("pane-button")!;
  const frame = document.getElementById("pane") as HTMLIFrameElement;

  function setWidth(width: number): void {
    const chosen = Math.min(Math.max(width, narrowest), widest());
    side.style.width = `${chosen}px`;
    divider.setAttribute("aria-valuenow", String(chosen));
    divider.setAttribute("aria-valuemin", String(narrowest));
    divider.setAttribute("aria-valuemax", String(widest()));
  }

  function show(open: boolean): void {
    side.hidden = !open;
    divider.hidden = !open;
    button.setAttribute("aria-expanded", String(open));
  }

  const rememberSide = () => remember(memory, JSON.stringify({ open: !side.hidden, width: side.offsetWidth || undefined }));
  const remembered = recallSide();
  setWidth(remembered.width ?? 340);
  // On a narrow screen the pane would cover the grid at once: there it waits to be asked for.
  show(remembered.open ?? window.innerWidth > 720);

  button.addEventListener("click", () => {
    show(side.hidden === true);
    rememberSide();
  });
  divider.addEventListener("keydown", (event) => {
    if (event.key !== "ArrowLeft" && event.key !== "ArrowRight") return;
    event.preventDefault();
    event.stopPropagation();
    setWidth(side.offsetWidth + (event.key === "ArrowLeft" ? step : -step));
    rememberSide();
  });
  divider.addEventListener("pointerdown", (event) => {
    divider.setPointerCapture(event.pointerId);
    document.body.classList.add("dragging-divider");
  });
  divider.addEventListener("pointermove", (event) => {
    if (divider.hasPointerCapture(event.pointerId)) setWidth(window.innerWidth - event.clientX - divider.offsetWidth / 2);
  });
  divider.addEventListener("lostpointercapture", () => {
    document.body.classList.remove("dragging-divider");
    rememberSide();
  });
  function load(workbook: string): Promise<void> {
    // In place of the page before: a new address would put a step into the browser's history.
    frame.contentWindow!.location.replace("taskpane.html");
    return new Promise((resolve) => {
      const there = (): void => {
        frame.dataset["workbook"] = workbook;
        resolve();
      };
      frame.addEventListener("load", there, { once: true });
    });
  }
  function loadAnew(workbook: string): Promise<void> {
    delete frame.dataset["workbook"];
    leaving();
    return load(workbook);
  }
  function open(): void {
    show(true);
    rememberSide();
  }
  let next: string | undefined;
  return {
    load,
    startNextWith: (title) => {
      next = title;
    },
    loadAnew: (workbook) => {
      startPaneWith(next === undefined ? undefined : { title: next, keyboard: true });
      if (next !== undefined) {
        open();
        frame.focus();
      }
      next = undefined;
      void loadAnew(workbook);
    },
    showScreen: (title, workbook) => {
      open();
      startPaneWith({ title, keyboard: false });
      return loadAnew(workbook);
    },
  };
}

function recallSide(): { open?: boolean; width?: number } {
  try {
    return JSON.parse(recall(memory) ?? "{}") as { open?: boolean; width?: number };
  } catch {
    return {};
  }
}
