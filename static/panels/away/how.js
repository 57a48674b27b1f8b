// How the files are made, said in a sentence whose words are choices. Ranges, labels and defaults are the server's.

import { inSigns, tr, trAs, trLater, trParts } from '../../state/language.js';
import { choiceOf, rateWords, retimeWords, typedFrame, typedRate, typedRetime, withChoice } from '../../state/export.js';
import { parseFigure, withUnit } from '../../state/units.js';
import { h, setAttribute, setChildren } from '../shared/dom.js';
import { createErrors, inlinePick, inlineType, tight, createOrigin } from './choices.js';
import { outside } from '../shared/figure.js';

/** A rate as it may be typed: 23.976, 24000/1001.
 *  @param {number | string | null} rate */
const rateText = rate => (typeof rate === 'number' ? inSigns(String(rate)) : (rate ?? ''));
const RATES = ['23.976', '24', '25', '29.97', '30', '48', '50', '59.94', '60'];
// biome-ignore format: a choice a row
const WORDS = {
  view: { rotating: trLater('turning with the deck'), inertial: trLater('not turning, all under one node that turns'), inertial_flat: trLater('not turning, every place written out') },
  unit: { m: trLater('metres'), cm: trLater('centimetres') },
  up: { Y: trLater('Y is up'), Z: trLater('Z is up') },
  rows: { alive: trLater('only while a body is there'), all: trLater('at every frame') },
  turning: { none: trAs('the turning of bodies', 'without'), quaternion: trAs('the turning of bodies', 'with') },
  hull: { proxy: 'proxy', render: 'render', default: trLater('neither') },
  between: { smooth: trLater('smoothly'), linear: trAs('between two keys', 'straight') },
  samples_per_frame: { 1: trLater('one sample'), 2: trLater('two samples'), 4: trLater('four samples'), 8: trLater('eight samples') },
};

const AS_FRAME = trLater('In seconds, or a frame: frame 1060');

/** A control and the full stop after it stay together: no line begins with one.
 *  @param {unknown[]} parts */
function kept(parts) {
  return parts.flatMap((part, k) => {
    const next = parts[k + 1];
    if (typeof part !== 'string' && typeof next === 'string' && next.startsWith('.')) return [tight(part, '.')];
    return typeof part === 'string' && part.startsWith('.') && k > 0 ? [part.slice(1)] : [part];
  });
}

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
      options: () => fields[name].choices.map(value => [value, WORDS[name]?.[value] ? tr(WORDS[name][value]) : String(value)]),
      chosen: () => read(name),
      choose: value => put(name, value),
    });
  const rate = (name, empty) =>
    inlineType({
      label: tr('{figure}, frames per second', { figure: fields[name].label }),
      text: () => rateText(read(name)),
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
      hint: hint && tr(hint),
      text: () => (read(name) === null ? '' : withUnit(inSigns(String(read(name))), fields[name].unit)),
      empty: () => empty,
      wide,
      keep(typed) {
        const value = asFrame(name, typed) ?? parseFigure(typed, { unit: fields[name].unit }).value;
        if (typed === '') put(name, null);
        else if (value === undefined || outside(fields[name], value))
          sayWrong(name, tr('{field} was {typed}; it must be {may_be}.', { field: fields[name].label, typed, may_be: mayBe(name) }));
        else put(name, fields[name].whole ? Math.round(value) : value);
      },
    });
  const mayBe = name => {
    const { may_be } = fields[name],
      none = tr(', or null'),
      figure = may_be.endsWith(none) ? may_be.slice(0, -none.length) : may_be;
    return name.endsWith('_s') ? tr('{figure}, or a frame, such as frame 1060', { figure }) : figure;
  };
  const retimeMustBe = () => tr('frame = seconds for two keys or more, such as 1001 = 0, 1049 = 0.5, 1097 = 2');
  const retime = inlineType({
    label: fields.retime.label,
    text: () => retimeWords(read('retime')),
    empty: () => tr('as it happens'),
    wide: 24,
    keep(typed) {
      const keys = typedRetime(typed);
      if (keys === undefined)
        sayWrong('retime', tr('{field} was {typed}; it must be {may_be}.', { field: fields.retime.label, typed, may_be: retimeMustBe() }));
      else put('retime', keys && { ...read('retime'), keys });
    },
  });
  const between = inlinePick({
    label: fields['retime.between'].label,
    options: () => fields['retime.between'].choices.map(value => [value, tr(WORDS.between[value])]),
    chosen: () => read('retime')?.between ?? fields['retime.between'].default,
    choose: value => put('retime', { ...read('retime'), between: value }),
  });
  const controls = {
    view: pick('view'),
    fps: rate('fps', () => rateWords(sceneRate())),
    shown_fps: rate('shown_fps', () => tr('the same')),
    first_frame: figure('first_frame', '', 5),
    samples_per_frame: pick('samples_per_frame'),
    unit: pick('unit'),
    up: pick('up'),
    origin: createOrigin({ fields, read, put, sayWrong }),
    from_s: figure('from_s', tr('0 s'), 4, AS_FRAME),
    to_s: figure('to_s', tr('the end'), 6, AS_FRAME),
    rows: pick('rows'),
    turning: pick('turning'),
    hull: pick('hull'),
    retime,
    between,
  };
  const errors = createErrors(controls);

  // said only while a ticked file hears of it
  const clause = (name, text) => {
    const parts = trParts(text, Object.fromEntries(Object.entries(controls).map(([key, { element }]) => [key, element])));
    return { said: uses => uses.has(name), element: h('span', {}, kept(parts)) };
  };
  const stop = said => ({ said, element: h('span', {}, '. ') });
  const clauses = [
    clause('fps', trLater('Shot at {fps} frames per second')),
    clause('shown_fps', trLater(' and shown at {shown_fps}. ')),
    stop(uses => uses.has('fps') && !uses.has('shown_fps')),
    clause('first_frame', trLater('Time 0 is frame {first_frame}')),
    clause('samples_per_frame', trLater(' with {samples_per_frame} per frame')),
    stop(uses => uses.has('first_frame')),
    clause('from_s', trLater('From {from_s} to {to_s}. ')),
    clause('retime', trLater('Seconds by frame: {retime}. ')),
    { ...clause('retime', trLater('Between them {between}. ')), said: uses => uses.has('retime') && read('retime') !== null },
    clause('rows', trLater('Rows {rows}. ')),
    clause('turning', trLater('Tables {turning} the turning of bodies. ')),
    clause('hull', trLater('The habitat has the purpose {hull}. ')),
    clause('view', trLater('In a view {view}. ')),
    clause('unit', trLater('In {unit}. ')),
    clause('up', trLater('{up}. ')),
    clause('origin', trLater('Counted from {origin}')),
  ];
  const rates = h(
    'datalist',
    { id: 'rates' },
    RATES.map(value => h('option', { value: inSigns(value) })),
  );
  const which = h('p', { class: 'switches' });
  const again = h('button', { type: 'button', class: 'link', onclick: reset }, tr('Reset'));
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
