#pragma once

// Through every panel of the application: each step and view, with its sections and first entries open.

#include "unit/shell/bench_of_tests.hpp"

#include <functional>

namespace evenfall::shell::bench_of_tests {

/// Opens the first entry of a list in sight, where there is one that is not open yet.
inline void open_first(Bench& bench, const std::string& id) {
    if (bench.drawn(id)) bench.reach(id);
}

/// Calls `look` with the name of what is on the screen, again and again.
inline void walk_panels(Bench& bench, const std::function<void(const std::string&)>& look) {
    const auto here = [&](const std::string& name) {
        bench.open_section_of("");
        look(name);
    };
    bench.tap("step.shape");
    here("shape");
    bench.tap("step.joints");
    open_first(bench, "joints.0");
    here("joints");
    bench.tap("step.hardware");
    open_first(bench, "hangers.0");
    here("hardware, a hanger open");
    open_first(bench, "hardware.0");
    open_first(bench, "tail.add");
    here("hardware, a part open");
    bench.tap("step.lead");
    open_first(bench, "lead.hole.0");
    here("lead");
    bench.reach("lead.plan");
    here("lead, planned");
    bench.reach("lead.drop");
    bench.tap("step.finish");
    open_first(bench, "finish.0");
    here("finish");
    bench.tap("step.water");
    for (int view = 0; view < 7; ++view) {
        bench.reach("water.view." + std::to_string(view));
        if (view == 6) bench.reach("water.ledger");
        here("water, view " + std::to_string(view));
    }
    bench.tap("step.log");
    for (int view = 0; view < 3; ++view) {
        bench.reach("log.view." + std::to_string(view));
        open_first(bench, "log.draw");
        here("log, view " + std::to_string(view));
        if (view == 1) {
            open_first(bench, "log.0");
            here("log, a reading open");
        }
    }
    bench.reach("log.view.1");
    bench.reach("log.add");
    here("log, kinds of readings");
    for (int kind = 0; bench.drawn("log.kind." + std::to_string(kind)); ++kind) {
        bench.reach("log.kind." + std::to_string(kind));
        here("log, a new reading of kind " + std::to_string(kind));
        bench.reach("log.new.cancel");
        bench.reach("log.add");
    }
    bench.reach("log.kind.cancel");
    bench.tap("step.sheet");
    here("sheet");
    bench.tap("shelf.open");
    look("shelf");
    bench.tap("shelf.close");
}

} // namespace evenfall::shell::bench_of_tests
