// What people would feel, asked once its place was opened, and from then on with every change of the habitat or the person: one
// question in flight, the newest waits.

const ASKED = ['habitat', 'air', 'person', 'own_limits'];

export function createAskFeel({ store, feel }) {
  let wanted = false,
    inFlight = false,
    asked = null;

  async function ask() {
    const request = requestOf(store.document),
      key = JSON.stringify([request, store.view.units]);
    if (!wanted || inFlight || key === asked) return;
    inFlight = true;
    asked = key;
    try {
      store.setFeel(await feel(request, { units: store.view.units }));
    } catch (problem) {
      // a refusal of the scene is told by the question about the paths; the figures stay those of the last scene that stood
      store.setFeel(null, problem);
    } finally {
      inFlight = false;
    }
    ask();
  }

  store.on('document', ask);
  store.on('view', patch => {
    if (patch.place === 4) wanted = true;
    ask();
  });
}

/** The part of a document that the question takes. */
export function requestOf(document) {
  return Object.fromEntries(ASKED.filter(name => name in document).map(name => [name, document[name]]));
}
