#pragma once

// Readings that slipped: typed or read wrongly. They are found by all the others, told, and left out of the
// fit until the builder says that they stand.

#include "base/sentence.hpp"
#include "bench/uncertainty/log_fit.hpp"

namespace evenfall::bench {

inline constexpr double does_not_fit = 3.0; ///< |z-score| from which a reading is told to be odd
/// |z-score| from which it is left out whatever it may be. Below it is left out only where a slip of the hand
/// would make it fit: a wood or a size beyond what was believed must not pass for one.
inline constexpr double far_off = 8.0;

/// One possible mistake: the reading as it would be without it.
struct Mistake {
    document::Reading reading;
    Sentence sentence;
    bool is_slip = false; ///< of the decimal point or the unit
};

/// Mistakes of reading and typing that the number itself could have: the decimal point, ounces for grams,
/// inches for millimetres, two digits changed over. One for each number that comes of it.
[[nodiscard]] std::vector<Mistake> typing_mistakes(const document::Reading& reading);

/// Of a reading against the prediction from u and its covariance; absent where the reading has no solution.
[[nodiscard]] std::optional<double> z_score(Observer& observer, const document::Reading& reading,
                                            const Eigen::VectorXd& u, const Eigen::MatrixXd& covariance);

/// What a fit of the others expects of one lure.
struct Expected {
    Eigen::VectorXd mean;
    Eigen::MatrixXd covariance;

    [[nodiscard]] static Expected of(const LogFit& others, int lure);
};

/// Whether the mistake would make the reading of that lure fit.
[[nodiscard]] bool would_fit(Observer& observer, const Mistake& mistake, const Expected& expected);

/// The reading in the fit that is farthest from what the others predict, by its z-score.
struct WorstFit {
    std::size_t index = 0; ///< into the log
    double z = 0.0;        ///< absolute
};
[[nodiscard]] std::optional<WorstFit> worst_fit(const LogFit& fit);

/// Takes the readings that slipped out of a fit, the worst first, at most four: a wrong reading must not make
/// others look wrong. Their indices into the log.
[[nodiscard]] std::vector<std::size_t> take_out_slips(const Model& model, Observer& observer,
                                                      const Prior& prior, LogFit& fit);

} // namespace evenfall::bench
