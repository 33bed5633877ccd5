// The phone during the shoot: its screen kept on, the end of food's time told
// so that it is noticed, steps read aloud, and a clock that was set told of.

import * as say from "#words";

import { change, left, progress, told } from "./progress";

const EVERY = 1000;
/** Less is the ordinary unevenness of a busy phone, ms. */
const SET_BACK = 2000;
const MINUTE = 60_000;

let lock: WakeLockSentinel | undefined;
let sound: AudioContext | undefined;

/** Keeps the screen on while the page is in sight, or says that it cannot. */
async function stayOn(): Promise<void> {
  if (document.visibilityState !== "visible") return;
  try {
    if (!("wakeLock" in navigator)) throw new Error();
    lock = await navigator.wakeLock.request("screen");
  } catch {
    told.value = say.dayScreenOff;
  }
}

/** Three short tones; a browser that allows none still shakes and says it. */
function ring(): void {
  navigator.vibrate?.([300, 150, 300, 150, 300]);
  if (sound === undefined) return;
  for (const n of [0, 1, 2]) {
    const [tone, volume] = [sound.createOscillator(), sound.createGain()];
    tone.frequency.value = 880;
    volume.gain.value = 0.4;
    tone.connect(volume).connect(sound.destination);
    tone.start(sound.currentTime + n * 0.4);
    tone.stop(sound.currentTime + n * 0.4 + 0.2);
  }
}

/** A browser lets a page sound only after it was touched. */
export function mayRing(): void {
  sound ??= typeof AudioContext === "undefined" ? undefined : new AudioContext();
  void sound?.resume();
}

/** Tells of food that is past its time, once each. */
function watch(now: number): void {
  const timers = progress.value?.timers ?? [];
  const over = timers.filter((timer) => !timer.told && left(timer, now) <= 0);
  if (over.length === 0) return;
  change({ timers: timers.map((timer) => (over.includes(timer) ? { ...timer, told: true } : timer)) });
  ring();
  told.value = over
    .map((timer) => {
      const [thing, count] = [timer.name, Math.floor(-left(timer, now) / MINUTE)];
      return count === 0 ? say.dayPastNow({ thing }) : say.dayPast({ thing, count });
    })
    .join(" ");
}

/**
 * A clock that was set back would give food more time: timers go back with it.
 * One that jumps ahead cannot be told from a phone that slept, and counts as
 * time that passed.
 */
function setBack(by: number): void {
  const timers = progress.value?.timers ?? [];
  if (timers.length === 0) return;
  change({ timers: timers.map((timer) => ({ ...timer, since: timer.since - by })) });
  told.value = say.dayClockBack({ count: Math.max(1, Math.round(by / MINUTE)) });
}

/** Watches over the day; returns what ends that. `beat` is called every second. */
export function begin(beat: (now: number) => void): () => void {
  let before = Date.now();
  let steady = performance.now();
  // Nothing was watched since the page was last here.
  const away = (progress.value?.touched ?? before) - before;
  if (away > SET_BACK) setBack(away);
  const look = (): void => {
    const [now, passed] = [Date.now(), performance.now() - steady];
    const back = before + passed - now;
    [before, steady] = [now, performance.now()];
    if (back > SET_BACK) setBack(back);
    watch(now);
    beat(now);
  };
  const seen = (): void => {
    if (document.visibilityState !== "visible") return;
    look();
    void stayOn();
  };
  const timer = setInterval(look, EVERY);
  document.addEventListener("visibilitychange", seen);
  look();
  void stayOn();
  return () => {
    clearInterval(timer);
    document.removeEventListener("visibilitychange", seen);
    void lock?.release();
    lock = undefined;
    quiet();
  };
}

/** A voice of this device; one that sends words away to be spoken is never used. */
function voice(): SpeechSynthesisVoice | undefined {
  if (!("speechSynthesis" in globalThis)) return undefined;
  const own = speechSynthesis.getVoices().filter(({ localService }) => localService);
  return own.find(({ lang }) => lang.startsWith("en")) ?? own[0];
}

/** Reads these sentences aloud, one after another. */
export function speak(lines: readonly string[]): void {
  const own = voice();
  if (own === undefined) {
    told.value = say.dayNoVoice;
    return;
  }
  quiet();
  for (const line of lines) {
    const spoken = new SpeechSynthesisUtterance(line);
    [spoken.voice, spoken.lang] = [own, own.lang];
    speechSynthesis.speak(spoken);
  }
}

export function quiet(): void {
  if ("speechSynthesis" in globalThis) speechSynthesis.cancel();
}
