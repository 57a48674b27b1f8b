// What carries people: the car of a lift, and a craft that comes in. Plain shapes of the page's own, made once.

import { BoxGeometry, ConeGeometry, CylinderGeometry, TorusGeometry } from '../vendor/three.module.js';
import { merged } from './geometry.js';

const FLOOR_M = 0.08,
  WIDE_M = 1.2,
  HIGH_M = 2.2,
  POST_M = 0.05;

// A lift's car: a floor, a roof, a post at each corner; open, so that one sees who rides. Its floor is at the origin.
export function carGeometry() {
  const parts = [0, HIGH_M].map((y) => new BoxGeometry(WIDE_M, FLOOR_M, WIDE_M).translate(0, y - FLOOR_M / 2, 0));
  for (const x of [-1, 1]) for (const z of [-1, 1]) parts.push(new BoxGeometry(POST_M, HIGH_M, POST_M).translate((x * (WIDE_M - POST_M)) / 2, HIGH_M / 2, (z * (WIDE_M - POST_M)) / 2));
  return merged(parts);
}

// A craft of size 1, its nose along x: a barrel with a collar at the nose, a blunt cone behind it, and four struts.
export function craftGeometry() {
  const lying = (geometry, x) => geometry.rotateZ(-Math.PI / 2).translate(x, 0, 0);
  const parts = [
    lying(new CylinderGeometry(0.2, 0.24, 0.62, 20), 0.02),
    lying(new ConeGeometry(0.24, 0.3, 20).rotateX(Math.PI), -0.4),
    new TorusGeometry(0.15, 0.035, 8, 20).rotateY(Math.PI / 2).translate(0.36, 0, 0),
  ];
  for (let k = 0; k < 4; k += 1) parts.push(new BoxGeometry(0.42, 0.03, 0.05).translate(-0.1, 0.3, 0).rotateX((k * Math.PI) / 2 + Math.PI / 4));
  return merged(parts);
}
