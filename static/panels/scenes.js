// Scenes: to start from, to open from a file, and the recent ones.

import { isScene } from '../state/fields.js';
import { h, setChildren } from './shared/dom.js';
import { readJson } from './shared/files.js';
import { createSheet } from './shared/fold.js';

const LARGEST_BYTES = 50_000_000;

/** fetchExamples() and fetchExample(id) ask the server; open(document) shows a scene; recent() lists {title, when, document}. */
export function createScenes({ fetchExamples, fetchExample, open, recent }) {
  const sheet = createSheet({ title: 'Scenes' });
  const input = h('input', {
    type: 'file',
    accept: '.json,.glb,.usda,.svg',
    class: 'unseen',
    tabindex: -1,
    'aria-label': 'Scene file',
    onchange: () => {
      take(input.files[0]);
      input.value = '';
    },
  });
  const examples = h('ul', { class: 'list' }),
    recents = h('ul', { class: 'list' });
  const recentTitle = h('h3', { class: 'third' }, 'Recent in this browser');
  const trouble = h('div', { role: 'alert' });
  sheet.content.append(
    h('h3', { class: 'third' }, 'To start from'),
    examples,
    recentTitle,
    recents,
    h(
      'p',
      { class: 'links' },
      h('button', { type: 'button', class: 'btn', onclick: () => input.click() }, 'Open a file'),
      input,
      h('span', { class: 'small' }, 'or drop one on the page'),
    ),
    trouble,
  );

  const item = (title, say, choose) => h('li', {}, h('button', { type: 'button', onclick: choose }, h('b', {}, title), say && h('span', {}, say)));

  async function show() {
    setChildren(trouble);
    sheet.show();
    const old = recent();
    recentTitle.hidden = old.length === 0;
    setChildren(
      recents,
      old.map(({ title, when, document }) => item(title, ago(when), () => choose(document))),
    );
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

  async function take(file) {
    if (!file) return;
    if (file.size > LARGEST_BYTES) return complain(`${file.name} has ${Math.ceil(file.size / 1e6)} MB; a file may have 50 MB.`);
    const { sceneIn } = await import('../files/recover.js'); // fetched when wanted
    const inside = sceneIn(await file.arrayBuffer());
    if (isScene(inside)) return choose(inside);
    const { value, wrong } = readJson(await file.text());
    if (wrong) return complain(`${file.name}: ${wrong}`);
    if (!isScene(value)) return complain(`${file.name} holds no Rimfall scene.`);
    choose(value);
  }
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

function ago(when) {
  const minutes = Math.round((Date.now() - when) / 60_000);
  if (!(minutes >= 0)) return '';
  if (minutes < 60) return minutes < 2 ? 'just now' : `${minutes} minutes ago`;
  if (minutes < 48 * 60) return `${Math.round(minutes / 60)} hours ago`;
  return `${Math.round(minutes / 1440)} days ago`;
}
