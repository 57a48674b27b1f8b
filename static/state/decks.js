// Named decks when the radius of their habitat changes: each keeps its height over the deck, so that no figure of it goes stale. Where
// the axis is nearer than that height, it keeps its share of the radius. The server does the same where a radius follows a dial.

/** @typedef {{name: string, radius_m: number}} Deck */

/** @param {Deck[]} decks @param {number} from @param {number} to */
export function movedDecks(decks, from, to) {
  return decks.map(deck => ({ ...deck, radius_m: moved(deck.radius_m, from, to) }));
}

function moved(radius, from, to) {
  const kept = to - (from - radius);
  return Number((radius === from ? to : kept > 0 ? kept : (radius * to) / from).toPrecision(12));
}

/** Gives next(before, after): a scene after an edit, its decks moved with a radius that was changed and nothing else of them. A radius
 *  dialled down and up again has them where they were. */
export function createDeckMover() {
  /** @type {Map<string, {from: number, decks: Deck[], left: string}>} */
  const first = new Map(); // by habitat: the radius and decks that the last move began with, and what it left

  function habitat(at, before, after) {
    if (!before?.decks?.length || !(before.radius_m > 0) || !(after?.radius_m > 0) || before.radius_m === after.radius_m) return after;
    const was = JSON.stringify(before.decks);
    if (was !== JSON.stringify(after.decks) || before.shape !== after.shape) return after;
    const known = first.get(at),
      { from, decks } = known?.left === was ? known : { from: before.radius_m, decks: before.decks };
    const now = movedDecks(decks, from, after.radius_m);
    first.set(at, { from, decks, left: JSON.stringify(now) });
    return { ...after, decks: now };
  }

  return (before, after) => {
    if (before === after || !before?.habitat || !after?.habitat) return after;
    const own = habitat('habitat', before.habitat, after.habitat),
      next = own === after.habitat ? after : { ...after, habitat: own };
    if (!after.compare?.length || before.compare?.length !== after.compare.length) return next;
    const others = after.compare.map((other, i) => {
      const moved_ = habitat(`compare.${i}`, before.compare[i].habitat, other.habitat);
      return moved_ === other.habitat ? other : { ...other, habitat: moved_ };
    });
    return others.every((other, i) => other === after.compare[i]) ? next : { ...next, compare: others };
  };
}
