import "./look/bench.css";
import { Engine } from "../../excel-stand-in/engine/engine";
import { showCharts } from "./charts/chart-layer";
import { copySpills } from "./copy-spills";
import { createPageGrid } from "./grid";
import { showOwnErrorMessages } from "./error-hover";
import { fileCommands } from "./files/commands";
import { acceptDroppedFiles } from "./files/drop";
import { fileAccess } from "./files/file-access";
import { keepKeyboardInGrid } from "./keyboard/keep-focus";
import { keysBeforeGrid } from "./keyboard/keys-before-grid";
import { letListCellsBeTyped } from "./keyboard/list-cells";
import { fetchFunctionsMetadata, runFunctionsScript } from "./functions-script";
import { createHandle } from "./handle";
import { startLateParts } from "./late-parts";
import { startKeeping } from "./keep/keeping";
import { provideOffice } from "./pane/office-globals";
import { dressTables } from "./look/tables";
import { setUpPaneSide } from "./pane/pane-side";
import { Session } from "./session";
import { listenForShortcuts } from "./shortcuts";
import { openFirstWorkbook, readKeptOrNothing } from "./start-workbook";
import { warnOfCircles, warnOfRunaways } from "./words/circular-notice";
import { showNotice, showStatus } from "./words/notices";

/** What the page is made of, in the order in which it must come to life. */
async function start(): Promise<void> {
  const metadata = fetchFunctionsMetadata();
  const kept = readKeptOrNothing();
  const startEmpty = new URLSearchParams(location.search).has("empty");
  const paneSide = setUpPaneSide();

  const keys = keysBeforeGrid(window);
  const grid = createPageGrid(document.getElementById("grid")!);
  const engine = new Engine(grid, { metadata: await metadata });
  Object.assign(window, { CustomFunctions: engine.functions.CustomFunctions });
  await runFunctionsScript();

  const session = new Session(engine);
  const commands = fileCommands(session);
  const shortcuts = { save: () => void commands.save(), open: () => commands.choose() };
  let keepNow = () => Promise.resolve();
  let markReady: () => void = () => undefined;
  const ready = new Promise<void>((resolve) => {
    markReady = resolve;
  });
  window.gylebookBench = createHandle({ engine, session, shortcuts, ready, keepNow: () => keepNow() });

  await openFirstWorkbook(session, await kept, startEmpty);
  markNextFrame("bench-grid");
  keepKeyboardInGrid(engine.injector, keys);
  letListCellsBeTyped(engine, keys);
  showOwnErrorMessages(engine);
  copySpills(engine);
  warnOfCircles(session);
  warnOfRunaways(session);
  const office = provideOffice(engine);
  office.files = fileAccess(session);
  dressTables(engine.injector, (unitId, sheetId) => office.extras.of(unitId).sheets[sheetId]);
  const charts = showCharts(session, (unitId, sheetId) => office.extras.of(unitId).sheets[sheetId]);
  office.extras.onChange(session.noteEdit);
  const keeping = await startKeeping({
    session,
    storageWorks: (await kept) !== undefined,
    reopen: async () => openFirstWorkbook(session, await readKeptOrNothing(), true),
  });
  keepNow = () => keeping.flush();

  onClick("new-button", commands.startNew);
  onClick("open-button", commands.choose);
  onClick("save-button", commands.save);
  listenForShortcuts(window, shortcuts);
  acceptDroppedFiles((file) => void commands.open(file));
  charts.redraw();
  paneSide.load();
  await startLateParts(engine.injector);
  await engine.calculated();
  performance.mark("bench-ready");
  markReady();
}

/** Notes when something first stands on the screen; `npm run bench` and the curious read it from the browser's timeline. */
function markNextFrame(name: string): void {
  requestAnimationFrame(() => requestAnimationFrame(() => performance.mark(name)));
}

function onClick(id: string, act: () => unknown): void {
  const button = document.getElementById(id) as HTMLButtonElement;
  button.disabled = false;
  button.addEventListener("click", () => void act());
}

start().catch((problem: unknown) => {
  console.error(problem);
  showStatus("");
  showNotice({
    kind: "warning",
    stays: true,
    text: `The bench could not start: ${problem instanceof Error ? problem.message : String(problem)} Reload the page to try again.`,
  });
});
