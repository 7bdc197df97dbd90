// Properties: what has been done to the piece stays done, whatever readings and advice come after it.

#include "bench/uncertainty/random.hpp"
#include "evenfall.hpp"
#include "unit/bench/uncertainty/bench_readings.hpp"

#include <catch2/catch_test_macros.hpp>

#include <algorithm>

using namespace evenfall;
using namespace evenfall::support;

namespace {

/// A piece on the bench: other than its recipe by some per cent of wood and size, worked on by its document.
class Piece {
public:
    Piece(document::Document recipe, std::uint64_t draw) : document_(std::move(recipe)), random_(18, draw) {
        wood_ = 1.0 + 0.05 * random_.normal();
        size_ = 1.0 + 0.01 * random_.normal();
    }

    [[nodiscard]] const document::Document& document() const { return document_; }
    [[nodiscard]] Stage stage() const { return stage_; }

    /// Weighs it at the stage it has come to, or later.
    void weigh() {
        constexpr int most = static_cast<int>(Stage::clear_coated);
        const int to = std::min(static_cast<int>(stage_) + pick(3), most);
        stage_ = static_cast<Stage>(to);
        document::Document truth = document_;
        truth.log.clear();
        truth.corrections.push_back({document::Cause::wood_density, {}, wood_, {}});
        truth.corrections.push_back({document::Cause::carved_size, {}, size_, {}});
        const auto evaluation = evaluate(truth);
        REQUIRE(evaluation.ok());
        const double kg = evaluation->answers.stages[static_cast<std::size_t>(to)].mass.kg;
        document_.log.push_back(dry(stage_, units::g_from_kg(kg + 5e-5 * random_.normal())));
    }

    void follow(const DoNow& now) {
        std::optional<int> hole;
        if (pick(2) == 0 && !now.holes.empty())
            hole = now.holes[static_cast<std::size_t>(pick(static_cast<int>(now.holes.size())))].hole;
        document_ = with_advice(std::move(document_), now, hole);
    }

    /// A tick at one hole, never back.
    void tick() {
        auto& hole =
            document_.holes[static_cast<std::size_t>(pick(static_cast<int>(document_.holes.size())))];
        if (hole.depth_m <= 0.0 || hole.use == document::HoleUse::fixed) return;
        hole.use =
            hole.use == document::HoleUse::ballast ? document::HoleUse::drilled : document::HoleUse::leaded;
    }

    int pick(int count) { return std::min(static_cast<int>(random_.uniform() * count), count - 1); }

private:
    document::Document document_;
    bench::Random random_;
    Stage stage_ = Stage::carved;
    double wood_ = 1.0;
    double size_ = 1.0;
};

/// The depths of the holes that are in the wood.
std::vector<double> depths_cut(const document::Document& document) {
    std::vector<double> depths;
    for (const document::Hole& hole : document::as_it_lies(document).holes)
        depths.push_back(document::is_cut(hole) ? hole.depth_m : 0.0);
    return depths;
}

void check_no_shallower(const std::vector<double>& cut, const document::Document& document,
                        const char* where) {
    INFO(where);
    REQUIRE(document.holes.size() >= cut.size());
    for (std::size_t i = 0; i < cut.size(); ++i) {
        INFO("hole " << i + 1);
        CHECK(document.holes[i].depth_m >= cut[i] - 1e-9);
    }
}

} // namespace

TEST_CASE(
    "Through any readings, ticks, plans and advice a drilled hole gets no shallower, the piece goes back "
    "to no stage, and no hole is asked for where one stands") {
    for (const char* name : {"millrace-170", "quarry-230", "reedline-120"}) {
        for (std::uint64_t draw = 0; draw < 6; ++draw) {
            Piece piece(invented::preset_named(name), draw);
            std::vector<double> cut = depths_cut(piece.document());
            bool leaded = false;
            for (int turn = 0; turn < 8; ++turn) {
                INFO(name << ", draw " << draw << ", turn " << turn);
                switch (piece.pick(3)) {
                case 0:
                    piece.tick();
                    break;
                default:
                    piece.weigh();
                    break;
                }
                const auto now = do_now(piece.document());
                REQUIRE(now.ok());
                check_no_shallower(cut, now->document, "advice");
                CHECK(evaluate(now->document).ok()); // which refuses holes in each other's way
                if (leaded) CHECK(now->lead_is_in);
                leaded = now->lead_is_in;
                if (const auto plan = plan_lead(document::as_it_lies(piece.document())); plan.ok())
                    check_no_shallower(cut, plan->document, "plan");
                piece.follow(*now);
                REQUIRE(evaluate(piece.document()).ok());
                check_no_shallower(cut, piece.document(), "advice followed");
                const auto state = document::log_state(piece.document());
                if (state.has_readings) CHECK(state.stage == piece.stage());
                cut = depths_cut(piece.document());
            }
        }
    }
}
