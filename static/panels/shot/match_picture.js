// The picture in hand with everything over it: a press marks the thing, a drag moves its mark under a loupe; in the scale's turn a drag draws the line
// of known length. By keyboard the same: each mark and each end of the line is a handle that the arrows move.

import { markAt, rowOfFrame, withMark } from '../../state/match.js';
import { clamp } from '../../state/scale.js';
import { h, onDrag, setAttribute } from '../shared/dom.js';
import { createOver } from './match_over.js';

const STEP_PX = 1,
  LARGE = 10;
const LOUPE_PX = 124,
  LOUPE_TIMES = 6;
const SMALL_PX = 480; // narrower pictures have smaller marks
const FIRST_LINE = [0.12, 0.85, 0.6]; // where the line stands before it is drawn: from the left, its foot and its head from the top

/** get() → {match, answer, source, turn: 'mark' | 'scale'}; edit(match, live); placed(): a mark was set; choose(row). */
export function createPicture({ get, edit, placed, choose }) {
  const plate = h('canvas', { class: 'match-plate', 'aria-hidden': true }),
    loupe = h('canvas', { class: 'match-loupe', width: LOUPE_PX, height: LOUPE_PX, hidden: true, 'aria-hidden': true }),
    over = createOver({ label: 'The picture, the marks and the nearest free path', choose });
  const mark = grip('mark-grip', 'The thing in this frame: arrows move the mark, Enter sets it', moveMark),
    foot = grip('line-grip', 'The foot of the line, on the deck', by => moveEnd('from_px', by)),
    head = grip('line-grip', 'The other end of the line', by => moveEnd('to_px', by));
  const element = h('div', { class: 'match-picture' }, plate, over.element, over.numbers, foot, head, mark, loupe);
  let drawn = null, // {source, frame} on the plate, or on its way there
    busy = Promise.resolve(),
    k = 1; // picture px in one of the window
  new ResizeObserver(() => {
    if (get().source) update();
  }).observe(element);

  // Frames are drawn one after the other, and of those that were asked for meanwhile only the last.
  function show(source, frame) {
    if (drawn?.source === source && drawn.frame === frame) return;
    const mine = { source, frame };
    drawn = mine;
    busy = busy.then(async () => {
      if (drawn !== mine) return;
      if (plate.width !== source.width || plate.height !== source.height) Object.assign(plate, { width: source.width, height: source.height });
      await source.draw(plate.getContext('2d'), frame).catch(() => {});
    });
  }

  const inside = ([x, y]) => {
    const { source } = get();
    return [clamp(x, 0, source.width), clamp(y, 0, source.height)].map(value => Number(value.toFixed(2)));
  };
  function pointOf(event) {
    const { left, top, width } = element.getBoundingClientRect(),
      scale = get().source.width / width;
    return inside([(event.clientX - left) * scale, (event.clientY - top) * scale]);
  }

  const lineIn = ({ plane }, { width, height }) => ({
    from_px: plane.from_px ?? [FIRST_LINE[0] * width, FIRST_LINE[1] * height].map(Math.round),
    to_px: plane.to_px ?? [FIRST_LINE[0] * width, FIRST_LINE[2] * height].map(Math.round),
  });

  let first = null, // where a drag began, in the picture
    wasMarked = false;
  onDrag(over.element, {
    start(event) {
      if (!get().source) return false;
      event.preventDefault();
      const { match, turn } = get();
      first = pointOf(event);
      wasMarked = markAt(match) !== null;
      if (turn === 'mark') put(first, true);
      lens(first);
    },
    move(event, _down, moved) {
      const { match, turn } = get(),
        point = pointOf(event);
      lens(point);
      if (turn === 'mark') put(point, true);
      else if (moved) edit({ ...match, plane: { ...match.plane, from_px: first, to_px: point } }, true);
    },
    end(event, moved) {
      const { match, turn } = get();
      loupe.hidden = event.pointerType !== 'mouse';
      if (turn === 'mark') {
        put(pointOf(event), false);
        if (!wasMarked) placed();
      } else if (moved) edit(match, false);
    },
  });
  over.element.addEventListener('pointermove', event => get().source && event.pointerType === 'mouse' && lens(pointOf(event)));
  over.element.addEventListener('pointerleave', () => {
    loupe.hidden = true;
  });

  function put(point, live) {
    const { match } = get();
    edit(withMark(match, match.frame, point), live);
  }

  function moveMark([dx, dy]) {
    const { match } = get(),
      [x, y] = markPlace();
    if (!dx && !dy) {
      const fresh = markAt(match) === null;
      put([x, y], false);
      if (fresh) placed();
    } else put(inside([x + dx, y + dy]), false);
    lens(markPlace());
  }
  function moveEnd(end, [dx, dy]) {
    const { match, source } = get(),
      line = lineIn(match, source),
      [x, y] = line[end];
    edit({ ...match, plane: { ...match.plane, ...line, [end]: inside([x + dx, y + dy]) } }, false);
    lens(get().match.plane[end]);
  }

  // where a frame's mark is, or would be: as in the frame before, else in the middle
  function markPlace() {
    const { match, source } = get(),
      own = markAt(match) ?? [...match.marks].reverse().find(({ frame }) => frame < match.frame) ?? match.marks[0];
    return own ? [own.x_px, own.y_px] : [source.width / 2, source.height / 2];
  }

  function grip(kind, label, move) {
    const one = h('span', {
      class: `ring-grip ${kind}`,
      role: 'slider',
      tabindex: 0,
      'aria-label': label,
      'aria-roledescription': 'slider of two ways',
      'aria-valuemin': 0,
      onblur: () => {
        loupe.hidden = true;
      },
      onkeydown: event => {
        const size = STEP_PX * (event.shiftKey ? LARGE : 1);
        const by = { ArrowLeft: [-size, 0], ArrowRight: [size, 0], ArrowUp: [0, -size], ArrowDown: [0, size], Enter: [0, 0] }[event.key];
        if (event.ctrlKey || event.metaKey || event.altKey || !by) return;
        move(by);
        event.preventDefault();
        event.stopPropagation();
      },
    });
    if (kind === 'line-grip')
      onDrag(one, {
        start: event => event.preventDefault(),
        move: (event, _down, moved) => moved && dragEnd(one === foot ? 'from_px' : 'to_px', pointOf(event)),
        end: (_event, moved) => moved && edit(get().match, false),
      });
    return one;
  }
  function dragEnd(end, point) {
    const { match, source } = get();
    edit({ ...match, plane: { ...match.plane, ...lineIn(match, source), [end]: point } }, true);
    lens(point);
  }

  // what lies under a point, enlarged, in a corner away from it
  function lens([x, y]) {
    const { source } = get(),
      context = loupe.getContext('2d'),
      size = (LOUPE_PX * k) / LOUPE_TIMES;
    loupe.hidden = false;
    loupe.classList.toggle('right', x < source.width / 2 && y < source.height / 2);
    context.imageSmoothingEnabled = size > LOUPE_PX / 2;
    context.fillStyle = '#0A1016';
    context.fillRect(0, 0, LOUPE_PX, LOUPE_PX);
    context.drawImage(plate, x - size / 2, y - size / 2, size, size, 0, 0, LOUPE_PX, LOUPE_PX);
    for (const [style, width] of [
      ['rgba(10, 16, 22, .7)', 3],
      ['#FFFFFF', 1],
    ]) {
      context.strokeStyle = style;
      context.lineWidth = width;
      context.beginPath();
      const half = LOUPE_PX / 2;
      for (const [a, b] of [
        [0, half - 8],
        [half + 8, LOUPE_PX],
      ]) {
        context.moveTo(a, half);
        context.lineTo(b, half);
        context.moveTo(half, a);
        context.lineTo(half, b);
      }
      context.stroke();
    }
  }

  function update() {
    const { match, answer, source, turn } = get();
    setAttribute(element, 'hidden', !source);
    if (!source) return;
    element.parentElement.style.setProperty('--aspect', (source.width / source.height).toFixed(5));
    show(source, match.frame);
    k = source.width / (element.clientWidth || source.width);
    const plane = match.by === 'plane',
      scaling = plane && turn === 'scale',
      line = lineIn(match, source);
    element.classList.toggle('scaling', scaling);
    over.draw({
      size: [source.width, source.height],
      k: element.clientWidth < SMALL_PX ? 0.66 * k : k,
      points: match.marks.map(({ x_px, y_px }) => [x_px, y_px]),
      current: rowOfFrame(match, match.frame),
      fitted: answer?.path ?? null,
      scale: plane && (scaling || match.plane.from_px) ? [line.from_px, line.to_px] : null,
      reasons: answer?.reasons ?? [],
    });
    set(mark, markPlace(), !scaling, markAt(match) ? '' : 'not marked, ');
    set(foot, line.from_px, scaling, '');
    set(head, line.to_px, scaling, '');
  }

  function set(one, [x, y], shown, say) {
    const { source } = get();
    one.hidden = !shown;
    one.style.left = `${((100 * x) / source.width).toFixed(3)}%`;
    one.style.top = `${((100 * y) / source.height).toFixed(3)}%`;
    setAttribute(one, 'aria-valuemax', source.width);
    setAttribute(one, 'aria-valuenow', Math.round(x));
    setAttribute(one, 'aria-valuetext', `${say}${Math.round(x)} px from the left, ${Math.round(y)} from the top`);
  }
  return { element, update, focus: () => mark.focus({ preventScroll: true }) };
}
