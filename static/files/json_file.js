// JSON in a file: in UTF-8 or UTF-16, with a byte-order mark or without.

import { tr } from '../state/language.js';

const OBJECT = /^\s*[{[]/;
const LETTERS = 64; // that tell whether it is JSON

/** What a file's bytes (ArrayBuffer) hold: {value}; {wrong: a sentence} where it is broken; null where it is something else. */
export function jsonIn(bytes) {
  const decoder = new TextDecoder(encodingOf(new Uint8Array(bytes, 0, Math.min(4, bytes.byteLength))));
  if (!OBJECT.test(new TextDecoder(decoder.encoding).decode(bytes.slice(0, 2 * LETTERS)))) return null;
  const text = decoder.decode(bytes);
  try {
    return { value: JSON.parse(text) };
  } catch (problem) {
    return { wrong: whatIsWrong(text, problem) };
  }
}

// The first letter of JSON is one of ASCII: in UTF-16 one of its two bytes is 0.
function encodingOf([first, second]) {
  if ((first === 0xff && second === 0xfe) || (first && second === 0)) return 'utf-16le';
  if ((first === 0xfe && second === 0xff) || (first === 0 && second)) return 'utf-16be';
  return 'utf-8';
}

// by line and column where the browser says where
function whatIsWrong(text, { message }) {
  const at = /position (\d+)/.exec(message);
  if (!at) return tr('It is not whole JSON.');
  const before = text.slice(0, Number(at[1])).split('\n');
  return tr('Line {line}, column {column} is not JSON.', { line: before.length, column: before.at(-1).length + 1 });
}
