// About what a ball spins as it leaves the hand: in words, or by three figures (spinward, up, axial).

import { inSentence, inSigns, tr, trLater } from '../../state/language.js';
import { fieldOf } from '../../state/fields.js';
import { AXES, OWN, axisOf, nameOf } from '../../state/motions.js';
import { parseFigure } from '../../state/units.js';
import { h, setAttribute } from '../shared/dom.js';
import { createFieldError, sayInvalid } from '../shared/field_error.js';
import { createSelect } from '../shared/choice.js';

const PARTS = [trLater('Spinward'), trLater('Up'), trLater('Axial')];

export function createSpinAxis({ store, path, heading }) {
  const read = () => store.read(path);
  const select = createSelect({
    store,
    path: `${path}.words`,
    label: tr('Spins'),
    options: () => [...Object.entries(AXES).map(([key, [words]]) => [key, tr(words)]), [OWN, tr('about your own axis')]],
    chosen: () => (own ? OWN : nameOf(read(), heading())),
    choose(key) {
      own = key === OWN;
      if (own) update();
      else store.set(path, axisOf(key, heading()));
    },
  });
  let own = false;
  const boxes = PARTS.map((label, i) => createPart({ store, path, label: tr(label), i }));
  const row = h(
    'div',
    { class: 'three' },
    boxes.map(box => box.element),
  );
  const slot = createFieldError({ store, path, frame: row });
  const element = h('div', { class: 'group' }, select.element, h('div', { 'data-row': path }, row, slot.element));

  function update() {
    const shown = own || nameOf(read(), heading()) === OWN;
    select.update();
    setAttribute(row, 'hidden', !shown);
    if (shown) boxes.forEach(box => box.update());
    slot.update();
  }
  return { element, update };
}

function createPart({ store, path, label, i }) {
  const input = h('input', {
    type: 'text',
    inputmode: 'decimal',
    autocomplete: 'off',
    'aria-label': `${fieldOf(store.fields, path)?.label ?? tr('Axis')}: ${inSentence(label)}`,
    onchange: keep,
    onfocus: () => input.select(),
  });
  const three = () => store.read(path) ?? [0, 0, 1];
  function keep() {
    const { value, error } = parseFigure(input.value, { unit: '' });
    const next = three().map((part, k) => (k === i ? value : part));
    if (error || !next.some(Boolean))
      sayInvalid(store, path, error ? input.value.trim() : next.map(part => inSigns(String(part))).join(inSigns('.') === ',' ? '; ' : ', '));
    else store.set(path, next);
    update();
  }
  function update() {
    if (document.activeElement !== input) input.value = inSigns(String(Number(three()[i].toPrecision(4)))).replace('-', '−');
  }
  return { element: h('label', {}, h('span', { class: 'small' }, label), h('span', { class: 'val' }, input)), update };
}
