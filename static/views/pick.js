// From a point of the picture into the scene.

// Eye and direction of the ray through (x, y) px of a stage.
export function ray(eye, rect, x, y) {
  const { camera, axes } = eye;
  const tall = Math.tan((camera.fov * Math.PI) / 360);
  const u = ((2 * x) / rect.width - 1) * tall * camera.aspect;
  const v = (1 - (2 * y) / rect.height) * tall;
  const { position: o } = camera;
  return { from: [o.x, o.y, o.z], along: [0, 1, 2].map((c) => u * axes.right[c] + v * axes.up[c] - axes.back[c]) };
}

// Offset from `point` to where the ray meets the plane through it, or null.
export function meetPlane({ from, along }, point, normal) {
  const p = [point.x, point.y, point.z];
  const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const speed = dot(along, normal);
  const s = dot(p.map((c, k) => c - from[k]), normal) / speed;
  return Number.isFinite(s) && s > 0 ? from.map((c, k) => c + s * along[k] - p[k]) : null;
}

// Where the ray leaves the drum through the inside of the deck, or null.
export function meetDeck({ from, along }, radius_m, half_m) {
  const y = from[1] - radius_m;
  const a = along[0] ** 2 + along[1] ** 2;
  const b = from[0] * along[0] + y * along[1];
  const c = from[0] ** 2 + y ** 2 - radius_m ** 2;
  const inside = b * b - a * c;
  if (a < 1e-12 || inside < 0) return null;
  const s = (-b + Math.sqrt(inside)) / a;
  const z = from[2] + s * along[2];
  if (s <= 0 || Math.abs(z) > half_m) return null;
  return { x: from[0] + s * along[0], y: from[1] + s * along[1], z };
}
