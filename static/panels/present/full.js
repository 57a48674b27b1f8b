// The whole screen where the browser lets us; presenting works without it too.

/** left(): somebody left the whole screen, by Esc or the browser's own way. */
export function createFull({ left }) {
  let wanted = false, // as long as it is presented
    lent = false, // another window was opened by us, for which some browsers leave the whole screen
    leaving = null; // by us: until the browser has done so

  document.addEventListener('fullscreenchange', () => {
    if (document.fullscreenElement || !wanted || lent || leaving) return;
    left();
  });

  async function ask() {
    await leaving;
    if (!wanted || document.fullscreenElement || !document.fullscreenEnabled) return;
    if (navigator.userActivation && !navigator.userActivation.isActive) {
      lent = true; // nobody has pressed anything yet: with the first key
      return;
    }
    try {
      await document.documentElement.requestFullscreen();
    } catch {
      wanted = false; // the window it is
    }
  }
  return {
    enter() {
      wanted = true;
      return ask();
    },
    /** Back to it with the next key, once another window is open. */
    back() {
      if (!lent) return;
      lent = false;
      ask();
    },
    lend() {
      lent = wanted;
    },
    leave() {
      wanted = lent = false;
      if (!document.fullscreenElement) return;
      const done = () => (leaving = null);
      leaving = document.exitFullscreen().then(done, done);
    },
  };
}
