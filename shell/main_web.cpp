// The page's program: a window that is the canvas, a loop that stands still when nothing happens, and the
// functions that the page's JavaScript calls.

#include "evenfall.hpp"
#include "help/help.hpp"
#include "look/words.hpp"
#include "output.hpp"
#include "platform/flavour.hpp"
#include "platform/loop_web.hpp"
#include "platform/window.hpp"
#include "workshop.hpp"

#include <emscripten.h>

using namespace evenfall;
using namespace evenfall::shell;

namespace {

// One page, one program: what JavaScript's calls refer to.
std::unique_ptr<platform::Window> window;
std::unique_ptr<platform::Host> host;
std::unique_ptr<App> app;

std::string& held() {
    static std::string text;
    return text;
}

/// Text for JavaScript, which copies it before the next call. Bytes that are no text go the same way with
/// ef_held_size.
const char* hand_over(std::string text) {
    held() = std::move(text);
    return held().c_str();
}

/// Mean time of one run of `work`, in microseconds.
template <class Work>
double timed_us(int runs, Work work) {
    const double from = emscripten_get_now();
    for (int i = 0; i < runs; ++i)
        work();
    return (emscripten_get_now() - from) * 1000.0 / runs;
}

} // namespace

int main() {
    std::string why;
    window = platform::Window::open({look::words::product}, why);
    if (!window) return 1;
    host = platform::make_host();
    app = std::make_unique<App>(*host);
    platform::run_loop(*window, *app);
    return 0;
}

