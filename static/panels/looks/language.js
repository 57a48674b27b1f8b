// The language of the page's words. A cookie keeps it, since the server speaks too; the page is loaded again, and comes back as it was.

import { language } from '../../state/language.js';
import { createChoice } from '../shared/choice.js';

const FOR_A_YEAR = 'max-age=31536000; samesite=lax';

/** `languages`: [{language, name}] that the server speaks, each named in itself. */
export function createLanguage({ languages, label }) {
  return createChoice({
    label,
    options: languages.map(({ language: value, name }) => ({ value, say: name })),
    chosen: () => language,
    choose(value) {
      if (value === language) return;
      document.cookie = `language=${value}; ${FOR_A_YEAR}`;
      location.reload();
    },
  });
}
