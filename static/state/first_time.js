// What comes by itself, once in a browser: the look round, and a word of warning where something turns fast on the screen. No DOM.

/** A look round comes to a page that opens on its own first scene, and never to one that has had it. */
export const comesByItself = (view, isOpening) => isOpening && !view.guided;

/** Degrees a second on the screen from which a word is said: a turn in twelve seconds. Our own choice; no study sets a bound for it. */
export const FAST_DEG_S = 30;

/** Degrees a second on the screen, at a spin and a pace of playing. */
export const turnOnScreen = (spin_rpm, pace) => 6 * Math.abs(spin_rpm) * pace;

/** Whether it is to be said now: once, and only while it turns. */
export function isWarningDue({ warned, steady }, { playing, pace }, spin_rpm) {
  return playing && !warned && !steady && turnOnScreen(spin_rpm, pace) >= FAST_DEG_S;
}
