import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import { places, screens, type Screen } from "./screens";

/** The pane: its places in the job, and in each place its screens, one at a time. */
export function Pane() {
  const [screen, setScreen] = useState(screens[0]);
  useEffect(() => void followSheets(), []);
  if (!screen) return null;
  const neighbours = screens.filter(({ place }) => place === screen.place);
  const shownPlaces = places.filter((place) => screens.some((other) => other.place === place));
  return (
    <>
      <nav aria-label="Places in the job">
        {shownPlaces.map((place) => (
          <button key={place} type="button" class="quiet" aria-current={place === screen.place ? "true" : undefined} onClick={() => setScreen(screens.find((other) => other.place === place))}>
            {place}
          </button>
        ))}
      </nav>
      {neighbours.length > 1 && (
        <nav aria-label={`Screens of ${screen.place}`} class="screens">
          {neighbours.map((other) => (
            <button key={other.title} type="button" class="quiet" aria-current={other === screen ? "page" : undefined} onClick={() => setScreen(other)}>
              {other.title}
            </button>
          ))}
        </nav>
      )}
      <Shown key={screen.title} screen={screen} />
    </>
  );
}

/** The season sheet follows the tabs from the pane's first moment on, whatever screen is shown. What goes wrong its own screen tells. */
const followSheets = async (): Promise<void> => (await import(/* webpackChunkName: "pane-season" */ "./season/follow-season")).followSeason();

/** A screen, once its file is there. */
function Shown({ screen }: { readonly screen: Screen }) {
  const [loaded, setLoaded] = useState<{ readonly Screen: ComponentType } | { readonly problem: string }>();
  useEffect(() => {
    Promise.resolve(screen.load()).then(
      (Screen) => setLoaded({ Screen }),
      (problem: unknown) => setLoaded({ problem: problem instanceof Error ? problem.message : String(problem) }),
    );
  }, [screen]);
  if (!loaded) return <p class="screen" role="status">Opening…</p>;
  if ("problem" in loaded) return <p class="screen bad" role="alert">This screen could not be fetched; close and open the pane to try again. ({loaded.problem})</p>;
  return <loaded.Screen />;
}
