#include "base/number_text.hpp"
#include "base/trade.hpp"
#include "bench/uncertainty/standing.hpp"
#include "document/fields.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evenfall::bench {

namespace {

using document::Reading;
using document::ReadingKind;
using units::number_text;
using units::Unit;

constexpr double does_not_fit = 3.0;
constexpr double fits = 2.0;

bool is_weighing(ReadingKind kind) {
    return kind == ReadingKind::dry_weight || kind == ReadingKind::held_under ||
           kind == ReadingKind::hung_in_water;
}

constexpr std::array<const char*, stage_count> stage_words{
    "carved", "drilled", "with its hardware in", "leaded and capped",
    "sealed", "painted", "clear coated",         "dressed"};

/// The reading's main number, to be typed wrong.
double* number_of(Reading& r) {
    if (r.mass_kg) return &*r.mass_kg;
    if (r.time_s) return &*r.time_s;
    if (r.showing_m) return &*r.showing_m;
    if (r.angle_rad) return &*r.angle_rad;
    return nullptr;
}

Unit unit_of(ReadingKind kind) {
    switch (kind) {
    case ReadingKind::tub_fall:
        return Unit::one;
    case ReadingKind::floats_showing:
        return Unit::mm;
    case ReadingKind::hang_angle:
        return Unit::degree;
    default:
        return Unit::gram;
    }
}

std::string shown(const Reading& r, double core) {
    const Unit unit = unit_of(r.kind);
    if (unit == Unit::one) return number_text(core, unit, 2) + " s";
    if (unit == Unit::degree) return number_text(core, unit, 1) + "°";
    return number_text(core, unit, 2) + (unit == Unit::mm ? " mm" : " g");
}

/// One thing that may have gone wrong: the reading as it then ought to have been written.
struct Alternative {
    Reading reading;
    std::string sentence;
};

void add_typing(std::vector<Alternative>& all, const Reading& r) {
    const auto with = [&](double value, const std::string& sentence) {
        Reading other = r;
        *number_of(other) = value;
        // One number, one sentence: 3.00 for 30.00 is a slipped point before it is two digits changed over.
        const auto is_same = [&](Alternative& a) {
            return std::abs(*number_of(a.reading) - value) < 1e-9 * std::abs(value);
        };
        if (std::none_of(all.begin(), all.end(), is_same)) all.push_back({other, sentence});
    };
    Reading copy = r;
    const double* number = number_of(copy);
    if (number == nullptr) return;
    const double value = *number;
    with(value * 10.0, "A slipped decimal point: " + shown(r, value * 10.0) + " would fit.");
    with(value / 10.0, "A slipped decimal point: " + shown(r, value / 10.0) + " would fit.");
    if (is_weighing(r.kind)) {
        const double ounces = value * 1000.0 * units::ounce_kg;
        with(ounces, "Read in ounces and put down as grams: " + shown(r, ounces) + " would fit.");
    }
    // Two neighbouring digits changed over, in hundredths of the trade unit.
    const double per_core = units::from_core(1.0, unit_of(r.kind));
    const long long hundredths = std::llround(std::abs(value) * per_core * 100.0);
    std::string digits = std::to_string(hundredths);
    for (std::size_t i = 0; i + 1 < digits.size(); ++i) {
        if (digits[i] == digits[i + 1]) continue;
        std::string swapped = digits;
        std::swap(swapped[i], swapped[i + 1]);
        const double other = std::copysign(std::stod(swapped) / 100.0 / per_core, value);
        with(other, "Two digits changed over: " + shown(r, other) + " would fit.");
    }
}

void add_places(std::vector<Alternative>& all, const Reading& r, const document::Document& document) {
    if (r.kind != ReadingKind::block) {
        for (int s = 0; s < stage_count; ++s) {
            if (static_cast<Stage>(s) == r.stage) continue;
            Reading other = r;
            other.stage = static_cast<Stage>(s);
            all.push_back({other, std::string("Another stage: it fits the lure ") +
                                      stage_words[static_cast<std::size_t>(s)] + "."});
        }
    }
    if (!is_weighing(r.kind)) return;
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
    if (r.kind != ReadingKind::dry_weight) {
        // A wire or a thread: nobody's weighs more than this.
        constexpr double holder_kg = 0.003;
        if (!r.holder_kg) {
            Reading other = r;
            other.holder_kg = 0.5 * holder_kg;
            other.mass_sigma_kg = std::hypot(own_sigma(r), 0.25 * holder_kg);
            all.push_back({other, "The holder was not taken off."});
        }
    }
}

/// What water in the wrong place would do, told in grams.
void add_water(std::vector<std::string>& told, const Reading& r, const Observation& o, double wood_kg) {
    const double over = o.read - o.value;
    const bool most = std::abs(over) < 0.3 * wood_kg;
    const bool in_water = r.kind == ReadingKind::hung_in_water || r.kind == ReadingKind::just_hangs ||
                          r.kind == ReadingKind::tub_fall;
    const std::string mass = number_text(std::abs(over), Unit::gram, 2) + " g";
    if (r.kind == ReadingKind::dry_weight && over > 0.0 && most)
        told.push_back("Wet wood: " + mass + " of water in it would fit; let it dry and weigh again.");
    if (in_water && over > 0.0 && most) {
        told.push_back(
            "A leak: " + mass +
            " of water in the wood or in a hole would fit; dry it, find the scratch or the open cap.");
    }
    if (in_water && over < 0.0 && most)
        told.push_back("Air: bubbles of " + mass + " lift would fit; wipe it down under water.");
    if (r.kind == ReadingKind::held_under && over < 0.0 && most) {
        told.push_back("Water ran in: a hole or pocket of " + number_text(std::abs(over), Unit::gram, 2) +
                       " cm³ that filled would fit.");
    }
    if (r.kind == ReadingKind::held_under && over > 0.0 && most)
        told.push_back("Air clung to it, or it touched the cup: " + mass + " too much.");
}

/// Off in standard deviations of the prediction from `u` and its covariance.
std::optional<double> off_of(Observer& observer, const Reading& r, const Eigen::VectorXd& u,
                             const Eigen::MatrixXd& covariance) {
    const auto o = observer.observe(r, u);
    if (!o) return std::nullopt;
    return (o->read - o->value) /
           std::sqrt(o->slope.dot(covariance.lazyProduct(o->slope)) + o->sigma * o->sigma);
}

void explain(Standing& s, ReadingVerdict& verdict, const Update& others) {
    const Reading& r = s.model->document().log[verdict.index];
    const Eigen::VectorXd u = others.posterior.mean(document::lure_of(r));
    const Eigen::MatrixXd covariance = others.posterior.covariance(document::lure_of(r));
    std::vector<Alternative> all;
    add_typing(all, r);
    add_places(all, r, s.model->document());
    for (const Alternative& a : all) {
        const auto off = off_of(*s.observer, a.reading, u, covariance);
        if (off && std::abs(*off) < fits) verdict.explanations.push_back(a.sentence);
    }
    if (const auto o = s.observer->observe(r, u)) {
        double wood = 0.0;
        for (const ledger::Line& line : s.model->evaluation().ledger)
            wood += line.kind == ledger::Kind::wood ? line.mass_kg : 0.0;
        add_water(verdict.explanations, r, *o, wood);
    }
}

/// Of a reading that is believed but says nothing of this lure.
std::string silent_sentence(const ReadingVerdict& v, ReadingKind kind) {
    const std::string reading = "Reading " + std::to_string(v.index + 1) + " says nothing of this lure: ";
    switch (kind) {
    case ReadingKind::tub_fall:
        return reading + "with no weight does it fall so far in that time.";
    case ReadingKind::floats_showing:
        return reading + "with no weight does it float upright and show so much.";
    case ReadingKind::hang_angle:
        return reading + "it hangs at no angle of its own.";
    case ReadingKind::block:
        return reading + "nothing is open about its wood.";
    default:
        return reading + "it does not fit what is built.";
    }
}

} // namespace

