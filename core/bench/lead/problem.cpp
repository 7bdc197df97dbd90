#include "bench/lead/problem.hpp"

#include "water/fall/level_fall.hpp"

#include <algorithm>
#include <utility>

namespace evenfall::lead {

LeadProblem problem_of(const ledger::Ledger& ledger, const ledger::LedgerInputs& inputs,
                       const materials::WaterProperties& water) {
    LeadProblem task;
    task.inputs = &inputs;
    for (Candidate& c : candidates(inputs))
        task.add(std::move(c));
    const auto is_candidate = [&](const ledger::Line& line) {
        const bool of_hole = line.kind == ledger::Kind::hole_wood || line.kind == ledger::Kind::hole_water ||
                             line.kind == ledger::Kind::fill || line.kind == ledger::Kind::cap;
        return of_hole &&
               std::any_of(task.candidates.begin(), task.candidates.end(),
                           [&](const Candidate& c) { return static_cast<int>(c.hole) == line.item; });
    };
    for (const ledger::Line& line : ledger) {
        if (!is_candidate(line)) task.base += line;
    }
    const document::Targets& targets = inputs.document->targets;
    const bool by_fall = targets.by == document::TargetBy::fall;
    const fall::LevelFall level(*inputs.body->lines);
    task.aim = {water.density_kg_m3,
                by_fall ? level.in_water_kg(targets.fall_m_s, water) : targets.in_water_kg,
                targets.pitch_rad};
    return task;
}

} // namespace evenfall::lead
