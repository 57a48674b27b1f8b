// What of a craft stands between a stage's eye and what moves aboard: it is drawn as its outline alone, so that nothing is hidden by it.

import { Raycaster, Vector3 } from '../vendor/three.module.js';

const LOOKED_AT = 9; // places of a path
const SHORT = 0.999; // of the way there: what a thing lies on is not before it
const caster = new Raycaster();

/** Places that must be seen, Vector3s as a stage draws them: of every motion shown but the craft's own. `drawnAt`: from the stage's frame to as it is drawn. */
export function watched(shown, frame, drawnAt = point => point) {
  return shown.filter(m => !m.tumbles).flatMap(m => alongIt(m.lines[frame].points).map(point => asVector(drawnAt(point))));
}

function alongIt(points) {
  const last = points.length / 3 - 1;
  if (last < 0) return [];
  const places = new Set(Array.from({ length: LOOKED_AT }, (_, k) => Math.round((k * last) / (LOOKED_AT - 1))));
  return [...places].map(i => ({ x: points[3 * i], y: points[3 * i + 1], z: points[3 * i + 2] }));
}

const asVector = ({ x, y, z }) => new Vector3(x, y, z);

/** Those of meshes that stand between an eye (a Vector3) and any of the places. */
export function standBefore(meshes, eye, places) {
  const way = new Vector3();
  return meshes.filter(mesh =>
    places.some(place => {
      way.subVectors(place, eye);
      caster.far = SHORT * way.length();
      caster.ray.set(eye, way.normalize());
      return caster.intersectObject(mesh, false).length > 0;
    }),
  );
}
