// The language of the page's words. The server keeps it by a cookie, since it speaks too; the page is loaded again, and comes back as it was.

import { language, tr } from '../../state/language.js';
import { createChoice } from '../shared/choice.js';

/** `languages`: [{language, name}] that the server speaks, each named in itself; speak(language) → promise, kept once the server has it;
 *  tell(words): of what went wrong. */
export function createLanguage({ languages, label, speak, tell }) {
  return createChoice({
    label,
    options: languages.map(({ language: value, name }) => ({ value, say: name })),
    chosen: () => language,
    async choose(value) {
      if (value === language) return;
      try {
        await speak(value);
        location.reload();
      } catch (problem) {
        tell(tr('The language could not be changed: {why}', { why: problem.message }));
      }
    },
  });
}
