#pragma once

// The application of the page and of the desktop window: regions of the screen, one frame, and what the
// outside may ask.

#include "evenfall.hpp"
#include "platform/host.hpp"
#include "state/safety.hpp"
#include "widgets/ui.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace evenfall::shell {

/// Where things lie, from the size of the window and insets to stay out of (the page keeps the canvas
/// itself clear of notch and home bar). CSS px.
struct Regions {
    bool phone = false; ///< narrow: strip in two rows, short words
    bool low = false;   ///< a phone lying down: side by side, thin strip and bar, short words
    bool tiny = false;  ///< a phone upright that is low as well, by its size or enlarged: one row of answers
    bool two_lines = false; ///< the strip's figures below the name
    bool stacked = false;   ///< drawing above, panel below
    widgets::Rect screen;
    widgets::Rect strip;  ///< name and answers
    widgets::Rect sheet;  ///< the drawing
    widgets::Rect panel;  ///< the step
    widgets::Rect bar;    ///< the steps
    widgets::Rect keypad; ///< keypad and lists when out
};
struct Insets {
    float top = 0.0f, right = 0.0f, bottom = 0.0f, left = 0.0f;
};
/// `left_handed`: the panel at the left of the drawing where they lie side by side.
[[nodiscard]] Regions regions(float width, float height, const Insets& safe, bool left_handed = false);

struct AppParts;

class App {
public:
    /// `host` outlives the application.
    explicit App(platform::Host& host);
    ~App();

    /// Draws one frame between ImGui::NewFrame and ImGui::Render. `now_s` counts from any start.
    void frame(double now_s);
    /// Whether the next frame is wanted at once (a slide, a glide); and the time after which one is wanted by
    /// itself.
    [[nodiscard]] bool wants_frames() const;
    [[nodiscard]] std::optional<double> next_frame_in_s(double now_s) const;
    /// What two fingers did since the last frame.
    void pinch(const platform::Pinch& pinch);
    /// Ground of the window, 0xAABBGGRR.
    [[nodiscard]] look::Ink ground() const;

    void rebuild_fonts(double dpr);
    /// Room for a picture behind the drawing, red green blue alpha, to be filled before picture_ready;
    /// nullptr where its size cannot be. `marks` are those that keep_picture handed out, or "".
    unsigned char* picture_room(int width, int height);
    void picture_ready(const std::string& marks);
    void picture_away();
    /// The picture that waits for a texture, and what the window made of it.
    struct TexturePixels {
        const unsigned char* rgba = nullptr;
        int width = 0;
        int height = 0;
    };
    [[nodiscard]] TexturePixels wanted_texture() const;
    void give_texture(std::uintptr_t texture);
    /// The drawing context was lost with all that was in it.
    void forget_texture();

    /// The drawer that this device has kept; "" or the sentences that refuse it, and then the drawer stays as
    /// it is.
    std::string set_drawer(const std::string& text);
    /// A drawer from a file: its pieces are laid in beside those that are there.
    std::string add_to_drawer(const std::string& text);
    /// ',' or '.' by the device, for a language that does not say itself; typed numbers may have either.
    void set_decimal_sign(char sign);
    /// Until the kept session or the builder says otherwise.
    void set_dark(bool dark);
    void set_locale(const std::string& locale); ///< of the device, "en-US": its language and its inches
    void set_calm(bool calm);                   ///< the device asks for less motion
    void
    offer_install(bool offered); ///< the browser can put the page among the device's programs, or not now
    void say(const std::string& sentence); ///< shown for some seconds: "Saved: millrace.json"
    [[nodiscard]] bool large_text() const; ///< the builder's setting; whoever has the window scales it

    /// Begins with the kept session, or with the first demo where the text is empty or cannot be read, which
    /// is then said on the page: false.
    bool start(const std::string& saved_session_json);

    /// "" or the sentences that refuse it. A document that opens becomes the current one; undo brings the old
    /// one back.
    [[nodiscard]] std::string open_json(const std::string& text);
    [[nodiscard]] std::string open_link(const std::string& text);
    [[nodiscard]] const document::Document& document() const;
    [[nodiscard]] std::string document_json() const;
    [[nodiscard]] std::string answers_json() const;
    [[nodiscard]] std::string plan_json() const;
    [[nodiscard]] std::string link() const;
    [[nodiscard]] std::string session_json(bool with_history = true) const;
    /// Puts a kept session on the bench with a history of its own; the bench's settings stay. "" or why it is
    /// refused.
    [[nodiscard]] std::string open_session(const std::string& text);
    /// The lures kept on this device beside the one on the bench: first clear, then each, on the shelf or in
    /// the bin; `when` is said as it is given. A text that cannot be read is listed as such, so that it can
    /// be thrown away knowingly.
    struct KeptAs {
        double time_ms = 0.0;
        std::string when;
        bool in_bin = false;
    };
    void clear_kept();
    void show_kept(const std::string& id, const std::string& session_json, KeptAs as);
    /// Offers a file of everything: the shelf asks whether to merge it with what is here, as listed by
    /// show_kept, or to put it in its place. "" or the sentences that refuse it.
    [[nodiscard]] std::string offer_everything(const std::string& text);
    /// How safe the work is on this device. The next frame reminds, once, where a file of everything is due.
    void set_safety(const state::Safety& safety);
    /// The build sheet as bytes; HTML also as its bare pages, for a page that has the faces (typeface). Where
    /// it is refused: "", or in the place of the pages the sentences that say why.
    enum class SheetForm { html, svg, pdf, leaves };
    [[nodiscard]] std::string sheet_file(SheetForm form, const std::string& address) const;
    /// The typeface that the page and the sheet are set in, an OpenType file: regular or semibold.
    [[nodiscard]] static std::string_view typeface(bool semibold);
    void set_text(const std::string& field_id, const std::string& text);
    void add_preset(const std::string& name, const std::string& json_text);

    /// A text of the page in the language of the bench.
    [[nodiscard]] std::string said(const std::string& english) const;
    /// What the language's catalogue did not have, since it was chosen; for tests.
    [[nodiscard]] std::string untranslated_json() const;
    [[nodiscard]] std::string items_json() const;
    /// Texts of the last frame that were cut off for want of room, as a JSON list.
    [[nodiscard]] std::string cut_json() const;
    /// Entries of the help for a question, in the language of the bench too (help::found_json).
    [[nodiscard]] std::string help_found(const std::string& question) const;
    /// An entry of the help by its id, in the units that are set (help::told_by_id).
    [[nodiscard]] std::string help_entry(std::string_view id) const;
    [[nodiscard]] const std::string& last_problem() const;

    /// Goes to a step by its id ("lead"); false when there is none. For the first steps and for pictures.
    bool go_to_step(std::string_view id);
    /// Goes to what would do what lead cannot.
    void show_ways();

private:
    std::unique_ptr<AppParts> parts_;
};

} // namespace evenfall::shell
