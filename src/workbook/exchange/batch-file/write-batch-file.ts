import type { BatchContents } from "../../batch/contents";
import { textsForFile } from "./file-texts";
import { fileVersion } from "./migrate";
import { shareable, type ShareChoices } from "./shareable";

/** One batch as a text that another member's Gylebook reads. Private notes stay behind, and prices if wanted. */
export function writeBatchFile(batch: BatchContents, choices: ShareChoices): string {
  return `${JSON.stringify({ gylebook: "batch", version: fileVersion, batch: textsForFile(shareable(batch, choices)) }, undefined, 1)}\n`;
}

/** "Reed Bed Bitter.gylebook.json": what every file system takes. */
export function batchFileName({ batchName, sheetName }: Pick<BatchContents, "batchName" | "sheetName">): string {
  const plain = (batchName || sheetName)
    .normalize("NFC")
    .replace(/[^\p{L}\p{N} ._-]/gu, " ")
    .replace(/\s+/g, " ")
    .replace(/^[. ]+|[. ]+$/g, "")
    .slice(0, 60);
  return `${plain || "batch"}.gylebook.json`;
}
