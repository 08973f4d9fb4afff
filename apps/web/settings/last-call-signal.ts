/** Three short tones, rising: heard over a stick blender, and no alarm. Hertz and seconds. */
const TONES = [660, 830, 990] as const;
const [EACH_S, GAP_S, VOLUME] = [0.16, 0.08, 0.25] as const;
const VIBRATION_MS = [180, 90, 180, 90, 320];

let sound: AudioContext | undefined;

/** Whether this device can be made to vibrate by a page at all. */
export function canVibrate(): boolean {
  return 'vibrate' in navigator;
}

/**
 * Sounds and vibrates once. Browsers keep a page silent until it was tapped once; then, as on a device without sound, nothing
 * is heard and nothing fails.
 */
export function signalLastCall(): void {
  if (canVibrate()) navigator.vibrate(VIBRATION_MS);
  sound ??= new AudioContext();
  const context = sound;
  void context.resume().then(() => {
    TONES.forEach((hertz, i) => play(context, hertz, context.currentTime + i * (EACH_S + GAP_S)));
  });
}

/** One tone that swells and fades, as a bare start and end would click. */
function play(context: AudioContext, hertz: number, at: number): void {
  const tone = context.createOscillator();
  const loudness = context.createGain();
  tone.frequency.value = hertz;
  loudness.gain.setValueAtTime(0, at);
  loudness.gain.linearRampToValueAtTime(VOLUME, at + 0.02);
  loudness.gain.linearRampToValueAtTime(0, at + EACH_S);
  tone.connect(loudness).connect(context.destination);
  tone.start(at);
  tone.stop(at + EACH_S);
}
