#pragma once

// The uncertainty of the answers, how the bench's readings reduce it, and what to do now.
//
// Every uncertain input is one number u with mean 0 and standard deviation 1 before any reading. The input of
// a cause and group of the ledger's spreads has the factor 1 + relative·u (0.05 at least), which each of its
// lines follows by its own share (ledger/line.hpp); drag multiplies the drag of the fall model by
// exp(relative·u). With a relative spread of 20 % or less the floor of 0.05 lies 4.75 standard deviations
// away; a wider distribution is cut off there. A reading is a function of the inputs through the ledger plus
// a random error. All readings together give the posterior: its mean by Gauss-Newton (one exact step where
// every reading is linear), its covariance by Laplace's approximation. Where several lures are made from one
// recipe, each input has a part shared by all of them and a part for each lure.

#include "answers/answers.hpp"
#include "base/outcome.hpp"
#include "bench/lead/lead_plan.hpp"
#include "bench/uncertainty/hole_step.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace evenfall {

/// A value with its standard deviation now, and before any reading. Both first order.
struct Estimate {
    double value = 0.0;
    double sigma = 0.0;
    double sigma_before = 0.0;
};

/// The bounds between which a figure lies with a stated probability.
struct Interval {
    double low = 0.0;
    double high = 0.0;
};

/// The posterior of one uncertain input.
struct InputEstimate {
    document::Cause cause = document::Cause::none;
    int group = 0;       ///< as in ledger/line.hpp
    std::string name;    ///< "wood density", "coat 2 (Clear coat)"
    double factor = 1.0; ///< most likely value over the document's value
    double spread = 0.0; ///< relative standard deviation now
    double spread_before = 0.0;
};

/// What the scale and the tub should read after a stage, in tub water.
struct StagePrediction {
    Stage stage = Stage::carved;
    Estimate mass_kg;
    Estimate displaced_kg; ///< of tub water: what a scale gains when the piece is held under
    Estimate in_tub_kg;
    std::optional<Estimate> tub_fall_m_s; ///< absent where it does not sink or has no steady fall
};

/// How well one reading agrees with all the others.
struct ReadingFit {
    std::size_t index = 0;        ///< into document.log
    bool used = true;             ///< false: excluded, left out, or it carries no information on this lure
    bool left_out = false;        ///< it slipped: left out of every figure until it is told to stand
    double read = 0.0;            ///< SI, holder subtracted: kg, s, m or rad; kg/m³ for a board
    double sigma = 0.0;           ///< standard deviation of the reading itself
    double predicted = 0.0;       ///< from all other readings, without this one
    double predicted_sigma = 0.0; ///< of `read − predicted`
    double z_score = 0.0;         ///< standardised residual: (read − predicted)/predicted_sigma
    Sentence warning;             ///< a sentence where |z_score| > 3 or where it is not used, else empty
    std::vector<Sentence> explanations; ///< mistakes that would explain it, likeliest first
};

/// Whether the whole log agrees with the spreads believed before it: the sum of squares of readings and
/// inputs at the best fit, which over lures drawn from those spreads is chi-square with as many degrees of
/// freedom as readings.
struct Agreement {
    int readings = 0; ///< that are used
    double chi_square = 0.0;
    double chance = 1.0; ///< that a log lies so far off or farther
    Sentence warning;    ///< a sentence where that is below `disagrees`, else empty
};
inline constexpr double disagrees = 0.01;
/// The chance that chi-square with so many degrees of freedom (1 to 200) is larger; 1 where there are none.
[[nodiscard]] double chi_square_above(double chi_square, int readings);

/// Probabilities (0 to 1) for the finished lure. First order in the inputs, except that speed against weight
/// and drag is not linearised.
struct Chances {
    double fall = 0.0;  ///< within the target's band of fall (or of weight in water, see `weight_band_kg`)
    double pitch = 0.0; ///< hangs within the target's band of pitch
    double both = 0.0;
};

/// What the finished lure does that is let go under water, its weight and drag as uncertain as they are.
struct UnderWater {
    Interval speed_m_s; ///< down positive: two in three such lures lie between
    double rises = 0.0; ///< chance (0 to 1) that it rises faster than still_m_s
    double hangs = 0.0; ///< that it does neither
    double sinks = 0.0; ///< that it sinks faster than that
};

