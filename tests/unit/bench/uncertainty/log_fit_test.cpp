// The linear-Gaussian step against closed forms.

#include "bench/uncertainty/log_fit.hpp"

#include <Eigen/Dense>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

bench::Prior all_own(Eigen::Index count) {
    return {Eigen::VectorXd::Zero(count), Eigen::VectorXd::Ones(count)};
}

bench::LinearReadings one_lure(const Eigen::MatrixXd& slope, const Eigen::VectorXd& read,
                               const Eigen::VectorXd& sigma) {
    return {std::vector<int>(static_cast<std::size_t>(read.size()), 0), slope, read, sigma};
}

} // namespace

TEST_CASE("One input read once: the posterior is the precision-weighted mean (closed form)") {
    // Prior N(0, 1), read 0.7 with slope 2 and sigma 0.5: precision 1 + 4/0.25 = 17, mean 2·0.7/0.25/17.
    const bench::LinearPosterior p(all_own(1), one_lure(Eigen::MatrixXd::Constant(1, 1, 2.0),
                                                        Eigen::VectorXd::Constant(1, 0.7),
                                                        Eigen::VectorXd::Constant(1, 0.5)));
    CHECK_THAT(p.mean(0)(0), WithinRel(2.0 * 0.7 / 0.25 / 17.0, 1e-12));
    CHECK_THAT(p.covariance(0)(0, 0), WithinRel(1.0 / 17.0, 1e-12));
}

TEST_CASE(
    "Many inputs and readings: the readings' form and the inputs' form of least squares agree to 1e-9") {
    const Eigen::Index inputs = 12;
    const Eigen::Index readings = 7;
    Eigen::MatrixXd slope(readings, inputs);
    Eigen::VectorXd read(readings);
    Eigen::VectorXd sigma(readings);
    for (Eigen::Index a = 0; a < readings; ++a) {
        for (Eigen::Index i = 0; i < inputs; ++i)
            slope(a, i) = std::sin(1.0 + 3.0 * static_cast<double>(a * inputs + i));
        read(a) = std::cos(static_cast<double>(a));
        sigma(a) = 0.05 + 0.02 * static_cast<double>(a);
    }
    const bench::LinearPosterior p(all_own(inputs), one_lure(slope, read, sigma));
    const Eigen::VectorXd weight = sigma.array().square().inverse();
    const Eigen::MatrixXd information =
        Eigen::MatrixXd::Identity(inputs, inputs) + slope.transpose() * weight.asDiagonal() * slope;
    const Eigen::MatrixXd covariance = information.inverse();
    const Eigen::VectorXd mean = covariance * (slope.transpose() * (weight.cwiseProduct(read)));
    CHECK((p.mean(0) - mean).cwiseAbs().maxCoeff() < 1e-9);
    CHECK((p.covariance(0) - covariance).cwiseAbs().maxCoeff() < 1e-9);
}

TEST_CASE("A reading against the others: the short form equals working it out without that reading") {
    Eigen::MatrixXd slope(3, 2);
    slope << 1.0, 0.2, 0.7, -0.4, 0.1, 1.3;
    const Eigen::Vector3d read(0.9, 0.1, -0.6);
    const Eigen::Vector3d sigma(0.1, 0.2, 0.3);
    const bench::LinearPosterior all(all_own(2), one_lure(slope, read, sigma));
    for (Eigen::Index left = 0; left < 3; ++left) {
        Eigen::MatrixXd other_slope(2, 2);
        Eigen::Vector2d other_read;
        Eigen::Vector2d other_sigma;
        for (Eigen::Index a = 0, b = 0; a < 3; ++a) {
            if (a == left) continue;
            other_slope.row(b) = slope.row(a);
            other_read(b) = read(a);
            other_sigma(b++) = sigma(a);
        }
        const bench::LinearPosterior others(all_own(2), one_lure(other_slope, other_read, other_sigma));
        const Eigen::Vector2d row = slope.row(left);
        const double expected = row.dot(others.mean(0));
        const double spread = std::sqrt(row.dot(others.covariance(0) * row) + sigma(left) * sigma(left));
        CHECK_THAT(all.leave_one_out_residual()(left), WithinAbs(read(left) - expected, 1e-9));
        CHECK_THAT(all.leave_one_out_sigma()(left), WithinAbs(spread, 1e-9));
    }
}

TEST_CASE("Two lures of one recipe: the second learns the shared part of what was read on the first (closed "
          "form)") {
    // Variance 0.8 shared, 0.2 of its own; the first lure read once, slope 1, sigma s. Mean of the second:
    // 0.8/(1+s²)·read, variance 1 − 0.64/(1+s²).
    bench::Prior prior{Eigen::VectorXd::Constant(1, 0.8), Eigen::VectorXd::Constant(1, 0.2)};
    const double s = 0.1;
    const bench::LinearPosterior p(prior,
                                   one_lure(Eigen::MatrixXd::Ones(1, 1), Eigen::VectorXd::Constant(1, 1.5),
                                            Eigen::VectorXd::Constant(1, s)));
    CHECK_THAT(p.mean(1)(0), WithinAbs(0.8 / (1.0 + s * s) * 1.5, 1e-12));
    CHECK_THAT(p.covariance(1)(0, 0), WithinAbs(1.0 - 0.64 / (1.0 + s * s), 1e-12));
    CHECK_THAT(p.shared_mean()(0) + p.own_mean(0)(0), WithinAbs(p.mean(0)(0), 1e-12));
}

TEST_CASE("No reading: the posterior is the prior") {
    const bench::LinearPosterior p(all_own(3), {});
    CHECK(p.mean(0).isZero());
    CHECK(p.covariance(0).isIdentity());
}
