// A sound that carries through a hall: a square wave near where the ear hears best. In silent mode the screen flashes.

/** @type {AudioContext | undefined} */
let audio;

/** Sound may only begin with a key or a touch: call this from one. */
export function ready() {
  try {
    audio ??= new AudioContext();
    void audio.resume();
  } catch {
    // A device without sound: the screen shows everything that is heard.
  }
}

/** @param {"count" | "go" | "end"} what */
export function sound(what) {
  if (!audio || audio.state !== "running") return;
  const [hertz, seconds] = /** @type {const} */ ({ count: [1000, 0.15], go: [2000, 0.7], end: [1500, 1] })[what];
  const tone = audio.createOscillator();
  const volume = audio.createGain();
  tone.type = "square";
  tone.frequency.value = hertz;
  volume.gain.setValueAtTime(0.8, audio.currentTime);
  volume.gain.exponentialRampToValueAtTime(0.001, audio.currentTime + seconds);
  tone.connect(volume).connect(audio.destination);
  tone.start();
  tone.stop(audio.currentTime + seconds);
}
