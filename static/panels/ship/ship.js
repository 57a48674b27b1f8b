// Place 6: would the ship cope? Fetched with its first opening.

import { tr } from '../../state/language.js';
import { PLACE } from '../../state/ship.js';
import { createSaving } from './saving.js';
import { $, icon, setAttribute, setText } from '../shared/dom.js';
import { dressed } from '../shared/dressed.js';
import { createParts } from './parts.js';
import { createQuestions } from './questions.js';
import { createStart } from './start.js';
import { createTold } from './told.js';
import { createViews } from './views.js';

export async function createShip({ store, clock, client, heard, large, explain }) {
  await dressed('static/ship.css');
  $('#ship-caution').prepend(icon('caution'));
  let number = 0;
  const chosen = () => Math.min(number ?? -1, store.document.craft.parts.length - 1);
  const choose = next => {
    number = next;
    update();
  };
  const pick = next => {
    choose(next);
    questions.showParts();
  };
  const start = createStart({ element: $('#ship-start'), store, client }),
    views = createViews({ element: $('#ship-views'), store, large, chosen, choose: pick }),
    questions = createQuestions({ element: $('#ship-questions'), store, clock, heard, explain, parts: () => createParts({ store, chosen, choose }) }),
    told = createTold({ store, heard });
  $('#ship-saving').append(createSaving({ store, client, questions: $('#ship-questions') }));
  const words = $('#ship-words'),
    built = ['#ship-views', '#ship-questions', '#ship-saving', '#ship-caution'].map(id => $(id));

  function update() {
    if (store.view.place !== PLACE) return;
    const has = Boolean(store.document.craft);
    built.forEach(part => setAttribute(part, 'hidden', !has));
    start.update();
    const { answer, problem } = store.ship;
    setAttribute(words, 'hidden', !has || (answer && !problem));
    if (!has) return;
    setText(words, problem ? problemWords(problem, answer) : tr('Working out how the craft would cope…'));
    setText($('#ship-caution span'), answer?.caution ?? '');
    for (const part of [views, questions, told]) part.update();
    start.settle();
  }
  // drawings are as wide as the column; that of the craft itself may be laid large over the stages
  const resized = new ResizeObserver(() => {
    const { width_px, drawing_px } = store.ship,
      wanted = views.widths();
    if (Math.abs(wanted.width_px - width_px) > 8 || Math.abs(wanted.drawing_px - drawing_px) > 8) store.setShip(wanted);
  });
  for (const part of [$('#ship-views'), views.box]) resized.observe(part);
  for (const topic of ['document', 'ship', 'view', 'notice']) store.on(topic, update);
  update();
}

// what was answered before stays, dimmed
const problemWords = ({ message }, answer) => (answer ? tr('{why} The answers below are still those from before.', { why: message }) : message);
