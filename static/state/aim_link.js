// The question of an aim as an address carries it after the scene: '&throw=1&to=58.6,1.4,0&within=0.15&keep=speed_m_s,9&place=5'. The throw is counted
// from one; `to` is a place (along, up, along the axis, floor) or the number of the motion that is to be met.

import { motionName } from './fields.js';
import { KEPT, PLACE, aimable, indexOf } from './shot.js';

/** Of an aim that somebody asked for; nothing of one that the page made itself. */
export function aimParts(store) {
  const { aim, asked } = store.shot ?? {};
  if (!aim || !asked) return [];
  const [[kept, figure]] = Object.entries(aim.fixed),
    { motion, along_m, height_m, axial_m, floor } = aim.to;
  const to = motion ? indexOf(store, motion) + 1 : [along_m, height_m, axial_m, ...(floor ? [floor] : [])];
  const parts = { throw: indexOf(store, aim.motion) + 1, to, within: aim.within_m, keep: kept === 'least' ? kept : [kept, figure] };
  return [...Object.entries(parts).map(([name, value]) => `${name}=${value}`), ...(store.view.place === PLACE ? [`place=${PLACE}`] : [])];
}

/** {aim, open: whether its place was open} that an address carries for the scene that is open; null where it says nothing, or no aim of it. */
export function aimIn(hash, store) {
  const said = new URLSearchParams(hash.replace(/^#/, '')),
    index = Number(said.get('throw')) - 1,
    thrown = aimable(store).find(one => one.index === index),
    to = catcherIn(figuresOf(said.get('to')), store),
    [within_m] = figuresOf(said.get('within')),
    fixed = keptIn(said.get('keep') ?? '');
  if (!thrown || !to || to.motion === thrown.name || !(within_m > 0) || !fixed) return null;
  return { aim: { motion: thrown.name, to, within_m, fixed }, open: said.get('place') === String(PLACE) };
}

const figuresOf = text => (text ? text.split(',').map(Number) : []);

function catcherIn(figures, store) {
  if (!figures.every(Number.isFinite)) return null;
  if (figures.length === 1) return store.document.motions[figures[0] - 1] ? { motion: motionName(store, figures[0] - 1) } : null;
  const [along_m, height_m, axial_m, floor] = figures;
  return axial_m === undefined ? null : { along_m, height_m, axial_m, ...(floor ? { floor } : {}) };
}

function keptIn(said) {
  const [kept, text] = said.split(',');
  if (!KEPT.includes(kept)) return null;
  if (kept === 'least') return { least: 'speed_m_s' };
  return text && Number.isFinite(Number(text)) ? { [kept]: Number(text) } : null;
}
