// What of an answer is asked for. While a dial moves it is paths, events and landings alone: what is told of them stays as it was told last, out of
// sight (panels/behind.js), until the whole answer is there.

const UNTOLD = { words: [], pieces: [], assumptions: [], prose: null, within_reach: [] };
const NO_CAUSES = { drift_parts_m: null, drift_parts_none: null };

/** `store.answer` is of `store.answered`; `hold`: of the question, whose follower the server moves. */
export function movingParts({ document, answer, answered }, hold) {
  const others = answer.compare?.length > 0 && (!hold || hold.follower.startsWith('habitat.'));
  return others && withoutHome(document) === withoutHome(answered) ? 'own_paths' : 'paths';
}

/** The answer of such `parts` as the page shows it: partial, with what `before` told, and the habitats beside it where nothing of theirs changed. */
export function completed(answer, before, parts) {
  const compare = parts === 'own_paths' ? before.compare : answer.compare?.map((one, i) => told(one, before.compare?.[i]));
  return { ...told(answer, before), ...(compare && { compare }), partial: true };
}

const withoutHome = document => JSON.stringify({ ...document, habitat: null });

function told(home, before) {
  return { ...home, prose: before?.prose ?? null, motions: home.motions.map((motion, i) => toldOf(motion, before?.motions[i])) };
}

function toldOf(motion, known) {
  const before = known?.name === motion.name ? known : {};
  const words = Object.fromEntries(Object.entries(UNTOLD).map(([name, none]) => [name, before[name] ?? none]));
  const { drift_parts_m, drift_parts_none } = before.landing ?? NO_CAUSES;
  return { ...motion, ...words, in_short: '', landing: motion.landing && { ...motion.landing, drift_parts_m, drift_parts_none } };
}