std::vector<ReadingVerdict> verdicts(Standing& s) {
    const auto& log = s.model->document().log;
    std::vector<ReadingVerdict> all(log.size());
    for (std::size_t i = 0; i < log.size(); ++i) {
        all[i].index = i;
        all[i].used = false;
        all[i].read = main_number(log[i]);
        all[i].sigma = own_sigma(log[i]);
    }
    // The worst first: what one wrong reading does to the others is not theirs to answer for.
    std::vector<std::size_t> wrong;
    std::optional<Update> again;
    constexpr std::size_t most_wrong = 4;
    while (true) {
        const Update& now = again ? *again : s.update;
        if (now.used.empty()) break;
        const Eigen::VectorXd off = now.posterior.left_out_off();
        const Eigen::VectorXd sigma = now.posterior.left_out_sigma();
        std::optional<std::size_t> worst;
        for (std::size_t k = 0; k < now.used.size(); ++k) {
            const auto row = static_cast<Eigen::Index>(k);
            ReadingVerdict& v = all[now.used[k]];
            v.used = true;
            v.off = off(row) / sigma(row);
            const bool worse = std::abs(v.off) > does_not_fit &&
                               (!worst || std::abs(v.off) > std::abs(all[now.used[*worst]].off));
            if (worse) worst = k;
        }
        if (!worst || wrong.size() == most_wrong) break;
        wrong.push_back(now.used[*worst]);
        ReadingVerdict& v = all[wrong.back()];
        v.warning = "Reading " + std::to_string(v.index + 1) + " does not fit the others: off by " +
                    number_text(std::abs(v.off), Unit::one, 1) + " times what scale and wood allow.";
        again = update(*s.model, *s.observer, s.prior, wrong, &s.update);
        explain(s, v, *again);
    }
    std::size_t silent = 0;
    for (ReadingVerdict& v : all) {
        const document::Reading& r = log[v.index];
        if (r.struck || s.update.lines[v.index]) continue;
        v.warning = silent_sentence(v, r.kind);
        if (silent++ < most_wrong) explain(s, v, s.update);
    }
    // What each should have read, from the others: one step of the linear posterior.
    const Update& all_in = s.update;
    if (all_in.used.empty()) return all;
    const Eigen::VectorXd off = all_in.posterior.left_out_off();
    const Eigen::VectorXd sigma = all_in.posterior.left_out_sigma();
    for (std::size_t k = 0; k < all_in.used.size(); ++k) {
        const auto row = static_cast<Eigen::Index>(k);
        const Observation& o = all_in.observed[k];
        ReadingVerdict& v = all[all_in.used[k]];
        // Readings taken as in-water mass go back into their own number by the ratio of the two spreads.
        const double own = o.sigma > 0.0 ? v.sigma / o.sigma : 1.0;
        const Reading& r = log[v.index];
        const bool light_clip =
            r.kind == ReadingKind::just_hangs && clip_share(r, s.observer->tub(r).density_kg_m3) < 0.0;
        const bool falls_with_mass = r.kind == ReadingKind::tub_fall ||
                                     r.kind == ReadingKind::floats_showing ||
                                     (r.kind == ReadingKind::just_hangs && !light_clip);
        v.expected = v.read - (falls_with_mass ? -own : own) * off(row);
        v.expected_sigma = own * sigma(row);
    }
    return all;
}

} // namespace evenfall::bench
