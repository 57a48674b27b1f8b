// Scenes: those kept in this browser, those to start from, and files.

import { createKeptScenes } from './kept_scenes.js';
import { createOpenFile } from './open_file.js';
import { h, setChildren } from './shared/dom.js';
import { createSheet } from './shared/fold.js';

const DRAWN_MS = 200; // that the sheet waits for its list of kept scenes

/** fetchExamples() and fetchExample(id) ask the server; open(document) shows a scene; `kept`: as kept_scenes.js says; saveScene() saves
 *  the scene at hand as a file; recover and status: as of open_file.js. */
export function createScenes({ fetchExamples, fetchExample, open, kept, saveScene, recover, status }) {
  const sheet = createSheet({ title: 'Scenes' });
  const input = h('input', {
    type: 'file',
    class: 'unseen',
    tabindex: -1,
    'aria-label': 'Scene file',
    onchange: () => {
      if (input.files.length) take(input.files[0]);
      input.value = '';
    },
  });
  const examples = h('ul', { class: 'list' });
  const keptScenes = createKeptScenes({ kept, opened: () => sheet.close(), saveScene });
  const trouble = h('div', { role: 'alert' });
  sheet.element.classList.add('scenes-sheet');
  sheet.content.append(
    h(
      'p',
      { class: 'links from-file' },
      h('button', { type: 'button', class: 'btn', onclick: () => input.click() }, 'Open a file'),
      input,
      h('span', { class: 'small' }, 'or drop one on the page'),
    ),
    trouble,
    keptScenes.element,
    h('section', { class: 'to-start' }, h('h3', { class: 'third' }, 'To start from'), examples),
  );

  const item = (title, say, choose) => h('li', {}, h('button', { type: 'button', onclick: choose }, h('b', {}, title), say && h('span', {}, say)));

  kept.on(() => sheet.element.open && keptScenes.update());
  sheet.element.addEventListener('close', keptScenes.leave);

  async function show() {
    setChildren(trouble);
    await Promise.race([keptScenes.update(), new Promise(resolve => setTimeout(resolve, DRAWN_MS))]);
    sheet.show();
    try {
      const list = await fetchExamples();
      setChildren(
        examples,
        list.map(example => item(example.title, example.say, () => openExample(example.id))),
      );
    } catch (problem) {
      complain(problem.message);
    }
  }
  async function openExample(id) {
    try {
      choose(await fetchExample(id));
    } catch (problem) {
      complain(problem.message);
    }
  }
  function choose(document) {
    sheet.close();
    open(document);
  }

  const take = createOpenFile({ recover, status, open: choose, complain });
  function complain(say) {
    sheet.show();
    setChildren(trouble, h('div', { class: 'notice refused' }, h('p', {}, h('b', {}, say), ' Nothing was changed.')));
  }
  document.addEventListener('dragover', event => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
  });
  document.addEventListener('drop', event => {
    if (!event.dataTransfer?.files.length) return;
    event.preventDefault();
    take(event.dataTransfer.files[0]);
  });
  return { show };
}
