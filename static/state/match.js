// A path that was seen: its marks in pictures or its rows, how pixels become metres, and what is known. No elements.

import { filled } from './match_rows.js';

export const LEAST = 3; // rows that can be asked about
export const GIVEN = { none: 'none', scene: 'scene', given: 'given' }; // what is known of a quantity: nothing, that of this scene, or a figure

const FIRST_LINE = { left: 0.12, foot: 0.85, head: 0.6 }; // shares of the picture, before one is drawn

export const FIRST_MATCH = {
  source: null, // what the pictures come from: {name, kind, width, height, count}; count null: one picture for all of them
  frame: 0,
  marks: [], // {frame, x_px, y_px}, by frame
  rows: null, // a track without pictures: {name, columns, items}
  frame_rate: 24,
  accuracy_px: 1.5,
  accuracy_m: 0.02,
  by: 'plane',
  plane: { from_px: null, to_px: null, distance_m: 1.75, upright: true, right_is: 'spinward' },
  camera: {
    field_of_view_deg: 60,
    position: { along_m: 0, height_m: 1.6, axial_m: 8 },
    look_at: { along_m: 0, height_m: 1.6, axial_m: 0 },
    roll_deg: 0,
  },
  own_camera: null, // rows of a camera's file, each with its time: they go before `camera`
  known: { radius_m: GIVEN.scene, spin_rpm: GIVEN.scene, air: GIVEN.scene, body: null, start: 'thrown' },
  given: { radius_m: 56, spin_rpm: 3 },
  slowed: false,
  note: null, // of the axes that a file's keys are in: {origin, view}
};

/** The mark of a frame, or null. */
export const markAt = ({ marks, frame }) => marks.find(mark => mark.frame === frame) ?? null;

/** Which row of the question the mark of a frame is, from 0; -1 without one. */
export const rowOfFrame = ({ marks }, frame) => marks.findIndex(mark => mark.frame === frame);

/** With a mark in a frame; those of other frames stay. */
export function withMark(match, frame, [x_px, y_px]) {
  const rest = match.marks.filter(mark => mark.frame !== frame);
  return { ...match, marks: [...rest, { frame, x_px, y_px }].sort((a, b) => a.frame - b.frame) };
}

export const withoutMark = (match, frame) => ({ ...match, marks: match.marks.filter(mark => mark.frame !== frame) });

/** Where the mark of the frame in hand is, or would be: as in the frame before, else in the middle. */
export function markPlace(match) {
  const { source, marks, frame } = match,
    near = markAt(match) ?? marks.findLast(mark => mark.frame < frame) ?? marks[0];
  return near ? [near.x_px, near.y_px] : [source.width / 2, source.height / 2];
}

/** The ends of the line of known length, also before it is drawn. */
export function lineIn({ plane, source: { width, height } }) {
  return {
    from_px: plane.from_px ?? [FIRST_LINE.left * width, FIRST_LINE.foot * height].map(Math.round),
    to_px: plane.to_px ?? [FIRST_LINE.left * width, FIRST_LINE.head * height].map(Math.round),
  };
}

/** How many frames can be stepped through: of one picture of many exposures one more than are marked. */
export function frameCount({ source, marks }) {
  if (!source) return 0;
  return source.count ?? (marks[marks.length - 1]?.frame ?? -1) + 2;
}

/** Whether its rows are the marks in a picture, and not a table. */
export const hasPicture = match => match.source !== null;

/** What is still wanted before the server can be asked: one of mark, scale, rows; or null. */
export function wanting(match) {
  if (hasPicture(match)) {
    if (match.by === 'plane' && !(match.plane.from_px && match.plane.to_px)) return 'scale';
    return match.marks.length < LEAST ? 'marks' : null;
  }
  return filled(match.rows).length < LEAST ? 'rows' : null;
}

const IN_ORDER = new Intl.Collator('en', { numeric: true });
/** Files in the order of their frames: frame 9 before frame 10. */
export const inOrder = files => [...files].sort((a, b) => IN_ORDER.compare(a.name, b.name));
