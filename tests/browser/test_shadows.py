"""Soft cast shadows, as a graphics processor draws them: a box over a deck, by the stages' own materials and pass, to its pixels."""

import itertools

import pytest

WIDE, HIGH = 239, 179  # px: half of it is not whole
# the deck's plane is y = 0 below the axis of a wheel, or z = 0 of a room; `over` the box's height, `aside` its way along x, `tilt` of the eye down
DRAW = """async ({ wide, high, cases }) => {
  const three = await import('/static/vendor/three.module.js');
  const { Contact } = await import('/static/views/contact.js');
  const { cardMaterial, sharedUniforms } = await import('/static/views/materials.js');
  const shared = sharedUniforms(true), contact = new Contact(shared);
  shared.uAxis.value = 56;
  shared.uFog.value.set(1e6, 2e6);
  const renderer = new three.WebGLRenderer({ canvas: document.createElement('canvas') });
  renderer.autoClear = false;
  const target = new three.WebGLRenderTarget(wide, high), matter = cardMaterial(shared, '#C9C2AE');
  const scene = new three.Scene(), all = new three.Group(), box = new three.Mesh(new three.BoxGeometry(0.6, 0.6, 0.6), matter);
  all.add(new three.Mesh(new three.PlaneGeometry(40, 40).rotateX(-Math.PI / 2), matter), box);
  scene.add(all);
  const camera = new three.PerspectiveCamera(40, wide / high, 0.1, 200);
  contact.reserve(wide, high); // as for another stage, which is larger
  const lit = [];
  for (const { room = false, over = 1, aside = 0, tilt = 0, places } of cases) {
    shared.uOver.value.w = room ? 1 : 0;
    box.position.set(aside, over, 0);
    camera.position.set(0, 3, 6);
    camera.up.set(0, 1, 0);
    camera.lookAt(0, 0.4 - tilt, 0);
    all.rotation.x = 0;
    if (room) { // upright is z: all of it turned over, eye and all
      const turn = new three.Quaternion().setFromAxisAngle(new three.Vector3(1, 0, 0), Math.PI / 2);
      all.quaternion.copy(turn);
      camera.position.applyQuaternion(turn);
      camera.quaternion.premultiply(turn);
    }
    scene.updateMatrixWorld(true);
    camera.updateMatrixWorld(true);
    const draw = dark => {
      renderer.setRenderTarget(target);
      if (dark) contact.prepare(renderer, scene, camera, 3, { x: 0, y: 0, width: wide, height: high });
      else shared.uContact.value = 0;
      renderer.clear();
      renderer.render(scene, camera);
      const read = new Uint8Array(4 * wide * high);
      renderer.readRenderTargetPixels(target, 0, 0, wide, high, read);
      return read;
    };
    const [bright, dark] = [draw(false), draw(true)];
    let brighter = 0, darkest = 1, edge = 1;
    for (let k = 0; k < bright.length; k += 1) {
      brighter = Math.max(brighter, dark[k] - bright[k]);
      if (bright[k] > 40) darkest = Math.min(darkest, dark[k] / bright[k]);
      const [x, y] = [(k >> 2) % wide, Math.floor((k >> 2) / wide)];
      if (bright[k] > 40 && (x < 2 || y < 2 || x > wide - 3 || y > high - 3)) edge = Math.min(edge, dark[k] / bright[k]);
    }
    const at = places.map(place => {
      const seen = all.localToWorld(new three.Vector3(...place)).project(camera);
      const [x, y] = [Math.floor((seen.x * 0.5 + 0.5) * wide), Math.floor((seen.y * 0.5 + 0.5) * high)];
      let [sum, of] = [0, 0]; // the mean of a few pixels: they are of 8 bits
      for (let i = -2; i <= 2; i += 1) for (let j = -2; j <= 2; j += 1) {
        const k = 4 * (x + i + wide * (y + j));
        sum += dark[k];
        of += bright[k];
      }
      return sum / of;
    });
    lit.push({ at, brighter, darkest, edge });
  }
  contact.dispose();
  renderer.dispose();
  return lit;
}"""
UNDER, ASIDE, BEFORE, BEHIND = [0, 0, 0], [1.2, 0, 0], [0, 0, 1.2], [0, 0, -1.2]


@pytest.mark.painted
def test_a_box_over_a_deck_casts_a_soft_shadow_under_it_and_nowhere_else(open_page):
    places = [UNDER, ASIDE, BEFORE, BEHIND]
    sliding = [{"aside": 0.015 * k, "places": [UNDER]} for k in range(40)]  # by half a pixel each
    leaving = [
        {"tilt": 0.08 * k, "places": [UNDER]} for k in range(40)
    ]  # the box goes out over the picture's upper edge
    cases = [{"places": places}, {"places": places, "room": True}, *sliding, *leaving]
    drawn = open_page().evaluate(DRAW, {"wide": WIDE, "high": HIGH, "cases": cases})
    for one in drawn:
        assert one["brighter"] <= 1, "a shadow only ever takes light"
        assert one["darkest"] > 0.3, "and never all of it"
    for one in drawn[:42]:
        assert one["edge"] > 0.97, "nothing stands at the edges of the picture"
    for under, *others in (drawn[0]["at"], drawn[1]["at"]):
        assert 0.45 < under < 0.75, "of the lamp over it the box takes as much as a shadow may"
        assert all(other > 0.97 for other in others), (
            f"what is beside, before, or far behind the box in the picture: {others}"
        )
    slid, left = ([one["at"][0] for one in some] for some in (drawn[2:42], drawn[42:]))
    steps = [b - a for a, b in itertools.pairwise(slid)]
    assert min(steps) > -0.02, f"it would flicker as the box goes aside: {slid}"
    assert max(steps) < 0.12, f"it has a hard edge: {slid}"
    assert slid[-1] > 0.97
    steps = [b - a for a, b in itertools.pairwise(left)]
    assert max(map(abs, steps)) < 0.12, f"it would be gone at once: {left}"
    assert left[-1] > 0.97, "what is out of the picture casts none"
