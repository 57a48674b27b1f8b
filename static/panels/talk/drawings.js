// The small drawings of a talk's steps: one a scene and what is hidden of it, made when it is wanted, one scene after another.

/** trace(document) → promise of its answer; draw(answer, hidden) → its drawing without those motions; changed(): others are there. → of(step): the drawing, or null while there is none. */
export function createDrawings({ store, trace, draw, changed }) {
  const drawings = new Map(); // by scene and hidden as text; null: it cannot be drawn, or not yet
  const keys = new WeakMap();
  let waiting = [],
    drawing = false;

  function keyOf(scene) {
    if (!keys.has(scene)) keys.set(scene, JSON.stringify(scene));
    return keys.get(scene);
  }

  function put({ key, hidden }, answer) {
    try {
      drawings.set(key, draw(answer, hidden));
    } catch {
      drawings.set(key, null);
    }
  }

  async function work() {
    drawing = true;
    while (waiting.length) {
      const { scene } = waiting[0],
        answer = await trace(scene).catch(() => null);
      const isOf = one => keyOf(one.scene) === keyOf(scene);
      const mine = waiting.filter(isOf);
      waiting = waiting.filter(one => !isOf(one));
      for (const one of mine) {
        if (answer) put(one, answer);
        else drawings.delete(one.key); // wanted again, it is asked for again
      }
      if (answer) changed();
    }
    drawing = false;
  }

  return {
    of({ scene, hidden = [] }) {
      const key = `${JSON.stringify(hidden)} ${keyOf(scene)}`;
      if (drawings.has(key)) return drawings.get(key);
      drawings.set(key, null);
      const one = { key, scene, hidden };
      if (scene === store.document && !store.stale) put(one, store.answer);
      else waiting.push(one);
      if (waiting.length && !drawing) work();
      return drawings.get(key);
    },
  };
}
