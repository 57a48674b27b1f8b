// Whether the craft would cope, asked while place 6 is open, and anew with every change of the craft or of the habitat round it.

import { createNewest } from '../state/newest.js';
import { PLACE, craftRequest } from '../state/ship.js';
import { ValidationError } from './errors.js';

/** craft(body, {units, width, drawing, signal}) → promise of the answer. */
export function createAskShip({ store, craft, timers = {} }) {
  let lastQuestion = null;
  const { want, drop } = createNewest({
    request,
    ask: ({ body, units, width, drawing }, signal) => craft(body, { units, width, drawing, signal }),
    answered: (answer, { of }) => store.setShip({ answer, problem: null }, of),
    failed: problem => {
      if (!(problem instanceof ValidationError)) lastQuestion = null; // asked again when something changes, or the place is opened again
      store.setShip({ problem });
    },
    ...timers,
  });

  const now = () => ({ body: craftRequest(store.document), units: store.view.units, width: store.ship.width_px, drawing: store.ship.drawing_px });

  function request() {
    const question = now();
    lastQuestion = JSON.stringify(question);
    return { ...question, of: store.document };
  }

  function ask() {
    const question = now();
    if (store.view.place === PLACE && question.body && JSON.stringify(question) !== lastQuestion) want();
  }

  store.on('document', ({ replaced }) => {
    if (replaced) {
      drop();
      lastQuestion = null;
      store.setShip({ answer: null, problem: null });
    }
    ask();
  });
  for (const topic of ['view', 'ship']) store.on(topic, ask);
}
