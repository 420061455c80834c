/** Three short tones and a shake of the device; one that can do neither shows it all the same. */
export function ring(): void {
  navigator.vibrate?.([400, 150, 400, 150, 400])
  try {
    const sound = new AudioContext()
    for (const at of [0, 0.35, 0.7]) {
      const tone = sound.createOscillator()
      const loud = sound.createGain()
      // Within the band in which MIL-STD-1472 wants a signal to stand out of the noise: 200 to 5000 Hz.
      tone.frequency.value = 1200
      loud.gain.setValueAtTime(0.5, sound.currentTime + at)
      loud.gain.setValueAtTime(0, sound.currentTime + at + 0.2)
      tone.connect(loud).connect(sound.destination)
      tone.start(sound.currentTime + at)
      tone.stop(sound.currentTime + at + 0.2)
      if (at === 0.7) tone.onended = () => void sound.close()
    }
  } catch {
    // A browser that lets nothing sound: the clock is red, and says so.
  }
}
