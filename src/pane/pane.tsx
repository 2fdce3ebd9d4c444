import { useState } from "preact/hooks";
import { FunctionsGuide } from "./functions/guide";
import { NewBatch } from "./new-batch/new-batch";

const screens = { "New batch": NewBatch, Functions: FunctionsGuide } as const;
type ScreenName = keyof typeof screens;

/** The pane: its screens, one at a time. */
export function Pane() {
  const [name, setName] = useState<ScreenName>("New batch");
  const Screen = screens[name];
  return (
    <>
      <nav aria-label="Screens">
        {(Object.keys(screens) as ScreenName[]).map((other) => (
          <button key={other} type="button" class="quiet" aria-current={other === name ? "page" : undefined} onClick={() => setName(other)}>
            {other}
          </button>
        ))}
      </nav>
      <Screen />
    </>
  );
}
