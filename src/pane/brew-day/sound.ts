import { useState } from "preact/hooks";

const memory = "gylebook-brew-day-sound";

/** Off until the brewer wants it; the choice is kept on this computer only. */
export function useSoundChoice(): readonly [boolean, (on: boolean) => void] {
  const [on, setOn] = useState(recall);
  const choose = (wanted: boolean) => {
    setOn(wanted);
    try {
      localStorage.setItem(memory, wanted ? "on" : "off");
    } catch {
      // Storage may be closed to a pane inside another site: then the choice lasts as long as the pane.
    }
    // Browsers let a page sound only after somebody pressed something: this is the moment.
    if (wanted) beep();
  };
  return [on, choose];
}

function recall(): boolean {
  try {
    return localStorage.getItem(memory) === "on";
  } catch {
    return false;
  }
}

let audio: AudioContext | undefined;

/** Three short tones. */
export function beep(): void {
  if (typeof AudioContext === "undefined") return;
  audio ??= new AudioContext();
  void audio.resume();
  for (const start of [0, 0.35, 0.7]) tone(audio, audio.currentTime + start);
}

function tone(context: AudioContext, start: number): void {
  const oscillator = context.createOscillator();
  const volume = context.createGain();
  oscillator.frequency.value = 880;
  volume.gain.setValueAtTime(0.25, start);
  volume.gain.setTargetAtTime(0, start + 0.15, 0.03);
  oscillator.connect(volume).connect(context.destination);
  oscillator.start(start);
  oscillator.stop(start + 0.3);
}
