#pragma once

// The core's answers about the shown lure in its water: computed only when shown, once for each shown
// revision.

#include "evenfall.hpp"
#include "state/backdrop.hpp"
#include "state/bench.hpp"
#include "state/play_clock.hpp"
#include "state/session.hpp"
#include "state/swim.hpp"
#include "state/ways.hpp"
#include "water.hpp"
#include "workshop.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace evenfall::shell::state {

/// Each answer is nullptr where the session has no evaluation or the core refuses. Pointers are valid until
/// the session shows another lure.
class WaterAnswerCache {
public:
    const fall::SteadyFalls* falls(const Session& session);
    /// From rest to view.fall_depth_m, with a point every 1/30 s.
    const fall::Track* track(const Session& session);
    const fall::Sweep* sweep(const Session& session);
    const afloat::FloatAnswers* afloat(const Session& session);
    /// At the pitch of the main steady fall; without one, at the hang pitch; else level.
    const fall::HingeLoads* hinges(const Session& session);

    /// Number of requests to the core, for tests that nothing is computed twice.
    [[nodiscard]] int asked() const { return asked_; }

private:
    template <class T>
    struct Kept {
        bool known = false;
        std::optional<T> value;
    };
    /// Drops answers of another lure. False where there is nothing to compute.
    bool follow(const Session& session);
    const fall::FallingLure* descent(const Session& session);

    std::optional<unsigned> revision_;
    double track_depth_m_ = 0.0;
    Kept<fall::FallingLure> descent_;
    Kept<fall::SteadyFalls> falls_;
    Kept<fall::Track> track_;
    Kept<fall::Sweep> sweep_;
    Kept<afloat::FloatAnswers> afloat_;
    Kept<fall::HingeLoads> hinges_;
    int asked_ = 0;
};

/// The core's answers about the joints: computed once for each shown lure, and only when shown.
class JointAnswerCache {
public:
    /// nullptr where the core refuses. Valid until the session shows another lure.
    const joints::JointsAnswer* of(const Session& session);

private:
    std::optional<unsigned> revision_;
    std::optional<joints::JointsAnswer> answer_;
};

/// The lure at one moment of a track, interpolated between its points.
struct Pose {
    double time_s = 0.0;
    double depth_m = 0.0;
    double forward_m = 0.0;
    double pitch_rad = 0.0;
    double down_m_s = 0.0;
};
/// Clamped to the track's time; all zero for a track without points.
[[nodiscard]] Pose pose_at(const fall::Track& track, double time_s);
/// Duration of the track [s].
[[nodiscard]] double duration_s(const fall::Track& track);

/// The lure in other woods or metals, once its section was opened.
struct Compared {
    std::optional<unsigned> revision;
    std::optional<std::vector<compare::Option>> options;
};

/// A lure that a panel has worked out.
struct WorkedOut {
    std::string title;
    document::Document document;
};

/// A lure from the shelf, for a batch.
struct KeptRecipe {
    std::string id;
    document::Document document;
};

/// State of the Water step, the Bench log and other panels while they are shown; never saved.
struct PanelState {
    WaterAnswerCache answers;
    PlayClock clock;
    struct {
        SwimAnswerCache answers;
        BeatClock clock;
        int retrieve = 1;         ///< which of the three speeds is drawn
        bool slow_motion = false; ///< at a quarter of the tempo
    } swim;                       ///< Water step: the Swim view
    BenchAnswerCache bench;
    JointAnswerCache joints;
    double bend = 0.0; ///< Joints step: how far the drawn chain is bent, −1 all to port, 1 all to starboard
    ReadingDraft draft;
    resin::MixRequest mix;  ///< Finish step: input for the resin
    glue::GlueRequest glue; ///< Joints step: input for the glue
    materials::Board board; ///< Shape step: the board that is weighed
    stock::Stock stock;     ///< Lead step: the available rod
    struct {
        tail::PourRequest pour;
        std::optional<unsigned> revision;
        std::optional<tail::TailEffect> tail_effect; ///< for the lure of that revision
        int line = 0;                                ///< which of its three lines is listed
        int point = -1;                              ///< its edited point
    } tail;                                          ///< Hardware step: the soft tail with a drawn shape
    Compared woods;
    Compared metals;
    std::string compared; ///< the row of a comparison whose reason is shown
    std::vector<KeptRecipe> recipes;
    Backdrop backdrop; ///< the picture behind the drawing
    struct {
        bool offered = false; ///< an outline is shown as an unfinished change
        double off_m = 0.0;   ///< its largest distance from the picture's outline
        Sentence refusal;     ///< why none was found
    } outline;
    std::optional<std::size_t> drawer_open; ///< the piece of the drawer that is open
    std::map<std::string, double, std::less<>>
        read_off;                    ///< where a finger last read a plot, by the plot's id; SI
    WaySearch ways;                  ///< Lead step
    ReachAnswerCache reach;          ///< Lead step
    int family_open = -1;            ///< Lead step: the member of the family whose row is open
    std::optional<WorkedOut> beside; ///< to be shown beside the lure on the bench, once
    std::optional<WorkedOut> own; ///< to be opened as a lure of its own, once; the title is for the history
    struct {
        std::vector<Sentence> says;
        std::optional<unsigned> revision; ///< of the lure that it is about
    } chosen;                             ///< Shape step: sizes that were chosen anew for another length
};

} // namespace evenfall::shell::state
