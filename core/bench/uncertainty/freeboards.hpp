#pragma once

// How heavy a lure is that floats upright and shows so much: what readings of a freeboard ask again and
// again.

#include "water/afloat/rest.hpp"

#include <optional>
#include <vector>

namespace evenfall::bench {

/// One lure with its G, in one water; its weight varies. Every rest that is found narrows the next search.
class Freeboards {
public:
    /// The hull must outlive it.
    Freeboards(const afloat::FloatingHull& hull, const Vec3& g_m, double water_kg_m3);

    [[nodiscard]] bool is_of(const afloat::FloatingHull& hull, const Vec3& g_m, double water_kg_m3) const {
        return hull_ == &hull && g_m_ == g_m && water_kg_m3_ == water_kg_m3;
    }

    /// In-water mass [kg], below 0, at which the lure's highest point stands so far above the water, upright,
    /// and by how much that falls with a higher freeboard [kg/m]. Absent where no weight does.
    struct Weight {
        double in_water_kg = 0.0;
        double per_m = 0.0;
    };
    [[nodiscard]] std::optional<Weight> in_water_for(double freeboard_m);

private:
    struct Known {
        double in_water_kg = 0.0;
        double freeboard_m = 0.0;
        std::optional<afloat::Rest> rest; ///< absent awash: it has no steady one there
    };
    /// Absent where it has no upright rest.
    [[nodiscard]] std::optional<double> freeboard_at(double in_water_kg);
    /// Where it shows so much, which the lightest that is known does; `lost` where a weight on the way has no
    /// upright rest.
    [[nodiscard]] double between_known(double freeboard_m, bool& lost);

    const afloat::FloatingHull* hull_;
    Vec3 g_m_;
    double water_kg_m3_;
    double whole_kg_;          ///< of water, that it displaces held under
    double lightest_kg_;       ///< that is looked at
    std::vector<Known> known_; ///< ascending in weight, so descending in freeboard
};

} // namespace evenfall::bench
