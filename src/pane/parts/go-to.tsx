import { hostWords } from "../../workbook/grid/words/host-words";
import type { Place } from "../../workbook/care/explain/explanation";

/** Shows cells in the grid: brings their sheet to the front and selects them. */
export async function goTo({ sheet, range }: Place): Promise<void> {
  await Excel.run({ delayForCellEdit: true }, async (context) => {
    const target = context.workbook.worksheets.getItem(sheet);
    target.activate();
    target.getRange(range).select();
    await context.sync();
  });
}

export interface GoToProps {
  readonly place: Place;
  /** What stands on the button; the cell's address when left out. */
  readonly label?: string;
  readonly onProblem: (message: string) => void;
}

/** A button that leads to a cell. */
export function GoTo({ place, label, onProblem }: GoToProps) {
  const words = label ?? place.range;
  // What is seen must be part of what is heard, or nobody can say it to a computer that listens.
  const name = words.includes(place.range) ? `Go to ${place.range}` : `${words}: ${place.range}`;
  return (
    <button
      type="button"
      class="go-to"
      aria-label={`${name} on “${place.sheet}”`}
      onClick={() =>
        void goTo(place).catch((failure: unknown) =>
          onProblem(`${place.range} on “${place.sheet}” could not be shown. ${hostWords(failure)}`),
        )
      }
    >
      {words}
    </button>
  );
}
