/**
 * Where to click in each kind of Excel, as of 2026: "Sideload Office Add-ins for testing" (web, Mac) and "Sideload Office
 * Add-ins from a network share" (Windows), learn.microsoft.com/office/dev/add-ins/testing. Not tried by us in real Excel.
 */
export const installWeb: readonly string[] = [
  "Open any workbook at <code>excel.cloud.microsoft</code>.",
  "On the <em>Home</em> tab choose <em>Add-ins</em>, then <em>More Settings</em> (in some versions <em>More Add-ins</em>, then <em>My Add-ins</em>).",
  "Choose <em>Upload My Add-in</em>, then <em>Browse</em>, pick the downloaded file, and choose <em>Upload</em>.",
  "The button <em>Gylebook</em> appears on the <em>Home</em> tab. The browser remembers it; on another browser or another computer do it once more.",
];

export const installMac: readonly string[] = [
  "Close Excel. In Finder choose <em>Go &gt; Go to Folder</em> and type <code>~/Library/Containers/com.microsoft.Excel/Data/Documents</code>.",
  "If there is no folder <code>wef</code> in it, make one. Put the downloaded file into <code>wef</code>.",
  "Start Excel and open a workbook. Choose <em>Home &gt; Add-ins</em>: Gylebook stands under the developer add-ins. Click it.",
  "The button <em>Gylebook</em> appears on the <em>Home</em> tab.",
];

export const installWindows: readonly string[] = [
  "Make a folder for the file, for example <code>C:\\Gylebook</code>, and put the downloaded file into it.",
  "Right-click the folder, <em>Properties &gt; Sharing &gt; Share</em>, add yourself, <em>Share</em>. Note the network path that is shown, such as <code>\\\\YOUR-PC\\Gylebook</code>.",
  "In Excel: <em>File &gt; Options &gt; Trust Center &gt; Trust Center Settings &gt; Trusted Add-in Catalogs</em>. Type the network path under <em>Catalog Url</em>, <em>Add catalog</em>, tick <em>Show in Menu</em>, <em>OK</em> twice.",
  "Close Excel and start it again. Choose <em>Home &gt; Add-ins &gt; More Add-ins</em> (or <em>Advanced</em>), then <em>SHARED FOLDER</em>, pick Gylebook, <em>Add</em>.",
  "The button <em>Gylebook</em> appears on the <em>Home</em> tab.",
];
