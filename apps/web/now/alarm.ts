import { oneTabAtATime } from '../offline/one-tab.js';

/** Three soft notes, rising: frequency in hertz, start in seconds. */
const notes = [
  [587, 0],
  [740, 0.28],
  [880, 0.56],
] as const;
const VIBRATION = [200, 120, 200, 120, 300];
const CALLED = 'benchtide.called';
const REMEMBERED = 50;

let context: AudioContext | undefined;

/** Browsers let a page sound only after a first touch: made ready at the first touch. */
export function readyToSound(): () => void {
  const ready = (): void => {
    context ??= new AudioContext();
    void context.resume();
  };
  addEventListener('pointerdown', ready);
  addEventListener('keydown', ready);
  return () => {
    removeEventListener('pointerdown', ready);
    removeEventListener('keydown', ready);
  };
}

/** Whether this device can be made to vibrate by a page at all. */
export function canVibrate(): boolean {
  return 'vibrate' in navigator;
}

/** Sounds and vibrates once. Silent where the browser does not let it. */
export function soundLastCall(): void {
  if (canVibrate()) navigator.vibrate(VIBRATION);
  context ??= new AudioContext();
  void context.resume();
  for (const [frequency, after] of notes) playNote(context, frequency, context.currentTime + after);
}

function playNote(audio: AudioContext, frequency: number, at: number): void {
  const tone = new OscillatorNode(audio, { type: 'sine', frequency });
  const loudness = new GainNode(audio, { gain: 0 });
  loudness.gain.setValueAtTime(0, at);
  loudness.gain.linearRampToValueAtTime(0.35, at + 0.03);
  loudness.gain.exponentialRampToValueAtTime(0.001, at + 0.6);
  tone.connect(loudness).connect(audio.destination);
  tone.start(at);
  tone.stop(at + 0.65);
}

/** Sounds for the last call of a stage, once on this device however many pages are open. */
export async function callOnce(stage: {
  readonly runId: string;
  readonly stage: string;
  readonly attempt: number;
}): Promise<void> {
  const key = `${stage.runId} ${stage.stage} ${String(stage.attempt)}`;
  await oneTabAtATime(CALLED, async () => {
    const called = JSON.parse(localStorage.getItem(CALLED) ?? '[]') as string[];
    if (called.includes(key)) return;
    localStorage.setItem(CALLED, JSON.stringify([...called, key].slice(-REMEMBERED)));
    soundLastCall();
  });
}
