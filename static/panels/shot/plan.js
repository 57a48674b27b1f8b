// The deck seen along the axis, the thrower at its foot, and the catcher on it as a handle: dragged round, or moved by the arrows. Every way is a
// thin line, the chosen one strong; what blocks one stands where it does.

import { tr } from '../../state/language.js';
import { placeOf, indexOf, shareOf, shareWords } from '../../state/shot.js';
import { NEAR_TURN, createPlan, turn, viewOf } from '../../state/deck_plan.js';
import { pathStyle } from '../../state/palette.js';
import { showQuantity } from '../../state/units.js';
import { h, onDrag, s, setAttribute, setChildren } from '../shared/dom.js';

const SIZE = 320,
  HALF = SIZE / 2;
const PERSON_M = 1.75,
  MOST = 0.9, // of the radius: where that is less than a person, none is drawn but where they are
  LEAST_PX = 17, // a person is drawn no lower, whatever the scale
  ARC = 24; // pieces of the arc that says how far round
const STEP_M = 0.1,
  LARGE = 10;
const UNDER = 0.004; // of the radius, that is seen below the deck
const SPOKEN = [1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4]; // shares of a turn that have a tick

export function createAimPlan({ store, put }) {
  const ground = s('g', {}),
    paths = s('g', {}),
    people = s('g', {});
  const svg = s(
    'svg',
    { class: 'aim-plan', viewBox: `0 0 ${SIZE} ${SIZE}`, role: 'img', 'aria-label': tr('The deck seen along the axis') },
    ground,
    paths,
    people,
  );
  const grip = h('span', {
    class: 'ring-grip',
    role: 'slider',
    tabindex: 0,
    'aria-label': tr('The catcher: left and right along the deck, up and down the height of the hands'),
    'aria-roledescription': tr('slider of two ways'),
    onkeydown,
  });
  const element = h('div', { class: 'aim-box' }, svg, grip);
  let plan = null,
    view = null, // kept while the catcher is dragged
    key = null,
    held = false;

  const from = () => placeOf(store, indexOf(store, store.shot.aim.motion));
  const floors = () => store.answer?.habitat.floors ?? [];
  const toPx = point => {
    const [x, y] = turn(point, view.turn_rad);
    const scale = HALF / view.half_m;
    return [HALF + (x - view.middle[0]) * scale, HALF + (y - view.middle[1]) * scale];
  };
  const fromPx = ([u, v]) => {
    const scale = view.half_m / HALF;
    return turn([view.middle[0] + (u - HALF) * scale, view.middle[1] + (v - HALF) * scale], -view.turn_rad);
  };
  const inPx = place => toPx(plan.at(place));

  function moveTo(to, live) {
    const round = metres => Number(metres.toFixed(plan.radius_m > 20 ? 1 : 3));
    put({ ...to, along_m: round(to.along_m), height_m: round(to.height_m), axial_m: round(to.axial_m) }, live);
  }

  onDrag(grip, {
    start(event) {
      event.preventDefault();
      grip.focus({ preventScroll: true });
      held = true;
    },
    move(event, _down, moved) {
      if (!moved) return;
      const { left, top, width } = svg.getBoundingClientRect();
      const point = fromPx([((event.clientX - left) / width) * SIZE, ((event.clientY - top) / width) * SIZE]);
      moveTo(plan.under(point, store.shot.aim.to, from()), true);
    },
    end(_event, moved) {
      held = false;
      if (moved) put(store.shot.aim.to, false);
    },
  });

  function onkeydown(event) {
    const along = { ArrowLeft: -1, ArrowRight: 1 }[event.key],
      up = { ArrowDown: -1, ArrowUp: 1 }[event.key];
    if ((!along && !up) || event.ctrlKey || event.metaKey || event.altKey) return;
    const step = STEP_M * (event.shiftKey ? LARGE : 1),
      { to } = store.shot.aim;
    moveTo(along ? { ...to, along_m: to.along_m + along * step } : { ...to, height_m: Math.max(0, to.height_m + (up * step) / 2) }, false);
    event.preventDefault();
    event.stopPropagation();
  }

  // the ways are not looked at here for where they lie: a picture that followed every answer would jump
  function look() {
    const { aim } = store.shot;
    const next = JSON.stringify([store.document.habitat, floors().length, aim.motion, held || [aim.to, ways().length]]);
    if (held && view) return;
    if (next === key) return;
    key = next;
    plan = createPlan({ ...store.document.habitat, radius_m: store.read('habitat.radius_m') }, floors());
    const ends = [from(), catcher()].flatMap(place => [place, { ...place, height_m: -UNDER * plan.radius_m }].map(plan.at)),
      share = shareTo(catcher()),
      foot = plan.azimuth(share !== null && Math.abs(share) < NEAR_TURN ? middle(from(), catcher()) : from());
    view = viewOf(plan, [...ends, ...ways().flatMap(way => few(pointsOf(way)))], share, foot);
    drawGround();
  }

  // of a turn; nothing between two places of one floor, null between floors
  function shareTo(place) {
    if (plan.turn_m) return (place.along_m - from().along_m) / plan.turn_m;
    return (place.floor ?? 0) === from().floor ? 0 : null;
  }

  const catcher = () =>
    store.shot.aim.to.motion
      ? ((ways()[store.shot.chosen] ?? ways()[0])?.meets ?? placeOf(store, indexOf(store, store.shot.aim.to.motion)))
      : store.shot.aim.to;
  const ways = () => {
    const { answer } = store.shot;
    return answer && !store.shotBehind ? (answer.ways.length ? answer.ways : [answer.nearest].filter(Boolean)) : [];
  };

  function drawGround() {
    const scale = HALF / view.half_m;
    const [cx, cy] = toPx([0, 0]);
    const circle = (radius_m, kind) => s('circle', { cx, cy, r: radius_m * scale, class: kind });
    setChildren(
      ground,
      plan.rings.map((radius_m, k) => circle(radius_m, k ? 'plan-inner' : 'plan-deck')),
      plan.lines.map(([a, b]) => line(toPx(a), toPx(b), 'plan-deck')),
      plan.turn_m && SPOKEN.map(share => tick(share)),
      spinwardMark(),
    );
  }

  // a share of the way round from the thrower: a tick outside the deck
  function tick(share) {
    const a = plan.at({ ...from(), height_m: 0, along_m: from().along_m + share * plan.turn_m }),
      far = 1 + (7 * view.half_m) / HALF / plan.radius_m;
    return line(toPx(a), toPx(a.map(part => part * far)), 'plan-tick');
  }

  // which way it turns, along the deck's outside
  function spinwardMark() {
    if (!plan.turn_m) return null;
    const lift = (11 * view.half_m) / HALF;
    const out = along_m => {
      const [x, y] = plan.at({ ...from(), height_m: 0, along_m });
      const size = Math.hypot(x, y);
      return toPx([x * (1 + lift / size), y * (1 + lift / size)]);
    };
    const long = Math.min(0.14 * plan.turn_m, 0.62 * view.half_m),
      first = view.middle[0] ? from().along_m - 0.2 * long : from().along_m;
    const points = Array.from({ length: 9 }, (_, k) => out(first + (long * (k + 1)) / 9));
    const [[x, y], [u, v]] = [points.at(-1), points.at(-2)],
      angle = (Math.atan2(y - v, x - u) * 180) / Math.PI;
    return s(
      'g',
      { class: 'plan-spin' },
      s('path', { d: pathOf(points) }),
      s('path', { d: 'M-6 -3.5L1 0L-6 3.5', transform: `translate(${x} ${y}) rotate(${angle})` }),
    );
  }

  function drawPaths() {
    const index = indexOf(store, store.shot.aim.motion),
      { number } = pathStyle(Math.max(0, index));
    setAttribute(paths, 'class', `paper-${number}`);
    const { chosen, answer } = store.shot;
    setChildren(
      paths,
      ways().map((way, k) => {
        const points = pointsOf(way).map(toPx);
        const kind = answer.ways.length === 0 ? 'way nearest' : k === chosen ? 'way chosen' : 'way';
        return s('path', { d: pathOf(points), class: kind });
      }),
      ways().map(way => way.blocked_by && cross(toPx(flat(way.blocked_by.rotating_m)))),
    );
  }

  function drawPeople() {
    const { aim } = store.shot,
      [x, y] = inPx(catcher());
    setChildren(
      people,
      person(from(), 'thrower'),
      aim.to.motion ? null : person(aim.to, 'catcher'),
      arc(),
      s('circle', { cx: x, cy: y, r: reachPx(), class: 'reach' }),
    );
    grip.style.left = `${((100 * x) / SIZE).toFixed(3)}%`;
    grip.style.top = `${((100 * y) / SIZE).toFixed(3)}%`;
    setAttribute(grip, 'hidden', Boolean(aim.to.motion));
    if (aim.to.motion) return;
    const said = { valuemin: -plan.radius_m * 4, valuemax: plan.radius_m * 4, valuenow: aim.to.along_m, valuetext: catcherWords(aim) };
    for (const [name, value] of Object.entries(said)) setAttribute(grip, `aria-${name}`, value);
  }

  // where the catcher stands, of the thrower or of the middle of the floor
  function catcherWords(aim) {
    const share = shareOf(store, aim),
      away_m = aim.to.along_m - (share === null ? 0 : from().along_m),
      length = showQuantity(Math.abs(away_m), 'm', store.view.units);
    const said = {
      away: away_m < 0 ? tr('{length} antispinward', { length }) : tr('{length} spinward', { length }),
      height: showQuantity(aim.to.height_m, 'm', store.view.units),
    };
    return share === null
      ? tr('{away}, hands at {height}', said)
      : tr('{away}, {share} of the way round, hands at {height}', { ...said, share: shareWords(share) });
  }

  const reachPx = () => Math.max(5, (store.shot.aim.within_m * HALF) / view.half_m);

  // somebody who stands on the deck: a line toward the axis with a head
  function person(place, kind) {
    const tall = PERSON_M > MOST * plan.radius_m ? 0 : Math.max(PERSON_M, (LEAST_PX * view.half_m) / HALF),
      [feet, neck, head] = [0, 0.84, 0.92].map(share => inPx({ ...place, height_m: share * tall }));
    return s(
      'g',
      { class: `plan-person ${kind}` },
      line(feet, neck),
      s('circle', { cx: head[0], cy: head[1], r: Math.max(2.4, (0.075 * tall * HALF) / view.half_m) }),
    );
  }

  // how far round, along the inside of the deck
  function arc() {
    const { to } = store.shot.aim;
    if (!plan.turn_m || to.motion || view.middle[0] || view.middle[1]) return null;
    const depth = (10 * view.half_m) / HALF,
      start = from().along_m;
    const points = Array.from({ length: ARC + 1 }, (_, k) => inPx({ ...to, height_m: -depth, along_m: start + ((to.along_m - start) * k) / ARC }));
    return s('path', { d: pathOf(points), class: 'plan-arc' });
  }

  function update() {
    look();
    drawPaths();
    drawPeople();
  }
  return { element, update };
}

const middle = (a, b) => ({ ...b, along_m: (a.along_m + b.along_m) / 2 });
// in the plan's axes, of a place aboard (x outward at along 0, y spinward)
const flat = ([x, y]) => [y, x];
function pointsOf({ path }) {
  const points = [];
  for (let i = 0; i < path.rotating_m.length; i += 3) points.push([path.rotating_m[i + 1], path.rotating_m[i]]);
  return points;
}
const few = points => points.filter((_, i) => i % Math.ceil(points.length / 16) === 0);
const pathOf = points => `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;
const line = ([x1, y1], [x2, y2], kind = null) => s('line', { x1: x1.toFixed(1), y1: y1.toFixed(1), x2: x2.toFixed(1), y2: y2.toFixed(1), class: kind });
const cross = ([x, y]) => s('path', { d: `M${x - 5} ${y - 5}l10 10m0 -10l-10 10`, class: 'blocked' });
