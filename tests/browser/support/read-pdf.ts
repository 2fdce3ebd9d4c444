import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { findPdftotext } from "../../../src/build/find-programs.mjs";

/** Undefined where this computer has no Poppler: what is read from PDFs is skipped then, and the test says so. */
export const pdftotext = findPdftotext();

export interface PdfWord {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly words: readonly PdfWord[];
}

/** What Poppler reads on each page, in points from its upper left corner. */
export function readPdf(pdf: Uint8Array): PdfPage[] {
  const folder = mkdtempSync(path.join(tmpdir(), "gylebook-pdf-"));
  try {
    const file = path.join(folder, "printed.pdf");
    writeFileSync(file, pdf);
    const html = execFileSync(pdftotext ?? "", ["-bbox", file, "-"], { encoding: "utf8", maxBuffer: 64_000_000 });
    return html
      .split("<page ")
      .slice(1)
      .map((page) => {
        const [, width, height] = /width="([\d.]+)" height="([\d.]+)"/u.exec(page) ?? [];
        const words = [...page.matchAll(/xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">([^<]*)</gu)].map(
          ([, left, top, right, bottom, text]) => ({
            text: plain(text ?? ""),
            left: Number(left),
            right: Number(right),
            top: Number(top),
            bottom: Number(bottom),
          }),
        );
        return { width: Number(width), height: Number(height), words };
      });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const plain = (text: string): string =>
  text.replaceAll("&lt;", "<").replaceAll("&gt;", ">").replaceAll("&quot;", '"').replaceAll("&apos;", "'").replaceAll("&amp;", "&");