/// A reading one might take next, with which the lead could still be corrected before the finish. Readings of
/// the finished lure are listed only once it is clear coated.
struct NextReading {
    document::ReadingKind kind = document::ReadingKind::dry_weight;
    bool with_dry_weight = false; ///< together with the dry weight of the same stage, missing in the log
    bool with_all = false;        ///< with all hung on that the rigged lure has (Reading::with)
    bool each_segment = false;    ///< every segment alone, one after another
    Stage stage = Stage::carved;
    double sigma = 0.0;             ///< SI, assumed standard deviation of the reading
    double in_water_sigma_kg = 0.0; ///< of the finished lure, after this reading
    double chance = 0.0;            ///< that fall and hang are right when the lead is then corrected
    double gain = 0.0;              ///< of that chance over correcting the lead without this reading
};

/// A hole whose wood is kept free for a late correction.
struct TrimHole {
    bool needed = false;
    double reserve_kg = 0.0;   ///< two standard deviations of the in-water mass still to be corrected, ±
    double room_up_kg = 0.0;   ///< lead that the present holes can still take
    double room_down_kg = 0.0; ///< lead that can be drilled out of them
    double x_m = 0.0; ///< where a hole changes the pitch least; if a hole is advised, the nearest place to
                      ///< that with wood for it
    double diameter_m = 0.0;
    double depth_m = 0.0;
    Sentence sentence;
};

struct Uncertainty {
    int lure = 0;                ///< which lure, from 0: the latest with a reading
    Stage stage = Stage::carved; ///< the latest stage of which that lure has a reading
    bool has_readings = false;
    /// Of this very lure: the corrected() document's, with the standard deviations of mass, in-water mass and
    /// fall (as its band) from the posterior. The document's own where there are no readings.
    Evaluation evaluation;
    std::vector<InputEstimate> inputs;
    Estimate mass_kg;     ///< finished
    Estimate in_water_kg; ///< fishing water
    Estimate pitch_rad;   ///< hang under water; all NaN where G is not below B
    Estimate bg_m;
    Vec3 g_sigma_m, b_sigma_m;
    std::optional<Estimate> fall_m_s; ///< absent where it does not sink or has no steady fall
    /// Central 50, 80 and 95 % intervals of the fall, speed against weight not linearised; 0 means that it
    /// does not sink.
    std::array<Interval, 3> fall_50_80_95_m_s;
    UnderWater under_water;
    std::array<StagePrediction, stage_count> stages;
    /// The same with all hung on that the rigged lure has, from leaded to clear coated: the test in the tub.
    /// Empty where nothing is dressed on.
    std::vector<StagePrediction> stages_with_all;
    Chances chances_now;             ///< with the lead as it is
    Chances chances_corrected;       ///< with the lead changed so that the expected lure meets its targets,
                                     ///< whether or not it can be (DoNow::chances)
    double target_in_water_kg = 0.0; ///< that gives the target's fall with the posterior mean of drag
    double weight_band_kg = 0.0; ///< half width of the band of in-water mass: from the band of fall; where a
                                 ///< weight is the target, that share of it, at least 0.2 % of the displaced
                                 ///< water (own choice: what a strip of trim wire corrects)
    std::vector<ReadingFit> readings;
    Agreement agreement;
    std::vector<NextReading> next; ///< best first
    TrimHole trim;
};

/// All of the above, from the document and its log. Refuses what evaluate() refuses. `before`: as of
/// evaluate().
[[nodiscard]] Outcome<Uncertainty> uncertainty(const document::Document& document,
                                               const Kept* before = nullptr);

/// The document with the posterior of its log as `corrections` and without the log: evaluate() and
/// plan_lead() then answer for this very piece of wood. The spreads are the posterior's, taken as
/// independent.
[[nodiscard]] Outcome<document::Document> corrected(const document::Document& document);

/// The document for the next lure from the same recipe: this board's wood, this builder's coats. The shared
/// part of each input is estimated from all lures; the variance between lures by expectation-maximisation,
/// with the document's own spread weighted as four lures (next_lure.cpp). The log is left out.
[[nodiscard]] Outcome<document::Document> for_next_lure(const document::Document& document);

