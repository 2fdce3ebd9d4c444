let audio: AudioContext | undefined;

/** A sound that the browser held back for longer than this would be a lie: what it was for is no news any more. */
const staleMs = 2000;

/** Three short tones, now or not at all. */
export async function beep(): Promise<void> {
  if (typeof AudioContext === "undefined") return;
  audio ??= new AudioContext();
  const asked = performance.now();
  await audio.resume();
  if (performance.now() - asked > staleMs) return;
  for (const start of [0, 0.35, 0.7]) tone(audio, audio.currentTime + start);
}

/** Browsers let a page sound only after somebody has pressed something in it; older ones do not tell. */
export const maySound = (): boolean => (navigator as { userActivation?: UserActivation }).userActivation?.hasBeenActive ?? true;

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
