import { beep, maySound } from "./sound";
import { useKeptChoice } from "./kept-choice";

export interface SignalChoices {
  readonly sound: boolean;
  readonly colour: boolean;
  readonly chooseSound: (on: boolean) => void;
  readonly chooseColour: (on: boolean) => void;
}

/** What tells that a step is due. Sound is off until the brewer wants it; the colour is on until it disturbs. */
export function useSignalChoices(): SignalChoices {
  const [sound, chooseSound] = useKeptChoice("gylebook-brew-day-sound", false);
  const [colour, chooseColour] = useKeptChoice("gylebook-brew-day-colour", true);
  return { sound, colour, chooseSound, chooseColour };
}

/** `isLive`: something may still come due. */
export function SignalChoiceFields({ sound, colour, chooseSound, chooseColour, isLive }: SignalChoices & { readonly isLive: boolean }) {
  const soundOnOff = (on: boolean) => {
    chooseSound(on);
    // Whoever wants it hears at once how it sounds, and the browser lets it sound from here on.
    if (on) void beep();
  };
  return (
    <fieldset class="field signals">
      <legend>When a step is due, here and on the other screens</legend>
      <label class="choice big-choice">
        <input type="checkbox" checked={sound} onChange={(event) => soundOnOff(event.currentTarget.checked)} />
        Sound three tones
      </label>
      {sound && isLive && !maySound() && <p class="hint">Press anywhere in this pane once: until then the browser keeps it silent.</p>}
      <label class="choice big-choice">
        <input type="checkbox" checked={colour} onChange={(event) => chooseColour(event.currentTarget.checked)} />
        Fill its card with colour
      </label>
    </fieldset>
  );
}
