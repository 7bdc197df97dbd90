// Any bytes as a chain within the limits that a document is held to (workshop/swim_limits.cpp), which drawn
// documents seldom keep to: towed slowly or fast, with joints that turn freely or bind.

#include "fuzz/bytes.hpp"
#include "fuzz/swim_laws.hpp"
#include "support/swim_chains.hpp"
#include "water/swim/run.hpp"

namespace {

using namespace evenfall;

testing::SwimBody drawn_body(fuzz::Bytes& b) {
    testing::SwimBody body = b.yes() ? testing::body_b170() : testing::body_a140();
    const double scale = b.number(0.06, 0.4) / body.length_m;
    body.length_m *= scale;
    body.half_height_m = 0.5 * body.length_m / b.number(4.0, 7.0);
    body.half_width_m = body.half_height_m / b.number(1.2, 2.5);
    body.fullness = b.number(1.6, 4.0);
    body.tie_m = body.length_m * b.number(-0.02, 0.08);
    body.pin_aft_m *= scale;
    body.swing_rad = b.number(units::rad_from_deg(5.0), swim::most_swing_rad);
    body.pin_radius_m = b.number(0.2e-3, 1.5e-3);
    const std::size_t joints = 1 + b.below(swim::most_segments - 1);
    body.cuts_m.clear();
    for (std::size_t k = 0; k < joints; ++k)
        body.cuts_m.push_back(body.length_m *
                              (0.28 + 0.6 * static_cast<double>(k) / static_cast<double>(joints)));
    for (auto& lead : body.lead) {
        lead.x_m *= scale;
        lead.mass_kg *= scale * scale * scale * b.number(0.0, 2.0);
    }
    for (auto& hook : body.hooks) {
        hook.x_m *= scale;
        hook.mass_kg *= scale;
        hook.drag_m2 *= b.number(0.0, 3.0);
    }
    for (auto& fin : body.fins) {
        fin.from_m *= scale;
        fin.to_m *= scale;
        fin.height_from_m *= scale;
        fin.height_to_m *= scale * b.number(0.3, 2.0);
    }
    return body;
}

void must_stay_finite(const swim::Chain& chain, const swim::Tow& tow, swim::Start start, int draw) {
    const swim::Motion motion(chain, swim::closures_of(draw, chain.soft_tail), tow);
    swim::State state = swim::start_state(chain, start);
    for (int k = 0; k < 2000; ++k)
        motion.advance(state, motion.step_s());
    for (const double x : state)
        fuzz::must(fuzz::finite(x), "the motion stays finite");
    for (std::size_t i = 1; i < chain.segments.size(); ++i)
        fuzz::must(std::abs(state[1 + i] - state[i]) < swim::widest_swing_rad(chain) + 0.2,
                   "joints stay near their stops");
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    fuzz::Bytes bytes(data, size);
    const swim::Chain chain = testing::chain_of(drawn_body(bytes));
    const swim::Tow tow{bytes.number(0.1, 3.0), bytes.number(0.0, 0.02), bytes.number(2.0, 25.0)};
    const auto start = bytes.one_of(swim::Start::one_way);
    must_stay_finite(chain, tow, start, static_cast<int>(bytes.below(swim::all_draws)));
    static_cast<void>(fuzz::must_beat(chain, tow));
    return 0;
}
