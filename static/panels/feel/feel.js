// Place 4: what people would feel. Fetched with its first opening.

import { tr } from '../../state/language.js';
import { $, setText, icon } from '../shared/dom.js';
import { dressed } from '../shared/dressed.js';
import { createFeelAdaptation } from './findings.js';
import { createFeelLimits } from './limits.js';
import { createFeelDay } from './day.js';
import { createFeelFigures } from './figures.js';
import { createFeelMap } from './map/map.js';
import { createFeelPerson } from './person.js';
import { createFeelSize } from './size/size.js';
import { createFeelWhy } from './why.js';

/** Each part fills its own section and has update(); `store.feel` is the answer, null until it is there. */
export async function createFeel({ store, client, glossary, large }) {
  await dressed('static/feel.css');
  $('#feel-caution').prepend(icon('caution'));
  const map = createFeelMap({ element: $('#feel-map'), store, client, large });
  const parts = [
    createFeelDay({ element: $('#feel-day'), store }),
    createFeelSize({ element: $('#feel-size'), store, client, shown: map.showFamily }),
    createFeelPerson({ element: $('#feel-person'), store }),
    map,
    createFeelLimits({ element: $('#feel-limits'), store }),
    createFeelWhy({ element: $('#feel-why'), store }),
    createFeelAdaptation({ element: $('#feel-adaptation'), store }),
    createFeelFigures({ element: $('#feel-figures'), store, explain: glossary.explain }),
  ];

  function update() {
    if (store.view.place !== 4) return;
    if (!store.feel) return setText($('#feel-words'), store.feelProblem?.message ?? tr('Working out what people would feel…'));
    setText($('#feel-words'), store.feel.says.lead);
    setText($('#feel-verdict'), store.feel.says.summary);
    setText($('#feel-caution span'), store.feel.caution);
    parts.forEach(part => part.update());
  }
  for (const topic of ['feel', 'document', 'view', 'notice']) store.on(topic, update);
  update();
}
