// The page's few drawn signs. The fonts have no arrows or locks.

import { s } from './dom.js';

const LINE = { fill: 'none', stroke: 'currentColor', 'stroke-width': 1.6 };
const SHAPES = {
  play: [18, [['path', { d: 'M4 2l12 7-12 7z', fill: 'currentColor' }]]],
  pause: [18, [['path', { d: 'M4 2.5h4v13H4zM10.5 2.5h4v13h-4z', fill: 'currentColor' }]]],
  back: [
    18,
    [
      ['path', { d: 'M12 3L5 9l7 6z', fill: 'currentColor' }],
      ['path', { d: 'M14.5 3v12', ...LINE }],
    ],
  ],
  on: [
    18,
    [
      ['path', { d: 'M6 3l7 6-7 6z', fill: 'currentColor' }],
      ['path', { d: 'M3.5 3v12', ...LINE }],
    ],
  ],
  loop: [20, [['path', { d: 'M4 10V8.5a4 4 0 0 1 4-4h9M14 1.5l3 3-3 3M16 9.5V11a4 4 0 0 1-4 4H3M6 18l-3-3 3-3', ...LINE }]]],
  undo: [18, [['path', { d: 'M6.5 3L3 6.5 6.5 10M3.5 6.5H11a4 4 0 0 1 0 8H7', ...LINE }]]],
  redo: [18, [['path', { d: 'M11.5 3L15 6.5 11.5 10M14.5 6.5H7a4 4 0 0 0 0 8h4', ...LINE }]]],
  open: [
    18,
    [
      ['rect', { x: 3.5, y: 8, width: 11, height: 7.5, rx: 1, ...LINE }],
      ['path', { d: 'M6 8V5.4a3 3 0 0 1 5.8-1', ...LINE }],
    ],
  ],
  locked: [
    18,
    [
      ['rect', { x: 3.5, y: 8, width: 11, height: 7.5, rx: 1, fill: 'currentColor', stroke: 'currentColor', 'stroke-width': 1.6 }],
      ['path', { d: 'M6 8V5a3 3 0 0 1 6 0v3', ...LINE }],
    ],
  ],
  caution: [
    18,
    [
      ['circle', { cx: 9, cy: 9, r: 7.5, ...LINE }],
      ['path', { d: 'M9 4.6v5.4M9 11.9v1.7', ...LINE }],
    ],
  ],
  more: [18, [['path', { d: 'M3 9h.01M9 9h.01M15 9h.01', ...LINE, 'stroke-width': 2.4, 'stroke-linecap': 'round' }]]],
  close: [18, [['path', { d: 'M4 4l10 10M14 4L4 14', ...LINE }]]],
};

export function icon(name) {
  const [size, shapes] = SHAPES[name];
  return s(
    'svg',
    { width: size, height: size, viewBox: `0 0 ${size} ${size}`, 'aria-hidden': true, class: 'icon' },
    shapes.map(([tag, attributes]) => s(tag, attributes)),
  );
}
