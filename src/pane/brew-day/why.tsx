import { dayLines } from "../../workbook/brewing/companion/brew-day/day-lines";
import { BatchScreen } from "../companion/batch-screen";
import "./brew-day.css";

/** The whole day to read and to teach from: each line with its why and its caution, in the words of the sheet. */
export const Why = () => (
  <BatchScreen title="Why">
    {({ sheet }) => (
      <>
        <p class="hint">Steps, whys and cautions are edited in the sheet, in section 6 from column K on.</p>
        <ol class="whys">
          {dayLines(sheet).map(({ row, what, amount, why, caution }) => (
            <li key={row}>
              <h2>
                {what} {amount}
              </h2>
              {why && <p>{why}</p>}
              {caution && <p class="caution">{caution}</p>}
            </li>
          ))}
        </ol>
      </>
    )}
  </BatchScreen>
);