extern "C" {

EMSCRIPTEN_KEEPALIVE int ef_start(const char* saved, const char* locale, int dark, double dpr) {
    if (!app) return 2;
    app->set_dark(dark != 0);
    app->set_locale(locale);
    window->set_dpr(dpr);
    const bool kept = app->start(saved);
    platform::wake_loop();
    return kept ? 0 : 1;
}

EMSCRIPTEN_KEEPALIVE const char* ef_open_json(const char* text) {
    return hand_over(app->open_json(text));
}
EMSCRIPTEN_KEEPALIVE unsigned char* ef_picture_room(int width, int height) {
    return app->picture_room(width, height);
}
EMSCRIPTEN_KEEPALIVE void ef_picture_ready(const char* marks) {
    app->picture_ready(marks);
}
EMSCRIPTEN_KEEPALIVE void ef_picture_away() {
    app->picture_away();
}
EMSCRIPTEN_KEEPALIVE const char* ef_set_drawer(const char* text) {
    return hand_over(app->set_drawer(text));
}
EMSCRIPTEN_KEEPALIVE const char* ef_add_to_drawer(const char* text) {
    return hand_over(app->add_to_drawer(text));
}
EMSCRIPTEN_KEEPALIVE const char* ef_open_link(const char* text) {
    return hand_over(app->open_link(text));
}
EMSCRIPTEN_KEEPALIVE const char* ef_document_json() {
    return hand_over(app->document_json());
}
EMSCRIPTEN_KEEPALIVE const char* ef_answers_json() {
    return hand_over(app->answers_json());
}
EMSCRIPTEN_KEEPALIVE const char* ef_plan_json() {
    return hand_over(app->plan_json());
}
EMSCRIPTEN_KEEPALIVE const char* ef_link() {
    return hand_over(app->link());
}
/// "side path" of the code of an address, with its quiet zone; "" where none holds so long a one.
EMSCRIPTEN_KEEPALIVE const char* ef_code(const char* address) {
    const Outcome<SquareCode> code = square_code(address);
    return hand_over(code.ok() ? std::to_string(whole_side(*code)) + " " + path_of(*code) : std::string());
}
EMSCRIPTEN_KEEPALIVE const char* ef_session_json(int with_history) {
    return hand_over(app->session_json(with_history != 0));
}
EMSCRIPTEN_KEEPALIVE const char* ef_open_session(const char* text) {
    return hand_over(app->open_session(text));
}
EMSCRIPTEN_KEEPALIVE const char* ef_sheet(int form, const char* address) {
    return hand_over(app->sheet_file(static_cast<App::SheetForm>(form), address));
}
EMSCRIPTEN_KEEPALIVE const char* ef_typeface(int semibold) {
    return hand_over(std::string(App::typeface(semibold != 0)));
}
EMSCRIPTEN_KEEPALIVE unsigned ef_held_size() {
    return static_cast<unsigned>(held().size());
}
EMSCRIPTEN_KEEPALIVE void ef_clear_kept() {
    app->clear_kept();
}
EMSCRIPTEN_KEEPALIVE void ef_show_kept(const char* session, const char* id, double time_ms, const char* when,
                                       int in_bin) {
    app->show_kept(id, session, {time_ms, when, in_bin != 0});
}
EMSCRIPTEN_KEEPALIVE const char* ef_offer_everything(const char* text) {
    return hand_over(app->offer_everything(text));
}
EMSCRIPTEN_KEEPALIVE void ef_set_safety(int persisted, int changes, double days) {
    app->set_safety({persisted != 0, changes, days});
    platform::wake_loop();
}
EMSCRIPTEN_KEEPALIVE void ef_wake() {
    platform::wake_loop();
}
EMSCRIPTEN_KEEPALIVE void ef_set_dpr(double dpr) {
    window->set_dpr(dpr);
    platform::wake_loop();
}
EMSCRIPTEN_KEEPALIVE const char* ef_said(const char* english) {
    return hand_over(app->said(english));
}
EMSCRIPTEN_KEEPALIVE const char* ef_untranslated() {
    return hand_over(app->untranslated_json());
}
EMSCRIPTEN_KEEPALIVE void ef_set_decimal_sign(int sign) {
    app->set_decimal_sign(static_cast<char>(sign));
}
EMSCRIPTEN_KEEPALIVE void ef_set_text_scale(double scale) {
    window->set_text_scale(scale);
    platform::wake_loop();
}
EMSCRIPTEN_KEEPALIVE void ef_set_calm(int calm) {
    app->set_calm(calm != 0);
}
EMSCRIPTEN_KEEPALIVE void ef_offer_install(int offered) {
    app->offer_install(offered != 0);
    platform::wake_loop();
}
EMSCRIPTEN_KEEPALIVE void ef_say(const char* sentence) {
    app->say(sentence);
    platform::wake_loop();
}
EMSCRIPTEN_KEEPALIVE void ef_set_text(const char* field_id, const char* text) {
    app->set_text(field_id, text);
    platform::wake_loop();
}
EMSCRIPTEN_KEEPALIVE void ef_preset(const char* name, const char* json) {
    app->add_preset(name, json);
}

/// Ids and titles of what the help has on a question; an entry by its id; a step to go to.
EMSCRIPTEN_KEEPALIVE const char* ef_help_found(const char* question) {
    return hand_over(app->help_found(question));
}
EMSCRIPTEN_KEEPALIVE const char* ef_help_entry(const char* id) {
    return hand_over(app->help_entry(id));
}
EMSCRIPTEN_KEEPALIVE void ef_show_ways() {
    app->show_ways();
    platform::wake_loop();
}
EMSCRIPTEN_KEEPALIVE void ef_go_to_step(const char* id) {
    if (app->go_to_step(id)) platform::wake_loop();
}

EMSCRIPTEN_KEEPALIVE const char* ef_version() {
    return hand_over(std::string(version()));
}

// Read-only, for tests and for the page's report.
EMSCRIPTEN_KEEPALIVE const char* ef_cut_json() {
    return hand_over(app->cut_json());
}
EMSCRIPTEN_KEEPALIVE unsigned ef_frames() {
    return window->frames();
}
EMSCRIPTEN_KEEPALIVE const char* ef_items_json() {
    return hand_over(app->items_json());
}
EMSCRIPTEN_KEEPALIVE const char* ef_problem() {
    return hand_over(app->last_problem());
}
EMSCRIPTEN_KEEPALIVE double ef_bench_us(const char* what, int runs) {
    const document::Document& document = app->document();
    const std::string name = what;
    if (name == "evaluate") return timed_us(runs, [&] { (void)evaluate(document); });
    if (name == "plan") return timed_us(runs, [&] { (void)plan_lead(document); });
    if (name == "uncertainty") return timed_us(runs, [&] { (void)uncertainty(document); });
    if (name == "draws") return timed_us(runs, [&] { (void)uncertainty_by_draws(document); });
    const auto evaluation = evaluate(document);
    if (!evaluation) return -1.0;
    if (name == "edit") return timed_us(runs, [&] { (void)evaluate(document, &evaluation->kept); });
    if (name != "joints") return -1.0;
    return timed_us(runs, [&] { (void)joints::joint_answers(document, evaluation->body); });
}

} // extern "C"
