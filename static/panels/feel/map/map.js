// The map of place 4: spin against radius, as the server draws it, what each published limit forbids; and over it this habitat as a
// ring.

import { tr } from '../../../state/language.js';
import { RADIUS, SPIN } from '../../../state/fields.js';
import { createNewest } from '../../../state/newest.js';
import { clamp } from '../../../state/scale.js';
import { $$, h, s, setAttribute, setChildren, setText, parseDrawing } from '../../shared/dom.js';
import { drawFamily, hatch, makeFrame } from './frame.js';
import { FIRST_GROUP, insideWords, drawnOf, groupsOf, createMapKey, createMapTable, createMapSaving } from './legend.js';
import { createHabitatMark, labelsOf } from './habitat_mark.js';
import { createRing, dialWords } from './ring.js';
import { createFold } from '../../shared/fold.js';
import { drawnScale } from '../../shared/large.js';
import { createList } from '../../shared/choice.js';

const WIDTH_PX = { least: 240, first: 320, most: 1200 }; // that the server draws
const WORDS = 'text:is(.limit-words, .equal, .what), .family-smallest text'; // what the name of this habitat keeps clear of

export function createFeelMap({ element, store, client, large }) {
  let group = FIRST_GROUP,
    room = WIDTH_PX.first, // that the map has
    family = null,
    drawing = null, // the server's answer that is shown
    request = null,
    frame = null,
    labels = null;
  const ground = s('g', {}),
    inside = s('rect', {}),
    band = s('g', { 'clip-path': 'url(#map-inside)' }),
    mark = createHabitatMark(),
    title = s('title', { id: 'map-title' }, tr('Map of radius and spin')),
    words = s('desc', { id: 'map-words' });
  const defs = s('defs', {}, hatch(), s('clipPath', { id: 'map-inside' }, inside));
  const svg = s('svg', { class: 'map', role: 'img', 'aria-labelledby': 'map-title map-words' }, title, words, defs, ground, band, mark.element);
  const ring = createRing({ store, frame: () => frame, say: () => uncapitalised(insideWords(store.feel, group)) });
  const box = h('div', { class: 'map-box' }, svg, ring.element);
  const caption = h('p', { class: 'small' }),
    key = createMapKey(() => drawing);
  const list = createList({ 'aria-label': tr('Limits drawn on the map') }, { options: () => groupsOf(store.feel), chosen: () => group, choose });
  const table = createFold({
    words: () => (table.element.hidden ? tr('Show the table') : tr('Hide the table')),
    make: () => [createMapTable({ store, drawing: () => drawing })],
  });
  const drawn = h('div', {}, box, caption);
  element.append(
    drawn,
    h('p', { class: 'links' }, large.button({ place: 4, title: () => tr('Map of published limits'), part: drawn })),
    h('div', { class: 'between' }, h('span', {}, tr('Limits drawn')), list.element),
    key.element,
    table.element,
    h('p', { class: 'links' }, table.button, createMapSaving({ store, exported: client.exported })),
  );
  new ResizeObserver(([entry]) => {
    room = entry.contentRect.width || room;
    if (store.feel) update();
  }).observe(box);

  function choose(value) {
    group = value;
    update();
  }

  const { want } = createNewest({
    request: () => request,
    ask: ({ body, options }, signal) => client.map(body, { ...options, signal }),
    answered: show,
    failed: problem => {
      request = null; // with the next answer about people it is asked again
      setText(caption, tr('The map could not be drawn: {why}', { why: problem.message }));
    },
  });

  // the lines stand still while the ring moves: they are asked for anew only when they, the width or the units change
  function ask() {
    const { habitat, person, own_limits } = store.feel,
      width = clamp(Math.round(room / drawnScale(box)), WIDTH_PX.least, WIDTH_PX.most), // its words grow as it is drawn smaller
      options = { width, draw: drawnOf(group), units: store.view.units };
    if (request && JSON.stringify([request.body.person, request.body.own_limits, request.options]) === JSON.stringify([person, own_limits, options])) return;
    request = { body: { habitat, person, own_limits }, options };
    if (!drawing) setText(caption, tr('Drawing the map…'));
    want();
  }

  function show(answer, { options }) {
    drawing = answer;
    frame = makeFrame(answer);
    const lines = parseDrawing(answer.svg),
      { left, top, right, bottom } = frame.box;
    setAll(svg, { class: options.draw.length ? 'map' : 'map dense', viewBox: lines.getAttribute('viewBox'), width: frame.width, height: frame.height });
    setAll(inside, { x: left, y: top, width: right - left, height: bottom - top });
    setChildren(ground, [...lines.children]);
    for (const line of $$('.limit', ground)) line.after(s('path', { d: line.getAttribute('d'), class: 'reach' })); // where a pointer may rest
    drawBand();
    update();
  }

  function drawBand() {
    setChildren(band, family ? drawFamily(frame, family) : []);
    labels = null;
  }

  function update() {
    if (!groupsOf(store.feel).some(([value]) => value === group)) group = 'all';
    ask();
    if (!drawing) return;
    drawMark();
    const counted = countedWords();
    setText(caption, captionWords(counted));
    setText(words, tr('{dials}. {counted} The table below holds the same.', { dials: dialWords(store), counted }));
    ring.update();
    list.update();
    key.update();
    table.update();
  }

  // words can be measured only while they are drawn
  function drawMark() {
    if (!svg.checkVisibility()) return;
    labels ??= labelsOf([...svg.querySelectorAll(WORDS)]);
    const [radius_m, spin_rpm] = [RADIUS, SPIN].map(store.read);
    mark.update(frame, { called: store.read('title') || tr('This habitat'), radius_m, spin_rpm, labels });
  }

  // the count, and why it may disagree with the lines
  function countedWords() {
    const { map: note } = store.feel.says;
    return `${insideWords(store.feel, group)}.${note ? ` ${note}` : ''}`;
  }

  function captionWords(counted) {
    const wishes = family?.family ? tr('Hatched: what meets your wishes; the square is the smallest.') : null;
    return [counted, tr('Each tint is what one limit forbids. Drag the ring to change radius and spin.'), wishes].filter(Boolean).join(' ');
  }

  return {
    update,
    /** Habitats that meet some wishes, drawn from now on; null: none. */
    showFamily(answer) {
      family = answer;
      if (!frame || !store.feel) return;
      drawBand();
      update();
    },
  };
}

function uncapitalised(text) {
  return text[0].toLowerCase() + text.slice(1);
}

function setAll(element, attributes) {
  for (const [name, value] of Object.entries(attributes)) setAttribute(element, name, value);
}
