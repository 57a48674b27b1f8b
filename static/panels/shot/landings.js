// Where can it come down? Two figures of a throw are varied; every landing is a knot of a net over the unrolled deck, as the server draws it. Whoever
// rests on one sees it flown on both stages, and keeps it as a motion by a press.

import { fieldOf, motionName } from '../../state/fields.js';
import { PAIRS, firstOver, landingsRequest, lands, nearestTo, spotOf, throwAt } from '../../state/landings.js';
import { createNewest } from '../../state/newest.js';
import { indexOf } from '../../state/shot.js';
import { showQuantity } from '../../state/units.js';
import { elevationWords, freshName, headingWords } from '../../state/words.js';
import { h, parseDrawing, s, setAttribute, setChildren, setText } from '../shared/dom.js';
import { createList } from '../shared/choice.js';
import { download, fileName } from '../shared/files.js';
import { createInline } from '../shared/inline.js';

const WIDTH_PX = { least: 240, first: 320, most: 1200 };
const WORDS = { speed_m_s: 'speed', heading_deg: 'heading', elevation_deg: 'elevation' };
const FILES = ['csv', 'svg', 'pdf'];

export function createLandings({ element, store, client, heard, large }) {
  let room = WIDTH_PX.first,
    lastQuestion = null,
    at = null; // [row, column] of the throw that is looked at
  const motion = () => store.document.motions[indexOf(store, store.shot.aim.motion)];
  const over = () => store.shot.over;

  const pair = createList(
    { 'aria-label': 'What varies', class: 'worded' },
    {
      options: () => PAIRS.map((names, k) => [k, names.map(name => WORDS[name]).join(' and ')]),
      chosen: () => PAIRS.findIndex(names => names.every((name, k) => name === over()[k].field)),
      choose: k => vary(PAIRS[k]),
    },
  );
  const sentence = h('p', { class: 'words aim-sentence' });
  const begin = h('button', { type: 'button', class: 'btn', onclick: () => vary(PAIRS[0]) }, 'Draw the net of landings');
  const first = h(
    'div',
    {},
    h('p', { class: 'lead' }, 'Every place where the throw can land, as its speed and its elevation vary: a net over the unrolled deck.'),
    begin,
  );
  const bar = h('progress', { max: 1, 'aria-label': 'Throws that have been flown' }),
    stop = h('button', { type: 'button', class: 'link', onclick: stopped }, 'Stop'),
    busy = h('p', { class: 'links landings-busy', hidden: true }, bar, stop);
  const words = h('p', { class: 'lead' });
  const ground = s('g', {}),
    mark = s('circle', { r: 6, class: 'knot' }),
    svg = s('svg', { class: 'landings-net', role: 'img', 'aria-label': 'Landings over the unrolled deck' }, ground, mark);
  const grip = h('span', {
    class: 'ring-grip',
    role: 'slider',
    tabindex: 0,
    'aria-label': 'A throw of the net: up and down, left and right for its two figures; Enter keeps it',
    'aria-roledescription': 'slider of two ways',
    onkeydown,
    onfocus: () => look(at ?? middle()),
  });
  const box = h('div', { class: 'landings-box' }, svg, grip);
  const caption = h('p', { class: 'small landings-at' });
  const drawn = h('div', {}, box, caption);
  const files = h(
    'span',
    {},
    'Save the net: ',
    FILES.flatMap((format, k) => [
      k > 0 && ', ',
      h(
        'button',
        { type: 'button', class: 'link', 'aria-label': `Save the net as ${format.toUpperCase()}`, onclick: () => save(format) },
        format.toUpperCase(),
      ),
    ]),
  );
  const keep = h('button', { type: 'button', class: 'btn', onclick: keepIt }, 'Keep this throw');
  const shown = h(
    'div',
    { hidden: true },
    words,
    drawn,
    h('p', { class: 'links' }, keep, large.button({ place: 5, title: () => 'Where it can come down', part: drawn }), files),
  );
  const asked = h('div', { hidden: true }, sentence, busy, shown);
  element.append(first, asked);
  let figures = [],
    builtFor = null;

  const newest = createNewest({
    request: question,
    ask: ({ body, units, width }, signal) => {
      setAttribute(bar, 'value', null);
      return client.landings(body, { units, width, signal, told: (done, of) => setAttribute(bar, 'value', of ? done / of : null) });
    },
    answered: answer => {
      setAttribute(busy, 'hidden', true);
      at = null;
      store.setShot({ landings: answer, flown: null });
      heard.say(answer.words[0]);
    },
    failed: problem => {
      setAttribute(busy, 'hidden', true);
      store.setShot({ landings: null, flown: null });
      setText(words, problem.message);
      setAttribute(shown, 'hidden', null);
      setAttribute(drawn, 'hidden', true);
    },
  });
  const flying = createNewest({
    request: () => ({ at, scene: flownScene(at) }),
    ask: ({ scene }, signal) => client.trace(scene, { units: store.view.units, signal }),
    answered: (answer, asked) => {
      if (at && asked.at.join() === at.join()) store.setShot({ flown: { answer, at } });
    },
    failed: () => {},
  });

  new ResizeObserver(([entry]) => {
    room = entry.contentRect.width || room;
  }).observe(box);

  function vary(names) {
    store.setShot({ over: firstOver(names, motion()) });
  }

  function question() {
    const width = Math.max(WIDTH_PX.least, Math.min(WIDTH_PX.most, Math.round(room)));
    return { body: landingsRequest(store.document, store.shot.aim.motion, over()), units: store.view.units, width };
  }

  // anew with every change of the scene or the ranges; a change of what nobody varies is asked too
  function ask() {
    const key = JSON.stringify(question());
    if (key === lastQuestion) return;
    lastQuestion = key;
    setAttribute(busy, 'hidden', null);
    newest.want();
  }

  function stopped() {
    newest.drop();
    setAttribute(busy, 'hidden', true);
    heard.say('Stopped.');
  }

  // one throw of the net
  function look(next) {
    if (!store.shot.landings || String(next) === String(at)) return;
    at = next;
    if (at) flying.want();
    else store.setShot({ flown: null });
    drawMark();
  }

  function flownScene(of) {
    const { carried, ...rest } = motion();
    return { ...store.document, compare: [], motions: [{ ...rest, ...(carried ? { carried } : {}), ...throwAt(store.shot.landings, of) }] };
  }

  function keepIt() {
    if (!at) return;
    const names = store.document.motions.map((_, i) => motionName(store, i)),
      name = freshName(store.shot.aim.motion, names);
    const copy = { ...structuredClone(motion()), ...throwAt(store.shot.landings, at), name };
    store.edit(draft => {
      draft.motions.push(copy);
    });
    store.look({ chosen: store.document.motions.length - 1 });
    store.tell({ kind: 'told', field: null, say: `${name} is kept as a motion.`, undo: true });
  }

  svg.addEventListener('pointermove', event => look(nearestTo(store.shot.landings, pointOf(event)) ?? at));
  svg.addEventListener('click', event => {
    const near = nearestTo(store.shot.landings, pointOf(event));
    if (!near) return;
    look(near);
    keepIt();
  });

  function pointOf(event) {
    const { left, top, width } = svg.getBoundingClientRect(),
      [wide] = store.shot.landings.drawing.size_px;
    return [event.clientX - left, event.clientY - top].map(px => (px * wide) / width);
  }

  function onkeydown(event) {
    const step = { ArrowUp: [1, 0], ArrowDown: [-1, 0], ArrowRight: [0, 1], ArrowLeft: [0, -1] }[event.key];
    if (event.key === 'Enter') keepIt();
    else if (step && !event.ctrlKey && !event.metaKey && !event.altKey)
      look(
        clampedTo(
          store.shot.landings.over,
          step.map((by, k) => (at ?? middle())[k] + by * (event.shiftKey ? 5 : 1)),
        ),
      );
    else return;
    event.preventDefault();
    event.stopPropagation();
  }
  const middle = () => store.shot.landings.over.map(({ count }) => Math.floor(count / 2));

  function drawMark() {
    const { landings } = store.shot;
    setAttribute(mark, 'hidden', at === null ? true : null);
    mark.style.display = at ? '' : 'none';
    keep.disabled = !at;
    if (!landings?.drawing) return;
    const [x, y] = at ? spotOf(landings, at) : [0, 0],
      [wide, high] = landings.drawing.size_px;
    if (at) {
      setAttribute(mark, 'cx', x.toFixed(1));
      setAttribute(mark, 'cy', y.toFixed(1));
    }
    Object.assign(grip.style, { left: `${(100 * x) / wide}%`, top: `${(100 * y) / high}%` });
    const text = at ? knotWords(landings, at) : 'Point at the net: that throw is flown on both stages; a press keeps it as a motion.';
    setText(caption, text);
    setAttribute(grip, 'aria-valuenow', at ? at[0] * landings.over[1].count + at[1] : 0);
    setAttribute(grip, 'aria-valuemin', 0);
    setAttribute(grip, 'aria-valuemax', landings.over[0].count * landings.over[1].count - 1);
    setAttribute(grip, 'aria-valuetext', text);
  }

  function knotWords(landings, of) {
    const i = of[0] * landings.over[1].count + of[1],
      { units } = store.view,
      figures = throwAt(landings, of);
    const said = Object.entries(figures).map(([field, value]) =>
      field === 'speed_m_s' ? showQuantity(value, 'm/s', units) : field === 'elevation_deg' ? elevationWords(value) : headingWords(value),
    );
    const start_s = store.read(`motions.${indexOf(store, landings.motion)}.start_s`) ?? 0,
      after = showQuantity(landings.time_s[i] - start_s, 's', units),
      end = landings.endings[landings.ended[i]];
    if (!lands(landings, of)) return `${said.join(', ')}: ${end} after ${after}.`;
    const away = landings.spinward_m?.[i] ?? 0;
    return `${said.join(', ')}: ${end} ${showQuantity(Math.abs(away), 'm', units)} ${away < 0 ? 'antispinward' : 'spinward'} after ${after}.`;
  }

  async function save(format) {
    try {
      const { body, units } = question();
      download(`${fileName(store.read('title'))}-landings.${format}`, await client.landingsFile(format, body, units));
    } catch (problem) {
      store.tell({ kind: 'failed', field: null, say: `The net could not be saved: ${problem.message}` });
    }
  }

  // two ranges in a sentence
  function build() {
    const key = over()
      .map(({ field }) => field)
      .join();
    if (key === builtFor) return;
    builtFor = key;
    figures = [];
    const figure = (k, end) => {
      const { field } = over()[k],
        about = fieldOf(store.fields, `motions.*.${field}`);
      const words = { elevation_deg: value => `${Number(value.toFixed(1))}°`, heading_deg: value => `${Number(value.toFixed(1))}°` }[field] ?? null;
      const one = createInline({
        field: { ...about, label: `${about.label}, ${end === 'first' ? 'from' : 'to'}` },
        units: () => store.view.units,
        read: () => over()[k][end],
        write: (value, live) => store.setShot({ over: over().map((range, i) => (i === k ? { ...range, [end]: value } : range)) }, { live }),
        wrong: typed => store.tell({ kind: 'told', field: null, say: `${about.label} was ${typed}; it must be ${about.may_be}.` }),
        words,
      });
      figures.push(one);
      return one.element;
    };
    const range = k => [`${WORDS[over()[k].field]} from `, figure(k, 'first'), ' to ', figure(k, 'last')];
    setChildren(sentence, 'Vary ', pair.element, ': ', ...range(0), ' and ', ...range(1), '.');
  }

  let drawing = null;
  function update() {
    const none = !store.shot.aim;
    setAttribute(first, 'hidden', none || over() !== null);
    setAttribute(asked, 'hidden', none || over() === null);
    if (none || !over()) return;
    build();
    pair.update();
    figures.forEach(one => one.update());
    ask();
    const { landings } = store.shot;
    if (!landings) return;
    setAttribute(shown, 'hidden', null);
    setAttribute(drawn, 'hidden', null);
    setText(words, landings.words.join(' '));
    if (landings.drawing !== drawing) {
      drawing = landings.drawing;
      const lines = parseDrawing(drawing.svg);
      setAttribute(svg, 'viewBox', lines.getAttribute('viewBox'));
      setChildren(ground, [...lines.children]);
    }
    drawMark();
  }
  return { update };
}

const clampedTo = (over, at) => at.map((k, i) => Math.max(0, Math.min(over[i].count - 1, k)));
