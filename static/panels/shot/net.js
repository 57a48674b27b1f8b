// The net of landings as the server draws it. The throw of the knot that is pointed at, or reached by the arrows, is flown on both stages; a press or
// Enter keeps it as a motion.

import { tr, trLater } from '../../state/language.js';
import { motionName } from '../../state/fields.js';
import { lands, nearestTo, spotOf, throwAt } from '../../state/landings.js';
import { createNewest } from '../../state/newest.js';
import { clamp } from '../../state/scale.js';
import { indexOf } from '../../state/shot.js';
import { showQuantity } from '../../state/units.js';
import { elevationWords, freshName, headingWords } from '../../state/words.js';
import { areStagesFlat, h, parseDrawing, s, setAttribute, setChildren, setText } from '../shared/dom.js';
import { drawnScale } from '../shared/large.js';

const WIDTH_PX = { least: 240, first: 320, most: 1200 };
const HINT = {
  flown: trLater('Point at the net: that throw is flown on both stages, and a press keeps it as a motion.'),
  flat: trLater('Point at the net: the throw’s figures stand here, and a press keeps it as a motion. Without 3D drawing it is not flown on the stages.'),
};
const FAR = 5; // knots a step with Shift

export function createNet({ store, client, large }) {
  let at = null, // [row, column] of the throw that is looked at
    room = WIDTH_PX.first,
    drawing = null,
    varied = null;
  const ground = s('g', {}),
    knot = s('circle', { r: 6, class: 'knot' }),
    svg = s('svg', { class: 'landings-net', role: 'img', 'aria-label': tr('Landings over the unrolled deck') }, ground, knot);
  const grip = h('span', {
    class: 'ring-grip',
    role: 'slider',
    tabindex: 0,
    'aria-label': tr('A throw of the net: up and down, left and right; Enter keeps it'),
    'aria-roledescription': tr('slider of two ways'),
    onkeydown,
    onfocus: () => look(at ?? middle()),
  });
  const box = h('div', { class: 'landings-box' }, svg, grip),
    axes = h('p', { class: 'small' }),
    caption = h('p', { class: 'small landings-at' }),
    drawn = h('div', {}, box, axes, caption);
  const keep = h('button', { type: 'button', class: 'btn', onclick: keepIt }, tr('Keep this throw'));
  const element = h(
    'div',
    { hidden: true },
    drawn,
    h('p', { class: 'links' }, keep, large.button({ place: 5, title: () => tr('Where it can come down'), part: drawn })),
  );
  new ResizeObserver(([entry]) => {
    room = entry.contentRect.width || room;
    if (store.shot.over) store.setShot({}); // drawn anew where there is more room for it
  }).observe(box);

  const net = () => store.shot.landings,
    index = () => indexOf(store, net().motion),
    middle = () => net().over.map(({ count }) => Math.floor(count / 2));

  const flying = createNewest({
    request: () => ({ at, scene: { ...store.document, compare: [], motions: [{ ...store.document.motions[index()], ...throwAt(net(), at) }] } }),
    ask: ({ scene }, signal) => client.trace(scene, { units: store.view.units, signal }),
    answered: (answer, asked) => {
      if (String(asked.at) === String(at)) store.setShot({ flown: { answer, says: figuresOf(at).join(', ') } });
    },
    failed: () => {}, // its figures stand under the net
  });

  function look(next) {
    if (!net() || String(next) === String(at)) return;
    at = next;
    if (at) flying.want();
    drawKnot();
  }

  function keepIt() {
    if (!at || !net()) return;
    const taken = store.document.motions.map((_, i) => motionName(store, i)),
      name = freshName(net().motion, taken),
      copy = { ...structuredClone(store.document.motions[index()]), ...throwAt(net(), at), name };
    store.edit(draft => {
      draft.motions.push(copy);
    });
    store.look({ chosen: store.document.motions.length - 1 });
    store.tell({ kind: 'told', field: null, say: tr('{name} is kept as a motion.', { name }), undo: true });
  }

  svg.addEventListener('pointermove', event => look((net() && nearestTo(net(), pointOf(event))) ?? at));
  svg.addEventListener('click', event => {
    const near = net() && nearestTo(net(), pointOf(event));
    if (!near) return;
    look(near);
    keepIt();
  });

  function pointOf(event) {
    const { left, top, width } = svg.getBoundingClientRect(),
      [wide] = net().drawing.size_px;
    return [((event.clientX - left) * wide) / width, ((event.clientY - top) * wide) / width];
  }

  function onkeydown(event) {
    const step = { ArrowUp: [1, 0], ArrowDown: [-1, 0], ArrowRight: [0, 1], ArrowLeft: [0, -1] }[event.key];
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Enter') keepIt();
    else if (step) look(net().over.map(({ count }, k) => clamp((at ?? middle())[k] + step[k] * (event.shiftKey ? FAR : 1), 0, count - 1)));
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  function drawKnot() {
    const here = at && lands(net(), at);
    setAttribute(knot, 'display', here ? null : 'none');
    setAttribute(keep, 'disabled', at ? null : true);
    const text = at ? knotWords() : tr(HINT[areStagesFlat() ? 'flat' : 'flown']);
    setText(caption, text);
    const { over } = net(),
      [row, column] = at ?? [0, 0];
    const said = { valuenow: row * over[1].count + column, valuemin: 0, valuemax: over[0].count * over[1].count - 1, valuetext: text };
    for (const [name, value] of Object.entries(said)) setAttribute(grip, `aria-${name}`, value);
    const [x, y] = at ? spotOf(net(), at) : net().drawing.box_px,
      [wide, high] = net().drawing.size_px;
    Object.assign(grip.style, { left: `${(100 * clamp(x, 0, wide)) / wide}%`, top: `${(100 * clamp(y, 0, high)) / high}%` });
    setAttribute(knot, 'cx', x.toFixed(1));
    setAttribute(knot, 'cy', y.toFixed(1));
  }

  function figuresOf(of) {
    const says = {
      speed_m_s: value => showQuantity(value, 'm/s', store.view.units),
      elevation_deg: elevationWords,
      heading_deg: value => headingWords(value),
    };
    return Object.entries(throwAt(net(), of)).map(([field, value]) => says[field](value));
  }

  // the throw's figures, and its end as the server names it
  function knotWords() {
    const { over, endings, ended, spinward_m, time_s } = net(),
      i = at[0] * over[1].count + at[1],
      { units } = store.view;
    const after = showQuantity(time_s[i] - (store.read(`motions.${index()}.start_s`) ?? 0), 's', units),
      length = showQuantity(Math.abs(spinward_m[i]), 'm', units),
      said = { figures: figuresOf(at).join(', '), ends: endings[ended[i]], length, time: after };
    if (!lands(net(), at)) return tr('{figures}: {ends} after {time}.', said);
    return spinward_m[i] < 0
      ? tr('{figures}: {ends} {length} antispinward after {time}.', said)
      : tr('{figures}: {ends} {length} spinward after {time}.', said);
  }

  function update() {
    setAttribute(element, 'hidden', !net()?.drawing);
    if (!net()?.drawing) return;
    if (net().drawing !== drawing) {
      drawing = net().drawing;
      const next = JSON.stringify([net().motion, net().over]);
      if (next !== varied) at = null; // of other throws
      varied = next;
      const lines = parseDrawing(drawing.svg);
      setAttribute(svg, 'viewBox', lines.getAttribute('viewBox'));
      setChildren(ground, [...lines.children]);
      setText(axes, drawing.says);
    }
    drawKnot();
  }
  return { element, update, width: () => clamp(Math.round(room / drawnScale(box)), WIDTH_PX.least, WIDTH_PX.most) };
}
