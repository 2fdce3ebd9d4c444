/** What the pane says where there is no spreadsheet around it. */
const noHost =
  "This is Gylebook's task pane. It works inside Excel, or on the bench; here there is no workbook beside it to read from or write to.";
/** The ways on, in the folder that the page came from. */
const waysOn = { "bench/": "Open the bench, a spreadsheet in this browser", "install.html": "Put Gylebook into your Excel" };

/** Resolves to true when a workbook is there. Otherwise says so in the pane, in words, and resolves to false. */
export async function waitForHost(place: HTMLElement): Promise<boolean> {
  if (await hasWorkbook()) return true;
  const words = document.createElement("p");
  words.setAttribute("role", "status");
  words.textContent = noHost;
  const links = document.createElement("ul");
  for (const [address, text] of Object.entries(waysOn)) {
    const link = document.createElement("a");
    link.href = address;
    link.textContent = text;
    const item = document.createElement("li");
    item.append(link);
    links.append(item);
  }
  place.replaceChildren(words, links);
  return false;
}

/** Office.js may be missing altogether (no network), or there without a host (opened in a plain browser). */
async function hasWorkbook(): Promise<boolean> {
  if (typeof Office === "undefined") return false;
  const { host } = await Office.onReady();
  return String(host) === "Excel";
}
