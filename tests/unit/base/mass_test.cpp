// Kinds of mass: what may be added and compared, and what does not compile.

#include "answers/answers.hpp"
#include "base/mass.hpp"
#include "ledger/fold.hpp"

#include <catch2/catch_test_macros.hpp>

using namespace evenfall;

namespace {

template <class A, class B>
constexpr bool can_be_added = requires(A a, B b) {
    a + b;
};
template <class A, class B>
constexpr bool can_be_added_to = requires(A a, B b) {
    a += b;
};
template <class A, class B>
constexpr bool can_be_subtracted = requires(A a, B b) {
    a - b;
};
template <class A, class B>
constexpr bool can_be_compared = requires(A a, B b) {
    a < b;
    a == b;
};
template <class A, class B>
constexpr bool can_be_assigned = requires(A a, B b) {
    a = b;
};

template <class A, class B>
constexpr bool do_not_mix =
    !can_be_added<A, B> && !can_be_added_to<A, B> && !can_be_compared<A, B> && !can_be_assigned<A, B>;

template <class A>
constexpr bool adds_up = can_be_added<A, A>&& can_be_subtracted<A, A>&& can_be_compared<A, A>;

static_assert(adds_up<Mass> && adds_up<DisplacedMass> && adds_up<MassInWater>);
static_assert(do_not_mix<Mass, MassInWater> && do_not_mix<MassInWater, Mass>);
static_assert(do_not_mix<Mass, DisplacedMass> && do_not_mix<DisplacedMass, Mass>);
static_assert(do_not_mix<MassInWater, DisplacedMass> && do_not_mix<DisplacedMass, MassInWater>);
static_assert(!can_be_subtracted<Mass, MassInWater> && !can_be_subtracted<DisplacedMass, Mass>);
// Nor with a number of no kind.
static_assert(do_not_mix<Mass, double> && do_not_mix<double, Mass> && do_not_mix<MassInWater, double>);
// At a sum of the ledger.
using SumMass = decltype(ledger::Sum::mass);
using SumDisplaced = decltype(ledger::Sum().displaced(1000.0));
using SumInWater = decltype(ledger::Sum().in_water(1000.0));
static_assert(do_not_mix<SumMass, SumInWater> && do_not_mix<SumMass, SumDisplaced> &&
              do_not_mix<SumDisplaced, SumInWater>);
// In the answers.
template <class Answer>
constexpr bool keeps_its_kinds = do_not_mix<decltype(Answer::mass), decltype(Answer::in_water)>&&
    do_not_mix<decltype(Answer::in_water), decltype(Answer::mass)>&&
        do_not_mix<decltype(Answer::mass), double>&& do_not_mix<decltype(Answer::in_water), double>;
static_assert(keeps_its_kinds<Answers> && keeps_its_kinds<StageAnswer> && keeps_its_kinds<SegmentAnswer> &&
              keeps_its_kinds<CoatAnswer> && keeps_its_kinds<ledger::SumSigma>);
static_assert(do_not_mix<decltype(StageAnswer::mass), decltype(StageAnswer::in_tub)> &&
              do_not_mix<decltype(StageAnswer::in_tub), SumDisplaced>);
static_assert(do_not_mix<decltype(Answers::mass_sigma), decltype(Answers::in_water_sigma)>);

} // namespace

TEST_CASE("A body of 60 g that pushes 50 cm³ of fresh water aside weighs 10 g in it") {
    ledger::Sum sum;
    sum.mass = {0.060};
    sum.displaced_m3 = 50e-6;
    CHECK(sum.displaced(1000.0).kg == 0.050);
    CHECK(sum.in_water(1000.0) == MassInWater{0.060 - 0.050});
    CHECK(sum.in_water(1000.0) < sum.in_water(800.0));
}
