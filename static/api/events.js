// Server-sent events by fetch: an EventSource can send no key in a header, and does not tell why it was refused. Comes back by itself.

import { tr } from '../state/language.js';

const AGAIN_MS = [500, 1000, 2000, 4000]; // after it was in vain once, twice …
const SILENCE_MS = 40_000; // more than two heartbeats of the server
const REFUSED = [401, 403, 404];

/** `heard(name, data)`: an event, its data as JSON. `changed(state)`: 'on', 'lost', or {refused: why}, after which it asks no more.
 *  → {again(): at once, not when it is due; lost(): nothing comes any more, for there is no network; stop()}. */
export function listen(address, { headers = {}, heard, changed, timers = { later: setTimeout.bind(globalThis), forget: clearTimeout.bind(globalThis) } }) {
  let inVain = 0,
    seen = null, // the id of the last event that had one
    stopped = false,
    due = null,
    asking = null;

  async function ask() {
    due = null;
    asking = new AbortController();
    let silence = null;
    const { signal } = asking,
      stop = () => asking.abort();
    const alive = () => {
      timers.forget(silence);
      silence = timers.later(stop, SILENCE_MS);
    };
    let after_ms = 0;
    try {
      alive();
      const answer = await fetch(address, { headers: { ...headers, ...(seen && { 'last-event-id': seen }) }, signal, cache: 'no-store' });
      if (REFUSED.includes(answer.status)) return refuse(await answer.json().catch(() => null));
      if (answer.ok) await read(answer.body, alive);
      else after_ms = 1000 * Number(answer.headers.get('retry-after'));
    } catch {
      // the network has gone, or the server
    } finally {
      timers.forget(silence);
    }
    lost(after_ms);
  }

  async function read(body, alive) {
    const reader = body.pipeThrough(new TextDecoderStream()).getReader();
    let rest = '';
    for (let part = await reader.read(); !part.done && !stopped; part = await reader.read()) {
      alive();
      if (inVain !== null) changed('on');
      inVain = null;
      const events = `${rest}${part.value}`.split('\n\n');
      rest = events.pop();
      for (const event of events) tell(event);
    }
  }

  function tell(event) {
    const fields = Object.fromEntries(event.split('\n').map(line => [line.slice(0, line.indexOf(': ')), line.slice(line.indexOf(': ') + 2)]));
    if (fields.id) seen = fields.id;
    if ('data' in fields) heard(fields.event, JSON.parse(fields.data));
  }

  function refuse(said) {
    stopped = true;
    changed({ refused: said?.refused?.[0]?.say ?? tr('The server refused it.') });
  }

  function lost(after_ms) {
    if (stopped) return;
    changed('lost');
    const wait_ms = AGAIN_MS[Math.min(inVain ?? 0, AGAIN_MS.length - 1)];
    inVain = (inVain ?? 0) + 1;
    due = timers.later(ask, Math.max(after_ms || 0, wait_ms * (0.5 + Math.random()))); // a hall does not come back all at once
  }

  ask();
  return {
    again() {
      if (stopped || due === null) return;
      timers.forget(due);
      ask();
    },
    lost: () => asking.abort(),
    stop() {
      stopped = true;
      timers.forget(due);
      asking.abort();
    },
  };
}
