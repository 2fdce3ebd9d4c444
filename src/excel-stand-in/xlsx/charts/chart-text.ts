import { escapeXml } from "../xml";

/** A title of a chart or an axis. */
export function titleXml(text: string | undefined, turned = false, points?: number): string {
  if (!text) return "";
  return (
    `<c:title><c:tx><c:rich><a:bodyPr${turned ? ' rot="-5400000" vert="horz"' : ""}/><a:p><a:r>${points === undefined ? "" : `<a:rPr sz="${points * 100}" b="1"/>`}<a:t>${escapeXml(text)}</a:t></a:r></a:p></c:rich></c:tx>` +
    '<c:overlay val="0"/></c:title>'
  );
}

export const valueXml = (name: string, value: string | number | boolean): string =>
  `<c:${name} val="${typeof value === "boolean" ? Number(value) : escapeXml(String(value))}"/>`;

/** The size of everything in a chart that has none of its own. */
export const fontXml = (points: number | undefined): string =>
  points === undefined ? "" : `<c:txPr><a:bodyPr/><a:p><a:pPr><a:defRPr sz="${points * 100}"/></a:pPr><a:endParaRPr/></a:p></c:txPr>`;
