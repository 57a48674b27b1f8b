// Where can it come down? Two figures of a throw are varied, and every landing is a knot of a net over the unrolled deck. It is asked for while its
// place is open, tells how far it is, and can be stopped.

import { inSigns, tr, trLater, trParts } from '../../state/language.js';
import { fieldOf } from '../../state/fields.js';
import { PAIRS, firstOver, landingsRequest, rangeOf } from '../../state/landings.js';
import { createNewest } from '../../state/newest.js';
import { indexOf } from '../../state/shot.js';
import { h, setAttribute, setChildren } from '../shared/dom.js';
import { createList } from '../shared/choice.js';
import { createSaved, download, fileName } from '../shared/files.js';
import { createInline } from '../shared/inline.js';
import { setWorded } from '../shared/worded.js';
import { createNet } from './net.js';

const SLOW_MS = 300; // what comes sooner needs no bar
const FILES = ['csv', 'svg', 'pdf'];
const PAIRED = {
  'elevation_deg speed_m_s': trLater('elevation and speed'),
  'heading_deg speed_m_s': trLater('heading and speed'),
  'elevation_deg heading_deg': trLater('elevation and heading'),
};
const RANGES = {
  speed_m_s: trLater('speed from {first} to {last}'),
  heading_deg: trLater('heading from {first} to {last}'),
  elevation_deg: trLater('elevation from {first} to {last}'),
};

export function createLandings({ element, store, client, heard, large, explain }) {
  let lastQuestion = null,
    waits = 0; // until it is told that something is under way
  const net = createNet({ store, client, large }),
    sentence = createRanges({ store });
  const begin = h('button', { type: 'button', class: 'btn', onclick: draw }, tr('Draw the net of landings'));
  const first = h(
    'div',
    {},
    h('p', { class: 'lead' }, tr('As its speed and its elevation vary, every place where the throw can land: a net over the unrolled deck.')),
    begin,
  );
  const bar = h('progress', { max: 1, 'aria-label': tr('Throws flown') }),
    stop = h('button', { type: 'button', class: 'link', onclick: stopped }, tr('Stop')),
    busy = h('p', { class: 'links landings-busy', hidden: true }, bar, stop);
  const words = h('p', { class: 'lead landings-words' });
  const more = h('p', { class: 'small' });
  const again = h('button', { type: 'button', class: 'btn', hidden: true, onclick: goOn }, tr('Go on'));
  const files = FILES.map(format =>
    h(
      'button',
      { type: 'button', class: 'link', 'aria-label': tr('Save the net as {format}', { format: format.toUpperCase() }), onclick: () => save(format) },
      format.toUpperCase(),
    ),
  );
  const saved = createSaved();
  const saving = h('p', { class: 'links' }, h('span', {}, tr('Save the net:'), ' ', files[0], ', ', files[1], ', ', files[2]), saved.element);
  const asked = h('div', { hidden: true }, sentence.element, busy, words, again, net.element, more, saving);
  element.append(first, asked);

  const { want, drop } = createNewest({
    request: question,
    ask: ({ body, units, width }, signal) => {
      setAttribute(bar, 'value', null);
      return client.landings(body, { units, width, signal, told: (done, of) => setAttribute(bar, 'value', of ? done / of : null) });
    },
    answered: answer => {
      rest();
      store.setShot({ landings: answer, flown: null, landingsProblem: null });
      heard.say(answer.words[0]);
    },
    failed: problem => {
      rest();
      store.setShot({ landings: null, flown: null, landingsProblem: problem });
    },
  });

  function draw() {
    const motion = store.document.motions[indexOf(store, store.shot.aim.motion)];
    store.setShot({ over: firstOver(PAIRS[0], motion) });
    sentence.focus();
  }

  function question() {
    return { body: landingsRequest(store.document, store.shot.aim.motion, store.shot.over), units: store.view.units, width: net.width() };
  }

  function ask() {
    const key = JSON.stringify(question());
    if (key === lastQuestion) return;
    lastQuestion = key;
    setAttribute(again, 'hidden', true);
    clearTimeout(waits);
    waits = setTimeout(() => setAttribute(busy, 'hidden', null), SLOW_MS);
    want();
  }

  function rest() {
    clearTimeout(waits);
    setAttribute(busy, 'hidden', true);
  }

  function stopped() {
    drop();
    rest();
    setAttribute(again, 'hidden', null);
    again.focus();
    heard.say(tr('Stopped.'));
  }
  function goOn() {
    lastQuestion = null;
    ask();
  }

  async function save(format) {
    try {
      const { body, units } = question();
      saved.tell(download(`${fileName(store.read('title'))}-landings.${format}`, await client.landingsFile(format, body, units)));
    } catch (problem) {
      store.tell({ kind: 'failed', field: null, say: tr('The net could not be saved: {why}', { why: problem.message }) });
    }
  }

  function update() {
    const { aim, over, landings, landingsProblem } = store.shot;
    setAttribute(first, 'hidden', aim === null || over !== null);
    setAttribute(asked, 'hidden', aim === null || over === null);
    if (!aim || !over) {
      lastQuestion = null;
      return;
    }
    sentence.update();
    ask();
    setWorded(words, landingsProblem?.message ?? landings?.words[0] ?? '', explain);
    setWorded(more, landings?.words.slice(1).join(' ') ?? '', explain);
    setAttribute(saving, 'hidden', landings === null);
    net.update();
  }
  return { update };
}

// What is varied, as a sentence of two ranges.
function createRanges({ store }) {
  const over = () => store.shot.over;
  const pair = createList(
    { 'aria-label': tr('What varies'), class: 'pick' },
    {
      options: () => PAIRS.map((names, k) => [k, tr(PAIRED[names.join(' ')])]),
      chosen: () => PAIRS.findIndex(names => names.every((name, k) => name === over()[k].field)),
      choose: k => store.setShot({ over: firstOver(PAIRS[k], store.document.motions[indexOf(store, store.shot.aim.motion)]) }),
    },
  );
  const element = h('p', { class: 'words aim-sentence' });
  let figures = [],
    builtFor = null;

  function figure(k, end) {
    const { field } = over()[k],
      about = fieldOf(store.fields, `motions.*.${field}`),
      label = end === 'first' ? tr('{label}, from', about) : tr('{label}, to', about);
    const one = createInline({
      field: { ...about, label },
      units: () => store.view.units,
      read: () => over()[k][end],
      write: (value, live) =>
        store.setShot(
          { over: over().map((range, i) => (i === k ? rangeOf(field, end === 'first' ? value : range.first, end === 'last' ? value : range.last) : range)) },
          { live },
        ),
      wrong: typed => store.tell({ kind: 'told', field: null, say: tr('{label} was {typed}; it must be {may_be}.', { label, typed, may_be: about.may_be }) }),
      words: about.unit === '°' ? degrees => inSigns(`${Number(degrees.toFixed(1))}°`) : null,
    });
    figures.push(one);
    return one.element;
  }

  function update() {
    const key = over()
      .map(({ field }) => field)
      .join();
    if (key !== builtFor) {
      builtFor = key;
      figures = [];
      const range = k => trParts(RANGES[over()[k].field], { first: figure(k, 'first'), last: figure(k, 'last') });
      setChildren(element, trParts('Vary {pair}: {one} and {other}.', { pair: pair.element, one: range(0), other: range(1) }).flat());
    }
    pair.update();
    figures.forEach(one => one.update());
  }
  return { element, update, focus: () => pair.element.focus({ preventScroll: true }) };
}
