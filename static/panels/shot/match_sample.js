// The samples of a match: a throw aboard the Lantern Wheel, traced by the server, as somebody on the axis films it through a long lens; and the same
// take with the ball drawn by hand, which no habitat could do. The frames are painted here.

import { tr } from '../../state/language.js';

const SCENE = {
  rimfall: 1,
  title: 'Sample take',
  habitat: { shape: 'cylinder', radius_m: 56, spin_rpm: 3 },
  air: null,
  motions: [{ kind: 'throw', name: 'Sample', place: { along_m: 0.35, height_m: 1.6 }, speed_m_s: 6, elevation_deg: 35, body: 'handball' }],
  sampling: { fps: 24 },
};
const RATE = 24,
  WIDTH = 1280,
  HEIGHT = 720,
  PX_M = 150,
  FOOT = [190, 640], // where the thrower stands, and up is up
  TALL_M = 1.75,
  BALL_PX = 0.095 * PX_M;
const WIGGLE_M = 0.22,
  WIGGLES = 2;
const COLOURS = { night: '#0A1016', far: '#16202A', deck: '#51514D', edge: '#7E8886', light: '#F3E6C4', wood: '#D9D2BF', ball: '#EFEADC', word: '#AAB4B7' };

/** {source, match: what is to stand beside it}: `trace(document)` → answer. */
export async function sampleOf({ trace, possible }) {
  const answer = await trace(SCENE),
    [motion] = answer.motions;
  const last = Math.floor((motion.landing?.time_s ?? answer.time_s.at(-1)) * RATE),
    perFrame = answer.grid.samples_per_frame;
  const flight = Array.from({ length: last + 1 }, (_, frame) => at(motion.rotating_m, frame * perFrame));
  const places = possible ? flight : flight.map(([x, y], k) => [x, y - PX_M * WIGGLE_M * Math.sin((2 * Math.PI * WIGGLES * k) / last)]);
  const source = {
    name: possible ? tr('Sample take') : tr('Sample take, ball drawn in'),
    kind: 'sample',
    width: WIDTH,
    height: HEIGHT,
    count: places.length,
    rate: RATE,
    draw: async (context, frame) => paint(context, frame, places[frame]),
    close() {},
  };
  const head = [FOOT[0], Math.round(FOOT[1] - TALL_M * PX_M)];
  const match = {
    marks: places.map(([x, y], frame) => ({ frame, x_px: Math.round(x), y_px: Math.round(y) })),
    frame_rate: RATE,
    accuracy_px: 1.5,
    by: 'plane',
    plane: { from_px: FOOT, to_px: head, distance_m: TALL_M, upright: true, right_is: 'spinward' },
    known: { radius_m: 'given', spin_rpm: 'none', air: 'vacuum', body: null, start: 'thrown' },
    given: { radius_m: SCENE.habitat.radius_m, spin_rpm: SCENE.habitat.spin_rpm },
    slowed: false,
  };
  return { source, match };
}

// Seen along the axis: spinward to the right, up where the thrower's is.
function at(rotating_m, sample) {
  const [out, along] = [rotating_m[3 * sample], rotating_m[3 * sample + 1]];
  return [FOOT[0] + PX_M * along, FOOT[1] + PX_M * (out - SCENE.habitat.radius_m)];
}

function paint(context, frame, [x, y]) {
  const radius = SCENE.habitat.radius_m * PX_M,
    [footX, footY] = FOOT,
    deckAt = px => footY - radius + Math.sqrt(radius ** 2 - (px - footX) ** 2);
  context.fillStyle = COLOURS.night;
  context.fillRect(0, 0, WIDTH, HEIGHT);
  const lit = context.createRadialGradient(0.45 * WIDTH, 0.55 * HEIGHT, 60, 0.45 * WIDTH, 0.55 * HEIGHT, 0.75 * WIDTH);
  lit.addColorStop(0, '#1E2A33');
  lit.addColorStop(1, COLOURS.night);
  context.fillStyle = lit;
  context.fillRect(0, 0, WIDTH, HEIGHT);
  // the far bulkhead's frames, each half metre apart, along the radius
  context.strokeStyle = COLOURS.far;
  context.lineWidth = 3;
  for (let metre = -2; metre <= 8; metre += 1) {
    const a = metre / SCENE.habitat.radius_m;
    context.beginPath();
    context.moveTo(footX + radius * Math.sin(a), footY - radius + radius * Math.cos(a));
    context.lineTo(footX + (radius - 5 * PX_M) * Math.sin(a), footY - radius + (radius - 5 * PX_M) * Math.cos(a));
    context.stroke();
  }
  context.beginPath();
  context.moveTo(0, HEIGHT);
  for (let px = 0; px <= WIDTH; px += 16) context.lineTo(px, deckAt(px));
  context.lineTo(WIDTH, HEIGHT);
  context.fillStyle = '#23282A';
  context.fill();
  context.lineWidth = 9;
  context.strokeStyle = COLOURS.deck;
  context.beginPath();
  for (let px = 0; px <= WIDTH; px += 16) context.lineTo(px, deckAt(px) + 5);
  context.stroke();
  for (let metre = -1; metre <= 7; metre += 1) {
    context.fillStyle = COLOURS.light;
    context.fillRect(footX + radius * Math.sin(metre / SCENE.habitat.radius_m) - 4, deckAt(footX + metre * PX_M) + 14, 8, 3);
  }
  person(context, footX, footY);
  shadow(context, x, deckAt(x));
  context.fillStyle = COLOURS.ball;
  context.beginPath();
  context.arc(x, y, BALL_PX, 0, 2 * Math.PI);
  context.fill();
  context.fillStyle = COLOURS.word;
  context.font = '20px "Source Sans 3", sans-serif';
  context.fillText(tr('Lantern Wheel · sample take · frame {frame}', { frame: frame + 1 }), 24, 40);
}

function shadow(context, x, y) {
  context.fillStyle = 'rgba(0, 0, 0, .45)';
  context.beginPath();
  context.ellipse(x, y + 4, BALL_PX, 3, 0, 0, 2 * Math.PI);
  context.fill();
}

// A lay figure of 1.75 m that has just thrown.
function person(context, x, y) {
  const tall = TALL_M * PX_M,
    up = share => y - share * tall;
  context.strokeStyle = COLOURS.wood;
  context.fillStyle = COLOURS.wood;
  context.lineCap = 'round';
  const limb = (width, ...points) => {
    context.lineWidth = width;
    context.beginPath();
    for (const [dx, share] of points) context.lineTo(x + dx * tall, up(share));
    context.stroke();
  };
  limb(17, [-0.09, 0.03], [-0.05, 0.26], [0, 0.5]);
  limb(17, [0.09, 0.03], [0.06, 0.27], [0, 0.5]);
  limb(30, [0, 0.53], [0.005, 0.75]);
  limb(12, [0, 0.79], [-0.1, 0.62], [-0.07, 0.47]);
  limb(12, [0, 0.79], [0.09, 0.83], [0.18, 0.9]);
  limb(9, [0, 0.8], [0, 0.86]);
  context.beginPath();
  context.ellipse(x, up(0.925), 0.058 * tall, 0.075 * tall, 0, 0, 2 * Math.PI);
  context.fill();
  context.lineCap = 'butt';
}
