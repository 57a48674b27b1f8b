// The server, spoken to by who follows: with the key that stands in the address, and nothing but what a follower may ask.

import { decodeAnswer } from './client.js';
import { listen } from './events.js';
import { asJson, request } from './request.js';

const WAIT_MS = 20_000;
const SCENES_KEPT = 4;

/** `connection.run(ask)`: what asks again while the server is away or busy. */
export function createFollowClient({ key, base = 'api/follow', connection = { run: ask => ask() } }) {
  const headers = { authorization: `Bearer ${key}` };
  const once = (path, more = {}) => request(`${base}/${path}`, { wait_ms: WAIT_MS, read: asJson, headers, ...more });
  const ask = path => connection.run(() => once(path));
  const scenes = new Map(); // digest → promise

  async function asked(digest) {
    const { document, trace, mesh } = await ask(`scenes/${digest}`);
    return { document, answer: { ...decodeAnswer(trace), drawn: mesh.habitats, craft: mesh.craft ?? null } };
  }

  return {
    fields: () => ask('fields'),
    /** {document, answer} of a scene that is shown or comes next. */
    scene(digest) {
      const scene = scenes.get(digest) ?? asked(digest);
      scenes.delete(digest);
      scenes.set(digest, scene);
      scene.catch(() => scenes.delete(digest));
      if (scenes.size > SCENES_KEPT) scenes.delete(scenes.keys().next().value);
      return scene;
    },
    /** {sent_ms, at_ms, got_ms}: the server's time, and the own before and after it was asked. */
    async clock(now) {
      const sent_ms = now();
      const { at_ms } = await once('clock');
      return { sent_ms, at_ms, got_ms: now() };
    },
    /** `placed` {ask, who, along_m} → where the mark stands. */
    guess: async placed => (await once('guess', { body: placed })).along_m,
    listen: hears => listen(`${base}/now`, { headers, ...hears }),
  };
}
