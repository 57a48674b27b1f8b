// How fast what turns goes round on the screen, and when a word of warning is due. No DOM.

/** Degrees a second on the screen from which a word is said: a turn in twelve seconds. Our own choice; no study sets a bound for it. */
export const FAST_DEG_S = 30;

/** Degrees a second on the screen, at a spin and a pace of playing. */
export const turnOnScreen = (spin_rpm, pace) => 6 * Math.abs(spin_rpm) * pace;

/** Whether it is to be said now: once, and only while it turns. */
export function isWarningDue({ warned, steady }, { playing, pace }, spin_rpm) {
  return playing && !warned && !steady && turnOnScreen(spin_rpm, pace) >= FAST_DEG_S;
}
