import type { ComponentType } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { useDayGoing } from "./brew-day/day-going";
import { OpenScreen } from "./parts/open-screen";
import { places, screens, type Place, type Screen } from "./screens";
import { firstScreen, rememberScreen } from "./first-screen";
import { followFirstReadings } from "../workbook/brewing/fermentation/first-chart";
import { reasonOf } from "../workbook/grid/words/host-words";

const shownPlaces = places.filter((place) => screens.some((screen) => screen.place === place));
const brewDay = screens.find(({ title }) => title === "Brew day");
const firstOf = (place: Place): Screen | undefined => screens.find((screen) => screen.place === place);

/** The season sheet follows the tabs from the pane's first moment on, whatever screen is shown. What goes wrong its own screen tells. */
const followSheets = async (): Promise<void> =>
  (await import(/* webpackChunkName: "pane-season" */ "./season/follow-season")).followSeason();

/** Readings get their chart with the first of them. Somebody may be typing at any time. */
const followReadings = (): Promise<void> =>
  followFirstReadings((work) => Excel.run({ delayForCellEdit: true }, work)).catch(() => undefined);

/** The pane: its places in the job, and in each place its screens, one at a time. */
export function Pane() {
  useEffect(() => {
    void followSheets();
    void followReadings();
  }, []);
  const [screen, setScreen] = useState<Screen>();
  /** How often somebody has chosen a screen, the one that is open included. */
  const [moves, setMoves] = useState(0);
  // Somebody who has chosen meanwhile is not sent elsewhere.
  useEffect(() => {
    void firstScreen().then((first) => {
      setScreen((chosen) => chosen ?? first.screen);
      if (first.asked) setMoves((before) => before + 1);
    });
  }, []);
  const open = (next: Screen | undefined): void => {
    if (!next) return;
    setMoves((before) => before + 1);
    setScreen(next);
    rememberScreen(next);
  };
  const dayGoing = useDayGoing();
  const neighbours = screens.filter(({ place }) => place === screen?.place);
  return (
    <OpenScreen.Provider value={(title) => open(screens.find((other) => other.title === title))}>
      <nav aria-label="Places in the job">
        {shownPlaces.map((place) => (
          <button
            key={place}
            type="button"
            class="quiet"
            aria-current={place === screen?.place ? "true" : undefined}
            onClick={() => open(firstOf(place))}
          >
            {place}
          </button>
        ))}
      </nav>
      {screen && neighbours.length > 1 && (
        <nav aria-label={`Screens of ${screen.place}`} class="screens">
          {neighbours.map((other) => (
            <button
              key={other.title}
              type="button"
              class="quiet"
              aria-current={other === screen ? "page" : undefined}
              onClick={() => open(other)}
            >
              {other.title}
            </button>
          ))}
        </nav>
      )}
      {screen && <Behind />}
      {dayGoing !== undefined && screen !== brewDay && <Strip sheetName={dayGoing} onOpen={() => open(brewDay)} />}
      {screen ? (
        <Shown key={screen.title} screen={screen} moves={moves} />
      ) : (
        <p class="screen" role="status">
          Opening…
        </p>
      )}
    </OpenScreen.Provider>
  );
}

/** What the brew day that goes on has next, once its file is there: the screen Brew day has fetched it. */
function Strip(props: { readonly sheetName: string; readonly onOpen: () => void }) {
  const [loaded, setLoaded] = useState<{ readonly DayStrip: ComponentType<typeof props> }>();
  useEffect(() => void import(/* webpackChunkName: "pane-brew-day" */ "./brew-day/day-strip").then(setLoaded, () => undefined), []);
  return loaded ? <loaded.DayStrip {...props} /> : null;
}

/** What an earlier write left behind, once its file is there: it waits until the first screen is open. */
function Behind() {
  const [loaded, setLoaded] = useState<{ readonly LeftBehind: ComponentType }>();
  useEffect(() => void import(/* webpackChunkName: "pane-left-behind" */ "./left-behind/left-behind").then(setLoaded, () => undefined), []);
  return loaded ? <loaded.LeftBehind /> : null;
}

/** A screen, once its file is there. After a move its heading has the focus, so that keyboard and screen reader go on from there. */
function Shown({ screen, moves }: { readonly screen: Screen; readonly moves: number }) {
  const [loaded, setLoaded] = useState<{ readonly Screen: ComponentType } | { readonly problem: string }>();
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    Promise.resolve(screen.load()).then(
      (Screen) => setLoaded({ Screen }),
      (problem: unknown) => setLoaded({ problem: reasonOf(problem) }),
    );
  }, [screen]);
  useEffect(() => {
    if (!loaded || moves === 0) return;
    const heading = place.current?.querySelector("h1");
    heading?.setAttribute("tabindex", "-1");
    heading?.focus();
  }, [loaded, moves]);
  if (!loaded)
    return (
      <p class="screen" role="status">
        Opening…
      </p>
    );
  if ("problem" in loaded)
    return (
      <p class="screen bad" role="alert">
        This screen could not be fetched; close and open the pane to try again. ({loaded.problem})
      </p>
    );
  return (
    <div ref={place}>
      <loaded.Screen />
    </div>
  );
}
