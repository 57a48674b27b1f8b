// What a step says and does, under it in the list: words, notes, times taken from the clock, pace, stages, and what the room is asked.

import { tr, trLater } from '../../state/language.js';
import { motionName } from '../../state/fields.js';
import { heldWords, secondsWords } from '../../state/talk_words.js';
import { createChoice, createList, createSwitch } from '../shared/choice.js';
import { h, setText } from '../shared/dom.js';

const LINE = 160,
  NOTES = 4000; // characters
const PACES = [
  { value: 1, say: '1', label: trLater('full speed') },
  { value: 0.5, say: '1/2', label: trLater('half speed'), fraction: true },
  { value: 0.25, say: '1/4', label: trLater('quarter speed'), fraction: true },
  { value: 0.1, say: '1/10', label: trLater('a tenth of full speed'), fraction: true },
];
const SHOWS = [
  { value: 'both', say: trLater('Both') },
  { value: 'aboard', say: trLater('Aboard') },
  { value: 'outside', say: trLater('Outside') },
];

const inWords = options => options.map(one => ({ ...one, say: tr(one.say), label: one.label && tr(one.label) }));

/** change(part, {typing}): of the step the talk is at; `does`: {retake, duplicate, earlier, later, remove, present}, what its buttons do. */
export function createStepForm({ talk, clock, change, does }) {
  const of = name => talk.step?.[name];
  const now = () => Math.round(clock.time_s * 100) / 100;
  const atNow = (when, moving) => () => (clock.playing ? moving : when(secondsWords(now())));
  const line = h('input', { type: 'text', class: 'linkbox', maxlength: LINE, oninput: () => change({ line: line.value }, { typing: true }) });
  const notes = h('textarea', { class: 'linkbox', rows: 3, maxlength: NOTES, oninput: () => change({ notes: notes.value }, { typing: true }) });
  const pace = createChoice({ label: tr('Pace'), options: inWords(PACES), chosen: () => of('pace'), choose: value => change({ pace: value }) });
  const show = createChoice({ label: tr('Stages'), options: inWords(SHOWS), chosen: () => of('show'), choose: value => change({ show: value }) });
  const plays = createSwitch({ label: tr('Plays of itself'), on: () => of('plays'), turn: on => change({ plays: on }) });
  const merged = createSwitch({ label: tr('Other one small in it'), on: () => of('merged'), turn: on => change({ merged: on }) });
  const swapped = createSwitch({ label: tr('Swapped'), on: () => of('swapped'), turn: on => change({ swapped: on }) });

  const from = time(tr('Begins at'), () => secondsWords(of('from_s')), [
    [atNow(time => tr('Begin at {time}', { time }), tr('Begin at this moment')), () => change({ from_s: now() })],
    [() => tr('From the start'), () => change({ from_s: 0 }), () => of('from_s') > 0],
  ]);
  const until = time(tr('Pauses'), () => (of('until_s') === null ? tr('nowhere') : tr('at {time}', { time: secondsWords(of('until_s')) })), [
    [atNow(time => tr('Pause at {time}', { time }), tr('Pause at this moment')), () => change({ until_s: now() })],
    [() => tr('No pause'), () => change({ until_s: null }), () => of('until_s') !== null],
  ]);
  const asks = createList(
    { 'aria-label': tr('The room is asked') },
    {
      options: () => [['', tr('nothing')], ...names().map(name => [name, tr('where {motion} comes down', { motion: name })])],
      chosen: () => of('ask')?.motion ?? '',
      choose: motion => change({ ask: motion ? { motion, until_s: of('ask')?.until_s ?? 0 } : null }),
    },
  );
  const held = time(tr('Asked'), () => (of('ask') ? heldWords(of('ask')) : ''), [
    [atNow(time => tr('Ask at {time}', { time }), tr('Ask at this moment')), () => change({ ask: { ...of('ask'), until_s: now() } })],
    [() => tr('Ask before it is let go'), () => change({ ask: { ...of('ask'), until_s: 0 } }), () => of('ask')?.until_s > 0],
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
  const [earlier, later] = [button(tr('Move up'), does.earlier), button(tr('Move down'), does.later)];
  const element = h(
    'div',
    { class: 'talk-form', role: 'group', 'aria-label': tr('This step') },
    h('label', {}, tr('Line on the screen'), line),
    h('label', {}, tr('Notes for the speaker'), notes),
    row(tr('Pace'), pace.element),
    row(tr('Stages'), show.element),
    h('div', { class: 'switches' }, plays.element, swapped.element, merged.element),
    from.element,
    until.element,
    row(tr('The room is asked'), asks.element),
    held.element,
    h(
      'p',
      { class: 'links talk-does' },
      button(tr('Take what is on the stages now'), does.retake),
      button(tr('Duplicate'), does.duplicate),
      earlier,
      later,
      button(tr('Delete'), does.remove),
    ),
    h('p', { class: 'links' }, h('button', { type: 'button', class: 'btn', onclick: does.present }, tr('Start presenting from here'))),
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
