// Two habitats beside each other: Aboard of a second one, in the place, with the eye and the buttons of Outside. Both titles then
// say what they are aboard of.

import { Aboard } from './aboard.js';

export class Beside {
  constructor(picture, furniture, store, outside) {
    Object.assign(this, { picture, furniture, store, outside, half: null, model: null, rect: null });
  }

  // `models` of an answer, the scene's own first; `shown` the one the other stage shows.
  seat(models, shown) {
    const { compare, beside } = this.store.view;
    this.model = compare === 'beside' ? (models[(beside ?? 0) + 1] ?? null) : null;
    if (this.model && !this.half) this.make();
    this.entitle(shown);
    const idle = this.model ? this.outside : this.half;
    idle?.labels.place([], { width: 0, height: 0, taken: [], paths: [] });
  }

  make() {
    this.half = new Aboard(this.picture.shared, this.outside.dom);
    Object.assign(this.half, { eye: this.outside.eye, spoken: this.outside.spoken });
    this.picture.scene.add(this.half.group);
    this.fitInto(this.rect);
  }

  fitInto(rect) {
    this.rect = rect;
    if (rect) this.half?.fitInto(rect);
  }

  // `name`: of the habitat shown, where it is not the scene's own; `facts`: what stands still aboard, and what outside
  entitle({ name, facts: { ground } }) {
    const sky = ground.level ? 'room stands' : 'stars stand';
    const { aboard, outside } = this.furniture.halves;
    const of = ({ titles: [frame, aside] }) => [frame, (name ? `${name}, ${aside}` : aside).replace('deck', ground.name).replace('stars stand', sky)];
    aboard.retitle(this.model ? ['Aboard', name ?? 'this habitat'] : of(aboard));
    outside.retitle(this.model ? ['Aboard', this.model.name] : of(outside));
  }
}
