import type { Host } from "./host";
import type { StandsFor } from "./standing";

interface OfficeError {
  code: number;
  name: string;
  message: string;
}
export type FileResult<T> = { status: "succeeded"; value: T } | { status: "failed"; error: OfficeError };
type Callback<T> = (result: FileResult<T>) => void;

/** Office's own limit: 4 MB for a slice. */
const LARGEST_SLICE = 4_194_304;
/** At most two files may be open at a time. */
const OPEN_FILES = 2;

/** Stands in for getFileAsync: the workbook as the bytes of its .xlsx. */
export class DocumentFiles {
  private open = 0;

  constructor(private readonly host: Host) {}

  getFileAsync(fileType: string, first: { sliceSize?: number } | Callback<DocumentFile>, second?: Callback<DocumentFile>): void {
    const [options, callback] = typeof first === "function" ? [{}, first] : [first, second];
    const { sliceSize = LARGEST_SLICE } = options;
    void this.read(fileType, sliceSize).then((result) => callback?.(result));
  }

  private async read(fileType: string, sliceSize: number): Promise<FileResult<DocumentFile>> {
    if (fileType !== "compressed") return failed(1009, "The bench has the workbook as a compressed file only.");
    if (!(sliceSize > 0 && sliceSize <= LARGEST_SLICE)) return failed(5001, "The slice size must lie between 1 and 4194304 bytes.");
    if (this.open >= OPEN_FILES) return failed(5004, "Two files are open already: close one first.");
    this.open++;
    try {
      return { status: "succeeded", value: new DocumentFile(await this.host.files.save(), sliceSize, () => this.open--) };
    } catch (problem) {
      this.open--;
      return failed(5001, problem instanceof Error ? problem.message : String(problem));
    }
  }
}

/** Stands in for Office.File: bytes handed out slice by slice. */
export class DocumentFile implements StandsFor<Office.File, "size" | "sliceCount"> {
  private closed = false;

  constructor(
    private readonly bytes: Uint8Array,
    private readonly sliceSize: number,
    private readonly onClose: () => void,
  ) {}

  get size(): number {
    return this.bytes.length;
  }
  get sliceCount(): number {
    return Math.ceil(this.bytes.length / this.sliceSize);
  }

  /** Excel gives the bytes of a slice as an array of numbers. */
  getSliceAsync(index: number, callback: Callback<DocumentSlice>): void {
    const data = [...this.bytes.subarray(index * this.sliceSize, (index + 1) * this.sliceSize)];
    const there = Number.isInteger(index) && index >= 0 && index < this.sliceCount && !this.closed;
    queueMicrotask(() =>
      callback(there ? { status: "succeeded", value: new DocumentSlice(data, index) } : failed(5001, "There is no such slice.")),
    );
  }

  closeAsync(callback?: (result: { status: "succeeded" }) => void): void {
    if (!this.closed) this.onClose();
    this.closed = true;
    queueMicrotask(() => callback?.({ status: "succeeded" }));
  }
}

/** Stands in for Office.Slice. */
export class DocumentSlice implements StandsFor<Office.Slice, "data" | "index" | "size"> {
  constructor(
    readonly data: number[],
    readonly index: number,
  ) {}

  get size(): number {
    return this.data.length;
  }
}

const failed = (code: number, message: string): { status: "failed"; error: OfficeError } => ({
  status: "failed",
  error: { code, name: "Error", message },
});
