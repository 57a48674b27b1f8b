// States to go back to. No elements.

/** The last states but one, to go back to: push(state) before a change, back(now) → the one before, or now. */
export function createPast(most = 200) {
  let past = [];
  return {
    push(state) {
      past = [...past.slice(1 - most), state];
    },
    back: now => past.pop() ?? now,
    clear() {
      past = [];
    },
    get any() {
      return past.length > 0;
    },
  };
}
