// The speaker's window: notes, what comes next, time gone, and the controls. It hears and tells the presented page over one channel, and finds it
// again when either is loaded anew.

import { locale, tr, trLater } from '../../state/language.js';
import { PRESSES, pressOf } from '../../state/presenting.js';
import { goneWords } from '../../state/speaking.js';
import { $, h, setAttribute, setText } from '../shared/dom.js';

const SINCE = 'rimfall.speaker.since'; // over this window's own reload
const CONTROLS = [
  ['back', trLater('Back')],
  ['next', trLater('Next')],
  ['play', trLater('Play or pause')],
  ['dark', trLater('Dark')],
  ['freeze', trLater('Freeze')],
  ['slow', trLater('Slow')],
  ['swap', trLater('Swap')],
  ['merge', trLater('Merge')],
  ['dials', trLater('Dials')],
];
const TURNED = { dark: 'dark', freeze: 'frozen', slow: 'slow', swap: 'swapped', merge: 'merged', dials: 'dials' }; // what a `now` says of them

/** In a page with the elements of the template `_speaker.html`. `channel`: a BroadcastChannel, or what has its onmessage and postMessage; `kept`:
 *  the window's own storage, where it has one. */
export function showSpeaker({ channel, kept = null }) {
  let now = { off: true },
    began_ms = Number(kept?.getItem(SINCE)) || null;

  const keyOf = what => PRESSES.find(one => one.what === what).listed;
  const buttons = CONTROLS.map(([what, say]) => [
    what,
    h('button', { type: 'button', class: what === 'next' ? 'strong' : null, title: `${tr(say)} (${tr(keyOf(what))})`, onclick: () => press(what) }, tr(say)),
  ]);
  $('#controls').append(...buttons.map(([, button]) => button));
  $('#again').addEventListener('click', () => press('again'));
  addEventListener('keydown', event => {
    const what = pressOf(event);
    if (!what || !CONTROLS.concat([['first'], ['last']]).some(([one]) => one === what)) {
      if (what === 'nothing') event.preventDefault(); // a clicker's F5
      return;
    }
    event.preventDefault();
    press(what);
  });
  channel.onmessage = ({ data }) => {
    if (data?.kind !== 'now') return;
    now = data;
    if (now.began_ms) keep(now.began_ms);
    show();
  };
  setInterval(tick, 500);
  show();
  channel.postMessage({ kind: 'hello', began_ms });

  function press(what) {
    channel.postMessage({ kind: 'press', what });
  }

  function keep(since_ms) {
    began_ms = since_ms;
    kept?.setItem(SINCE, since_ms);
  }

  function show() {
    const { off = false } = now;
    $('#off').hidden = !off;
    $('#on').hidden = $('#controls').hidden = Boolean(off);
    document.body.dataset.on = String(!off);
    tick();
    if (off) return setText($('#step'), '');
    setText($('#step'), now.of > 1 ? tr('Step {step} of {of}', { step: now.step, of: now.of }) : now.title);
    setText($('#line'), now.line || now.title);
    setText($('#says'), now.held && !now.says ? tr('Held back. “Show it” shows it.') : now.says);
    setText($('#notes'), now.notes || tr('No notes for this step.'));
    setText($('#next'), now.next ?? (now.of > 1 ? tr('This is the last step.') : tr('There is no other step.')));
    for (const [what, button] of buttons) if (TURNED[what]) setAttribute(button, 'aria-pressed', Boolean(now[TURNED[what]]));
    const next = buttons.find(([what]) => what === 'next')[1];
    setText(next, now.held ? tr('Show it') : now.paused ? tr('Play on') : tr('Next'));
    setText(buttons.find(([what]) => what === 'play')[1], now.playing ? tr('Pause') : tr('Play'));
  }

  function tick() {
    setText($('#gone'), began_ms ? goneWords(Date.now() - began_ms) : '0:00');
    setText($('#day'), new Date().toLocaleTimeString(locale, { hour: 'numeric', minute: '2-digit' }));
  }
}
