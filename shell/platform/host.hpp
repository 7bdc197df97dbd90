#pragma once

#include <string>

namespace evenfall::shell::platform {

/// What the application asks of the world around it. The page answers with JavaScript (host_web.cpp), the
/// desktop window with files and the clipboard (host_desktop.cpp), a test with a recording.
class Host {
public:
    virtual ~Host() = default;

    /// The document or the view changed: keep it soon.
    virtual void changed() = 0;
    /// Hand the share text of the current lure to another device.
    virtual void share(const std::string& link_text) = 0;
    /// Offer a file for keeping; `name` has no folder in it.
    virtual void save_file(const std::string& name, const std::string& text) = 0;
    /// Let the builder choose a file; its text arrives later through App::open_json.
    virtual void open_file() = 0;
    /// Ask for a name or a note; the answer arrives later through App::set_text with the same id.
    virtual void ask_text(const std::string& field_id, const std::string& label,
                          const std::string& current) = 0;
    /// Today by the device's own calendar, "2026-03-14"; empty where it has none.
    [[nodiscard]] virtual std::string today() { return {}; }
    /// Let the builder choose a picture; it arrives later through App::picture_room and App::picture_ready.
    virtual void choose_picture() {}
    /// The marks on the picture changed, or it was taken away (then ""): keep them beside it.
    virtual void keep_picture(const std::string& marks) { (void)marks; }
    /// The parts drawer changed: keep it on this device.
    virtual void keep_drawer(const std::string& text) { (void)text; }
    /// The shelf is about to be seen: the lures kept on this device arrive later through App::show_kept.
    virtual void shelf_opens() {}
    /// Another lure is about to come onto the bench: keep the one that lies there, as it is now, by itself.
    /// False where that cannot be; then it stays, and the builder is told.
    [[nodiscard]] virtual bool another_lure() { return true; }
    /// Put a kept lure on the bench (it arrives through App::open_session), or throw it away.
    virtual void take_kept(const std::string& id) { (void)id; }
    virtual void drop_kept(const std::string& id) { (void)id; }
    /// Say what an answer of the strip means and where it comes from; `id` as in strip_answers.
    virtual void explain(const std::string& id) { (void)id; }
    /// The build sheet is to be seen over this part of the window [CSS px]. `revision` is another number
    /// whenever the sheet has to be asked for anew (App::sheet_file). Told again with every change of any of
    /// these.
    virtual void show_sheet(float x, float y, float w, float h, unsigned revision) {
        (void)x, (void)y, (void)w, (void)h, (void)revision;
    }
    /// It is no longer to be seen, be it that another step is open or that something lies over it.
    virtual void hide_sheet() {}
    /// Print the sheet that is seen, or offer it as a file; the ending of `name` says in which form.
    virtual void print_sheet() {}
    virtual void save_sheet(const std::string& name) { (void)name; }
    /// Show the first steps again.
    virtual void first_steps() {}
    /// Say a headline to assistive technology.
    virtual void announce(const std::string& text) = 0;
};

} // namespace evenfall::shell::platform
