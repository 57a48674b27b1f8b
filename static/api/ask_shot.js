// Every throw that arrives, asked while place 5 is open, and anew with every change of the scene, of the catcher or of what is kept.

import { createNewest } from '../state/newest.js';
import { PLACE, aimRequest, stillChosen } from '../state/shot.js';
import { ValidationError } from './errors.js';

/** aim(body, {units, signal}) → promise of the answer. */
export function createAskShot({ store, aim, timers = {} }) {
  let lastQuestion = null;
  const { want, drop } = createNewest({
    request,
    ask: ({ body, units }, signal) => aim(body, { units, signal }),
    answered: (answer, { of }) => {
      const { answer: before, chosen } = store.shot;
      store.setShot(
        { answer, problem: null, chosen: before?.motion === answer.motion ? stillChosen(before?.ways[chosen], answer.ways) : 0 },
        { live: true, of },
      );
    },
    failed: problem => {
      if (!(problem instanceof ValidationError)) lastQuestion = null; // asked again when something changes, or the place is opened again
      store.setShot({ answer: null, problem, chosen: 0 }, { live: true });
    },
    ...timers,
  });

  const now = () => ({ body: aimRequest(store.document, store.shot.aim), units: store.view.units });

  function request() {
    const question = now();
    lastQuestion = JSON.stringify(question);
    return { ...question, of: { document: store.document, shot: store.shot } };
  }

  function ask() {
    const question = now();
    if (store.view.place === PLACE && question.body && JSON.stringify(question) !== lastQuestion) want();
  }

  store.on('document', ({ replaced }) => {
    if (replaced) {
      drop();
      lastQuestion = null;
    }
    ask();
  });
  store.on('shot', patch => {
    if ('aim' in patch) ask();
  });
  store.on('view', ask);
}
