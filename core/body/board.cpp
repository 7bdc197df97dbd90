#include "body/board.hpp"

#include "base/sentence.hpp"

#include <algorithm>
#include <string>

namespace evenfall::shape {

BodyBox body_box(const Lines& lines) {
    const auto stations = lines.breakpoints_m();
    const auto first = lines.at(stations.front());
    BodyBox box{lines.length_m(), first.centre_z_m - first.half_height_m,
                first.centre_z_m + first.half_height_m, first.half_width_m};
    constexpr int places = 16;
    for (std::size_t k = 0; k + 1 < stations.size(); ++k) {
        for (int i = 0; i <= places; ++i) {
            const auto at = lines.at(stations[k] + (stations[k + 1] - stations[k]) * i / places);
            box.low_z_m = std::min(box.low_z_m, at.centre_z_m - at.half_height_m);
            box.high_z_m = std::max(box.high_z_m, at.centre_z_m + at.half_height_m);
            box.half_width_m = std::max(box.half_width_m, at.half_width_m);
        }
    }
    return box;
}

Problems board_warnings(const document::Board& board, const Lines& lines) {
    const BodyBox box = body_box(lines);
    Problems out;
    const auto compare = [&](const char* key, const char* way, double board_m, double body_m) {
        const double needed_m = body_m + 2.0 * board.saw_m;
        constexpr double reading_m = 5e-6; // finer than any ruler
        if (board_m >= needed_m - reading_m) return;
        out.push_back({ProblemCode::does_not_fit, std::string("/board/") + key,
                       "at least " + length_text(needed_m),
                       std::string("The board is ") + length_text(board_m) + " " + way +
                           "; body and saw need " + length_text(needed_m) + "."});
    };
    compare("length_mm", "long", board.length_m, box.length_m);
    compare("height_mm", "high", board.height_m, box.high_z_m - box.low_z_m);
    compare("thickness_mm", "thick", board.thickness_m, 2.0 * box.half_width_m);
    return out;
}

} // namespace evenfall::shape
