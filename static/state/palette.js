// How each path looks. Made from server/rimfall/exports/palette.py by `python -m tests.palette`: change it there.

export const PATHS = [
  { color: '#F8B840', paper: '#985C00', dash: [], marker: 'disc' },
  { color: '#6FC6F6', paper: '#0068A6', dash: [3, 1.5], marker: 'square' },
  { color: '#2FC196', paper: '#00523A', dash: [3, 1, 0.7, 1], marker: 'triangle' },
  { color: '#F6EE86', paper: '#3C3900', dash: [1.2, 1], marker: 'diamond' },
  { color: '#E6A3C8', paper: '#96396D', dash: [5, 1.4], marker: 'cross' },
  { color: '#F98442', paper: '#A82D00', dash: [2.7, 0.8, 0.7, 0.8, 0.7, 0.8], marker: 'ring' },
];
export const PLAIN = { color: '#E9E4D6', paper: '#465157', dash: [0, 2.3] };

/** The style of motion `index`, and its number from 1; a seventh takes the first style again with an open marker. */
export function pathStyle(index) {
  const at = index % PATHS.length;
  return { ...PATHS[at], number: at + 1, open: index >= PATHS.length };
}