/// A change to one hole.
struct HoleChange {
    int hole = 0;
    double change_kg = 0.0; ///< of fill; negative: drilled out
    std::string material;
    double diameter_m = 0.0; ///< of the bit
    double depth_m = 0.0;    ///< from the skin: of the hole; lead taken out: to where the bit stops
    double column_m = 0.0;   ///< length of the fill taken out or put in
    bool is_new = false;     ///< the document has no such hole yet
};

/// What the tub should show of a lure.
struct TubTest {
    Stage stage = Stage::carved;
    double in_water_kg = 0.0; ///< hung below a scale
    Behaviour behaviour = Behaviour::floats;
    std::optional<double> fall_m_s;     ///< steady; where it falls
    std::optional<double> half_metre_s; ///< from rest over 0.5 m
};

/// The change of lead with which the finished lure meets its targets, everything still to come counted in,
/// and the readings to expect after it.
struct DoNow {
    Stage stage = Stage::carved; ///< of the change and of the tub readings below; leaded at least
    bool met = false;            ///< weight (fall) reached, and pitch within a third of its band
    Chances chances; ///< once it is done: right in the middle where met, else of the nearest that can be
    bool nothing_to_do = false;  ///< the lure is within a third of both bands as it is
    bool lead_is_in = false;     ///< lead that lies in the holes is changed; else this is the lead plan
    std::vector<HoleStep> holes; ///< what is to be done, hole by hole
    std::vector<HoleChange> changes;
    double change_kg = 0.0;      ///< sum of all
    document::Document document; ///< corrected, changed; evaluates to `after`
    Answers after;
    TubTest tub; ///< in tub water, at this stage, after the change
    /// With all hung on that the rigged lure has: the test that carvers do, sealed at least. Absent where
    /// there is nothing to hang on.
    std::optional<TubTest> with_all;
    Problems shortfalls;
    std::vector<Sentence> steps; ///< for the bench: cautions, and what the tub should read
};
/// For the stage given, or the latest that the log has a reading of or that all holes are marked with. Before
/// the lead is in: the lead plan for the piece as it lies there, where holes that are drilled get no
/// shallower, and deeper only where their fill alone will not do. Afterwards: as few holes as possible, lead
/// drilled out through the cap or added on top, every void capped dry again.
[[nodiscard]] Outcome<DoNow> do_now(const document::Document& document,
                                    std::optional<Stage> at = std::nullopt);

/// The document with the advice followed, in one hole or in all of them. Where the lead was in, the changed
/// holes are marked leaded. Log and corrections stay; readings of the drilled piece and later ones are kept
/// as readings of the holes as they were.
[[nodiscard]] document::Document with_advice(document::Document document, const DoNow& now,
                                             std::optional<int> hole = std::nullopt);

/// The fall of the finished lure in its own water if a steady fall (± 2 %) were read in the tub at this
/// stage, with the coats and parts still to come as the document and its log have them. Absent where it would
/// not sink; refused where no lure could agree with both this fall and the log.
///   tub_m_s   0.005 to 5
///   with_all  with all hung on that the rigged lure has
[[nodiscard]] Outcome<std::optional<Estimate>>
finished_fall_for_tub(const document::Document& document, Stage stage, double tub_m_s, bool with_all = false);

/// Seconds that a lure takes from rest over a depth: (ℓ/v)·acosh(exp(depth/ℓ)), v its terminal speed, ℓ its
/// acceleration length (mass and added mass over drag per speed squared).
[[nodiscard]] double time_from_rest_s(double depth_m, double speed_m_s, double acceleration_length_m);

/// Quantiles and moments of one figure over the draws.
struct Quantiles {
    double low_95 = 0.0, low_50 = 0.0, median = 0.0, high_50 = 0.0, high_95 = 0.0;
    double mean = 0.0, sigma = 0.0;
};
struct Draws {
    std::size_t count = 0;
    double floats = 0.0; ///< fraction that does not sink
    double rolls = 0.0;  ///< fraction with G not below B
    Chances chances;
    Quantiles mass_kg, in_water_kg, pitch_rad;
    Quantiles fall_m_s; ///< of those that sink
};

/// Monte Carlo draws from the posterior, each a whole lure through ledger, hang and fall. Draw n of a seed is
/// the same in however many portions they are drawn. Generator: random.hpp.
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
[[nodiscard]] Outcome<Draws> uncertainty_by_draws(const document::Document& document,
                                                  std::size_t count = 10'000, std::uint64_t seed = 1);

} // namespace evenfall
