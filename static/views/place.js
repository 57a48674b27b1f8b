// Where things are drawn. Drawing axes are (X, Y, Z) = (y, −x, z) of the server's frame, moved so that the origin lies on the
// deck under along = 0: numbers stay small where people look, however large the wheel.

// A place (along, height, axial) with the habitat turned by `turn` radians.
export function placeAt(radius_m, along_m, height_m, axial_m, turn_rad, out) {
  const angle = along_m / radius_m + turn_rad;
  const half = Math.sin(angle / 2);
  out.x = (radius_m - height_m) * Math.sin(angle);
  out.y = 2 * radius_m * half * half + height_m * Math.cos(angle);
  out.z = axial_m;
  return out;
}

// Point i of a flat array of server positions (x, y, z).
export function drawnPoint(values, i, radius_m, out) {
  out.x = values[3 * i + 1];
  out.y = radius_m - values[3 * i];
  out.z = values[3 * i + 2];
  return out;
}

// A server vector has the same axes and no origin.
export function drawnVector(values, out) {
  out.x = values[1];
  out.y = -values[0];
  out.z = values[2];
  return out;
}

// Turns a drawn point about the habitat's axis.
export function turned(point, radius_m, turn_rad, out) {
  const c = Math.cos(turn_rad);
  const s = Math.sin(turn_rad);
  const half = Math.sin(turn_rad / 2);
  const { x, y } = point;
  out.x = c * x - s * y + s * radius_m;
  out.y = s * x + c * y + 2 * half * half * radius_m;
  out.z = point.z;
  return out;
}

// Angle of a drawn point about the axis, 0 straight down, positive spinward.
export function azimuthOf(point, radius_m) {
  return Math.atan2(point.x, radius_m - point.y);
}
