#include "base/number_text.hpp"
#include "output/sheet/parts.hpp"

#include <algorithm>

namespace evenfall::sheet {

void add_time_line(Composer& pages, const std::vector<Wait>& waits) {
    constexpr double label = 52.0, size = 2.9, end_room = 16.0;
    double last = 0.0;
    for (const Wait& wait : waits)
        last = std::max(last, wait.start_h + wait.hours);
    const double scale = last > 0.0 ? (pages.width_mm() - label - end_room) / last : 0.0;
    for (const Wait& wait : waits) {
        const double top = pages.block(6.2);
        std::string name = pages.said(wait.name);
        while (pages.text_width_mm(name, size) > label - 2.0 && !name.empty()) {
            // Removes a whole UTF-8 character: its continuation bytes and its first byte.
            while (name.size() > 1 && (static_cast<unsigned char>(name.back()) & 0xC0u) == 0x80u)
                name.pop_back();
            name.pop_back();
        }
        pages.text({pages.left_mm(), top + 3.6}, name, size);
        const double left = pages.left_mm() + label + scale * wait.start_h;
        const double width = std::max(scale * wait.hours, 0.4);
        pages.add(Path{
            {{{{left, top + 0.8}, {left + width, top + 0.8}, {left + width, top + 4.6}, {left, top + 4.6}},
              true}},
            Stroke{0.18, ink, 0.0},
            tint,
            {}});
        std::string until = units::number_text(wait.start_h + wait.hours, units::Unit::one, 1);
        until += " h";
        pages.text({left + width + 1.2, top + 3.7}, pages.said(until), 2.6);
        pages.say(wait.name + ", until " + until);
    }
    pages.space(3.0);
}

} // namespace evenfall::sheet
