// What the stages show only at one place, or while the room is asked: fetched with its first opening, or if that failed the next. At place 4 everybody is
// weighed, at place 5 something is aimed.

const MODULES = {
  Posts: () => import('./feel/posts.js'),
  Aimed: () => import('./shot/aimed.js'),
  GuessMarks: () => import('./guess_marks.js'),
};

export class Extras {
  // `hold(true | false)` stops and restarts framing while a hand drags; `came()`: something was fetched; `first()` → the half that is seen first.
  constructor({ shared, store, clock, hold, came, first }) {
    Object.assign(this, { shared, store, clock, hold, came, first, got: {}, fetching: {} });
  }

  /** A half gets what is to be seen on it now. `beside`: it is of another habitat than is aimed and guessed in; `handles`: with what a hand takes hold of. */
  attend(half, { beside = false, handles = true } = {}) {
    const { shared, store, clock, hold, got } = this,
      { place } = store.view;
    if (place === 4 && this.has('Posts')) half.posts ??= new got.Posts(shared, half, store);
    if (beside) return;
    if (store.guesses.motion !== null && this.has('GuessMarks')) half.guessed ??= new got.GuessMarks(shared, half, store, this.first);
    if (place === 5 && this.has('Aimed')) half.aimed ??= new got.Aimed(shared, half, store, clock, handles ? hold : null);
  }

  /** Where along the deck a place of the picture is, as a guess; null while that is not known. */
  alongAt(...where) {
    return this.got.alongAt?.(...where) ?? null;
  }

  // Whether it is there; it is on its way otherwise.
  has(name) {
    if (this.got[name]) return true;
    this.fetching[name] ??= MODULES[name]().then(
      module => {
        Object.assign(this.got, module);
        this.came();
      },
      () => {
        this.fetching[name] = null;
      },
    );
    return false;
  }
}
