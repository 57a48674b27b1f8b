// How the whole page is set: light or dark, and how large the words of stages, lanes and map are.

import { typeFactor } from '../../state/type_size.js';

/** The page light or dark, as chosen or as the system says. The stages are always dark. */
export function createTheme({ store }) {
  const system = matchMedia('(prefers-color-scheme: dark)');
  function update() {
    const { theme } = store.view;
    document.documentElement.dataset.theme = theme === 'auto' ? (system.matches ? 'down' : 'up') : theme;
  }
  system.addEventListener('change', update);
  store.on('view', update);
  update();
}

/** `--type` and `data-type` on the page's root: whatever grows is written as calc(… * var(--type)). */
export function createTypeSize({ store }) {
  const { dataset, style } = document.documentElement;
  function update() {
    dataset.type = store.view.type;
    style.setProperty('--type', typeFactor(store.view.type, innerWidth, innerHeight));
  }
  addEventListener('resize', update);
  store.on('view', update);
  update();
}
