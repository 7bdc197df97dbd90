#include "app/parts.hpp"

#include "look/words.hpp"
#include "look/words_shelf.hpp"
#include "widgets/button.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <utility>

namespace evenfall::shell {
namespace {

namespace words = look::words;

std::string counted(std::size_t count, const char* one, const char* many) {
    return std::to_string(count) + (count == 1 ? one : many);
}

std::string lures(std::size_t count) {
    return counted(count, words::lure_one, words::lure_many);
}

std::string pieces(std::size_t count) {
    return counted(count, words::piece_one, words::piece_many);
}

/// "12 lures, 2 in the bin, 30 pieces in the drawer".
std::string amounts(std::size_t on_shelf, std::size_t in_bin, std::size_t in_drawer) {
    return lures(on_shelf) + ", " + std::to_string(in_bin) + words::in_bin + ", " + pieces(in_drawer);
}

std::vector<state::KeptDocument> readable(const std::vector<KeptLure>& kept) {
    std::vector<state::KeptDocument> all;
    for (const KeptLure& lure : kept) {
        if (lure.document) all.push_back({*lure.document, lure.time_ms, lure.id});
    }
    return all;
}

state::OnThisDevice on_this_device(const AppParts& parts) {
    return {{readable(parts.kept), readable(parts.bin), parts.drawer, parts.session.settings},
            parts.session.kept()};
}

void save_everything(AppParts& parts) {
    state::OnThisDevice here = on_this_device(parts);
    here.all.lures.insert(here.all.lures.begin(), {here.bench, parts.host.now_ms(), {}});
    const std::string today = parts.host.today();
    parts.host.save_file(words::everything_file + (today.empty() ? "" : "-" + today) + ".json",
                         write_everything(here.all));
}

void take(AppParts& parts, const state::Taking& taking) {
    if (!parts.host.take_everything(plan_text(taking))) {
        parts.toast.show(words::offer_no_room, true, parts.now_s);
        return;
    }
    parts.drawer = taking.drawer; // the host has kept it with the lures
    parts.told_drawer = parts.drawer.revision();
    parts.session.settings = taking.settings;
    parts.say(words::offer_taken + lures(taking.lures.size()));
}

} // namespace

bool draw_offer(AppParts& parts) {
    if (!parts.offered) return false;
    widgets::Ui& ui = parts.ui;
    const state::EverythingOffer& offer = *parts.offered;
    const state::Everything& file = offer.file;
    widgets::subheading(ui, words::offer_head);
    widgets::paragraph(ui, words::offer_holds +
                               amounts(file.lures.size(), file.bin.size(), file.drawer.things().size()) +
                               ".");
    if (offer.merge.ok()) {
        widgets::note(
            ui, words::offer_merge_about +
                    amounts(offer.merge->lures.size(), offer.merge->bin.size(), offer.merge->new_pieces) +
                    words::offer_merge_here + lures(offer.merge->lures_here) + words::offer_merge_rest);
    } else {
        widgets::problem_line(ui, sentences(offer.merge.problems(), parts.session.settings.units));
    }
    widgets::note(ui, words::offer_replace_about + lures(file.lures.size()) + words::offer_replace_here +
                          std::to_string(offer.replace.away.size()) + words::offer_replace_rest);
    widgets::gap();
    const int tapped = widgets::button_row(
        ui, {{"offer.leave", words::offer_leave},
             {"offer.replace", words::offer_replace, widgets::ButtonKind::danger},
             {"offer.merge", words::offer_merge, widgets::ButtonKind::main, offer.merge.ok()}});
    widgets::gap();
    if (tapped < 0) return false;
    const state::EverythingOffer answered = *std::exchange(parts.offered, std::nullopt);
    if (tapped == 1) take(parts, answered.replace);
    if (tapped == 2) take(parts, *answered.merge);
    return true;
}

bool draw_everything(AppParts& parts) {
    widgets::Ui& ui = parts.ui;
    widgets::subheading(ui, words::everything_group);
    widgets::note(ui, parts.safety.persisted ? words::storage_kept : words::storage_at_risk);
    const auto unread = static_cast<std::size_t>(
        std::count_if(parts.kept.begin(), parts.kept.end(), [](const KeptLure& k) { return !k.document; }));
    std::string below =
        amounts(parts.kept.size() - unread + 1, parts.bin.size(), parts.drawer.things().size());
    if (unread > 0) below += words::everything_unread + std::to_string(unread);
    if (list_row(ui, "shelf.everything",
                 {.title = words::everything_save, .below = below, .has_chevron = true})) {
        save_everything(parts);
        return true;
    }
    if (const int changes = parts.safety.changes; changes > 0) {
        const std::string said =
            counted(static_cast<std::size_t>(changes), words::change_one, words::change_many);
        widgets::gap();
        if (reminder_due(parts.safety))
            widgets::paragraph(ui, said);
        else
            widgets::note(ui, said);
    }
    return false;
}

std::string App::offer_everything(const std::string& text) {
    auto file = state::read_everything(text);
    if (!file.ok()) return sentences(file.problems(), parts_->session.settings.units);
    const state::OnThisDevice here = on_this_device(*parts_);
    state::Taking replace = replaced(*file, here);
    Outcome<state::Taking> merge = merged(*file, here);
    parts_->offered = state::EverythingOffer{std::move(file).value(), std::move(merge), std::move(replace)};
    parts_->shelf_open = true;
    parts_->shelf_to_top = true;
    parts_->shelf_out = 0.0f;
    return {};
}

void App::set_safety(const state::Safety& safety) {
    parts_->safety = safety;
}

void remind(AppParts& parts) {
    if (!reminder_due(parts.safety) || std::exchange(parts.reminded, true)) return;
    parts.say(words::everything_reminder);
}

} // namespace evenfall::shell
