// Every throw that arrives, asked while place 5 is open, and anew with every change of the scene, of the catcher or of what is kept.

import { tr } from '../state/language.js';
import { createNewest } from '../state/newest.js';
import { PLACE, aimRequest, stillChosen } from '../state/shot.js';
import { createStatus } from '../state/status.js';
import { ValidationError } from './errors.js';

const LIVE_FLIGHT_S = 15; // while a hand drags, in air, where long flights take long to look for

/** aim(body, {units, signal}) → promise of the answer. */
export function createAskShot({ store, aim, status = createStatus(), timers = {} }) {
  let lastQuestion = null,
    live = false;
  const { want, drop } = createNewest({
    request,
    ask: put,
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

  function now() {
    const body = aimRequest(store.document, store.shot.aim);
    return { body: body && live && store.document.air !== null ? { ...body, flight_max_s: LIVE_FLIGHT_S } : body, units: store.view.units };
  }

  async function put({ body, units }, signal) {
    const job = status.begin({ say: tr('Looking for every throw that arrives') });
    try {
      return await aim(body, { units, signal });
    } finally {
      job.end();
    }
  }

  function request() {
    const question = now();
    lastQuestion = JSON.stringify(question);
    return { ...question, of: { document: store.document, shot: store.shot } };
  }

  function ask() {
    const question = now();
    if (store.view.place === PLACE && question.body && JSON.stringify(question) !== lastQuestion) want();
  }

  store.on('document', ({ replaced, live: dragged = false }) => {
    live = dragged;
    if (replaced) {
      drop();
      lastQuestion = null;
    }
    ask();
  });
  store.on('shot', patch => {
    if (!('aim' in patch)) return;
    ({ live } = patch);
    ask();
  });
  store.on('view', ask);
}
