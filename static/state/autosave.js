// The scene at hand, the recent ones and how the page was set, kept in the browser. A broken or full storage is no failure.

import { isScene } from './paths.js';

const SCENE = 'rimfall.scene',
  RECENT = 'rimfall.recent',
  VIEW = 'rimfall.view';
const RECENT_KEPT = 8;
const VIEW_KEPT = ['units', 'house', 'keys', 'beads_s', 'arrows', 'companion', 'companionOutside', 'measure', 'compare', 'away'];

export function createAutosave(storage) {
  const get = key => {
    try {
      return JSON.parse(storage.getItem(key));
    } catch {
      return null;
    }
  };
  const put = (key, value) => {
    try {
      storage.setItem(key, JSON.stringify(value));
      return true;
    } catch {
      return false;
    }
  };
  return {
    scene() {
      const document = get(SCENE);
      return isScene(document) ? document : null;
    },
    save: document => put(SCENE, document),
    recent() {
      const list = get(RECENT);
      return Array.isArray(list) ? list.filter(item => isScene(item?.document)) : [];
    },
    /** Newest first; a scene of the same title takes the older one's place. */
    remember(document, when) {
      const title = document.title || 'Untitled scene';
      const others = this.recent().filter(item => item.title !== title);
      return put(RECENT, [{ title, when, document }, ...others].slice(0, RECENT_KEPT));
    },
    view(first) {
      const kept = get(VIEW);
      if (kept === null || typeof kept !== 'object') return {};
      return Object.fromEntries(VIEW_KEPT.filter(key => typeof kept[key] === typeof first[key]).map(key => [key, kept[key]]));
    },
    saveView: view => put(VIEW, Object.fromEntries(VIEW_KEPT.map(key => [key, view[key]]))),
  };
}
