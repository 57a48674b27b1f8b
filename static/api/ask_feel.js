// What people would feel, asked once its place was opened, and from then on with every change of the habitat or the person.

import { createNewest } from '../state/newest.js';

const ASKED = ['habitat', 'air', 'person', 'own_limits'];

export function createAskFeel({ store, feel }) {
  let opened = false,
    asked = null;
  const newest = createNewest({
    request,
    ask: ({ body, units }, signal) => feel(body, { units, signal }),
    told: answer => store.setFeel(answer),
    // a refusal of the scene is told by the question about the paths; the figures stay those of the last scene that stood
    failed: problem => store.setFeel(null, problem),
  });

  const now = () => ({ body: requestOf(store.document), units: store.view.units });

  function request() {
    const asking = now();
    asked = JSON.stringify(asking);
    return asking;
  }

  function ask() {
    if (opened && JSON.stringify(now()) !== asked) newest.want();
  }

  store.on('document', ({ replaced }) => {
    if (replaced) {
      newest.drop();
      asked = null;
    }
    ask();
  });
  store.on('view', patch => {
    if (patch.place === 4) opened = true;
    ask();
  });
}

/** The part of a document that the question takes. */
export function requestOf(document) {
  return Object.fromEntries(ASKED.filter(name => name in document).map(name => [name, document[name]]));
}
