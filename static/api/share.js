// The server, spoken to by the presenter's page of a show: scenes and what all see go out, who follows and their marks come in.

import { listen } from './events.js';
import { asJson, request } from './request.js';

const WAIT_MS = 60_000;

export function createShareClient({ base = 'api/share' } = {}) {
  const post = (path, body) => request(`${base}/${path}`, { body, wait_ms: WAIT_MS, read: asJson });
  return {
    code: `${base}/code.svg`,
    /** The digest by which followers get a scene; it is traced once for all of them. */
    scene: async (document, units) => (await post(`scenes?units=${units}`, document)).scene,
    /** What all see. */
    now: told => post('now', told),
    /** heard({followers, ask, count, marks}); changed(state): as of events.js. */
    listen: ({ heard, changed = () => {} }) => listen(`${base}/room`, { heard: (name, data) => name === 'room' && heard(data), changed }),
  };
}
