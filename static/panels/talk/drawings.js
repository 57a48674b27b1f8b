// The small drawings of a talk's scenes: one a scene, made when it is wanted, one after another.

/** trace(document) → promise of its answer; draw(answer) → its drawing; changed(): another drawing is there. → of(step): the drawing, or null while there is none. */
export function createDrawings({ store, trace, draw, changed }) {
  const drawings = new Map(); // by the scene as text; null: it cannot be drawn, or not yet
  const keys = new WeakMap();
  let waiting = [],
    drawing = false;

  function keyOf(scene) {
    if (!keys.has(scene)) keys.set(scene, JSON.stringify(scene));
    return keys.get(scene);
  }

  function put(key, answer) {
    try {
      drawings.set(key, draw(answer));
    } catch {
      drawings.set(key, null);
    }
  }

  async function work() {
    drawing = true;
    for (let scene = waiting.shift(); scene; scene = waiting.shift()) {
      try {
        put(keyOf(scene), await trace(scene));
        changed();
      } catch {
        drawings.delete(keyOf(scene)); // wanted again, it is asked for again
      }
    }
    drawing = false;
  }

  return {
    of({ scene }) {
      const key = keyOf(scene);
      if (drawings.has(key)) return drawings.get(key);
      drawings.set(key, null);
      if (scene === store.document && !store.stale) put(key, store.answer);
      else waiting.push(scene);
      if (waiting.length && !drawing) work();
      return drawings.get(key);
    },
  };
}
