// A buffer that is rewritten every frame: only the part that is drawn goes to the graphics processor.

export class FirstPart {
  // `attribute`: of a geometry, an interleaved buffer or an index.
  constructor(attribute) {
    this.attribute = attribute;
    this.range = { start: 0, count: 0 };
    attribute.updateRanges.push(this.range);
    attribute.clearUpdateRanges = () => {}; // it is the same one for good
  }

  // Its first `count` numbers.
  send(count) {
    this.range.count = count;
    this.attribute.needsUpdate = true;
  }
}
