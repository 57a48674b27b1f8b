// House lights: the page light or dark, as chosen or as the system says. The stages are always dark.

export function createHouse({ store }) {
  const system = matchMedia('(prefers-color-scheme: dark)');
  function update() {
    const { house } = store.view;
    document.documentElement.dataset.house = house === 'auto' ? (system.matches ? 'down' : 'up') : house;
  }
  system.addEventListener('change', update);
  store.on('view', update);
  update();
}
