// The talk maker: beside the stages, in the page's column, so that what is kept is seen. The steps, what each says and does, and the talk as a file.

import { tr, trLater } from '../../state/language.js';
import { createEdits, stepNow, talkDocument } from '../../state/talk_edits.js';
import { lineWords } from '../../state/talk_words.js';
import { viewOfStep } from '../../state/step_view.js';
import { $, h, icon, setAttribute, setChildren } from '../shared/dom.js';
import { dressed } from '../shared/dressed.js';
import { download, fileName } from '../shared/files.js';
import { createFold } from '../shared/fold.js';
import { OF_TALKS, createKeptScenes } from '../kept_scenes.js';
import { unkeptNotice } from '../unkept.js';
import { createDrawings } from './drawings.js';
import { createStepForm } from './step_form.js';
import { createStepsList } from './steps_list.js';

const FULL = trLater('A talk may have 200 steps: this one has them all.');
const OF_STAGES = new Set(['show', 'merged', 'swapped']); // of a step: seen at once where it stands on the stages

/** `giving`: as giving.js makes it; trace(document) → promise of its answer; present(): what `given` says is given, from where it is; openFile(): somebody
 *  chooses one; ready() → promise of the talks that come with Rimfall, [{id, title}]; openReady(one);
 *  draw(answer) → the small drawing of a scene; keep(parts) → promise of what keeps the talk (kept/talks.js); keepWhenLeft(it);
 *  takenAway(document) → promise of the talk as one HTML file, a Blob. */
