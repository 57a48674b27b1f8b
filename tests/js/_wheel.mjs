// A wheel with a lob in it that comes down wherever a test wants it to: an answer as the page reads it, and what of GET /api/fields the views need.

const RADIUS_M = 56;
export const UNTIL_S = 1;
const END_S = 3,
  FPS = 24;
const SPIN = 0.1;
const seat = (yaw_deg, tilt_deg, fov_deg = 30) => ({ broad: { yaw_deg, tilt_deg, fov_deg }, square: { yaw_deg, tilt_deg, fov_deg } });
const CAMERAS = {
  margin: 0.06, broad: 1.6, square: 1, level_over_deg: 20, section_over_deg: 10, level_whole_deg: 30,
  seats: { a: seat(20, 15), b: seat(0, 12), c: seat(0, 88), d: seat(0, 2), e: seat(10, 15), w: seat(0, 4) },
}; // biome-ignore format: a table
export const FIELDS = { cameras: CAMERAS, shapes: { cylinder: {} }, kinds: { throw: { stage: { attended_m: 0.4, no_arrows: [] } } } };
const DRAWN = { section_m: null, level: false, half_m: 10, hub_m: 4, outline_m: ring() };

function ring() {
  return Array.from({ length: 36 }, (_, k) => [RADIUS_M * Math.cos(k / 5.73), RADIUS_M * Math.sin(k / 5.73), 0]).flat();
}

// Up and along from the deck until the clock's last moment, and then down to `lands_m`, so high.
export function answerOf(lands_m, high_m) {
  const place = time_s => {
    const rest = Math.max(0, (time_s - UNTIL_S) / (END_S - UNTIL_S));
    return {
      along_m: 0.5 * Math.min(time_s, UNTIL_S) + rest * (lands_m - 0.5 * UNTIL_S),
      height_m: 1.5 + Math.min(time_s, UNTIL_S) + high_m * rest * (1 - rest) - 2.5 * rest,
    };
  };
  const turned = ({ along_m, height_m }, turn) => {
    const angle = along_m / RADIUS_M + turn;
    return [(RADIUS_M - height_m) * Math.cos(angle), (RADIUS_M - height_m) * Math.sin(angle), 0];
  };
  const event = (kind, time_s) => ({
    kind,
    time_s,
    ...place(time_s),
    axial_m: 0,
    rotating_m: turned(place(time_s), 0),
    inertial_m: turned(place(time_s), SPIN * time_s),
  });
  const times = Array.from({ length: END_S * FPS + 1 }, (_, k) => k / FPS);
  const landing = { time_s: END_S, along_m: lands_m, axial_m: 0, way: { of_turn: lands_m / (2 * Math.PI * RADIUS_M) } };
  const motion = {
    name: 'Lob', kind: 'throw', first: 0, landing, events: [event('release', 0), event('deck', END_S)],
    along_m: times.map(t => place(t).along_m), height_m: times.map(t => place(t).height_m), axial_m: times.map(() => 0),
    rotating_m: times.flatMap(t => turned(place(t), 0)), inertial_m: times.flatMap(t => turned(place(t), SPIN * t)),
  }; // biome-ignore format: a table
  return {
    scene: { habitat: { radius_m: RADIUS_M }, motions: [{ body: { diameter_m: 0.2 }, speed_m_s: 5, heading_deg: 0 }] },
    habitat: { omega_rad_s: SPIN }, drawn: [DRAWN], grid: { fps: [FPS, 1], samples_per_frame: 1 },
    angle_rad: times.map(t => SPIN * t), spin_rad_s: times.map(() => SPIN), time_s: times, motions: [motion],
  }; // biome-ignore format: a table
}
