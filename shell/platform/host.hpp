#pragma once

#include <string>

namespace evenfall::shell::platform {

/// Services that the application needs from outside. On the page JavaScript provides them (host_web.cpp), in
/// the desktop window files and the clipboard (host_desktop.cpp), in tests a recorder.
class Host {
public:
    virtual ~Host() = default;

    /// The document or the view changed: save it soon.
    virtual void changed() = 0;
    /// Pass the share text of the current lure to another device.
    virtual void share(const std::string& link_text) = 0;
    /// Offer a file for saving; `name` contains no folder.
    virtual void save_file(const std::string& name, const std::string& text) = 0;
    /// Let the builder choose a file; its text arrives later through App::open_json.
    virtual void open_file() = 0;
    /// Ask for a name or a note; the answer arrives later by App::set_text with the same id.
    virtual void ask_text(const std::string& field_id, const std::string& label,
                          const std::string& current) = 0;
    /// Today's date by the device's calendar, "2026-03-14"; empty where there is none.
    [[nodiscard]] virtual std::string today() { return {}; }
    /// Let the builder choose a picture; it arrives later by App::picture_room and App::picture_ready.
    virtual void choose_picture() {}
    /// Show the photos and lines that this device keeps with the lure; only where has_album().
    [[nodiscard]] virtual bool has_album() { return false; }
    virtual void show_album() {}
    /// The marks on the picture changed, or it was removed (then ""): save them with it.
    virtual void keep_picture(const std::string& marks) { (void)marks; }
    /// The parts drawer changed: save it on this device.
    virtual void keep_drawer(const std::string& text) { (void)text; }
    /// The shelf is about to open: the lures saved on this device arrive later by App::show_kept.
    virtual void shelf_opens() {}
    /// Another lure is about to be opened: save the present one under its own entry. False where that fails;
    /// then the present lure stays, and the builder is told.
    [[nodiscard]] virtual bool another_lure() { return true; }
    /// Open a saved lure (it arrives by App::open_session); put it into the bin; take it back from there. The
    /// lists arrive anew.
    virtual void take_kept(const std::string& id) { (void)id; }
    virtual void drop_kept(const std::string& id) { (void)id; }
    virtual void take_back(const std::string& id) { (void)id; }
    virtual void empty_bin() {}
    /// Save what a file of everything brings (state::plan_text), all of it or nothing. False where there is
    /// no room.
    [[nodiscard]] virtual bool take_everything(const std::string& plan_json) {
        (void)plan_json;
        return false;
    }
    /// Milliseconds since 1970 by the device's clock; 0 where there is none.
    [[nodiscard]] virtual double now_ms() { return 0.0; }
    /// Explain a figure: an entry of the help with what went into it (help::told).
    virtual void explain(const std::string& told_json) { (void)told_json; }
    /// Show the build sheet over this part of the window [CSS px]. `revision` changes whenever the sheet must
    /// be requested again (App::sheet_file). Called again with every change of any argument.
    virtual void show_sheet(float x, float y, float w, float h, unsigned revision) {
        (void)x, (void)y, (void)w, (void)h, (void)revision;
    }
    /// The sheet is no longer visible: another step is open or something covers it.
    virtual void hide_sheet() {}
    /// Print the visible sheet, or offer it as a file; the extension of `name` gives the format.
    virtual void print_sheet() {}
    virtual void save_sheet(const std::string& name) { (void)name; }
    /// Let the browser ask whether the page shall be installed on the device (App::offer_install).
    virtual void install() {}
    /// Keep the screen from going dark, while one hole after the other is drilled; or no longer.
    virtual void keep_awake(bool awake) { (void)awake; }
    /// Show the first steps again; the search of the help; what the page is and where it comes from.
    virtual void first_steps() {}
    virtual void show_help() {}
    virtual void about() {}
    /// The language of the bench is this one now, "de": the page's own texts are asked for by App::said.
    virtual void speaks(const std::string& code) { (void)code; }
    /// Announce a headline to assistive technology.
    virtual void announce(const std::string& text) = 0;
};

} // namespace evenfall::shell::platform
