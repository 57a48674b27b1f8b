// The map of place 4: spin against radius on log axes, what each published limit forbids, and this habitat as a ring.

import { h, s, setAttribute, setChildren, setText } from '../../shared/dom.js';
import { createMapTable } from './table.js';
import { drawFamily, hatch } from './family.js';
import { axes, makeFrame } from './frame.js';
import { createMapKey } from './key.js';
import { FIRST_GROUP, countWords, groupsOf, tableRows } from './groups.js';
import { createHere } from './here.js';
import { drawLines } from './lines.js';
import { labelsOf } from './plate.js';
import { RADIUS, SPIN, createRing, dialWords } from './ring.js';
import { createMapSaving } from './saving.js';
import { lowerFirst } from '../say.js';
import { createFold } from '../../shared/fold.js';
import { createList } from '../../shared/select.js';

const FIRST_WIDTH_PX = 320;
const WORDS = 'text:is(.limit-words, .equal, .what), .family-smallest text'; // what the name of this habitat keeps clear of

export function createFeelMap({ element, store, client }) {
  let group = FIRST_GROUP,
    width = FIRST_WIDTH_PX,
    family = null,
    drawn = null,
    frame = null,
    labels = null;
  const ground = s('g', {}),
    inside = s('rect', {}),
    found = s('g', { 'clip-path': 'url(#map-inside)' }),
    here = createHere(),
    title = s('title', { id: 'map-title' }, 'Map of radius and spin'),
    words = s('desc', { id: 'map-words' });
  const defs = s('defs', {}, hatch(), s('clipPath', { id: 'map-inside' }, inside));
  const svg = s('svg', { class: 'map', role: 'img', 'aria-labelledby': 'map-title map-words' }, title, words, defs, ground, found, here.element);
  const ring = createRing({ store, frame: () => frame, say: () => lowerFirst(countWords(store.feel, group)) });
  const box = h('div', { class: 'map-box' }, svg, ring.element);
  const caption = h('p', { class: 'small' }),
    key = createMapKey({ store, group: () => group });
  const list = createList(
    { 'aria-label': 'Limits drawn on the map' },
    { options: () => groupsOf(store.feel), chosen: () => group, choose },
  );
  const table = createFold({
    words: () => (table.element.hidden ? 'Show the table' : 'Hide the table'),
    make: () => [createMapTable({ store, group: () => group })],
  });
  element.append(
    box,
    caption,
    h('div', { class: 'between' }, h('span', {}, 'Limits drawn'), list.element),
    key.element,
    table.element,
    h('p', { class: 'links' }, table.button, createMapSaving({ store, exported: client.exported })),
  );
  new ResizeObserver(([entry]) => {
    width = Math.round(entry.contentRect.width) || width;
    if (store.feel) update();
  }).observe(box);

  function choose(value) {
    group = value;
    update();
  }

  // the lines stand still while the ring moves: they are drawn anew only when they, the width or the units change
  function drawGround() {
    const key = JSON.stringify([store.feel.map, group, width, store.view.units]);
    if (key === drawn) return;
    drawn = key;
    const { map } = store.feel;
    frame = makeFrame(width, map);
    const { width: wide, height: high, box: edges } = frame;
    setAll(svg, { class: group === 'all' ? 'map dense' : 'map', viewBox: `0 0 ${wide} ${high}`, width: wide, height: high });
    setAll(inside, { x: edges.left, y: edges.top, width: edges.right - edges.left, height: edges.bottom - edges.top });
    const lines = drawLines(frame, { gravity: map.gravity, rows: tableRows(store.feel, group), quantities: store.feel.quantities }, store.view.units);
    setChildren(ground, lines, axes(frame, store.view.units));
    drawFound();
  }

  function drawFound() {
    setChildren(found, family ? drawFamily(frame, family) : []);
    labels = null;
  }

  function update() {
    if (!groupsOf(store.feel).some(([value]) => value === group)) group = 'all';
    drawGround();
    drawHere();
    const counted = countedWords();
    setText(caption, captionWords(counted));
    setText(words, `${dialWords(store)}. ${counted} The table below holds the same.`);
    ring.update();
    list.update();
    key.update();
    table.update();
  }

  // words can be measured only while they are drawn
  function drawHere() {
    if (!svg.checkVisibility()) return;
    labels ??= labelsOf([...svg.querySelectorAll(WORDS)]);
    const [radius_m, spin_rpm] = [RADIUS, SPIN].map(store.read);
    here.update(frame, { called: store.read('title') || 'This habitat', radius_m, spin_rpm, labels });
  }

  // the count, and why it may disagree with the lines
  function countedWords() {
    const { map: note } = store.feel.says;
    return `${countWords(store.feel, group)}.${note ? ` ${note}` : ''}`;
  }

  function captionWords(counted) {
    const wishes = family?.family ? ' Ruled: what your wishes leave; the square is the smallest.' : '';
    return `${counted} Each tint is what one limit forbids. Drag the ring to change radius and spin.${wishes}`;
  }

  return {
    update,
    /** Habitats that meet some wishes, drawn from now on; null: none. */
    showFamily(answer) {
      family = answer;
      if (!frame || !store.feel) return;
      drawFound();
      update();
    },
  };
}

function setAll(element, attributes) {
  for (const [name, value] of Object.entries(attributes)) setAttribute(element, name, value);
}
