#include "ledger/hung_on.hpp"

#include "materials/solids.hpp"

#include <algorithm>
#include <limits>

namespace evenfall::ledger {

using document::HungKind;
using document::HungOn;

namespace {

constexpr int no_part = std::numeric_limits<int>::max();

bool hangs_on(const Line& line, const document::HungList& with) {
    return line.stage == Stage::rigged && std::any_of(with.begin(), with.end(), [&](const HungOn& on) {
               return on.what == HungKind::all || (on.what == HungKind::tail && line.kind == Kind::tail) ||
                      (on.what == HungKind::part && line.kind == Kind::part && line.item == on.part);
           });
}

} // namespace

bool has_rigging(const Ledger& ledger) {
    return std::any_of(ledger.begin(), ledger.end(),
                       [](const Line& line) { return line.stage == Stage::rigged; });
}

std::string rigging_words(const document::Document& document) {
    bool tail = document.tail.has_value();
    bool hooks = false;
    for (const document::Part& part : document.parts) {
        if (part.stage != Stage::rigged) continue;
        (materials::is_soft(part.material) ? tail : hooks) = true;
    }
    return !tail ? "hooks" : hooks ? "hooks and tail" : "the tail";
}

Ledger with_hung_on(Ledger ledger, const document::HungList& with, const Vec3& weights_at_m) {
    for (Line& line : ledger) {
        if (hangs_on(line, with)) line.stage = Stage::carved;
    }
    for (const HungOn& on : with) {
        const materials::Solid* solid =
            on.what == HungKind::weight ? materials::find_solid(on.material) : nullptr;
        if (solid == nullptr || !on.mass_kg) continue;
        Line weight;
        weight.kind = Kind::part;
        weight.item = no_part;
        weight.mass_kg = *on.mass_kg;
        weight.displaced_m3 = *on.mass_kg / solid->density_kg_m3.value;
        weight.at_m = weights_at_m;
        ledger.push_back(weight);
    }
    return ledger;
}

} // namespace evenfall::ledger
