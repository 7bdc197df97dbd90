#include "base/number_text.hpp"
#include "base/trade.hpp"
#include "bench/uncertainty/posterior.hpp"
#include "document/fields.hpp"
#include "ledger/hung_on.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evenfall::bench {

namespace {

using document::Reading;
using document::ReadingKind;
using units::number_text;
using units::Unit;

constexpr std::size_t most_explained = 4;

void add_places(std::vector<Mistake>& all, const Reading& r, const document::Document& document) {
    if (r.kind != ReadingKind::board) {
        for (int s = 0; s < stage_count; ++s) {
            if (static_cast<Stage>(s) == r.stage) continue;
            Reading other = r;
            other.stage = static_cast<Stage>(s);
            all.push_back({other, "Another stage: it fits " + stage_name(other.stage) + "."});
        }
    }
    if (r.stage >= Stage::leaded && r.stage < Stage::rigged && !r.segment) {
        Reading other = r;
        other.with = r.with.empty() ? document::all_hung_on() : document::HungList{};
        all.push_back({other, r.with.empty() ? Sentence("It fits the lure with " +
                                                        ledger::rigging_words(document) + " on.")
                                             : Sentence("It fits the lure with nothing hung on.")});
    }
    if (!document::is_weighing(r.kind)) return;
    const auto segments = static_cast<int>(document.segment_names.size());
    for (int s = -1; s < segments && segments > 1; ++s) {
        if (s == r.segment.value_or(-1)) continue;
        Reading other = r;
        other.segment.reset();
        if (s >= 0) other.segment = s;
        all.push_back({other, s < 0 ? std::string("All segments together: it fits the whole lure.")
                                    : "One segment alone: it fits “" +
                                          document.segment_names[static_cast<std::size_t>(s)] + "”."});
    }
    if (r.kind != ReadingKind::dry_weight && !r.holder_kg) {
        constexpr double heaviest_holder_kg = 0.003; // a wire or a thread
        Reading other = r;
        other.holder_kg = 0.5 * heaviest_holder_kg;
        other.mass_sigma_kg = std::hypot(own_sigma(r), 0.25 * heaviest_holder_kg);
        all.push_back({other, "The holder was not taken off."});
    }
}

/// Water or air in the wrong place, in grams.
void add_water(std::vector<Sentence>& explanations, const Reading& r, const Observation& o, double wood_kg) {
    const double over = o.read - o.predicted;
    const bool most = std::abs(over) < 0.3 * wood_kg;
    const bool in_water = r.kind == ReadingKind::hung_in_water || r.kind == ReadingKind::suspends ||
                          r.kind == ReadingKind::tub_fall;
    const Sentence mass = mass_text(std::abs(over));
    if (r.kind == ReadingKind::dry_weight && over > 0.0 && most)
        explanations.push_back("Wet wood: " + mass +
                               " of water in it would fit; let it dry and weigh again.");
    if (in_water && over > 0.0 && most) {
        explanations.push_back(
            "A leak: " + mass +
            " of water in the wood or in a hole would fit; dry it, find the scratch or the open cap.");
    }
    if (in_water && over < 0.0 && most)
        explanations.push_back("Air: bubbles of " + mass + " lift would fit; wipe it down under water.");
    if (r.kind == ReadingKind::held_under && over < 0.0 && most) {
        explanations.push_back("Water ran in: a hole or pocket of " +
                               number_text(std::abs(over), Unit::gram, 2) + " cm³ that filled would fit.");
    }
    if (r.kind == ReadingKind::held_under && over > 0.0 && most)
        explanations.push_back("Air clung to it, or it touched the cup: " + mass + " too much.");
}

/// Adds the mistakes that would make the reading agree with the fit of the others.
void explain(Posterior& p, ReadingFit& reading_fit, const LogFit& others) {
    const Reading& r = p.model->document().log[reading_fit.index];
    std::vector<Mistake> all = typing_mistakes(r);
    add_places(all, r, p.model->document());
    const Expected expected = Expected::of(others, document::lure_of(r));
    for (const Mistake& mistake : all) {
        if (would_fit(*p.observer, mistake, expected)) reading_fit.explanations.push_back(mistake.sentence);
    }
    if (const auto o = p.observer->observe(r, expected.mean)) {
        const ledger::Sum wood = ledger::sum_of(p.model->evaluation().ledger, ledger::Kind::wood);
        add_water(reading_fit.explanations, r, *o, wood.mass.kg);
    }
}

void set_z_scores(std::vector<ReadingFit>& all, const LogFit& fit) {
    if (fit.used.empty()) return;
    const Eigen::VectorXd residual = fit.posterior.leave_one_out_residual();
    const Eigen::VectorXd sigma = fit.posterior.leave_one_out_sigma();
    for (std::size_t k = 0; k < fit.used.size(); ++k) {
        const auto row = static_cast<Eigen::Index>(k);
        ReadingFit& v = all[fit.used[k]];
        v.used = true;
        v.z_score = residual(row) / sigma(row);
    }
}

std::string off_text(const ReadingFit& v) {
    return "off by " + number_text(std::abs(v.z_score), Unit::one, 1) + " times what scale and wood allow";
}

/// Tells the readings that slipped, against the fit of all others.
void tell_slips(Posterior& p, std::vector<ReadingFit>& all) {
    for (const std::size_t i : p.left_out) {
        ReadingFit& v = all[i];
        const Reading& r = p.model->document().log[i];
        const int lure = document::lure_of(r);
        v.left_out = true;
        if (const auto o = p.observer->observe(r, p.fit.posterior.mean(lure))) {
            const Eigen::MatrixXd covariance = p.fit.posterior.covariance(lure);
            const double own = o->sigma > 0.0 ? v.sigma / o->sigma : 1.0;
            const double sigma =
                std::sqrt(o->slope.dot(covariance.lazyProduct(o->slope)) + o->sigma * o->sigma);
            v.predicted = v.read - (o->reversed ? -own : own) * (o->read - o->predicted);
            v.predicted_sigma = own * sigma;
            v.z_score = (o->read - o->predicted) / sigma;
        }
        v.warning = "Reading " + std::to_string(i + 1) + " is left out: " + off_text(v) +
                    ". Correct it, or say that it stands.";
        explain(p, v, p.fit);
    }
}

/// Finds the other readings that do not fit, the worst first, each time fitting the log again without those
/// found: a wrong reading must not make others look wrong.
void find_outliers(Posterior& p, std::vector<ReadingFit>& all) {
    std::vector<std::size_t> outliers = p.left_out;
    std::optional<LogFit> without_them;
    while (true) {
        const LogFit& fit = without_them ? *without_them : p.fit;
        set_z_scores(all, fit);
        const auto worst = worst_fit(fit);
        if (!worst || worst->z <= does_not_fit || outliers.size() >= most_explained) return;
        outliers.push_back(worst->index);
        ReadingFit& v = all[worst->index];
        without_them = fit_log(*p.model, *p.observer, p.prior, outliers, &p.fit);
        if (p.model->document().log[v.index].stands) continue; // the builder knows
        v.warning =
            "Reading " + std::to_string(v.index + 1) + " does not fit the others: " + off_text(v) + ".";
        explain(p, v, *without_them);
    }
}

/// Warns of readings that are not excluded and yet not in the fit.
void find_unused(Posterior& p, std::vector<ReadingFit>& all) {
    std::size_t unused = 0;
    for (ReadingFit& v : all) {
        const Reading& r = p.model->document().log[v.index];
        if (r.excluded || v.left_out || p.fit.lines[v.index] || document::is_of_swim(r.kind)) continue;
        v.warning = "Reading " + std::to_string(v.index + 1) +
                    " says nothing of this lure: " + method_of(r.kind).unused;
        if (unused++ < most_explained) explain(p, v, p.fit);
    }
}

/// What each reading should have been, from all others: one step of the linear posterior.
void set_predictions(const LogFit& fit, std::vector<ReadingFit>& all) {
    if (fit.used.empty()) return;
    const Eigen::VectorXd residual = fit.posterior.leave_one_out_residual();
    const Eigen::VectorXd sigma = fit.posterior.leave_one_out_sigma();
    for (std::size_t k = 0; k < fit.used.size(); ++k) {
        const auto row = static_cast<Eigen::Index>(k);
        const Observation& o = fit.observed[k];
        ReadingFit& v = all[fit.used[k]];
        // An in-water mass is converted back to the reading's own number by the ratio of the two sigmas.
        const double own = o.sigma > 0.0 ? v.sigma / o.sigma : 1.0;
        v.predicted = v.read - (o.reversed ? -own : own) * residual(row);
        v.predicted_sigma = own * sigma(row);
    }
}

} // namespace

std::vector<ReadingFit> reading_fits(Posterior& p) {
    const auto& log = p.model->document().log;
    std::vector<ReadingFit> all(log.size());
    for (std::size_t i = 0; i < log.size(); ++i) {
        all[i].index = i;
        all[i].used = false;
        all[i].read = main_number(log[i]);
        all[i].sigma = own_sigma(log[i]);
    }
    tell_slips(p, all);
    find_outliers(p, all);
    find_unused(p, all);
    set_predictions(p.fit, all);
    return all;
}

} // namespace evenfall::bench
