#pragma once

// How sure the answers are, what the bench's readings make of them, and what to do now.
//
// Every uncertain input is one number u with mean 0 and standard deviation 1 before any reading: a cause and
// group of the ledger's spreads multiplies its lines by 1 + relative·u (kept at 0.05 or more), the drag of
// the fall model by exp(relative·u). Relative spreads of 20 % and less leave that floor 4.75 standard
// deviations away; a wider one is cut there, not folded back. A reading is a function of these numbers
// through the ledger, with an error of its own. The readings together move the most likely inputs
// (Gauss-Newton to convergence; exact in one step where a reading is linear) and narrow their covariance
// (Laplace's approximation). Where one recipe has several lures, each input has a part all of them share and
// a part of its own.

#include "base/outcome.hpp"
#include "bench/lead/lead_plan.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace evenfall {

/// A value with its standard deviation now, and before any reading. All first order.
struct Estimate {
    double value = 0.0;
    double sigma = 0.0;
    double sigma_before = 0.0;
};

/// Between what bounds a figure lies with a stated chance.
struct Interval {
    double low = 0.0;
    double high = 0.0;
};

/// What is known of one uncertain input.
struct Belief {
    document::Cause cause = document::Cause::none;
    int group = 0;       ///< as in ledger/line.hpp
    std::string name;    ///< "wood density", "coat 2 (Clear coat)"
    double factor = 1.0; ///< on what the document says
    double spread = 0.0; ///< relative standard deviation now
    double spread_before = 0.0;
};

/// What scale and tub should read after a stage, tub water.
struct StageBelief {
    Stage stage = Stage::carved;
    Estimate mass_kg;
    Estimate displaced_kg; ///< of tub water: what a scale gains when the piece is held under
    Estimate in_tub_kg;
    std::optional<Estimate>
        tub_fall_m_s; ///< absent where it does not sink, or finds no steady way of falling
};

/// How one reading sits with all the others.
struct ReadingVerdict {
    std::size_t index = 0;       ///< into document.log
    bool used = true;            ///< false: struck out, or it says nothing of this lure
    double read = 0.0;           ///< SI, holder taken off: kg, s, m or rad; kg/m³ for a block
    double sigma = 0.0;          ///< of the reading itself
    double expected = 0.0;       ///< from the other readings of this lure and recipe alone
    double expected_sigma = 0.0; ///< of that, the reading's own included
    double off = 0.0;            ///< (read − expected)/expected_sigma
    std::string warning; ///< a sentence where |off| > 3 or where it says nothing of this lure, else empty
    std::vector<std::string> explanations; ///< what would make it fit, likeliest first
};

/// Chances (0 to 1) for the finished lure, first order with the curvature of the fall kept.
struct Chances {
    double fall = 0.0;  ///< within the asked band of fall (or of weight in water, see `weight_band_kg`)
    double pitch = 0.0; ///< hangs within the asked band of pitch
    double both = 0.0;
};

/// A reading one might take next, while the lead can still be put right before the finish. The finished
/// lure's own readings are listed only once it is clear coated.
struct NextReading {
    document::ReadingKind kind = document::ReadingKind::dry_weight;
    bool with_dry_weight =
        false; ///< together with a dry weight of the same stage, which the log does not have
    Stage stage = Stage::carved;
    double sigma = 0.0;             ///< SI, of the reading, as supposed
    double in_water_sigma_kg = 0.0; ///< of the finished lure, after it
    double chance = 0.0;            ///< of a right first fall and hang, when the lead is then put right
    double gain = 0.0;              ///< over putting the lead right without it
};

/// Wood kept for a late correction.
struct TrimHole {
    bool needed = false;
    double reserve_kg =
        0.0; ///< two standard deviations of in-water mass that lead may still have to make good, either way
    double room_up_kg = 0.0;   ///< that the holes there are can still take
    double room_down_kg = 0.0; ///< that can be drilled out of them
    double x_m = 0.0; ///< where a hole moves the pitch least; where one is advised, the nearest to there with
                      ///< wood for it
    double diameter_m = 0.0;
    double depth_m = 0.0;
    std::string sentence;
};

struct Uncertainty {
    int lure = 0;                ///< which lure, from 0: the latest with a reading
    Stage stage = Stage::carved; ///< the farthest that lure has a reading of
    bool has_readings = false;
    std::vector<Belief> inputs;
    Estimate mass_kg;     ///< finished
    Estimate in_water_kg; ///< fishing water
    Estimate pitch_rad;   ///< hang; all NaN where G is not below B
    Estimate bg_m;
    Vec3 g_sigma_m, b_sigma_m;
    std::optional<Estimate> fall_m_s; ///< absent where it does not sink, or finds no steady way of falling
    /// The fall with the root's curvature kept; 0 stands for “does not sink”. A weight's middle 50, 80 and 95
    /// %.
    std::array<Interval, 3> fall_50_80_95_m_s;
    std::array<StageBelief, stage_count> stages;
    Chances as_it_stands;
    Chances put_right;              ///< after the lead is changed so that the expected lure is just as asked
    double asked_in_water_kg = 0.0; ///< that gives the asked fall, with what is now believed of drag
    double weight_band_kg = 0.0; ///< half width of the band on in-water mass: from the band of fall; where a
                                 ///< weight is asked, that share of it, at least 0.2 % of the displaced water
                                 ///< (own choice: what a strip of trim wire puts right)
    std::vector<ReadingVerdict> readings;
    std::vector<NextReading> next; ///< best first
    TrimHole trim;
};

