// What is asked of the craft, each question a heading with its answer in sentences; its figures can be changed under it. What is not asked
// yet is a button.

import { tr } from '../../state/language.js';
import { askBlock, leaveBlock } from '../../state/ship.js';
import { h, parseDrawing, setAttribute, setChildren, setText } from '../shared/dom.js';
import { createFold } from '../shared/fold.js';
import { setWorded } from '../shared/worded.js';
import { createAside } from './aside.js';
import { passFocus } from './focus.js';
import { blockRows } from './blocks.js';
import { createShowing } from './showing.js';

/** parts: what makes the list of parts, which unfolds under the first question. */
export function createQuestions({ element, store, clock, heard, explain, parts }) {
  const { blocks } = store.fields.craft;
  const list = createFold({
    words: () => tr('Its parts ({count})', { count: store.document.craft.parts.length }),
    inner: h('div', { class: 'craft-parts' }),
    make: () => [parts()],
  });
  const first = createQuestion({ store, block: null, explain, findings: ['mass'], fold: list }),
    asked = blocks.map(block =>
      createQuestion({ store, block, explain, left, findings: block.findings, shows: block.name === 'tumble' ? createShowing({ store, clock, heard }) : null }),
    );
  const more = h('p', { class: 'links ask-more' }),
    asks = blocks.map(block => h('button', { type: 'button', class: 'btn', onclick: () => ask(block) }, block.asks));
  const intro = h('p', { class: 'small' }, tr('Ask about'));
  more.append(...asks);
  element.append(first.element, ...asked.map(one => one.element), intro, more);

  function ask(block) {
    store.edit(draft => {
      askBlock(draft.craft, block, store.fields.craft, draft.habitat.radius_m);
    });
    const one = asked[blocks.indexOf(block)];
    one.element.scrollIntoView({ block: 'nearest' });
    passFocus(one.opener);
  }

  function left(block) {
    passFocus(asks[blocks.indexOf(block)]);
  }

  function update() {
    first.update();
    asked.forEach(one => one.update());
    blocks.forEach((block, k) => setAttribute(asks[k], 'hidden', Boolean(store.document.craft[block.name])));
    setAttribute(
      intro,
      'hidden',
      blocks.every(block => store.document.craft[block.name]),
    );
  }
  return {
    update,
    /** The list of parts, unfolded. */
    showParts() {
      if (list.element.hidden) list.toggle();
    },
  };
}

function createQuestion({ store, block, explain, findings, left, fold = null, shows = null }) {
  const parts = findings.map(() => ({ title: h('h3', { class: 'third' }), says: h('p', { class: 'words craft-says' }), chart: createChart() }));
  const figures = fold ?? createFold({ words: () => tr('Change figures'), make: () => blockRows({ store, block }) });
  const away = block && h('button', { type: 'button', class: 'link', onclick: leave }, tr('Do not ask'));
  const aside = createAside({ store, findings });
  const element = h(
    'section',
    { class: 'craft-question' },
    parts.flatMap(({ title, says, chart }) => [title, says, chart.element]),
    shows?.element,
    h('p', { class: 'links' }, figures.button, aside.button, away),
    figures.element,
    aside.element,
  );

  function update() {
    const { answer } = store.ship;
    const wanted = !block || Boolean(store.document.craft[block.name]);
    setAttribute(element, 'hidden', !wanted);
    if (!wanted) return;
    findings.forEach((name, k) => {
      const finding = answer?.[name] ?? null;
      setAttribute(parts[k].title, 'hidden', !finding && k > 0);
      const question = finding?.question ?? block?.question ?? tr('What is it made of?'); // nobody asks of the first, it is always told
      setText(parts[k].title, question);
      setWorded(parts[k].says, finding?.says.join(' ') ?? '', explain);
      parts[k].chart.show(finding?.chart ?? null);
    });
    figures.update();
    aside.update();
    shows?.update();
  }
  function leave() {
    store.edit(draft => leaveBlock(draft.craft, block));
    left(block);
  }
  return { element, update, opener: figures.button };
}

// what is better seen than said, as the server draws it
function createChart() {
  const sheet = h('div', { class: 'craft-chart' }),
    caption = h('figcaption', { class: 'small' }),
    element = h('figure', { class: 'craft-figure', hidden: true }, sheet, caption);
  let shown = null;
  function show(chart) {
    setAttribute(element, 'hidden', chart === null);
    if (chart === null || chart.svg === shown) return;
    shown = chart.svg;
    const svg = parseDrawing(chart.svg);
    setAttribute(svg, 'aria-hidden', true);
    setChildren(sheet, svg);
    setText(caption, chart.says);
  }
  return { element, show };
}
