#include "platform/flavour.hpp"

#include <emscripten.h>

// Calls the page's JavaScript; does nothing where it is absent. (Emscripten's optimiser does not support
// "?.".)
// clang-format off
EM_JS(void, ef_host_changed, (), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.changed();
});
EM_JS(void, ef_host_choose_picture, (), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.choose_picture();
});
EM_JS(void, ef_host_show_album, (), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.show_album();
});
EM_JS(void, ef_host_keep_picture, (const char* marks), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.keep_picture(UTF8ToString(marks));
});
EM_JS(void, ef_host_keep_drawer, (const char* text), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.keep_drawer(UTF8ToString(text));
});
EM_JS(void, ef_host_share, (const char* link), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.share(UTF8ToString(link));
});
EM_JS(void, ef_host_save_file, (const char* name, const char* text), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.save_file(UTF8ToString(name), UTF8ToString(text));
});
EM_JS(void, ef_host_open_file, (), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.open_file();
});
EM_JS(void, ef_host_ask_text, (const char* id, const char* label, const char* current), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.ask_text(UTF8ToString(id), UTF8ToString(label), UTF8ToString(current));
});
EM_JS(void, ef_host_shelf_opens, (), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.shelf_opens();
});
EM_JS(int, ef_host_another_lure, (), {
    return globalThis.EvenfallHost ? globalThis.EvenfallHost.another_lure() : 1;
});
EM_JS(void, ef_host_take_kept, (const char* id), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.take_kept(UTF8ToString(id));
});
EM_JS(void, ef_host_drop_kept, (const char* id), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.drop_kept(UTF8ToString(id));
});
EM_JS(void, ef_host_take_back, (const char* id), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.take_back(UTF8ToString(id));
});
EM_JS(void, ef_host_empty_bin, (), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.empty_bin();
});
EM_JS(int, ef_host_take_everything, (const char* plan), {
    return globalThis.EvenfallHost ? globalThis.EvenfallHost.take_everything(UTF8ToString(plan)) : 0;
});
EM_JS(double, ef_host_now, (), { return Date.now(); });
EM_JS(void, ef_host_explain, (const char* told), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.explain(UTF8ToString(told));
});
EM_JS(void, ef_host_show_sheet, (float x, float y, float w, float h, unsigned revision), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.show_sheet(x, y, w, h, revision);
});
EM_JS(void, ef_host_hide_sheet, (), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.hide_sheet();
});
EM_JS(void, ef_host_print_sheet, (), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.print_sheet();
});
EM_JS(void, ef_host_save_sheet, (const char* name), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.save_sheet(UTF8ToString(name));
});
EM_JS(void, ef_host_install, (), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.install();
});
EM_JS(void, ef_host_keep_awake, (int awake), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.keep_awake(awake !== 0);
});
EM_JS(void, ef_host_speaks, (const char* code), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.speaks(UTF8ToString(code));
});
EM_JS(void, ef_host_first_steps, (), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.first_steps();
});
EM_JS(void, ef_host_show_help, (), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.show_help();
});
EM_JS(void, ef_host_about, (), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.about();
});
EM_JS(void, ef_host_announce, (const char* text), {
    if (globalThis.EvenfallHost) globalThis.EvenfallHost.announce(UTF8ToString(text));
});
EM_JS(void, ef_host_today, (char* into, int room), {
    const now = new Date();
    const two = (n) => String(n).padStart(2, "0");
    stringToUTF8(now.getFullYear() + "-" + two(now.getMonth() + 1) + "-" + two(now.getDate()), into, room);
});
// clang-format on

namespace evenfall::shell::platform {
namespace {

class WebHost final : public Host {
public:
    void changed() override { ef_host_changed(); }
    void choose_picture() override { ef_host_choose_picture(); }
    bool has_album() override { return true; }
    void show_album() override { ef_host_show_album(); }
    void keep_picture(const std::string& marks) override { ef_host_keep_picture(marks.c_str()); }
    void keep_drawer(const std::string& text) override { ef_host_keep_drawer(text.c_str()); }
    void share(const std::string& link_text) override { ef_host_share(link_text.c_str()); }
    void save_file(const std::string& name, const std::string& text) override {
        ef_host_save_file(name.c_str(), text.c_str());
    }
    void open_file() override { ef_host_open_file(); }
    void ask_text(const std::string& id, const std::string& label, const std::string& current) override {
        ef_host_ask_text(id.c_str(), label.c_str(), current.c_str());
    }
    std::string today() override {
        char text[16] = "";
        ef_host_today(text, sizeof text);
        return text;
    }
    void shelf_opens() override { ef_host_shelf_opens(); }
    bool another_lure() override { return ef_host_another_lure() != 0; }
    void take_kept(const std::string& id) override { ef_host_take_kept(id.c_str()); }
    void drop_kept(const std::string& id) override { ef_host_drop_kept(id.c_str()); }
    void take_back(const std::string& id) override { ef_host_take_back(id.c_str()); }
    void empty_bin() override { ef_host_empty_bin(); }
    bool take_everything(const std::string& plan_json) override {
        return ef_host_take_everything(plan_json.c_str()) != 0;
    }
    double now_ms() override { return ef_host_now(); }
    void explain(const std::string& told_json) override { ef_host_explain(told_json.c_str()); }
    void show_sheet(float x, float y, float w, float h, unsigned revision) override {
        ef_host_show_sheet(x, y, w, h, revision);
    }
    void hide_sheet() override { ef_host_hide_sheet(); }
    void print_sheet() override { ef_host_print_sheet(); }
    void save_sheet(const std::string& name) override { ef_host_save_sheet(name.c_str()); }
    void install() override { ef_host_install(); }
    void keep_awake(bool awake) override { ef_host_keep_awake(awake ? 1 : 0); }
    void speaks(const std::string& code) override { ef_host_speaks(code.c_str()); }
    void first_steps() override { ef_host_first_steps(); }
    void show_help() override { ef_host_show_help(); }
    void about() override { ef_host_about(); }
    void announce(const std::string& text) override { ef_host_announce(text.c_str()); }
};

} // namespace

std::unique_ptr<Host> make_host() {
    return std::make_unique<WebHost>();
}

} // namespace evenfall::shell::platform
