// The picture in hand with everything over it: a press marks the thing, a drag moves its mark under a loupe; in the scale's turn a drag draws the line
// of known length. By keyboard the same: each mark and each end of the line is a handle that the arrows move.

import { tr } from '../../state/language.js';
import { lineIn, markAt, markPlace, rowOfFrame, withMark } from '../../state/match.js';
import { clamp } from '../../state/scale.js';
import { h, onDrag, setAttribute } from '../shared/dom.js';
import { createGrip } from './match_grips.js';
import { createLoupe } from './match_loupe.js';
import { createOver } from './match_over.js';

const SMALL_PX = 480; // narrower pictures have smaller marks

/** get() → {match, answer, turn: 'mark' | 'scale', grid}; edit(match, live); placed(): a mark was set; choose(row). */
export function createPicture({ get, edit, placed, choose, units }) {
  const plate = h('canvas', { class: 'match-plate', 'aria-hidden': true }),
    loupe = createLoupe(),
    over = createOver({ label: tr('The picture, the marks and the nearest free path'), choose, units });
  const mark = createGrip({
    kind: 'mark-grip',
    label: tr('The thing in this frame: arrows move the mark, Enter sets it'),
    move: moveMark,
    left: loupe.hide,
  });
  const foot = end('from_px', tr('The foot of the line, on the deck')),
    head = end('to_px', tr('The other end of the line'));
  const element = h('div', { class: 'match-picture' }, plate, over.element, over.numbers, foot.element, head.element, mark.element, loupe.element);
  const show = frameShower(plate);
  let k = 1; // picture px in one of the window
  const lens = point => loupe.show(plate, point, k);
  new ResizeObserver(() => {
    if (get().match.source) update();
  }).observe(element);

  const inside = ([x, y]) => {
    const { source } = get().match;
    return [clamp(x, 0, source.width), clamp(y, 0, source.height)].map(value => Number(value.toFixed(2)));
  };
  function pointOf(event) {
    const { left, top, width } = element.getBoundingClientRect(),
      scale = get().match.source.width / width;
    return inside([(event.clientX - left) * scale, (event.clientY - top) * scale]);
  }

  let first = null, // where a drag began, in the picture
    wasMarked = false;
  onDrag(over.element, {
    start(event) {
      if (!get().match.source) return false;
      event.preventDefault();
      first = pointOf(event);
      wasMarked = markAt(get().match) !== null;
      if (get().turn === 'mark') put(first, true);
      lens(first);
    },
    move(event, _down, moved) {
      const point = pointOf(event);
      lens(point);
      if (get().turn === 'mark') put(point, true);
      else if (moved) edit(withLine({ from_px: first, to_px: point }), true);
    },
    end(event, moved) {
      loupe.element.hidden = event.pointerType !== 'mouse';
      if (get().turn === 'mark') {
        put(pointOf(event), false);
        if (!wasMarked) placed();
      } else if (moved) edit(get().match, false);
    },
  });
  over.element.addEventListener('pointermove', event => get().match.source && event.pointerType === 'mouse' && lens(pointOf(event)));
  over.element.addEventListener('pointerleave', loupe.hide);

  function put(point, live) {
    const { match } = get();
    edit(withMark(match, match.frame, point), live);
  }
  function withLine(ends) {
    const { match } = get();
    return { ...match, plane: { ...match.plane, ...lineIn(match), ...ends } };
  }

  function moveMark([dx, dy]) {
    const { match } = get(),
      [x, y] = markPlace(match),
      fresh = markAt(match) === null;
    put(inside([x + dx, y + dy]), false);
    if (!dx && !dy && fresh) placed();
    lens(markPlace(get().match));
  }

  function end(name, label) {
    return createGrip({
      kind: 'line-grip',
      label,
      move([dx, dy]) {
        const [x, y] = lineIn(get().match)[name];
        edit(withLine({ [name]: inside([x + dx, y + dy]) }), false);
        lens(get().match.plane[name]);
      },
      left: loupe.hide,
      drag(event) {
        const point = pointOf(event);
        edit(withLine({ [name]: point }), true);
        lens(point);
      },
      dropped: () => edit(get().match, false),
    });
  }

  function update() {
    const { match, answer, turn, grid } = get(),
      { source } = match;
    setAttribute(element, 'hidden', !source);
    if (!source) return;
    element.parentElement.style.setProperty('--aspect', (source.width / source.height).toFixed(5));
    show(source, match.frame);
    k = source.width / (element.clientWidth || source.width);
    const plane = match.by === 'plane',
      scaling = plane && turn === 'scale',
      line = lineIn(match);
    element.classList.toggle('scaling', scaling);
    over.draw({
      size: [source.width, source.height],
      k: element.clientWidth < SMALL_PX ? 0.66 * k : k,
      letter: k,
      points: match.marks.map(({ x_px, y_px }) => [x_px, y_px]),
      current: rowOfFrame(match, match.frame),
      fitted: answer?.path ?? null,
      scale: plane && (scaling || match.plane.from_px) ? [line.from_px, line.to_px] : null,
      grid,
      reasons: answer?.reasons ?? [],
    });
    mark.place(markPlace(match), source, !scaling, markAt(match) !== null);
    foot.place(line.from_px, source, scaling);
    head.place(line.to_px, source, scaling);
  }
  return { element, update };
}

// Frames are drawn one after the other, and of those that were asked for meanwhile only the last.
function frameShower(plate) {
  let wanted = null, // {source, frame} on the plate, or on its way there
    busy = Promise.resolve();
  return (source, frame) => {
    if (wanted?.source === source && wanted.frame === frame) return;
    const mine = { source, frame };
    wanted = mine;
    busy = busy.then(async () => {
      if (wanted !== mine) return;
      if (plate.width !== source.width || plate.height !== source.height) Object.assign(plate, { width: source.width, height: source.height });
      await source.draw(plate.getContext('2d'), frame).catch(() => {});
    });
  };
}
