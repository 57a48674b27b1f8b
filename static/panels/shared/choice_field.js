// A field that is one of a few words: they are the catalogue's.

import { fieldOf } from '../../state/fields.js';
import { choiceRow, createChoice } from './choice.js';

export function createChoiceField({ store, path, label }) {
  const options = (fieldOf(store.fields, path)?.choices ?? []).map(value => ({ value, say: value }));
  const choice = createChoice({
    label,
    options,
    chosen: () => store.read(path),
    choose: value => store.set(path, value),
  });
  return { element: choiceRow(label, choice), update: choice.update };
}
