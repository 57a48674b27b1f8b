// One request to the server: its answer, or why there is none. Asking again is up to state/connection.js.

import { tr } from '../state/language.js';
import { Unanswered, ValidationError } from './errors.js';
import { upload } from './upload.js';

const BUSY_MS = 2000; // where a busy server does not say when to ask again
const LONGEST_BUSY_MS = 60_000;
const BUSY = [429, 503];
const BEHIND_A_PROXY = [502, 504]; // a proxy is there, the server behind it is not

/** `body`: an object sent as JSON, or a Blob as it is, of which `told(done, of)` hears the bytes sent. `wait_ms`: how long nothing may
 *  come before it is given up. `read(response, alive)` → what is wanted of the answer; it calls alive() whenever something came. */
export async function request(path, { body, headers = {}, told = null, wait_ms, signal = null, read }) {
  const how = sent(body);
  how.headers = { ...how.headers, ...headers };
  const silence = new AbortController();
  let timer;
  const alive = () => {
    clearTimeout(timer);
    timer = setTimeout(() => silence.abort(), wait_ms);
  };
  alive();
  try {
    const stop = AbortSignal.any([silence.signal, ...(signal ? [signal] : [])]);
    const response = await (told ? upload(path, how, stop, (...so) => (alive(), told(...so))) : fetch(path, { ...how, signal: stop }));
    if (!response.ok) throw await problemOf(response);
    return await read(response, alive);
  } catch (problem) {
    signal?.throwIfAborted();
    if (silence.signal.aborted)
      throw new Unanswered(tr('The server has not answered for {seconds}\u00a0s.', { seconds: Math.round(wait_ms / 1000) }), { reason: 'late' });
    if (problem instanceof ValidationError || problem instanceof Unanswered) throw problem;
    throw new Unanswered(tr('The server cannot be reached.'), { cause: problem });
  } finally {
    clearTimeout(timer);
  }
}

function sent(body) {
  if (body === undefined) return { method: 'GET' };
  if (body instanceof Blob) return { method: 'POST', headers: { 'content-type': 'application/octet-stream' }, body };
  return { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
}

async function problemOf(response) {
  const said = await response.json().catch(() => null);
  if (BUSY.includes(response.status)) return busy(said?.refused?.[0], response.headers.get('retry-after'));
  if (BEHIND_A_PROXY.includes(response.status)) return new Unanswered(tr('The server cannot be reached.'));
  return refusalIn(said) ?? new Unanswered(tr('The server failed ({status}).', { status: response.status }), { reason: 'fault' });
}

// What an answer refuses, or null. In the lines of a long answer all else that stands in the way comes so too.
function refusalIn(said) {
  const first = Array.isArray(said?.refused) ? said.refused[0] : null;
  if (!first) return null;
  if (first.field !== 'server') return new ValidationError(said.refused);
  return LATER.includes(first.was) ? busy(first) : new Unanswered(first.say, { reason: 'fault' });
}

const LATER = ['busy', 'stopping', 'ended']; // what a server is that may be asked again

function busy(refusal = null, retryAfter = null) {
  const asked_ms = retryAfter === null ? NaN : 1000 * Number(retryAfter);
  const wait_ms = asked_ms >= 0 ? Math.min(asked_ms, LONGEST_BUSY_MS) : BUSY_MS;
  return new Unanswered(refusal?.say ?? tr('The server is busy.'), { reason: refusal?.was === 'ended' ? 'lost' : 'busy', wait_ms });
}

export const asJson = response => response.json();
export const asBlob = response => response.blob();

/** Long work as lines of JSON: {done, of} …, which `told` hears, then the answer. */
export const asLines = told => async (response, alive) => {
  const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
  let parts = [],
    last = null;
  const line = text => {
    const said = JSON.parse(text);
    if ('done' in said && 'of' in said) told(said.done, said.of);
    else last = said;
  };
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    alive();
    const [more, ...lines] = part.value.split('\n');
    parts.push(more);
    for (const next of lines) {
      const whole = parts.join('');
      if (whole) line(whole);
      parts = [next];
    }
  }
  if (last === null) throw new Unanswered(tr('The answer of the server broke off.'));
  const refusal = refusalIn(last);
  if (refusal) throw refusal;
  return last;
};
