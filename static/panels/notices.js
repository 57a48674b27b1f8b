// What has to be said at the head of the page: refusals of no open field, failures, and what can be undone.

import { tr } from '../state/language.js';
import { fieldOf } from '../state/fields.js';
import { $, $$, h, setChildren, setText } from './shared/dom.js';
import { stillShown } from './shared/field_error.js';

const TOLD_MS = 12_000;

export function createNotices({ store }) {
  const place = $('#notice');
  let fading = null;

  function update(notice) {
    clearTimeout(fading);
    const said = notice?.say ?? '';
    setText($('#alert'), notice?.kind === 'refused' || notice?.kind === 'failed' ? `${said} ${still(notice)}`.trim() : '');
    setText($('#status'), notice?.kind === 'told' ? `${said} ${still(notice)}`.trim() : '');
    setChildren(place, said && !atField(notice) ? drawn(notice) : null);
    if (notice?.kind === 'told')
      fading = setTimeout(() => {
        if (store.notice === notice) store.tell(null);
      }, TOLD_MS);
  }

  // a refusal stands at its own field where that field is in sight
  function atField({ kind, field }) {
    return kind === 'refused' && field && $$(`[data-row="${CSS.escape(field)}"]`).some(row => row.checkVisibility());
  }

  // what follows the sentence that matters: more of it, or what is shown meanwhile
  function still(notice) {
    if (notice.more) return notice.more;
    return notice.kind === 'refused' && notice.field && fieldOf(store.fields, notice.field) ? stillShown(store, notice.field) : '';
  }

  function drawn(notice) {
    const buttons = [
      notice.again &&
        h(
          'button',
          {
            type: 'button',
            class: 'link',
            onclick: () => {
              store.tell(null);
              notice.again();
            },
          },
          tr('Retry'),
        ),
      notice.undo &&
        h(
          'button',
          {
            type: 'button',
            class: 'link',
            onclick: () => {
              store.tell(null);
              store.undo();
            },
          },
          tr('Undo'),
        ),
      notice.does &&
        h(
          'button',
          {
            type: 'button',
            class: 'link',
            onclick: () => {
              store.tell(null);
              notice.does.act();
            },
          },
          notice.does.say,
        ),
      h('button', { type: 'button', class: 'link', onclick: () => store.tell(null) }, tr('Dismiss')),
    ];
    const strong = notice.kind === 'refused' || notice.kind === 'failed';
    return h(
      'div',
      { class: `notice ${notice.kind}` },
      h('p', {}, strong ? h('b', {}, notice.say) : notice.say, ' ', still(notice)),
      h('p', { class: 'links' }, buttons),
    );
  }
  // what could be undone is undone, or has been followed by something else
  store.on('document', () => {
    const { undo, kind, again } = store.notice ?? {};
    if (undo || (kind === 'told' && again)) store.tell(null);
  });
  store.on('notice', update);
  store.on('view', patch => {
    if ('place' in patch || 'chosen' in patch) update(store.notice);
  });
}
