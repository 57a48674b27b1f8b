// The keys of the page, and the list of them on '?'. Not in fields, nor where the focused control uses the key.

import { RADIUS, SPIN } from '../state/fields.js';
import { $, h } from './shared/dom.js';
import { createSwitch } from './shared/choice.js';
import { toggleHold } from './dials.js';
import { turnDrift } from './moves/drift_bar.js';
import { createSheet } from './shared/fold.js';
import { toggleLoop } from './timeline/timeline.js';

export function createKeys({ store, clock, timeline, looks, stages, glossary }) {
  const KEYS = [
    [' ', 'Space', 'play or pause', () => clock.toggle()],
    [',', ',', 'one frame back', () => clock.stepFrame(-1)],
    ['.', '.', 'one frame on', () => clock.stepFrame(1)],
    ['[', '[', 'to the mark before', () => toMark(-1)],
    [']', ']', 'to the next mark', () => toMark(1)],
    ['1', '1 2 3 4', 'open that place', () => open(1)],
    ['2', null, null, () => open(2)],
    ['3', null, null, () => open(3)],
    ['4', null, null, () => open(4)],
    ['0', '0', 'fold the page away, or back', () => store.look({ folded: !store.view.folded })],
    ['r', 'R', 'radius', () => focusDial(RADIUS)],
    ['s', 'S', 'spin', () => focusDial(SPIN)],
    ['h', 'H', 'hold gravity', () => toggleHold(store, store.view.hold ? null : 'gravity')],
    ['v', 'V', 'seats', () => stages.openPresets('aboard')],
    ['m', 'M', 'measure: dimensions, tape, off', () => store.look({ measure: after(['dimensions', 'tape', 'off'], store.view.measure) })],
    ['l', 'L', 'loop', () => toggleLoop(clock)],
    [
      't',
      'T',
      'drawing or table: of the plot, or on a card of why it drifts',
      () => {
        if (document.activeElement?.closest('.card')) return turnDrift(store);
        open(3);
        looks.turnPlot();
      },
    ],
    ['u', 'U', 'SI or US customary', () => store.look({ units: store.view.units === 'si' ? 'us' : 'si' })],
    ['\\', '\\', 'stages as fits, beside, stacked', () => store.look({ split: after(['auto', 'beside', 'stacked'], store.view.split) })],
    ['w', 'W', 'words used here', () => glossary.show()],
    ['?', '?', 'this list', () => sheet.show()],
  ];
  const sheet = createSheet({ title: 'Keys' });
  const onOff = createSwitch({ label: 'Single keys work', on: () => store.view.keys, turn: keys => store.look({ keys }) });
  const listed = [
    ...KEYS.filter(([, key]) => key),
    [null, 'Ctrl+Z', 'undo'],
    [null, 'Ctrl+Shift+Z', 'redo'],
    [null, 'Esc', 'back: closes what is open over the page'],
  ];
  sheet.content.append(
    h(
      'table',
      { class: 'keys' },
      h(
        'tbody',
        {},
        listed.map(([, key, say]) => h('tr', {}, h('th', { scope: 'row' }, key), h('td', {}, say))),
      ),
    ),
    h(
      'p',
      { class: 'small' },
      'On a slider: arrows one fine step, with Shift ten; Page keys a tenth of the track; Home and End its ends; Shift while dragging is ten times finer.',
    ),
    onOff.element,
  );
  store.on('view', onOff.update);

  const after = (list, now) => list[(list.indexOf(now) + 1) % list.length];
  const open = place => store.look({ place, folded: false });
  const focusDial = path => $(`#dials [data-row="${path}"] .range`).focus();
  function toMark(way) {
    const marks = [0, ...timeline.marks()],
      now = clock.time_s;
    const next = way > 0 ? marks.find(time => time > now + 1e-6) : marks.findLast(time => time < now - 1e-6);
    if (next !== undefined) clock.seek(next);
  }

  addEventListener('keydown', event => {
    if (event.defaultPrevented) return;
    if ((event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === 'z' && !inText(event.target)) {
      event.preventDefault();
      return event.shiftKey ? store.redo() : store.undo();
    }
    if (event.ctrlKey || event.metaKey || event.altKey || document.querySelector('dialog[open]')) return;
    if (inText(event.target) || (event.key === ' ' && event.target.closest?.('button, [role=button], summary, a'))) return;
    const match = KEYS.find(([key]) => key === event.key.toLowerCase());
    if (!match || !(store.view.keys || event.key === '?')) return;
    event.preventDefault();
    match[3]();
  });
  return { show: sheet.show };
}

function inText(target) {
  return target.isContentEditable || target.closest?.('select, textarea, input:not([type=range]):not([type=checkbox])') !== null;
}
