// The steps of saving, without a page or a device: what each asks for, and what it knows afterwards.

import assert from "node:assert/strict";
import { test } from "node:test";
import { pageModule } from "./support/page_modules.mjs";

const { atRest, steps } = await pageModule("autosave.js");

/** Carries one step out: `answers` by name, kept unless it says otherwise. Returns the state and what was asked for. */
function carryOut(name, state, answers = {}, ...given) {
  const asked = [];
  const step = steps[name](Object.freeze({ ...state }), ...given);
  let { value, done } = step.next();
  while (!done) {
    asked.push(value);
    const known = { document: "here", session: "here's session", lureId: "own", newest: null, overtaken: false, ...answers };
    ({ value, done } = step.next(value[0] in known ? known[value[0]] : true));
  }
  return { state: value, asked, names: asked.map(([act]) => act) };
}

test("a change is kept once, and what could not be kept is tried again", () => {
  const changed = carryOut("changed", atRest).state;
  const kept = carryOut("flush", changed);
  assert.deepEqual(kept.asked, [["session"], ["save", "here's session"], ["onSuccess"]]);
  assert.deepEqual(kept.state, atRest);
  assert.deepEqual(carryOut("flush", kept.state).asked, []);

  const lost = carryOut("flush", changed, { save: false });
  assert.deepEqual(lost.state, { ...atRest, lost: true });
  assert.equal(lost.names.at(-1), "onFailure");
  assert.ok(carryOut("flush", lost.state).names.includes("save"));
});

test("what another tab keeps is put away first: beside this lure where it is the same one, else onto the shelf", () => {
  const state = { ...atRest, dirty: true, owed: true };
  const same = carryOut("flush", state, { newest: { session: "theirs", lure: "own" } });
  assert.deepEqual(same.names, ["newest", "lureId", "keep", "overtaken", "session", "save", "onSuccess"]);
  const other = carryOut("flush", state, { newest: { session: "theirs", lure: "another" } });
  assert.deepEqual(other.asked.filter(([act]) => act === "shelve"), [["shelve", "theirs", "another"]]);
  assert.ok(!other.state.owed);
});

test("a link is not kept before it is changed, and then as a lure of its own", () => {
  const held = carryOut("holdBack", { ...atRest, dirty: true }, { document: "link" }).state;
  assert.deepEqual(carryOut("flush", { ...held, dirty: true }, { document: "link" }).names, ["document"]);
  const changed = carryOut("flush", { ...held, dirty: true }, { document: "link 2" });
  assert.deepEqual(changed.asked.filter(([act]) => act === "adopt"), [["adopt", null]]);
  assert.equal(changed.state.copy, null);
});

// Every state that the parts can be in, with every answer of a device that keeps or refuses.
function* everyState() {
  const flags = [false, true];
  const texts = [null, "here", "before"];
  for (const dirty of flags) for (const lost of flags) for (const coming of flags) for (const owed of flags) for (const disputed of flags)
    for (const copy of texts) for (const pristine of texts) for (const atYield of texts)
      yield { dirty, lost, coming, owed, disputed, copy, pristine, atYield, aside: null };
}

test("from no state does a step write over work that is kept nowhere else", () => {
  let saves = 0;
  for (const state of everyState()) {
    for (const lure of ["own", "another"]) for (const room of [false, true]) for (const save of [false, true]) {
      for (const name of Object.keys(steps)) {
        const { state: after, asked } = carryOut(name, state, { newest: { session: "theirs", lure }, keep: room, shelve: room, save });
        const where = `${name} from ${JSON.stringify(state)}`;
        assert.deepEqual(Object.keys(after).sort(), Object.keys(atRest).sort(), where);
        const at = asked.findIndex(([act]) => act === "save");
        if (at < 0) continue;
        saves += 1;
        const settles = state.owed || name === "keepMine" || name === "resumeBench";
        const safe = asked.slice(0, at).some(([act, session]) => (act === "keep" || act === "shelve") && session === "theirs");
        assert.ok(!settles || (safe && room), `saved before the other's work was put away: ${where}`);
        assert.ok(!state.disputed || name === "keepMine" || name === "resumeBench", `saved while another tab keeps the bench: ${where}`);
        assert.equal(after.lost, !save, where);
      }
    }
  }
  assert.ok(saves > 1000);
});

test("from no state does another lure come where the one on the bench would be lost", () => {
  for (const state of everyState()) {
    const { state: after, asked } = carryOut("leave", state, { newest: { session: "theirs", lure: "another" }, keep: false, shelve: false });
    const asItCame = [state.copy, state.pristine, state.atYield].includes("here");
    assert.equal(after.coming, asItCame && (state.disputed || !state.owed), JSON.stringify(state));
    assert.deepEqual(asked.at(-1), ["onLeave", after.coming]);
  }
});
