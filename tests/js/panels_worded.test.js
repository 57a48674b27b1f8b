// Which words of a sentence can be pressed: each term where it first stands, and the words stay what they were; signs stay with their term.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { GLOSSARY } from '../../static/panels/glossary_words.js';
import { TERMS, worded } from '../../static/panels/shared/worded.js';

test('terms are pressed where they first stand', () => {
  const made = [],
    before = globalThis.document;
  globalThis.document = {
    createElement: tag => {
      const element = {
        tag,
        says: '',
        addEventListener() {},
        setAttribute() {},
        getAttribute: () => null,
        append: (...parts) => (element.says += textOf(parts)),
      };
      made.push(element);
      return element;
    },
  };
  const textOf = parts => parts.map(part => part.says ?? part).join(''),
    pressed = () => {
      const of = tag => made.filter(one => one.tag === tag).map(one => one.says);
      const found = of('button');
      kept = of('span');
      made.length = 0;
      return found;
    };
  let kept = [];
  const told = new Set(),
    first = ' spinward after 1.06 s; under plain gravity, 7.18 m spinward. Without Coriolis and drag',
    second = ' Coriolis shifts that antispinward; dragging is no drag.';
  assert.equal(textOf(worded(first, () => {}, told)), first);
  assert.deepEqual(pressed(), ['spinward', 'plain gravity', 'Coriolis', 'drag']);
  assert.equal(textOf(worded(second, () => {}, told)), second);
  assert.deepEqual(pressed(), ['antispinward']);
  textOf(worded('Angular momentum: its spin, kept.', () => {}));
  assert.deepEqual(pressed(), ['Angular momentum', 'spin']);
  assert.deepEqual(kept, ['Angular momentum:', 'spin,']);
  textOf(worded('It drifts (antispinward) by its “Spin”.', () => {}));
  assert.deepEqual(pressed(), ['antispinward', 'Spin']);
  assert.deepEqual(kept, ['(antispinward)', '“Spin”.']);
  globalThis.document = before;
});

test('every word that can be pressed has its entry', () => {
  const entries = GLOSSARY.map(([term]) => term);
  assert.deepEqual(
    TERMS.filter(term => !entries.includes(term)),
    [],
  );
});
