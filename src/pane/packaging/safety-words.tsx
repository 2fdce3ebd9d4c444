import type { PackagingSafety } from "../../workbook/brewing/companion/packaging/packaging-safety";

/** Before any figure: what speaks against it, and what to do instead. */
export function SafetyWords({
  safety: { level, dangers, instead, check },
  bottles,
}: {
  readonly safety: PackagingSafety;
  readonly bottles: boolean;
}) {
  return (
    <div aria-live="polite">
      {level !== "clear" && (
        <div class="doubts">
          <p class="bad">
            <b>{level === "refuse" ? (bottles ? "Do not bottle this." : "Do not fill the keg.") : "Wait."}</b>
          </p>
          {dangers.map((danger) => (
            <p key={danger}>{danger}</p>
          ))}
          {instead.length > 0 && (
            <>
              <p>Instead:</p>
              <ul>
                {instead.map((what) => (
                  <li key={what}>{what}</li>
                ))}
              </ul>
            </>
          )}
        </div>
      )}
      {/* Beside a refusal, that the glass would hold this much reads as leave to fill it. */}
      {check && !(level === "refuse" && check.startsWith("within:")) && (
        <p class="hint">Pressure check: {check.replace(/^(within|close|over): /, "$1. ")}</p>
      )}
    </div>
  );
}
