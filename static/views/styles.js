// How each path looks on the stages: colour, dash (× line width), marker. Colour never goes alone.

export const PATHS = [
  { color: '#F8B840', paper: '#985C00', dash: [], marker: 'disc' },
  { color: '#6FC6F6', paper: '#0068A6', dash: [3, 1.5], marker: 'square' },
  { color: '#2FC196', paper: '#00523A', dash: [3, 1, 0.7, 1], marker: 'triangle' },
  { color: '#F6EE86', paper: '#3C3900', dash: [1.2, 1], marker: 'diamond' },
  { color: '#E6A3C8', paper: '#96396D', dash: [5, 1.4], marker: 'cross' },
  { color: '#F98442', paper: '#A82D00', dash: [2.7, 0.8, 0.7, 0.8, 0.7, 0.8], marker: 'ring' },
];
export const PLAIN = { color: '#E9E4D6', paper: '#465157', alpha: 0.8, dash: [0, 2.3] };
export const BONE = '#EFEADC';
export const LINE_PX = { phone: 3.2, desk: 4.5 };

// Motion i; a seventh takes the first path again with an open marker.
export function pathStyle(i) {
  return { ...PATHS[i % PATHS.length], open: i >= PATHS.length };
}

export function rgb(hex) {
  const c = parseInt(hex.slice(1), 16);
  return [(c >> 16) / 255, ((c >> 8) & 255) / 255, (c & 255) / 255];
}
