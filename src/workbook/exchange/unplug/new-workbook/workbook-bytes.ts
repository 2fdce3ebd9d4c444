import { ToldInFull } from "../../../grid/words/told-in-full";

/** The largest slice that Office hands over at once. */
const sliceSize = 4_194_304;

/** This workbook's own file, as Excel would save it now. */
export async function workbookBytes(): Promise<Uint8Array> {
  const file = await asked<Office.File>((done) => Office.context.document.getFileAsync(Office.FileType.Compressed, { sliceSize }, done));
  try {
    const bytes = new Uint8Array(file.size);
    for (let index = 0, at = 0; index < file.sliceCount; index += 1) {
      const slice = await asked<Office.Slice>((done) => file.getSliceAsync(index, done));
      const data = Uint8Array.from(slice.data as ArrayLike<number>);
      bytes.set(data, at);
      at += data.length;
    }
    return bytes;
  } finally {
    file.closeAsync();
  }
}

function asked<T>(ask: (done: (result: Office.AsyncResult<T>) => void) => void): Promise<T> {
  return new Promise((resolve, reject) => {
    ask((result) => {
      // The words are Office's own; on the bench the status is the same text.
      if (String(result.status) === "succeeded") resolve(result.value);
      else reject(new ToldInFull(`Excel did not hand over the workbook’s file: ${result.error.message} Nothing was changed.`));
    });
  });
}
