#include "steps/hung_on_rows.hpp"

#include "document_fields.hpp"
#include "evenfall.hpp"
#include "look/words_log.hpp"
#include "output.hpp"
#include "steps/fields.hpp"
#include "widgets/choice.hpp"
#include "widgets/pick_field.hpp"
#include "widgets/rows.hpp"

#include <algorithm>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using document::HungKind;
using document::HungList;
using document::HungOn;

/// A switch for one thing that is hung on or not. True when it was switched.
bool hung_toggle(PanelContext& context, const std::string& id, const std::string& label, HungList& with,
                 const HungOn& on, std::string_view below = {}) {
    const auto at = std::find(with.begin(), with.end(), on);
    const bool there = at != with.end();
    if (!widgets::toggle(context.ui, id, label, there, below)) return false;
    if (there)
        with.erase(at);
    else
        with.push_back(on);
    return true;
}

HungOn part_on(int index) {
    HungOn on;
    on.what = HungKind::part;
    on.part = index;
    return on;
}

HungOn tail_on() {
    HungOn on;
    on.what = HungKind::tail;
    return on;
}

bool single_toggles(PanelContext& context, const std::string& id, HungList& with) {
    const document::Document& document = context.document();
    bool set = false;
    if (document.tail) set |= hung_toggle(context, id + ".tail", words::hung_tail, with, tail_on());
    for (int i = 0; i < static_cast<int>(document.parts.size()); ++i) {
        const document::Part& part = document.parts[static_cast<std::size_t>(i)];
        if (part.stage != Stage::rigged) continue;
        const std::string label = part.name.empty() ? words::hung_part + std::to_string(i + 1) : part.name;
        set |= hung_toggle(context, id + ".part." + std::to_string(i), label, with, part_on(i));
    }
    return set;
}

bool weight_fields(PanelContext& context, const std::string& id, HungList& with) {
    const auto found =
        std::find_if(with.begin(), with.end(), [](const HungOn& on) { return on.what == HungKind::weight; });
    const bool there = found != with.end();
    const std::optional<double> now = there ? found->mass_kg : std::nullopt;
    const NumberSpec spec = spec_of(document::field_of<&HungOn::mass_kg>);
    const auto set =
        widgets::optional_number_field(context.ui, id + ".weight", words::hung_weight, now, 0.001, spec,
                                       words::hung_no_weight, words::hung_weight_below);
    if (set && there && !*set) {
        with.erase(found);
        return true;
    }
    if (set && *set) {
        if (!there) {
            HungOn weight;
            weight.what = HungKind::weight;
            weight.material = "lead";
            with.push_back(weight);
        }
        (there ? *found : with.back()).mass_kg = **set;
        return true;
    }
    if (!there) return false;
    std::vector<widgets::PickOption> options;
    for (const materials::Solid& solid : materials::solids()) {
        if (solid.serves(materials::Use::ballast))
            options.push_back({std::string(solid.id), std::string(solid.name), {}});
    }
    const auto picked =
        widgets::pick_field(context.ui, id + ".material", words::hung_material, options, found->material);
    if (picked) found->material = *picked;
    return picked.has_value();
}

} // namespace

bool hung_on_rows(PanelContext& context, const std::string& id, document::Reading& reading) {
    if (reading.kind == document::ReadingKind::board || reading.segment || reading.stage < Stage::leaded)
        return std::exchange(reading.with, {}) != HungList{};
    bool set = false;
    if (reading.stage == Stage::rigged) { // it has all of that
        set = std::erase_if(reading.with, [](const HungOn& on) { return on.what != HungKind::weight; }) > 0;
    } else {
        const std::string rigging = ledger::rigging_words(context.document());
        set = hung_toggle(context, id + ".with.all", words::hung_with + rigging + words::hung_on,
                          reading.with, HungOn{}, words::hung_below);
        const bool all = std::find(reading.with.begin(), reading.with.end(), HungOn{}) != reading.with.end();
        if (set && all) // single things are in it
            std::erase_if(reading.with, [](const HungOn& on) {
                return on.what == HungKind::part || on.what == HungKind::tail;
            });
        if (!all) set |= single_toggles(context, id + ".with", reading.with);
    }
    return weight_fields(context, id + ".with", reading.with) || set;
}

} // namespace evenfall::shell::steps
