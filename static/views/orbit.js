// Looking round from a camera preset: drag turns, wheel and pinch zoom, double-click or Home returns; the same from the keyboard.

const RADIANS_PER_PX = 0.006;
const STEP = 0.0872665; // 5° a key press
const CLICK_PX = 4;

// `changed` after every move; `clicked(x, y)` for a press that was no drag, in px of the stage.
export function attachOrbit(view, eye, { changed, clicked }) {
  const fingers = new Map();
  let moved_px = 0;
  let spread = null;

  view.addEventListener('pointerdown', event => {
    view.setPointerCapture(event.pointerId);
    if (!fingers.size) moved_px = 0;
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    spread = null;
  });

  view.addEventListener('pointermove', event => {
    const finger = fingers.get(event.pointerId);
    if (!finger) return;
    const [dx, dy] = [event.clientX - finger.x, event.clientY - finger.y];
    Object.assign(finger, { x: event.clientX, y: event.clientY });
    moved_px += Math.hypot(dx, dy);
    if (moved_px < CLICK_PX) return;
    if (fingers.size === 2) pinch();
    else eye.turn(-dx * RADIANS_PER_PX, dy * RADIANS_PER_PX);
    changed();
  });

  function pinch() {
    const [a, b] = [...fingers.values()];
    const now = Math.hypot(a.x - b.x, a.y - b.y);
    if (spread) eye.zoom(spread / Math.max(now, 1));
    spread = now;
  }

  const lift = event => {
    if (!fingers.delete(event.pointerId)) return;
    spread = null;
    if (event.type !== 'pointerup' || fingers.size || moved_px >= CLICK_PX) return;
    const box = view.getBoundingClientRect();
    clicked(event.clientX - box.left, event.clientY - box.top);
  };
  view.addEventListener('pointerup', lift);
  view.addEventListener('pointercancel', lift);

  view.addEventListener(
    'wheel',
    event => {
      const { scrollHeight, clientHeight } = document.documentElement;
      if (scrollHeight > clientHeight && !event.ctrlKey) return; // in a window that small the wheel scrolls the page
      event.preventDefault();
      eye.zoom(Math.exp(Math.max(-120, Math.min(120, event.deltaY)) * 0.0016));
      changed();
    },
    { passive: false },
  );

  view.addEventListener('dblclick', () => home());
  view.addEventListener('keydown', event => {
    if (event.ctrlKey || event.metaKey || event.altKey || !KEYS[event.key]) return;
    KEYS[event.key](eye);
    event.preventDefault();
    event.stopPropagation();
    changed();
  });

  function home() {
    eye.home();
    changed();
  }
}

const KEYS = {
  ArrowLeft: eye => eye.turn(-STEP, 0),
  ArrowRight: eye => eye.turn(STEP, 0),
  ArrowUp: eye => eye.turn(0, STEP),
  ArrowDown: eye => eye.turn(0, -STEP),
  '+': eye => eye.zoom(0.85),
  '=': eye => eye.zoom(0.85),
  '-': eye => eye.zoom(1 / 0.85),
  Home: eye => eye.home(),
};
