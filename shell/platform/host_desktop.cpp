#include "platform/flavour.hpp"

#include <SDL.h>

#include <ctime>
#include <fstream>
#include <iostream>

namespace evenfall::shell::platform {
namespace {

/// The desktop window is for development: files go to the working folder, links to the clipboard, and there
/// is no dialog for names.
class DesktopHost final : public Host {
public:
    void changed() override {}
    void share(const std::string& link_text) override { SDL_SetClipboardText(link_text.c_str()); }
    void save_file(const std::string& name, const std::string& text) override {
        std::ofstream file(name, std::ios::binary);
        file << text;
        std::cout << (file ? "saved as " : "could not be saved as ") << name << std::endl;
    }
    void open_file() override { std::cout << "Name a file on the command line to open it." << std::endl; }
    void ask_text(const std::string&, const std::string& label, const std::string&) override {
        std::cout << label << ": names are typed on the page." << std::endl;
    }
    std::string today() override {
        const std::time_t now = std::time(nullptr);
        char text[16] = "";
        if (const std::tm* local = std::localtime(&now)) std::strftime(text, sizeof text, "%Y-%m-%d", local);
        return text;
    }
    void announce(const std::string& text) override { std::cout << text << std::endl; }
};

} // namespace

std::unique_ptr<Host> make_host() {
    return std::make_unique<DesktopHost>();
}

} // namespace evenfall::shell::platform
