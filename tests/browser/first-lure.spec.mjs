// From an idea to the sheet, as a carver does it who works in inches: a lure of four pieces from the card of a new lure,
// a sketch traced, a joint moved by eye on it, a hole drilled by mistake, readings at three stages, the build sheet and the link. Every
// tap, drag and key of the page's keypad counts as one touch.

import assert from "node:assert/strict";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { laySketch, putDown, traceSketch } from "./support/ways.mjs";

const shop = await workshop();

/** Counts each touch of this bench. */
function counted(bench) {
  const count = { touches: 0 };
  for (const way of ["tap", "drag"]) {
    const touch = bench[way].bind(bench);
    bench[way] = (...given) => {
      count.touches++;
      return touch(...given);
    };
  }
  return count;
}

for (const size of ["tablet", "phone"]) {
  test(`a four-piece lure in inches, from the card to the sheet, takes fewer than 150 touches (${size})`, async () => {
    const device = await shop.device({ size: sizes[size] });
    const bench = await shop.open(device);
    const count = counted(bench);

    await bench.tap("shelf.open");
    await bench.tap("shelf.new");
    await bench.tap("card.units.2"); // inches by the rule
    await bench.enter("card.length", "6 1/4");
    await bench.tap("card.segments.more");
    await bench.tap("card.wood");
    await bench.tap("pick.red_alder");
    await bench.shot(`first-lure-card-${size}`);
    await bench.tap("card.make");
    const planned = count.touches;
    let lure = await bench.document();
    assert.equal(lure.joints.length, 3);
    assert.equal(lure.wood.species, "red_alder");
    assert.equal(lure.parts.filter((part) => part.reach_mm > 0).length, 2, "two hooks");
    assert.ok(lure.tail && lure.pockets.some((pocket) => pocket.width_mm === 2), "a tail in its slot");
    assert.equal(lure.shape.back_mm.at(-1)[0], 158.75);
    const planned_fall = (await bench.answers()).fall_mm_s;
    assert.ok(Math.abs(planned_fall - 120) < 1, `it falls as asked: ${planned_fall} mm/s`);
    assert.ok(planned < 30, `a first plan after ${planned} touches`);
    await bench.shot(`first-lure-plan-${size}`);

    // A sketch of the same height gives the outline, and stays in sight where a joint is moved by eye.
    const heights = [...lure.shape.back_mm, ...lure.shape.belly_mm].map(([, z]) => z);
    const share = (Math.max(...heights) - Math.min(...heights)) / 158.75;
    await laySketch(bench, { half: 500 * share, blunt: 2.6 });
    await traceSketch(bench, "6 1/4");
    await bench.tap("picture.keep");
    const traced = await bench.document();
    assert.notDeepEqual(traced.shape.back_mm, lure.shape.back_mm);
    assert.ok(Math.abs(traced.shape.back_mm.at(-1)[0] - 158.75) < 2.5);
    await bench.tap("step.joints");
    await bench.tap("joints.1");
    const [x, y] = await bench.middleOf("draw.joint.1");
    await bench.drag({ x, y }, { x: x - 12, y });
    lure = await bench.document();
    assert.ok(lure.joints[1].at_mm < traced.joints[1].at_mm - 0.5);
    await bench.shot(`first-lure-joints-${size}`);

    // The last hole was drilled in the wrong place: plugged, and planned anew without it.
    await bench.tap("step.lead");
    const wrong = lure.holes.length - 1;
    await bench.tap(`lead.hole.${wrong}`);
    await bench.tap(`lead.hole.${wrong}.plug`);
    await bench.tap("lead.plan");
    if (await bench.has("lead.keep")) await bench.tap("lead.keep");
    lure = await bench.document();
    assert.equal(lure.holes[wrong].use, "fixed");
    assert.equal(lure.holes[wrong].cap.material, "dowel");

    await bench.tap("step.log");
    await bench.tap("log.view.1");
    const stages = (await bench.answers()).stages;
    const grams = (stage) => stages[stage].mass_g.toFixed(1);
    await putDown(bench, "dry_weight", 0, { mass: grams(0) });
    await putDown(bench, "dry_weight", 3, { mass: grams(3) });
    await putDown(bench, "dry_weight", 4, { mass: grams(4) });
    assert.equal((await bench.document()).log.length, 3);
    await bench.tap("log.view.0");
    await bench.shot(`first-lure-now-${size}`);

    await bench.tap("step.sheet");
    await bench.page.locator("#sheet .leaf").first().waitFor();
    await bench.shot(`first-lure-sheet-${size}`);
    await bench.tap("shelf.open");
    await bench.tap("shelf.share");
    await bench.page.locator("#dialog-share-link").waitFor();
    assert.ok((await bench.page.locator("#dialog-share-link").inputValue()).length < 1400);

    assert.ok(count.touches < 150, `${count.touches} touches`);
    console.log(`${size}: first plan after ${planned} touches, everything after ${count.touches}`);
    bench.noFaults();
    await device.close();
  });
}
