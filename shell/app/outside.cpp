#include "app/app.hpp"

#include "app/parts.hpp"
#include "look/words.hpp"
#include "look/words_drawer.hpp"
#include "look/words_picture.hpp"
#include "output.hpp"
#include "state/session_json.hpp"

#include <algorithm>
#include <cstdio>

namespace evenfall::shell {
namespace {

/// The lure on the bench of someone who comes for the first time.
constexpr std::string_view first_demo = "millrace-170";

/// Ids are our own: letters, digits, points, hyphens and underscores; anything else would need escaping.
std::string plain_id(const std::string& id) {
    std::string text;
    for (const char c : id) {
        const bool fine = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                          c == '.' || c == '-' || c == '_';
        text += fine ? c : '_';
    }
    return text;
}

} // namespace

std::string sentences(const Problems& problems, const units::UnitSet& units) {
    std::string text;
    for (const Problem& problem : problems) {
        if (!text.empty()) text += ' ';
        text += problem.sentence.text(units);
    }
    return text;
}

void AppParts::another_lure() {
    keypad.close();
    picker.put_away();
    ui.answered.clear();
    motion.draft = {};
    motion.outline = {};
    motion.swim.answers.forget();
    motion.swim.clock.pause();
    motion.backdrop.stop_search();
    motion.recipes.clear();
    motion.ways = {};
    drawn_step.reset();
}

bool App::start(const std::string& saved_session_json) {
    AppParts& parts = *parts_;
    Problems unread;
    if (!saved_session_json.empty()) unread = restore_session(parts.session, saved_session_json);
    if (saved_session_json.empty() || !unread.empty()) {
        const auto demo = std::find_if(parts.demos.begin(), parts.demos.end(),
                                       [](const Demo& d) { return d.name == first_demo; });
        auto first = demo == parts.demos.end() ? Outcome<document::Document>(state::new_lure())
                                               : read_document(demo->json);
        if (first) {
            const state::Settings settings = parts.session.settings;
            parts.session = state::Session(std::move(*first));
            parts.session.settings = settings;
        }
    }
    if (!unread.empty()) {
        parts.last_problem = look::words::not_restored + sentences(unread, parts.session.settings.units);
        parts.toast.show(parts.last_problem, true, parts.now_s);
    }
    parts.told_revision = parts.session.revision();
    parts.told_settings = parts.session.settings;
    parts.told_view = parts.session.view;
    return unread.empty();
}

unsigned char* App::picture_room(int width, int height) {
    unsigned char* const room = parts_->motion.backdrop.make_room(width, height);
    if (room == nullptr) {
        parts_->last_problem = look::words::picture_unfit;
        parts_->toast.show(parts_->last_problem, true, parts_->now_s);
    }
    return room;
}

void App::picture_ready(const std::string& marks) {
    state::Backdrop& backdrop = parts_->motion.backdrop;
    backdrop.ready(marks, state::drawn_length_m(parts_->session.kept()));
    parts_->motion.outline = {};
    // Marks that came from where they are kept need not be kept again.
    if (!marks.empty()) parts_->told_picture = backdrop.revision();
}

void App::picture_away() {
    parts_->motion.backdrop.take_away();
    parts_->told_picture = parts_->motion.backdrop.revision();
}

App::TexturePixels App::wanted_texture() const {
    const state::Backdrop& backdrop = parts_->motion.backdrop;
    if (!backdrop.there() || backdrop.texture != 0) return {};
    return {backdrop.rgba().data(), backdrop.width(), backdrop.height()};
}

void App::give_texture(std::uintptr_t texture) {
    parts_->motion.backdrop.texture = texture;
}
void App::forget_texture() {
    parts_->motion.backdrop.texture = 0;
}

std::string App::set_drawer(const std::string& text) {
    auto read = state::read_drawer(text);
    if (!read.ok()) return sentences(read.problems(), parts_->session.settings.units);
    parts_->drawer = std::move(read).value();
    parts_->told_drawer = parts_->drawer.revision();
    return {};
}

std::string App::add_to_drawer(const std::string& text) {
    const auto read = state::read_drawer(text);
    if (!read.ok()) return sentences(read.problems(), parts_->session.settings.units);
    state::Drawer together = parts_->drawer;
    for (const state::DrawerItem& thing : read->things()) {
        if (!together.put(thing)) return look::words::drawer_full;
    }
    parts_->drawer = std::move(together);
    parts_->say(look::words::drawer_taken_in + std::to_string(read->things().size()));
    return {};
}

std::string App::open_json(const std::string& text) {
    if (!parts_->session.open_json(text))
        return sentences(parts_->session.problems(), parts_->session.settings.units);
    parts_->another_lure();
    parts_->say(look::words::opened + parts_->session.kept().name);
    return {};
}

std::string App::open_link(const std::string& text) {
    if (!parts_->session.open_link(text))
        return sentences(parts_->session.problems(), parts_->session.settings.units);
    parts_->another_lure();
    parts_->say(look::words::opened + parts_->session.kept().name);
    return {};
}

const document::Document& App::document() const {
    return parts_->session.kept();
}

std::string App::document_json() const {
    return write_document(parts_->session.kept());
}

std::string App::answers_json() const {
    const document::Document& lure = parts_->session.kept();
    const auto sure = uncertainty(lure);
    if (sure) return output::answers_json(lure, sure->evaluation, sure->chances_now.both);
    const auto found = evaluate(lure);
    return found ? output::answers_json(lure, *found, std::nullopt) : std::string();
}

std::string App::plan_json() const {
    const auto plan = plan_lead(parts_->session.kept());
    return plan ? output::lead_json(*plan) : std::string();
}

std::string App::link() const {
    return write_link(parts_->session.kept());
}

std::string App::session_json(bool with_history) const {
    return write_session(parts_->session, with_history);
}

void App::set_text(const std::string& field_id, const std::string& text) {
    parts_->ui.answered[field_id] = text;
}

void App::add_preset(const std::string& name, const std::string& json_text) {
    auto document = read_document(json_text);
    if (!document) return; // a demo that cannot be read is not offered; tests read every one of them
    parts_->demos.push_back({plain_id(name), document->name, json_text});
}

std::string App::cut_json() const {
    document::Tree list = document::Tree::array();
    for (const std::string& text : parts_->ui.items.cut())
        list.push_back(text);
    return list.dump();
}

std::string App::help_found(const std::string& question) const {
    return help::found_json(question, parts_->translator.speech());
}

std::string App::help_entry(std::string_view id) const {
    return help::told_by_id(id, parts_->session.settings.units);
}

std::string App::items_json() const {
    std::string text = "[";
    for (const widgets::Item& item : parts_->ui.items.shown()) {
        char numbers[128];
        std::snprintf(numbers, sizeof numbers,
                      "\"x\":%.1f,\"y\":%.1f,\"w\":%.1f,\"h\":%.1f,\"visible\":%s%s}",
                      static_cast<double>(item.x), static_cast<double>(item.y), static_cast<double>(item.w),
                      static_cast<double>(item.h), item.visible ? "true" : "false",
                      item.closed ? ",\"closed\":true" : "");
        if (text.size() > 1) text += ',';
        text += "{\"id\":\"" + plain_id(item.id) + "\"," + numbers;
    }
    return text + "]";
}

const std::string& App::last_problem() const {
    return parts_->last_problem;
}

} // namespace evenfall::shell
