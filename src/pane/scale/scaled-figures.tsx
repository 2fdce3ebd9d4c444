import type { BatchContents } from "../../workbook/batch/contents";
import { unitWords } from "../../workbook/batch/unit-words";
import { scalingRemarks } from "../../workbook/batch/scale/scaling-remarks";

/** What becomes of the figures and of each ingredient, before anything is written. */
export function ScaledFigures({ original, scaled }: { readonly original: BatchContents; readonly scaled: BatchContents }) {
  const { figures, remarks } = scalingRemarks(original, scaled);
  const words = unitWords(scaled.units);
  const was = unitWords(original.units);
  return (
    <>
      <table class="figures">
        <caption>Kept the same (rounded to your scale)</caption>
        <thead>
          <tr>
            <th scope="col">Planned</th>
            <th scope="col">Before</th>
            <th scope="col">After</th>
          </tr>
        </thead>
        <tbody>
          {figures.map(({ label, before, after, moved }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              <td>{before}</td>
              <td>{moved ? <strong>{after} !</strong> : after}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <table class="figures">
        <caption>To weigh out</caption>
        <thead>
          <tr>
            <th scope="col">Ingredient</th>
            <th scope="col">Before</th>
            <th scope="col">After</th>
          </tr>
        </thead>
        <tbody>
          {scaled.malt.map(({ ingredient, mass }, index) => (
            <tr key={`malt ${index}`}>
              <th scope="row">{ingredient || "–"}</th>
              <td>{`${show(original.malt[index]?.mass)} ${was.mass}`}</td>
              <td>{`${show(mass)} ${words.mass}`}</td>
            </tr>
          ))}
          {scaled.hops.map(({ hop, mass, minutes }, index) => (
            <tr key={`hops ${index}`}>
              <th scope="row">{`${hop || "–"}, ${typeof minutes === "number" ? `${minutes} min` : minutes}`}</th>
              <td>{`${show(original.hops[index]?.mass)} ${was.smallMass}`}</td>
              <td>{`${show(mass)} ${words.smallMass}`}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {remarks.map((remark) => (
        <p key={remark} class="bad">
          {remark}
        </p>
      ))}
    </>
  );
}

const show = (mass: number | undefined): string => (mass === undefined ? "–" : String(Number(mass.toFixed(2))));
