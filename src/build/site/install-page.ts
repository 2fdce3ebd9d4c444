import { escapeHtml, htmlPage } from "../help/html";
import { installMac, installWeb, installWindows } from "./install-steps";

/** The page that a club's site shows to its members: how to get the add-in into each kind of Excel. */
export function installPage(base: string): string {
  const section = (id: string, title: string, body: string): string => `<section id="${id}"><h2>${title}</h2>\n${body}\n</section>`;
  const steps = (list: readonly string[]): string => `<ol>${list.map((step) => `<li>${step}</li>`).join("\n")}</ol>`;
  return htmlPage(
    "Gylebook: put it into your Excel",
    [
      "<h1>Put Gylebook into your Excel</h1>",
      `<p class="lead">Excel needs one small file, which tells it that Gylebook is at ${escapeHtml(base)}. Nothing else is installed on your computer.</p>`,
      '<p><a href="manifest.xml" download="gylebook-manifest.xml">Download the file gylebook-manifest.xml</a>, then follow the steps for your Excel.</p>',
      `<p>No Excel? <a href="bench/">Open the bench</a>: a spreadsheet in your browser with everything that Gylebook does. What it can do is told in the <a href="guide/index.html">guide</a>; every function has a page in the <a href="help/index.html">list of functions</a>.</p>`,
      section("web", "Excel on the web", `<p>The simplest way, and free: any Microsoft account will do.</p>${steps(installWeb)}`),
      section("mac", "Excel for Mac", steps(installMac)),
      section("windows", "Excel for Windows", steps(installWindows)),
      section("first", "The first formula", firstFormula),
      section("trouble", "When it does not work", trouble),
      section("share", "Sharing a workbook", sharing),
      section("out", "Taking it out again", takingOut),
    ].join("\n"),
    "",
  );
}

const firstFormula = `<p>On the <em>Home</em> tab there is now a button <em>Gylebook</em>: it opens the pane. Type into any cell:</p>
<p><code>=GYLE.BEER.ABV(1.050, 1.010)</code></p>
<p>(where your Excel has a decimal comma: <code>=GYLE.BEER.ABV(1,050; 1,010)</code>), and the cell shows 5.31. As soon as you have typed <code>=GYLE.</code> Excel lists the functions. They run in Excel on the web, in Microsoft 365, and in Excel bought in a shop whose version (<em>File &gt; Account</em>) is 2311 or later, that of 2019 included; Excel 2021 and 2024 of a volume licence should run them too (of 2021 Microsoft’s own pages say both). Excel on phones and tablets cannot.</p>`;

const trouble = `<ul>
<li><code>#NAME?</code> in a cell that you typed before Gylebook was there: select the cell, press F2, then Enter. Excel does not look again by itself.</li>
<li><code>#BUSY!</code> for more than a few seconds: close the workbook and open it again.</li>
<li>The button is there but the functions are not: close Excel altogether and start it again. After the very first installation Excel sometimes needs that.</li>
<li>On a Mac the button may be gone after a restart: choose Gylebook again under <em>Home &gt; Add-ins</em>.</li>
<li>The pane stays empty: your computer must reach this site and Microsoft's appsforoffice.microsoft.com.</li>
</ul>`;

const sharing = `<p>Whoever opens your workbook without Gylebook sees the values as you saved them; editing a Gylebook cell there turns it into an error, so tell them to look, not to touch. Whoever has Gylebook carries on where you stopped. Working in one workbook at the same time is Excel's own doing (a file on OneDrive or SharePoint); each member needs Gylebook in their own Excel.</p>`;

const takingOut = `<ul>
<li>Web: <em>Home &gt; Add-ins &gt; More Add-ins &gt; My Add-ins</em>, the three dots on Gylebook, <em>Remove</em>. Clearing the browser's data does it too.</li>
<li>Mac: delete the file from the folder <code>wef</code> and restart Excel.</li>
<li>Windows: delete the file from the shared folder, take the folder off the list of catalogs, and restart Excel.</li>
</ul>
<p>Your workbooks stay as they are: the cells keep their last values.</p>`;
