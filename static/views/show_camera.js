// From a stage to "Through which camera?" on the page.

const SETTLED_MS = 3000; // by then what stands above it has had its answers
const TURNS_AWAY = ['wheel', 'pointerdown', 'keydown'];

/** Brings that part to the top and its first button into hand. Place 5 is fetched with its first opening and grows as answers come, so it is
 *  brought there anew with each change, until the reader does something. */
export function showCamera() {
  const part = document.getElementById('shot-camera');
  const place = part?.parentElement;
  if (!place) return;
  let held = false;
  const bring = () => {
    const begin = [...part.querySelectorAll('button')].find(button => button.checkVisibility());
    if (!begin) return;
    document.getElementById('shot-camera-title').scrollIntoView({ block: 'start' });
    if (!held) begin.focus({ preventScroll: true });
    held = true;
  };
  const grows = new ResizeObserver(bring);
  for (const section of place.children) grows.observe(section);
  const over = () => {
    grows.disconnect();
    for (const event of TURNS_AWAY) removeEventListener(event, over, true);
  };
  for (const event of TURNS_AWAY) addEventListener(event, over, true);
  setTimeout(over, SETTLED_MS);
}
