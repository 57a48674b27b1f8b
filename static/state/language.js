// Words for people in the language of the page. In the code they are English; a catalogue gives them in another: its script, which stands before this
// one in the page, holds it as `globalThis.rimfallLanguage` (static/vendor_build.py makes it). The server's words come in that language by themselves.

const CONTEXT = '\u0004'; // between the context of a message and its text, as gettext has it
const ENGLISH = { language: 'en', direction: 'ltr', decimal: '.', group: ',', categories: ['one', 'other'], messages: {} };
const catalogue = globalThis.rimfallLanguage ?? ENGLISH;
const messages = new Map(Object.entries(catalogue.messages));

export const language = catalogue.language;
export const isRightToLeft = catalogue.direction === 'rtl';
export const locale = language === 'en' ? 'en-GB' : language; // of Intl, whose objects are made when first asked for: each takes as long as a picture
let plurals = /** @type {Intl.PluralRules | null} */ (null);

/** A text, its places in braces filled: `tr` of '{count} of {of}' and { count, of }.
 *  @param {string} text @param {Record<string, unknown>} [places] @returns {string} */
export function tr(text, places) {
  return filled(found(text, text), places);
}

/** The same, of a text that means something else elsewhere, or that is bent otherwise: context says where it stands.
 *  @param {string} context @param {string} text @param {Record<string, unknown>} [places] @returns {string} */
export function trAs(context, text, places) {
  return filled(found(context + CONTEXT + text, text), places);
}

/** The same, of what is told of a count: `one` of it, or `many`; the place {count} is filled with it, in figures.
 *  @param {string} one @param {string} many @param {number} count @param {Record<string, unknown>} [places] @returns {string} */
export function trMany(one, many, count, places) {
  const forms = messages.get(one);
  const text = Array.isArray(forms) ? forms[catalogue.categories.indexOf(category(count))] : null;
  return filled(text ?? (count === 1 ? one : many), { count: inSigns(String(count)), ...places });
}

/** Marks a text that stands in a table; `tr` of it is asked for where it is shown.
 *  @param {string} text */
export function trLater(text) {
  return text;
}

/** A text in parts, where places are elements: of 'Open {link}.' and { link }: ['Open ', link, '.'].
 *  @param {string} text @param {Record<string, unknown>} places @returns {unknown[]} */
export function trParts(text, places) {
  return found(text, text)
    .split(/\{(\w+)\}/)
    .map((part, k) => (k % 2 ? (places[part] ?? `{${part}}`) : part))
    .filter(part => part !== '');
}

/** A number that is written as in English (1,234.5), with the signs of the language.
 *  @param {string} text */
export function inSigns(text) {
  return text.replace(/[.,]/g, sign => (sign === '.' ? catalogue.decimal : catalogue.group));
}

/** What somebody typed in the signs of the language, with those of English: 1.234,5 → 1,234.5.
 *  @param {string} text */
export function fromSigns(text) {
  return text.replace(/[.,]/g, sign => (sign === catalogue.decimal ? '.' : ','));
}

/** The parts of a list as a sentence names them: "a", "a and b", "a, b and c".
 *  @param {string[]} parts @param {'conjunction' | 'disjunction'} [type] */
export function listed(parts, type = 'conjunction') {
  return new Intl.ListFormat(locale, { type }).format(parts);
}

/** A label within a sentence: English writes it small there, other languages as it is.
 *  @param {string} label */
export function inSentence(label) {
  return language === 'en' ? label.toLowerCase() : label;
}

/** The message of a key; its English where there is none, or only one that another version of the program counts.
 *  @param {string} key @param {string} text @returns {string} */
function found(key, text) {
  const said = messages.get(key);
  return typeof said === 'string' ? said : text;
}

/** @param {number} count */
function category(count) {
  plurals ??= new Intl.PluralRules(locale);
  return plurals.select(count);
}

/** What comes into a place keeps its own direction where the words about it go from right to left.
 *  @param {string} text @param {Record<string, unknown>} [places] */
function filled(text, places) {
  if (!places) return text;
  const set = name => (isRightToLeft ? `\u2068${places[name]}\u2069` : String(places[name]));
  return text.replace(/\{(\w+)\}/g, (all, name) => (name in places ? set(name) : all));
}
