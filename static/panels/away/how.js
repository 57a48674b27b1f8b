// How the files are made, said in a sentence whose words are choices. Ranges, labels and defaults are the server's.

import { choiceOf, rateWords, retimeWords, typedFrame, typedRate, typedRetime, withChoice } from '../../state/export.js';
import { parseFigure, withUnit } from '../../state/units.js';
import { h, setAttribute, setChildren } from '../shared/dom.js';
import { createErrors, inlinePick, inlineType, tight, createOrigin } from './choices.js';
import { outside } from '../shared/figure.js';

const RATES = ['23.976', '24', '25', '29.97', '30', '48', '50', '59.94', '60'];
// biome-ignore format: a choice a row
const WORDS = {
  view: { rotating: 'turning with the deck', inertial: 'not turning, all under one node that turns', inertial_flat: 'not turning, every place written out' },
  unit: { m: 'metres', cm: 'centimetres' },
  up: { Y: 'Y is up', Z: 'Z is up' },
  rows: { alive: 'only while a body is there', all: 'at every frame' },
  turning: { none: 'without', quaternion: 'with' },
  hull: { proxy: 'proxy', render: 'render', default: 'neither' },
  between: { smooth: 'smoothly', linear: 'straight' },
  samples_per_frame: { 1: 'one sample', 2: 'two samples', 4: 'four samples', 8: 'eight samples' },
};

const AS_FRAME = 'In seconds, or a frame: frame 1060';

