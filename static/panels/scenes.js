// Scenes: to start from, to open from a file, and the recent ones.

import { createOpenFile } from './open_file.js';
import { h, setChildren } from './shared/dom.js';
import { createSheet } from './shared/fold.js';

/** fetchExamples() and fetchExample(id) ask the server; open(document) shows a scene; recent() lists {title, when, document};
 *  recover and status: as of open_file.js. */
export function createScenes({ fetchExamples, fetchExample, open, recent, recover, status }) {
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

function ago(when) {
  const minutes = Math.round((Date.now() - when) / 60_000);
  if (!(minutes >= 0)) return '';
  if (minutes < 60) return minutes < 2 ? 'just now' : `${minutes} minutes ago`;
  if (minutes < 48 * 60) return `${Math.round(minutes / 60)} hours ago`;
  return `${Math.round(minutes / 1440)} days ago`;
}
