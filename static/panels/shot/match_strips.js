// Under the picture, by row: how far the path lies off the nearest free one, and what it would need beyond free motion; each with the band within
// which that is nothing.

import { inSigns, tr, trLater } from '../../state/language.js';
import { residualsOf } from '../../state/match_answer.js';
import { showQuantity } from '../../state/units.js';
import { h, s, setAttribute, setChildren, setText } from '../shared/dom.js';

const AXES = {
  x_px: trLater('across (solid)'),
  y_px: trLater('down (dashed)'),
  along_m: trLater('along (solid)'),
  height_m: trLater('up (dashed)'),
  axial_m: trLater('along the axis (dotted)'),
  x_m: trLater('X (solid)'),
  y_m: trLater('Y (dashed)'),
  z_m: trLater('Z (dotted)'),
};

/** get() → {answer or null, current: the row in hand}; choose(row); units(): which are shown. */
export function createStrips({ get, choose, units }) {
  const off = createStrip({ choose }),
    extra = createStrip({ choose });
  const element = h('div', { class: 'match-strips', hidden: true }, off.element, extra.element);

  function update() {
    const { answer, current } = get();
    setAttribute(element, 'hidden', answer === null);
    if (!answer) return;
    const { names, most } = residualsOf(answer),
      { unit } = answer.accuracy;
    const far = value => (unit === 'px' ? `${inSigns(String(Number(value.toPrecision(2))))}\u00a0px` : showQuantity(value, 'm', units()));
    off.draw({
      lines: names.map(name => ({ name, values: answer.residual[name] })),
      band: 2 * answer.accuracy.value,
      most,
      ends: [far(most), `−${far(most)}`],
      current,
      says: tr('Off the nearest free path: {axes}. The band is twice the accuracy.', { axes: names.map(name => tr(AXES[name])).join(', ') }),
    });
    const { extra_acceleration_g: needed, extra_acceleration_sd_g: sd } = answer;
    setAttribute(extra.element, 'hidden', !needed);
    if (!needed) return;
    const top = 1.08 * Math.max(...needed.map(value => value ?? 0), ...sd.map(value => 2.2 * (value ?? 0)), 1e-3);
    extra.draw({
      lines: [{ name: 'extra', values: needed }],
      band: sd.map(value => 2 * (value ?? 0)),
      most: top,
      ends: [`${inSigns(String(Number(top.toPrecision(2))))}\u00a0g`, ''],
      current,
      upward: true,
      says: tr('What it would need beyond free motion. Within the band it may be none.'),
    });
  }
  return { element, update };
}

// One strip: lines by row over the band, and a mark at the row in hand.
function createStrip({ choose }) {
  const svg = s('svg', { class: 'match-strip', viewBox: '0 0 400 84', preserveAspectRatio: 'none', role: 'img' }),
    low = h('span', {}),
    high = h('span', {}),
    words = h('p', { class: 'small' });
  const element = h('div', { class: 'match-off' }, h('div', { class: 'match-strip-box' }, svg, h('span', { class: 'match-ends' }, high, low)), words);
  let count = 0;
  svg.addEventListener('pointerdown', event => {
    const { left, width } = svg.getBoundingClientRect();
    if (count) choose(Math.min(count - 1, Math.max(0, Math.round(((event.clientX - left) / width) * count - 0.5))));
  });

  /** lines [{name, values}] with null gaps; band: half its height, or one by row; most: what the strip reaches, to both sides or, `upward`, up alone;
   *  current row. */
  function draw({ lines, band, most, ends, current, says, upward = false }) {
    count = lines[0].values.length;
    const x = row => ((row + 0.5) / count) * 400,
      zero = upward ? 82 : 42,
      y = value => zero - ((zero - 2) * Math.max(upward ? 0 : -most, Math.min(most, value))) / most;
    const bandOf = row => (typeof band === 'number' ? band : (band[row] ?? 0));
    const rows = Array.from({ length: count }, (_, row) => row);
    const edge = side => rows.map(row => `${x(row).toFixed(1)} ${y(side * bandOf(row)).toFixed(1)}`);
    setChildren(
      svg,
      s('path', { class: 'strip-band', d: `M${[...edge(1), ...edge(-1).reverse()].join('L')}Z` }),
      s('path', { class: 'strip-zero', d: `M0 ${zero}H400` }),
      current >= 0 && s('path', { class: 'strip-now', d: `M${x(current)} 0V84` }),
      lines.map(({ values }, n) => s('path', { class: `strip-line strip-${n}`, d: brokenLine(values, x, y) })),
    );
    setAttribute(svg, 'aria-label', says);
    setText(words, says);
    setText(high, ends[0]);
    setText(low, ends[1]);
  }
  return { element, draw };
}

function brokenLine(values, x, y) {
  let d = '',
    down = false;
  values.forEach((value, row) => {
    if (value === null) down = false;
    else {
      d += `${down ? 'L' : 'M'}${x(row).toFixed(1)} ${y(value).toFixed(1)}`;
      down = true;
    }
  });
  return d;
}
