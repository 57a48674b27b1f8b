// From a point of the picture into the scene.

const STEPS = 600;

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

// Where the ray goes through what can be walked on, from above, or null. `height(point)`: above the surface, null where it ends.
export function meetGround({ from, along }, far_m, height) {
  const long = Math.hypot(...along);
  const point = (s) => ({ x: from[0] + (s / long) * along[0], y: from[1] + (s / long) * along[1], z: from[2] + (s / long) * along[2] });
  let above = null;
  for (let k = 0; k <= STEPS; k += 1) {
    const s = far_m * (k / STEPS) ** 2;
    const h = height(point(s));
    if (h !== null && h <= 0 && above !== null) return point(bisected((t) => height(point(t)) ?? -1, above, s));
    above = h !== null && h > 0 ? s : null;
  }
  return null;
}

function bisected(fn, above, below) {
  let [a, b] = [above, below];
  for (let k = 0; k < 48; k += 1) {
    const middle = (a + b) / 2;
    if (fn(middle) > 0) a = middle;
    else b = middle;
  }
  return b;
}
