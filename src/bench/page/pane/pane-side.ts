import { recall, remember } from "../look/memory";

const step = 20;
const narrowest = 260;
const widest = () => Math.round(window.innerWidth * 0.7);
const memory = "gylebook-bench-pane";

/** The side with the task pane: shown or hidden, and as wide as the user likes. The choice outlives a reload. */
export function setUpPaneSide(): { load(): void } {
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
  return {
    load: () => {
      frame.src = "taskpane.html";
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
