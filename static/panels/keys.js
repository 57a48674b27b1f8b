// The keys of the page, and the list of them on '?'. Not in fields, nor where the focused control uses the key.

import { tr, trLater } from '../state/language.js';
import { RADIUS, SPIN, motionName } from '../state/fields.js';
import { paceWords } from '../state/words.js';
import { $, h } from './shared/dom.js';
import { createSwitch } from './shared/choice.js';
import { heldHome, servedHome } from '../state/homes.js';
import { toggleHold } from './dials.js';
import { turnDrift } from './moves/drift_bar.js';
import { PACES } from './looks/looks.js';
import { createSheet } from './shared/fold.js';
import { toggleLoop } from './timeline/timeline.js';

const BOXES = 'input[type=checkbox], input[type=radio]'; // which no other key presses
const VALUED = 'input[type=range], [role=slider], [role=spinbutton]';

/** lookRound({focus}): shows the short look round; `heard`: what says a result to those who do not see it; `scenes`: show() opens the list of them, next() and previous() step through it. */
export function createKeys({ store, clock, timeline, looks, stages, glossary, heard, scenes, large, present, lookRound, talks }) {
  const KEYS = [
    [' ', trLater('Space'), trLater('play or pause, wherever the focus is; Enter presses a button'), () => clock.toggle()],
    [',', ',', trLater('one frame back'), () => clock.stepFrame(-1)],
    ['.', '.', trLater('one frame on'), () => clock.stepFrame(1)],
    ['[', '[', trLater('to the mark before'), () => toMark(-1)],
    [']', ']', trLater('to the next mark'), () => toMark(1)],
    ['<', '< >', trLater('slower, faster'), () => changePace(1)],
    ['>', null, null, () => changePace(-1)],
    ['n', 'N', trLater('next motion, with Shift the one before: chosen, and its result read out'), event => chooseMotion(event.shiftKey ? -1 : 1)],
    ['o', 'O', trLater('open a scene'), scenes.show],
    ['j', 'J K', trLater('next, previous scene of those that come with Rimfall'), scenes.next],
    ['k', null, null, scenes.previous],
    ['1', '1 2 3 4 5 6', trLater('open that place'), () => open(1)],
    ['2', null, null, () => open(2)],
    ['3', null, null, () => open(3)],
    ['4', null, null, () => open(4)],
    ['5', null, null, () => open(5)],
    ['6', null, null, () => open(6)],
    ['0', '0', trLater('hide or show the page'), () => store.look({ folded: !store.view.folded })],
    ['r', 'R', trLater('radius'), () => focusDial(RADIUS)],
    ['s', 'S', trLater('spin'), () => focusDial(SPIN)],
    ['h', 'H', trLater('hold gravity'), () => toggleHold(store, heldHome(store) === servedHome(store) ? null : 'gravity')],
    ['v', 'V', trLater('seats'), () => stages.openPresets(store.view.alone ?? 'aboard')],
    ['m', 'M', trLater('measure: dimensions, tape, off'), () => store.look({ measure: after(['dimensions', 'tape', 'off'], store.view.measure) })],
    ['l', 'L', trLater('loop'), () => toggleLoop(clock)],
    [
      't',
      'T',
      trLater('drawing or table: of the plot, or on a card of why it drifts'),
      () => {
        if (document.activeElement?.closest('.card')) return turnDrift(store);
        open(3);
        looks.turnPlot();
      },
    ],
    ['e', 'E', trLater('enlarge the drawing of this place: why it drifts, the plot, the map, the aim; or back'), () => large.toggle(store.view.place)],
    ['z', 'Z', trLater('stop the turning, or let it turn'), () => steady()],
    ['u', 'U', trLater('SI or US customary'), () => store.look({ units: store.view.units === 'si' ? 'us' : 'si' })],
    ['\\', '\\', trLater('layout: automatic, side by side, stacked'), () => store.look({ split: after(['auto', 'beside', 'stacked'], store.view.split) })],
    ['p', 'P', trLater('present: the whole window for the stages, for a clicker and a room'), () => present.enter()],
    ['b', 'B', trLater('keep this moment as a step of the talk'), () => talks.keep()],
    ['w', 'W', trLater('glossary'), () => glossary.show()],
    ['?', '?', trLater('this list of keys'), () => sheet.show()],
  ];
  const sheet = createSheet({ title: tr('Keys') });
  const steady = () => {
    store.look({ steady: !store.view.steady });
    heard.say(store.view.steady ? tr('The turning is stopped.') : tr('It turns again.'));
  };
  const onOff = createSwitch({ label: tr('Single-key shortcuts'), on: () => store.view.keys, turn: keys => store.look({ keys }) });
  const all = [
    ...KEYS.filter(([, key]) => key),
    [null, trLater('Ctrl+Z'), trLater('undo')],
    [null, trLater('Ctrl+Shift+Z'), trLater('redo')],
    [null, 'Esc', trLater('back: closes what is open over the page')],
  ];
  sheet.content.append(
    h(
      'table',
      { class: 'keys' },
      h(
        'tbody',
        {},
        all.map(([, key, say]) => h('tr', {}, h('th', { scope: 'row' }, tr(key)), h('td', {}, tr(say)))),
      ),
    ),
    h(
      'p',
      { class: 'small' },
      tr(
        'On a slider: arrows one fine step, with Shift ten; Shift and a Page key a tenth of the track; Home and End its ends; Shift while dragging is ten times finer.',
      ),
    ),
    onOff.element,
    lookAgain(sheet, lookRound),
  );
  glossary.sheet.content.prepend(lookAgain(glossary.sheet, lookRound));
  store.on('view', onOff.update);

  const after = (list, now) => list[(list.indexOf(now) + 1) % list.length];
  const open = place => store.look({ place, folded: false });
  const focusDial = path => $(`#dials .pair:not([hidden]) [data-row$="${path}"] .range`).focus(); // of the habitat that is served
  function toMark(way) {
    const marks = [0, ...timeline.marks()],
      now = clock.time_s;
    const next = way > 0 ? marks.find(time => time > now + 1e-6) : marks.findLast(time => time < now - 1e-6);
    if (next !== undefined) clock.seek(next);
  }

  // PACES run from full speed down
  function changePace(way) {
    const pace = PACES[Math.min(PACES.length - 1, Math.max(0, PACES.indexOf(clock.pace) + way))];
    clock.setPace(pace);
    heard.say(tr('Playback at {pace}.', { pace: paceWords(pace) }));
  }
  function chooseMotion(way) {
    const count = store.document.motions.length;
    if (!count) return;
    const from = store.view.chosen ?? (way > 0 ? -1 : 0),
      chosen = (from + way + count) % count;
    store.look({ chosen });
    $('.card.chosen')?.scrollIntoView({ block: 'nearest' });
    const result = store.answer?.motions[chosen]?.in_short;
    heard.say([motionName(store, chosen), result].filter(Boolean).join(' ').concat('.'));
  }

  // A clicker sends Page keys: without Shift they set nothing that happens to have the focus.
  addEventListener(
    'keydown',
    event => {
      if (!event.key.startsWith('Page') || event.shiftKey || !event.target.closest?.(VALUED)) return;
      event.preventDefault();
      event.stopPropagation();
    },
    true,
  );

  let played = false;
  // some browsers press the focused button when the key comes up again
  addEventListener('keyup', event => {
    if (event.key === ' ' && played) event.preventDefault();
    if (event.key === ' ') played = false;
  });
  addEventListener('keydown', event => {
    if (event.defaultPrevented) return;
    if ((event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === 'z' && (!inText(event.target) || event.target.matches('select'))) {
      event.preventDefault();
      return event.shiftKey ? store.redo() : store.undo();
    }
    if (event.ctrlKey || event.metaKey || event.altKey || document.querySelector('dialog[open]')) return;
    if (inText(event.target) || event.target.closest?.('[popover]') || (event.key === ' ' && event.target.matches?.(BOXES))) return;
    const match = KEYS.find(([key]) => key === event.key.toLowerCase());
    if (!match || !(store.view.keys || event.key === '?')) return;
    event.preventDefault();
    played = event.key === ' ';
    if (!(played && event.repeat)) match[3](event);
  });
  return { show: sheet.show };
}

// the look round, from a sheet that closes for it
function lookAgain(sheet, lookRound) {
  const go = () => {
    sheet.close();
    lookRound({ focus: true });
  };
  return h('p', { class: 'links' }, h('button', { type: 'button', class: 'link', onclick: go }, tr('Take a look round')));
}

function inText(target) {
  return target.isContentEditable || target.closest?.('select, textarea, input:not([type=range]):not([type=checkbox])') !== null;
}