/// All of the above, from the document and its log. Refuses what evaluate() refuses.
[[nodiscard]] Outcome<Uncertainty> uncertainty(const document::Document& document);

/// The document with what the log taught as `corrections`, and without its log: evaluate() and plan_lead()
/// then answer for the very piece of wood on the bench. The spreads are those that are left, taken as
/// independent.
[[nodiscard]] Outcome<document::Document> corrected(const document::Document& document);

/// The document for the next lure from the same recipe: this board's wood, this builder's coats. Each input's
/// shared part is learnt from all lures; how far lures lie apart by expectation-maximisation, four lures'
/// worth of weight on the spread the document starts with (uncertainty/recipe.cpp). The log is left out.
[[nodiscard]] Outcome<document::Document> for_next_lure(const document::Document& document);

/// One change at a hole.
struct HoleChange {
    int hole = 0;
    double change_kg = 0.0; ///< of fill; negative is drilled out
    std::string material;
    double diameter_m = 0.0; ///< bit
    double depth_m =
        0.0; ///< from the skin: where the bit stops; 0 where fill is laid into a hole as deep as it is
    double column_m = 0.0; ///< of fill taken out or put in
};

/// The exact change that makes the finished lure right, with everything still to come, and what to read after
/// it.
struct DoNow {
    Stage stage = Stage::carved; ///< at which the change is made and the tub is asked: leaded, if the lure is
                                 ///< not so far
    bool met = false;            ///< asked weight (fall) reached, and pitch within a third of its band
    bool nothing_to_do = false;  ///< the lure is within a third of both bands as it is
    std::vector<HoleChange> changes;
    double change_kg = 0.0;    ///< all together
    document::Document document; ///< corrected, changed; evaluates to `after`
    Answers after;
    double tub_in_water_kg =
        0.0; ///< the scale below which it hangs in tub water, at this stage, after the change
    std::optional<double> tub_fall_m_s;     ///< steady
    std::optional<double> tub_half_metre_s; ///< from rest over 0.5 m
    Problems shortfalls;
    std::vector<std::string> steps; ///< sentences for the bench
};
/// For the stage the lure is at by its log, or as given. Before the lead is in: the lead plan. Afterwards: as
/// few holes as will do, lead drilled out through the cap or laid on what is there, every void capped dry
/// again.
[[nodiscard]] Outcome<DoNow> do_now(const document::Document& document, std::optional<Stage> at = std::nullopt);

/// A steady fall seen in the tub at a stage, within 2 % → the fall of the finished lure in its own water,
/// with the coats and parts still to come as the document and its log have them: what that reading would make
/// of it. Absent where it would not sink; refused where it is so far from the log that no lure does both.
///   tub_m_s   0.005 to 5
[[nodiscard]] Outcome<std::optional<Estimate>> finished_fall_for_tub(const document::Document& document,
                                                                     Stage stage, double tub_m_s);

/// Seconds from rest over a depth for a lure that settles to `speed`: (ℓ/v)·acosh(exp(depth/ℓ)), ℓ the length
/// over which it gathers way.
[[nodiscard]] double time_from_rest_s(double depth_m, double speed_m_s, double gathering_m);

/// Quantiles of one figure over draws.
struct Spread5 {
    double low_95 = 0.0, low_50 = 0.0, middle = 0.0, high_50 = 0.0, high_95 = 0.0;
    double mean = 0.0, sigma = 0.0;
};
struct Draws {
    std::size_t count = 0;
    double floats = 0.0; ///< share that does not sink
    double rolls = 0.0;  ///< share with G not below B
    Chances chances;
    Spread5 mass_kg, in_water_kg, pitch_rad;
    Spread5 fall_m_s; ///< of those that sink
};

/// Draws lures by chance, each a whole one through ledger, hang and fall. Draw n of a seed is the same
/// whatever was drawn before, in however many portions. Generator: uncertainty/random.hpp.
class DrawRun {
public:
    [[nodiscard]] static Outcome<DrawRun> start(const document::Document& document, std::uint64_t seed = 1);
    void run(std::size_t more); ///< some 5 µs each on a desk machine
    [[nodiscard]] std::size_t count() const;
    [[nodiscard]] Draws result() const; ///< of those drawn so far

    DrawRun(DrawRun&&) noexcept;
    DrawRun& operator=(DrawRun&&) noexcept;
    ~DrawRun();

private:
    struct State;
    explicit DrawRun(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};
[[nodiscard]] Outcome<Draws> uncertainty_by_draws(const document::Document& document, std::size_t count = 10'000,
                                             std::uint64_t seed = 1);

} // namespace evenfall
