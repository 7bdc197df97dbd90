#pragma once

// A lure with an entry of every kind, and a walk through all that the page says about it.

#include "unit/shell/bench_of_tests.hpp"

namespace evenfall::shell::bench_of_tests {

inline document::Reading reading(document::ReadingKind kind) {
    document::Reading r;
    r.kind = kind;
    return r;
}

/// A lure that uses every kind of entry; those that exclude each other stand in `other`.
inline document::Document full_lure(bool other) {
    using namespace document;
    auto read = read_document(demo_text("millrace-170.json"));
    REQUIRE(read.ok());
    Document d = *read;
    d.joints[0].hinge = Hinge{};
    d.joints[0].hinge->weighs = true;
    d.hangers = {Hanger{}, Hanger{}};
    d.hangers[0].x_m = 0.04;
    d.hangers[1].on = HangerOn::nose;
    d.holes[0].fill = Fill{"lead", 0.001, std::nullopt, std::nullopt};
    d.holes[0].cap = Cap{};
    d.coats[0] = Coat{};
    d.coats[0].thickness_m = 0.0003;
    d.board = Board{0.2, 0.06, 0.04, 0.0015};
    d.shape.measured = {{0.05, 0.022, std::nullopt}};
    if (other) {
        d.joints[0].hinge->kind = HingeKind::linked;
        d.holes[0].fill = Fill{"lead", std::nullopt, 0.001, std::nullopt};
        d.coats[0].thickness_m.reset();
        d.coats[0].mass_kg = 0.002;
        d.targets.by = TargetBy::in_water;
        d.shape.section.kind = SectionKind::drawn;
        d.shape.section.half_outline = {{0.0, -1.0}, {0.9, -0.8}, {1.0, 0.0}, {0.9, 0.8}, {0.0, 1.0}};
    }
    d.log = {
        reading(ReadingKind::dry_weight), reading(ReadingKind::held_under), reading(ReadingKind::board),
        reading(ReadingKind::tub_fall),   reading(ReadingKind::suspends),   reading(ReadingKind::freeboard),
        reading(ReadingKind::hang_angle), reading(ReadingKind::caliper),    reading(ReadingKind::beats)};
    for (const int i : {0, 1, 2, 4})
        d.log[static_cast<std::size_t>(i)].mass_kg = i == 2 ? 0.1 : 0.03;
    d.log[0].stands = true;
    d.log[2].length_m = 0.2;
    d.log[2].width_m = 0.03;
    d.log[2].height_m = 0.05;
    for (std::size_t i = 3; i < d.log.size(); ++i)
        d.log[i].stage = Stage::rigged;
    d.log[3].stage = Stage::sealed;
    d.log[3].with = {{document::HungKind::weight, {}, 0.002, "lead"}};
    d.log[3].time_s = 4.0;
    d.log[3].depth_m = 0.6;
    d.log[4].clip_material = "lead";
    d.log[4].mass_kg = 0.001;
    d.log[5].freeboard_m = 0.002;
    d.log[6].angle_rad = 0.0;
    d.log[7].x_m = 0.05;
    d.log[7].width_m = 0.022;
    d.log[8].beats = 12.0;
    d.log[8].travel_m = 3.0;
    return d;
}

/// Opens every step, section and entry of the lure that is on the bench, and calls `look` after each.
template <class Look>
void open_everything(Bench& bench, const document::Document& lure, const Look& look) {
    bench.rest();
    const auto open = [&](const std::string& id) {
        bench.reach(id);
        look();
    };
    for (const char* step :
         {"step.shape", "step.joints", "step.hardware", "step.lead", "step.finish", "step.water"}) {
        bench.tap(step);
        bench.open_section_of("");
        look();
        if (step == std::string("step.joints")) open("joints.0");
        if (step == std::string("step.hardware")) {
            for (std::size_t i = 0; i < lure.hangers.size(); ++i)
                open("hangers." + std::to_string(i));
            open("hardware.0");
            open("pockets.0");
            open("tail.add");
        }
        if (step == std::string("step.lead")) open("lead.hole.0");
        if (step == std::string("step.finish")) open("finish.0");
    }
    bench.tap("step.log");
    bench.tap("log.view.1");
    for (std::size_t i = 0; i < lure.log.size(); ++i)
        open("log." + std::to_string(i));
    open("log.add");
}

} // namespace evenfall::shell::bench_of_tests
