import type { IWorksheetData } from "@univerjs/core";
import type { ChartRecord } from "../../excel/sheet-extras";
import { setPartText, type PackageParts } from "../package-parts";
import { copyPart, declarePart, freePath } from "../part-copies";
import { addRelationship, officeRelation, readRelationships, targetPath, writeRelationships, XML_START } from "../relationships";
import { escapeXml, serializeXml, type XmlElement } from "../xml";
import { placingToFile } from "./anchors";
import type { SheetDrawing } from "./read-drawing";
import { chartXml } from "./write-chart";

const DRAWING_TYPE = "application/vnd.openxmlformats-officedocument.drawing+xml";
const CHART_TYPE = "application/vnd.openxmlformats-officedocument.drawingml.chart+xml";
const DRAWING_NAMESPACES = {
  "xmlns:xdr": "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing",
  "xmlns:a": "http://schemas.openxmlformats.org/drawingml/2006/main",
};

export interface DrawingJob {
  charts: readonly ChartRecord[];
  sheet: Partial<IWorksheetData>;
  /** The opened file's parts and its drawing of this sheet. */
  carried: { parts: PackageParts; drawing: SheetDrawing } | undefined;
  /** Names of the sheets now, and whether a sheet still has the name it had in the opened file. */
  sheetName(sheetId: string): string | undefined;
  nameKept(sheetId: string): boolean;
}

/**
 * Adds a sheet's drawing to the finished parts and gives back its path; undefined if there is nothing to draw.
 * Pictures, shapes and charts that the grid did not change are copied from the opened file as they are.
 */
export function writeDrawing(parts: PackageParts, job: DrawingJob): string | undefined {
  const kept = keptItems(job);
  const fresh = job.charts.filter((chart) => !kept.some((item) => item.chart?.id === chart.id));
  if (kept.length === 0 && fresh.length === 0) return undefined;
  const path = freePath(parts, "xl/drawings/drawing", ".xml");
  parts.set(path, new Uint8Array()); // holds the name while the charts are added
  declarePart(parts, path, DRAWING_TYPE);
  if (job.carried) copyRelationships(parts, path, job.carried, kept);
  const anchors = [
    ...kept.map((item) => serializeXml(item.anchor)),
    ...fresh.map((chart, index) => freshAnchor(parts, path, chart, job, 1000 + index)),
  ];
  const attributes = Object.entries({ ...job.carried?.drawing.root.attributes, ...DRAWING_NAMESPACES });
  setPartText(
    parts,
    path,
    `${XML_START}<xdr:wsDr${attributes.map(([name, value]) => ` ${name}="${escapeXml(value)}"`).join("")}>${anchors.join("")}</xdr:wsDr>`,
  );
  return path;
}

function keptItems(job: DrawingJob): SheetDrawing["items"] {
  return (job.carried?.drawing.items ?? []).filter((item) => {
    if (!item.chart) return true;
    const now = job.charts.find((chart) => chart.id === item.chart?.id);
    return (
      now !== undefined &&
      JSON.stringify(sorted(now)) === JSON.stringify(sorted(item.chart)) &&
      sheetsOf(now).every((id) => job.nameKept(id))
    );
  });
}

/** The same record whatever order its keys were set in. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, item]) => item !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, item]) => [key, sorted(item)]),
  );
}

const sheetsOf = (chart: ChartRecord): string[] =>
  chart.series.flatMap((series) => [series.nameFrom, series.xValues, series.values].flatMap((block) => (block ? [block.sheetId] : [])));

/** The links of the kept items only: what a dropped chart led to stays behind. */
function copyRelationships(
  parts: PackageParts,
  path: string,
  carried: NonNullable<DrawingJob["carried"]>,
  kept: SheetDrawing["items"],
): void {
  const used = new Set(kept.flatMap((item) => attributeValues(item.anchor)));
  const links = readRelationships(carried.parts, carried.drawing.path).filter((one) => used.has(one.id));
  writeRelationships(
    parts,
    path,
    links.map((one) =>
      one.external ? one : { ...one, target: `/${copyPart(parts, carried.parts, targetPath(carried.drawing.path, one.target))}` },
    ),
  );
}

const attributeValues = (element: XmlElement): string[] => [
  ...Object.values(element.attributes),
  ...element.children.flatMap(attributeValues),
];

function freshAnchor(parts: PackageParts, drawing: string, chart: ChartRecord, job: DrawingJob, shapeId: number): string {
  const path = freePath(parts, "xl/charts/chart", ".xml");
  setPartText(parts, path, chartXml(chart, job.sheetName));
  declarePart(parts, path, CHART_TYPE);
  const id = addRelationship(parts, drawing, officeRelation("chart"), `/${path}`);
  return (
    `<xdr:twoCellAnchor>${placingToFile(chart, job.sheet)}<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr>` +
    `<xdr:cNvPr id="${shapeId}" name="${escapeXml(chart.name)}"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr>` +
    '<xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm><a:graphic>' +
    '<a:graphicData uri="http://schemas.openxmlformats.org/drawingml/2006/chart"><c:chart xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart"' +
    ` xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" r:id="${id}"/></a:graphicData></a:graphic>` +
    "</xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor>"
  );
}
