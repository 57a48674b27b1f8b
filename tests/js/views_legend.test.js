// The legend of a stage names arrows while they are drawn, and what it takes is measured once, never in a frame.

import assert from 'node:assert/strict';
import test from 'node:test';

import { ARROW_KINDS } from '../../static/state/arrow_kinds.js';
import { Legend } from '../../static/views/legend.js';

let reads = 0;
const element = () => ({
  style: {}, hidden: false, children: [], textContent: '',
  append(...parts) { this.children.push(...parts); },
  replaceChildren() { this.children = []; },
  setAttribute() {},
  get offsetWidth() { reads += 1; return 200; },
  get offsetHeight() { return 20; },
}); // biome-ignore format: a stand-in

test('it names what is drawn now; once all has landed it is gone and takes no room', t => {
  const { document, Path2D } = globalThis;
  Object.assign(globalThis, { document: { createElement: element, createElementNS: element }, Path2D: class {} });
  t.after(() => Object.assign(globalThis, { document, Path2D }));
  const legend = new Legend({ box: element() });
  legend.show(ARROW_KINDS, null, { width: 800, height: 500 }, 1);
  assert.equal(reads, 1);
  const seen = (...drawn) => {
    legend.tell(Object.fromEntries(ARROW_KINDS.map(({ show }) => [show, drawn.includes(show)])));
    return ARROW_KINDS.map(({ show }) => show).filter((_, k) => !legend.element.hidden && !legend.items[k].hidden);
  };
  assert.deepEqual(seen('velocity', 'coriolis'), ['velocity', 'coriolis']);
  assert.deepEqual(legend.spot, { x: 12, y: 468, w: 200, h: 20 });
  assert.deepEqual(seen(), []);
  assert.equal(legend.spot, null);
  assert.deepEqual(seen('centrifugal'), ['centrifugal']);
  const named = [];
  legend.ink({ save() {}, translate() {}, stroke() {}, fill() {}, restore() {} }, word => named.push(word));
  assert.deepEqual(named, ['centrifugal']);
  assert.equal(reads, 1);
});
