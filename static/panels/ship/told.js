// What a change came to, for those who do not see it: the first sentence that became another, and how many answers more did.

import { tr, trMany } from '../../state/language.js';

export function createTold({ store, heard }) {
  let known = null,
    shown = null;

  function update() {
    const { answer } = store.ship;
    if (!answer || answer === shown) return;
    shown = answer;
    const now = saidBy(answer),
      words = changeWords(known, now, store.document.craft.title || tr('The craft'));
    known = now;
    if (words) heard.say(words);
  }
  return { update };
}

/** {name of a finding: its sentences} */
export const saidBy = answer => Object.fromEntries(Object.entries(answer).flatMap(([name, one]) => (Array.isArray(one?.says) ? [[name, one.says]] : [])));

/** One sentence of what is told otherwise now; of a craft that is new, its first. '' where nothing is. */
export function changeWords(before, now, title) {
  if (!before || !Object.keys(before).length) return `${title}. ${now.mass?.[0] ?? ''}`.trim();
  const first = name => now[name].find((says, k) => says !== before[name]?.[k]);
  const changed = Object.keys(now).filter(name => first(name));
  if (!changed.length) return '';
  const more = changed.length - 1;
  const said = tr('{title} now: {sentence}', { title, sentence: first(changed[0]) });
  return more ? `${said} ${trMany('And {count} more answer changed.', 'And {count} more answers changed.', more)}` : said;
}
