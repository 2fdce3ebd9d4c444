import { escapeXml } from "../xml";

/** A title of a chart or an axis. */
export function titleXml(text: string | undefined, turned = false): string {
  if (!text) return "";
  return `<c:title><c:tx><c:rich><a:bodyPr${turned ? ' rot="-5400000" vert="horz"' : ""}/><a:p><a:r><a:t>${escapeXml(text)}</a:t></a:r></a:p></c:rich></c:tx>`
    + '<c:overlay val="0"/></c:title>';
}

export const valueXml = (name: string, value: string | number | boolean): string =>
  `<c:${name} val="${typeof value === "boolean" ? Number(value) : escapeXml(String(value))}"/>`;
