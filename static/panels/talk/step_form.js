// What a step says and does, under it in the list: words, notes, times taken from the clock, pace, stages, and what the room is asked.

import { motionName } from '../../state/fields.js';
import { heldWords, secondsWords } from '../../state/talk_words.js';
import { createChoice, createList, createSwitch } from '../shared/choice.js';
import { h, setText } from '../shared/dom.js';

const LINE = 160,
  NOTES = 4000; // characters
const PACES = [
  { value: 1, say: '1', label: 'full speed' },
  { value: 0.5, say: '1/2', label: 'half speed', fraction: true },
  { value: 0.25, say: '1/4', label: 'quarter speed', fraction: true },
  { value: 0.1, say: '1/10', label: 'a tenth of full speed', fraction: true },
];
const SHOWS = [
  { value: 'both', say: 'Both' },
  { value: 'aboard', say: 'Aboard' },
  { value: 'outside', say: 'Outside' },
];

/** change(part, {typing}): of the step the talk is at; `does`: {retake, duplicate, earlier, later, remove, present}, what its buttons do. */
export function createStepForm({ talk, clock, change, does }) {
  const of = name => talk.step?.[name];
  const now = () => Math.round(clock.time_s * 100) / 100;
  const atNow = (when, moving) => () => (clock.playing ? moving : when(secondsWords(now())));
  const line = h('input', { type: 'text', class: 'linkbox', maxlength: LINE, oninput: () => change({ line: line.value }, { typing: true }) });
  const notes = h('textarea', { class: 'linkbox', rows: 3, maxlength: NOTES, oninput: () => change({ notes: notes.value }, { typing: true }) });
  const pace = createChoice({ label: 'Pace', options: PACES, chosen: () => of('pace'), choose: value => change({ pace: value }) });
  const show = createChoice({ label: 'Stages', options: SHOWS, chosen: () => of('show'), choose: value => change({ show: value }) });
  const plays = createSwitch({ label: 'Plays of itself', on: () => of('plays'), turn: on => change({ plays: on }) });
  const merged = createSwitch({ label: 'Other one small in it', on: () => of('merged'), turn: on => change({ merged: on }) });
  const swapped = createSwitch({ label: 'Swapped', on: () => of('swapped'), turn: on => change({ swapped: on }) });

  const from = time('Begins at', () => secondsWords(of('from_s')), [
    [atNow(time_s => `Begin at ${time_s}`, 'Begin at this moment'), () => change({ from_s: now() })],
    [() => 'From the start', () => change({ from_s: 0 }), () => of('from_s') > 0],
  ]);
  const until = time('Pauses', () => (of('until_s') === null ? 'nowhere' : `at ${secondsWords(of('until_s'))}`), [
    [atNow(time_s => `Pause at ${time_s}`, 'Pause at this moment'), () => change({ until_s: now() })],
    [() => 'No pause', () => change({ until_s: null }), () => of('until_s') !== null],
  ]);
  const asks = createList(
    { 'aria-label': 'The room is asked' },
    {
      options: () => [['', 'nothing'], ...names().map(name => [name, `where ${name} comes down`])],
      chosen: () => of('ask')?.motion ?? '',
      choose: motion => change({ ask: motion ? { motion, until_s: of('ask')?.until_s ?? 0 } : null }),
    },
  );
  const held = time('Asked', () => (of('ask') ? heldWords(of('ask')) : ''), [
    [atNow(time_s => `Ask at ${time_s}`, 'Ask at this moment'), () => change({ ask: { ...of('ask'), until_s: now() } })],
    [() => 'Ask before it is let go', () => change({ ask: { ...of('ask'), until_s: 0 } }), () => of('ask')?.until_s > 0],
  ]);
  const names = () => (talk.step?.scene.motions ?? []).map((_, i) => motionName({ document: talk.step.scene, answer: null }, i));

  // a time in words, and links that set it; each with when it is offered
  function time(label, words, links) {
    const said = h('b', {});
    const buttons = links.map(([say, press, isOffered = () => true]) => ({
      say,
      isOffered,
      element: h('button', { type: 'button', class: 'link', onclick: press }),
    }));
    const element = h('div', { class: 'talk-time' }, h('span', {}, label, ' ', said), h('span', { class: 'links' }, ...buttons.map(one => one.element)));
    function tick() {
      for (const one of buttons) setText(one.element, one.say());
    }
    return {
      element,
      tick,
      update() {
        setText(said, words());
        for (const one of buttons) one.element.hidden = !one.isOffered();
        tick();
      },
    };
  }
  const times = [from, until, held];

  const button = (say, press) => h('button', { type: 'button', class: 'link', onclick: press }, say);
  const [earlier, later] = [button('Move up', does.earlier), button('Move down', does.later)];
  const element = h(
    'div',
    { class: 'talk-form', role: 'group', 'aria-label': 'This step' },
    h('label', {}, 'Line on the screen', line),
    h('label', {}, 'Notes for the speaker', notes),
    row('Pace', pace.element),
    row('Stages', show.element),
    h('div', { class: 'switches' }, plays.element, swapped.element, merged.element),
    from.element,
    until.element,
    row('The room is asked', asks.element),
    held.element,
    h(
      'p',
      { class: 'links talk-does' },
      button('Take what is on the stages now', does.retake),
      button('Duplicate', does.duplicate),
      earlier,
      later,
      button('Delete', does.remove),
    ),
    h('p', { class: 'links' }, h('button', { type: 'button', class: 'btn', onclick: does.present }, 'Start presenting from here')),
  );

  function row(label, part) {
    return h('div', { class: 'between' }, h('span', {}, label), part);
  }

  function put(field, value) {
    if (document.activeElement !== field || field.value.trim() !== value.trim()) field.value = value;
  }

  let played = false;
  clock.on(() => {
    const goesOn = played && clock.playing;
    played = clock.playing;
    if (!goesOn && element.isConnected) for (const one of times) one.tick();
  });
  return {
    element,
    focusLine: () => line.focus(),
    update(at) {
      put(line, of('line'));
      put(notes, of('notes'));
      for (const part of [pace, show, plays, merged, swapped, asks, ...times]) part.update();
      held.element.hidden = !of('ask');
      earlier.hidden = at === 0;
      later.hidden = at === talk.steps.length - 1;
    },
  };
}