export async function createMaker({ store, clock, stages, giving, trace, draw, keep: keepTalk, takenAway, present, openFile, ready, openReady, keepWhenLeft }) {
  const { talk, conductor } = giving;
  const edits = createEdits(talk);
  const [keeping] = await Promise.all([keepTalk({ talk, edits, told: words => say(words) }), dressed('static/talk.css')]);
  keepWhenLeft(keeping);
  const page = $('#page'),
    inside = $('#in');
  let opener = null;

  const drawings = createDrawings({ store, trace, draw, changed: () => list.update() });
  const form = createStepForm({
    talk,
    clock,
    change,
    does: {
      retake: () => retake(),
      duplicate: () => act(() => edits.duplicate(talk.at), tr('Doubled.')),
      earlier: () => move(talk.at, talk.at - 1),
      later: () => move(talk.at, talk.at + 1),
      remove: () => remove(),
      present: () => start(talk.at),
    },
  });
  const list = createStepsList({ talk, form, drawingOf: drawings.of, units: () => store.view.units, go, move });
  const heading = h('h2', { id: 'talk-heading', tabindex: -1 }, tr('Talk'));
  const title = h('input', {
    type: 'text',
    class: 'linkbox',
    maxlength: 200,
    'aria-label': tr('Title of the talk'),
    placeholder: tr('Title of the talk'),
    oninput: () => edits.name(title.value),
  });
  const about = h('textarea', {
    class: 'linkbox',
    rows: 2,
    maxlength: 1000,
    'aria-label': tr('What the talk is about'),
    placeholder: tr('What it is about'),
    oninput: () => edits.describe(about.value),
  });
  const undo = h(
    'button',
    { type: 'button', class: 'icon-button', 'aria-label': tr('Undo in the talk'), title: tr('Undo (Ctrl+Z)'), onclick: () => travel('undo') },
    icon('undo'),
  );
  const redo = h(
    'button',
    { type: 'button', class: 'icon-button', 'aria-label': tr('Redo in the talk'), title: tr('Redo (Ctrl+Shift+Z)'), onclick: () => travel('redo') },
    icon('redo'),
  );
  const close = h(
    'button',
    { type: 'button', class: 'icon-button', 'aria-label': tr('Back to the scene'), title: tr('Back to the scene (Esc)'), onclick: hide },
    icon('close'),
  );
  const told = h('p', { class: 'talk-told', role: 'status' });
  const trouble = h('div', { class: 'talk-trouble', role: 'alert' });
  const starts = h('button', { type: 'button', class: 'btn', onclick: () => start(talk.at) }, tr('Start presenting'));
  const takes = h(
    'button',
    { type: 'button', class: 'link', title: tr('One HTML file that plays by itself, without a network'), onclick: takeAway },
    tr('Take the talk away'),
  );
  const saves = h('button', { type: 'button', class: 'link', onclick: save }, tr('Save as a file'));
  const readyList = h('p', { class: 'links' });
  const others = createKeptScenes({
    kept: {
      list: async () => (await keeping.list()).filter(({ here }) => !here),
      open: openKept,
      openCopy: openKept,
      remove: keeping.keeper.remove,
      restore: keeping.keeper.restore,
      trouble: null,
    },
    opened: () => {},
    saveScene: save,
    words: OF_TALKS,
    drawn: false,
  });
  const fold = createFold({
    words: () => tr('Other talks'),
    make: () => [{ element: others.element, update: others.update }],
    turned: on => on && others.element.scrollIntoView({ block: 'nearest' }),
  });
  const element = h(
    'section',
    { class: 'talk', id: 'talk', 'aria-labelledby': 'talk-heading', hidden: true, onkeydown: onKey },
    h('header', {}, heading, undo, redo, close),
    h(
      'div',
      { class: 'talk-top' },
      h(
        'p',
        { class: 'links' },
        h('button', { type: 'button', class: 'btn strong', title: tr('From the scene, B'), onclick: () => keep() }, tr('Keep this as a step')),
        starts,
      ),
      told,
    ),
    h('div', { class: 'talk-in' }, trouble, title, about, list.none, list.element, readyList, h('p', { class: 'links' }, fold.button), fold.element),
    h(
      'footer',
      {},
      h(
        'p',
        { class: 'links' },
        saves,
        takes,
        h('button', { type: 'button', class: 'link', onclick: openFile }, tr('Open a file')),
        h('button', { type: 'button', class: 'link', onclick: () => anew() }, tr('Begin another')),
      ),
    ),
  );
  page.append(element);
  fold.update();

  // words for those who see it and those who hear it; with what takes it back
  function say(words, canUndo = false) {
    setChildren(told, words, canUndo && ' ', canUndo && h('button', { type: 'button', class: 'link', onclick: () => travel('undo') }, tr('Undo')));
  }

  function act(edit, words, canUndo = false) {
    edit();
    say(words, canUndo);
  }

  function keep() {
    if (edits.isFull) return say(tr(FULL));
    edits.keep(stepNow({ store, clock, moved: stages.movedFromSeats() }));
    list.reveal(talk.at);
    const words = tr('Kept as step {step} of {of}.', { step: talk.at + 1, of: talk.steps.length });
    say(words, true);
    return words;
  }

  function retake() {
    const { line, notes, until_s, ask, plays } = talk.step;
    const { line: _, notes: __, ...now } = stepNow({ store, clock, moved: stages.movedFromSeats() });
    const still = ask && now.scene.motions.some(({ name }) => name === ask.motion) ? ask : null;
    act(
      () => edits.change(talk.at, { ...now, line, notes, plays, until_s, ask: still }),
      tr('Step {step} is now as the stages are.', { step: talk.at + 1 }),
      true,
    );
  }

  function change(part, how) {
    edits.change(talk.at, part, how);
    const ofStages = Object.keys(part).some(name => OF_STAGES.has(name));
    if (!conductor.conducting) return ofStages && isOnStages(talk.step) && conductor.begin(); // one that was just kept
    if (!ofStages && !('pace' in part)) return;
    const { alone, merged, swapped } = viewOfStep(talk.step, store.view.presets);
    store.look({ alone, merged, swapped });
    clock.lendPace(talk.step.pace);
  }

  const isOnStages = ({ scene }) => JSON.stringify(scene) === JSON.stringify(store.document);

  function move(from, to) {
    const moved = edits.move(from, to);
    if (moved) say(tr('Step {from} is now step {to} of {of}.', { from: from + 1, to: to + 1, of: talk.steps.length }));
    return moved;
  }

  function remove() {
    const { at, step } = talk;
    const focused = element.contains(document.activeElement);
    act(() => edits.remove(at), tr('Step {step}, “{line}”, was deleted.', { step: at + 1, line: lineWords(step) }), true);
    if (!focused) return;
    if (talk.steps.length) list.focus(talk.at);
    else heading.focus();
  }

  function travel(way) {
    const focused = told.contains(document.activeElement);
    if (edits[way]()) say(way === 'undo' ? tr('Undone.') : tr('Done again.'));
    if (focused) (talk.steps.length ? () => list.focus(talk.at) : () => heading.focus())();
  }

  function go(at) {
    talk.go(at);
    if (!conductor.conducting) conductor.begin();
    update();
    say(tr('Step {step} of {of}: {line}', { step: at + 1, of: talk.steps.length, line: lineWords(talk.step) }));
  }

  function start(at) {
    if (!talk.steps.length) return say(tr('Keep a step first: then it can be presented.'));
    talk.go(at);
    present();
  }

  function save() {
    const name = download(
      `${fileName(talk.title || 'talk')}.rimfall-talk.json`,
      `${JSON.stringify(talkDocument({ ...talk, title: talk.title || tr('Untitled talk') }), null, 2)}\n`,
      'application/json',
    );
    say(tr('Saved as {name}.', { name }));
    return name;
  }

  // the server works every step out
  async function takeAway() {
    if (!talk.steps.length) return;
    say(tr('Writing the talk as one file…'));
    try {
      download(`${fileName(talk.title || 'talk')}.html`, await takenAway(talkDocument({ ...talk, title: talk.title || tr('Untitled talk') })));
      say(tr('Saved as one file that plays by itself.'));
    } catch (problem) {
      say(tr('The talk was not written: {why}', { why: problem.message }));
    }
  }

  async function open(document) {
    await keeping.begin(document);
    edits.open(document);
    show();
    say(tr('Opened “{title}”: {count} steps.', { title: talk.title, count: talk.steps.length }), edits.canUndo);
    if (talk.steps.length) go(0);
  }

  async function openKept(id) {
    const document = await keeping.read(id);
    if (document) open(document);
    else say(tr('That talk is no longer kept.'));
  }

  async function anew() {
    const empty = { title: '', about: '', steps: [] };
    await keeping.begin(empty);
    act(() => edits.open(empty), tr('A new talk. The one before is kept.'), true);
    title.focus();
  }

  function onKey(event) {
    if (event.defaultPrevented || event.altKey) return;
    const inWords = event.target.closest('input[type=text], textarea');
    if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z' && !inWords) {
      event.preventDefault();
      travel(event.shiftKey ? 'redo' : 'undo');
    } else if (event.key === 'Escape') {
      event.preventDefault();
      if (inWords) list.focus(talk.at);
      else hide();
    }
  }

  function show() {
    if (!element.hidden) return;
    opener = document.activeElement;
    element.hidden = false;
    page.classList.add('with-talk');
    inside.inert = true;
    store.look({ folded: false });
    update();
    showReady();
    heading.focus({ preventScroll: true });
  }

  function hide() {
    if (element.hidden) return;
    element.hidden = true;
    page.classList.remove('with-talk');
    inside.inert = false;
    conductor.end();
    if (opener?.isConnected && opener.checkVisibility()) opener.focus();
    else $('.stage-view').focus({ preventScroll: true });
  }

  async function showReady() {
    const talks = await ready().catch(() => []);
    setChildren(
      readyList,
      talks.length > 0 && h('span', { class: 'small' }, tr('Talks ready to give:')),
      talks.map(one => h('button', { type: 'button', class: 'link', onclick: () => openReady(one) }, one.title)),
    );
  }

  function update() {
    if (document.activeElement !== title || title.value.trim() !== talk.title.trim()) title.value = talk.title;
    if (document.activeElement !== about || about.value.trim() !== talk.about.trim()) about.value = talk.about;
    setAttribute(undo, 'aria-disabled', edits.canUndo ? null : true);
    setAttribute(redo, 'aria-disabled', edits.canRedo ? null : true);
    for (const button of [saves, takes]) setAttribute(button, 'aria-disabled', talk.steps.length ? null : true);
    list.update();
  }

  function warn() {
    const why = keeping.keeper.trouble;
    setChildren(trouble, why && unkeptNotice(why, save));
  }

  keeping.keeper.on(() => {
    warn();
    fold.update();
  });
  edits.on(update);
  talk.on('step', () => {
    say(''); // of the step before
    if (!element.hidden) update();
  });
  conductor.on('shown', () => !element.hidden && update());
  addEventListener('keydown', event => {
    if (
      event.key === 'Escape' &&
      !event.defaultPrevented &&
      !element.hidden &&
      !document.querySelector('dialog[open], :popover-open') &&
      document.activeElement === document.body
    )
      hide();
  });

  return {
    show,
    hide,
    keep,
    open,
    edits,
    /** What is given where somebody presents, {talk, conductor}; null where it is not open or has no steps. */
    given: () => (element.hidden || !talk.steps.length ? null : giving),
    get isOpen() {
      return !element.hidden;
    },
  };
}
