import "./look/bench.css";
import { Engine } from "../../excel-stand-in/engine/engine";
import { showCharts } from "./charts/chart-layer";
import { copySpills } from "./copy-spills";
import { createPageGrid } from "./grid";
import { drawOnceWhen } from "./draw-later";
import { showOwnErrorMessages } from "./error-hover";
import { fileCommands } from "./files/commands";
import { acceptDroppedFiles } from "./files/drop";
import { saveForEveryone } from "./everyone/save-for-everyone";
import { fileAccess } from "./files/file-access";
import { keepKeyboardInGrid } from "./keyboard/keep-focus";
import { keysBeforeGrid } from "./keyboard/keys-before-grid";
import { letListCellsBeTyped } from "./keyboard/list-cells";
import { fetchFunctionsMetadata, runFunctionsScript } from "./functions-script";
import { createHandle } from "./handle";
import { startLateParts } from "./late-parts";
import { startKeeping } from "./keep/keeping";
import { provideOffice } from "./pane/office-globals";
import { paperButtons } from "./paper/paper-buttons";
import { dressTables } from "./look/tables";
import { nameByContent } from "./naming/name-by-content";
import { setUpPaneSide } from "./pane/pane-side";
import { Session } from "./session";
import { listenForShortcuts } from "./shortcuts";
import { openFirstWorkbook, readKeptOrNothing } from "./start-workbook";
import { startFormula } from "./welcome/try-formula";
import { showWelcome } from "./welcome/welcome";
import { warnOfCircles, warnOfRunaways } from "./words/circular-notice";
import { showNotice, showStatus } from "./words/notices";

/** What the page is made of, in the order in which it must come to life. */
async function start(): Promise<void> {
  const metadata = fetchFunctionsMetadata();
  const kept = readKeptOrNothing();
  const startEmpty = new URLSearchParams(location.search).has("empty");
  let forgetPane: () => void = () => undefined;
  const paneSide = setUpPaneSide({ leaving: () => forgetPane() });

  const welcome = startEmpty ? undefined : showWelcome();

  const keys = keysBeforeGrid(window);
  const grid = createPageGrid(document.getElementById("grid")!);
  const engine = new Engine(grid, { metadata: await metadata });
  Object.assign(window, { CustomFunctions: engine.functions.CustomFunctions });
  await runFunctionsScript();

  const session = new Session(engine);
  const commands = fileCommands(session);
  let print: () => Promise<void> = () => Promise.resolve();
  const shortcuts = { save: () => void commands.save(), open: () => commands.choose(), print: () => void print() };
  let keepNow = () => Promise.resolve();
  let markReady: () => void = () => undefined;
  const ready = new Promise<void>((resolve) => {
    markReady = resolve;
  });
  window.gylebookBench = createHandle({ engine, session, shortcuts, ready, keepNow: () => keepNow() });

  const { isSample } = await openFirstWorkbook(session, await kept, startEmpty);
  if (!isSample) welcome?.hide();
  session.onOpened(() => welcome?.leave());
  markNextFrame("bench-grid", () => drawOnceWhen(engine.injector, session.unitId, paneThere));
  const office = provideOffice(engine);
  office.files = fileAccess(session);
  forgetPane = () => office.forgetHandlers();
  // The pane is fetched while the grid draws, and starts before all that can wait for it.
  const paneThere = paneSide.load(session.unitId);
  session.onOpened(() => paneSide.loadAnew(session.unitId));
  keepKeyboardInGrid(engine.injector, keys);
  letListCellsBeTyped(engine, keys);
  showOwnErrorMessages(engine);
  copySpills(engine);
  warnOfCircles(session);
  warnOfRunaways(session);
  const extrasOf = (unitId: string, sheetId: string) => office.extras.of(unitId).sheets[sheetId];
  dressTables(engine.injector, extrasOf);
  const charts = showCharts(session, extrasOf);
  const paper = paperButtons(session, extrasOf);
  print = paper.print;
  office.extras.onChange(session.noteEdit);
  nameByContent(session);
  const keeping = await startKeeping({
    session,
    storageWorks: (await kept) !== undefined,
    reopen: async () => void (await openFirstWorkbook(session, await readKeptOrNothing(), true)),
  });
  keepNow = () => keeping.flush();

  onClick("new-button", commands.startNew);
  onClick("open-button", commands.choose);
  onClick("save-button", commands.save);
  onClick("everyone-button", () => saveForEveryone(session));
  onClick("print-button", paper.print);
  onClick("pdf-button", paper.pdf);
  listenForShortcuts(window, shortcuts);
  acceptDroppedFiles((file) => void commands.open(file));
  charts.redraw();
  await startLateParts(engine.injector);
  welcome?.lead({
    startOwnBatch: async () => {
      if (!(await commands.mayReplace("Start your own batch?"))) return;
      paneSide.startNextWith("New batch");
      await session.openEmpty();
    },
    tryFormula: async () => {
      await paneSide.showScreen("Functions", session.unitId);
      startFormula(engine);
    },
  });
  await engine.calculated();
  performance.mark("bench-ready");
  markReady();
  paper.fetchSoon();
}

/** Notes when something first stands on the screen; `npm run bench` and the curious read it from the browser's timeline. */
function markNextFrame(name: string, then: () => void): void {
  const drawn = (): void => {
    performance.mark(name);
    then();
  };
  requestAnimationFrame(() => requestAnimationFrame(drawn));
}

/** A second click while the first is still at work does nothing. */
function onClick(id: string, act: () => unknown): void {
  const button = document.getElementById(id) as HTMLButtonElement;
  let atWork = false;
  button.disabled = false;
  button.addEventListener("click", () => {
    if (atWork) return;
    atWork = true;
    void Promise.resolve(act()).finally(() => (atWork = false));
  });
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