/** chosen() → the choices kept; keep(choices); sceneRate() → [n, d]; motions() → names; errorsChanged() when what is wrong changes. */
export function createHow({ fields, chosen, keep, sceneRate, motions, errorsChanged }) {
  let typed = {}, // errors of what was typed: never sent
    served = {}; // the server's errors: gone as soon as it is asked anew
  const read = name => choiceOf(fields, chosen(), name);
  const put = (name, value) => {
    const { [name]: _mended, ...others } = typed;
    typed = others;
    served = {};
    keep(withChoice(fields, chosen(), name, value));
  };
  const sayWrong = (name, sentence) => {
    typed = { ...typed, [name]: sentence };
    sayErrors();
  };
  const sayErrors = () => {
    errors.say({ ...served, ...typed });
    errorsChanged();
  };

  const pick = name =>
    inlinePick({
      label: fields[name].label,
      options: () => fields[name].choices.map(value => [value, WORDS[name]?.[value] ?? String(value)]),
      chosen: () => read(name),
      choose: value => put(name, value),
    });
  const rate = (name, empty) =>
    inlineType({
      label: `${fields[name].label}, frames per second`,
      text: () => String(read(name) ?? ''),
      empty,
      keep: typed => put(name, typedRate(typed)),
      list: 'rates',
    });
  // an end of the span may be typed as a frame, unless a curve of seconds says when each frame is
  const asFrame = (name, typed) =>
    name.endsWith('_s') && read('retime') === null ? typedFrame(typed, { first_frame: read('first_frame'), fps: read('fps') ?? sceneRate() }) : undefined;
  const figure = (name, empty, wide, hint = null) =>
    inlineType({
      label: fields[name].label,
      hint,
      text: () => (read(name) === null ? '' : withUnit(String(read(name)), fields[name].unit)),
      empty: () => empty,
      wide,
      keep(typed) {
        const value = asFrame(name, typed) ?? parseFigure(typed, { unit: fields[name].unit }).value;
        if (typed === '') put(name, null);
        else if (value === undefined || outside(fields[name], value)) sayWrong(name, `${fields[name].label} was ${typed}; it must be ${mayBe(name)}.`);
        else put(name, fields[name].whole ? Math.round(value) : value);
      },
    });
  const mayBe = name => `${fields[name].may_be.replace(/, or null$/, '')}${name.endsWith('_s') ? ', or a frame, such as frame 1060' : ''}`;
  const RETIME_MUST_BE = 'frame = seconds for two keys or more, such as 1001 = 0, 1049 = 0.5, 1097 = 2';
  const retime = inlineType({
    label: fields.retime.label,
    text: () => retimeWords(read('retime')),
    empty: () => 'as it happens',
    wide: 24,
    keep(typed) {
      const keys = typedRetime(typed);
      if (keys === undefined) sayWrong('retime', `${fields.retime.label} was ${typed}; it must be ${RETIME_MUST_BE}.`);
      else put('retime', keys && { ...read('retime'), keys });
    },
  });
  const between = inlinePick({
    label: fields['retime.between'].label,
    options: () => fields['retime.between'].choices.map(value => [value, WORDS.between[value]]),
    chosen: () => read('retime')?.between ?? fields['retime.between'].default,
    choose: value => put('retime', { ...read('retime'), between: value }),
  });
  const controls = {
    view: pick('view'),
    fps: rate('fps', () => rateWords(sceneRate())),
    shown_fps: rate('shown_fps', () => 'the same'),
    first_frame: figure('first_frame', '', 5),
    samples_per_frame: pick('samples_per_frame'),
    unit: pick('unit'),
    up: pick('up'),
    origin: createOrigin({ fields, read, put, sayWrong }),
    from_s: figure('from_s', '0 s', 4, AS_FRAME),
    to_s: figure('to_s', 'the end', 6, AS_FRAME),
    rows: pick('rows'),
    turning: pick('turning'),
    hull: pick('hull'),
    retime,
    between,
  };
  const errors = createErrors(controls);

  // said only while a ticked file hears of it
  const clause = (name, ...words) => ({ said: uses => uses.has(name), element: h('span', {}, words.flat()) });
  const stop = said => ({ said, element: h('span', {}, '. ') });
  const at = name => controls[name].element;
  const end = name => [tight(at(name), '.'), ' '];
  const clauses = [
    clause('fps', 'Shot at ', at('fps'), ' frames per second'),
    clause('shown_fps', ' and shown at ', end('shown_fps')),
    stop(uses => uses.has('fps') && !uses.has('shown_fps')),
    clause('first_frame', 'Time 0 is frame ', at('first_frame')),
    clause('samples_per_frame', ' with ', at('samples_per_frame'), ' per frame'),
    stop(uses => uses.has('first_frame')),
    clause('from_s', 'From ', at('from_s'), ' to ', end('to_s')),
    clause('retime', 'Seconds by frame: ', end('retime')),
    { said: uses => uses.has('retime') && read('retime') !== null, element: h('span', {}, 'Between them ', end('between')) },
    clause('rows', 'Rows ', end('rows')),
    clause('turning', 'Tables ', at('turning'), ' the turning of bodies. '),
    clause('hull', 'The habitat has the purpose ', end('hull')),
    clause('view', 'In a view ', end('view')),
    clause('unit', 'In ', end('unit')),
    clause('up', end('up')),
    clause('origin', 'Counted from ', at('origin')),
  ];
  const rates = h(
    'datalist',
    { id: 'rates' },
    RATES.map(value => h('option', { value })),
  );
  const which = h('p', { class: 'switches' });
  const again = h('button', { type: 'button', class: 'link', onclick: reset }, 'Reset');
  const element = h(
    'div',
    { class: 'how' },
    h(
      'p',
      { class: 'lead' },
      clauses.map(one => one.element),
    ),
    rates,
    which,
    errors.element,
    again,
  );

  function reset() {
    typed = served = {};
    keep({});
  }

  /** uses: names of the choices that a ticked file hears of. */
  function update(uses) {
    sayErrors();
    for (const control of Object.values(controls)) control.update();
    for (const { said, element: words } of clauses) words.hidden = !said(uses);
    which.hidden = !uses.has('motions') || motions().length < 2;
    listMotions();
    setAttribute(again, 'hidden', Object.keys(chosen()).length === 0 && Object.keys(typed).length === 0);
  }

  function listMotions() {
    const { leftOut = [] } = chosen();
    if (JSON.stringify([motions(), leftOut]) === which.dataset.said) return;
    which.dataset.said = JSON.stringify([motions(), leftOut]);
    const boxes = motions().map(name =>
      h(
        'label',
        { class: 'switch' },
        h('input', { type: 'checkbox', checked: !leftOut.includes(name), onchange: event => include(name, event.target.checked) }),
        name,
      ),
    );
    setChildren(which, boxes);
  }
  function include(name, wanted) {
    const { leftOut = [], ...others } = chosen();
    const next = wanted ? leftOut.filter(one => one !== name) : [...leftOut, name];
    keep(next.length ? { ...others, leftOut: next } : others);
  }

  return {
    element,
    update,
    /** A server's error stands at its own choice: true where it has one here. */
    take({ field, say }) {
      const name = field?.startsWith('export.') ? field.split('.')[1] : null;
      if (!controls[name] && name !== 'motions') return false;
      served = { ...served, [name]: say };
      sayErrors();
      return true;
    },
    accepted() {
      served = {};
      sayErrors();
    },
    hasErrors: () => Object.keys({ ...typed, ...served }).length > 0,
  };
}
