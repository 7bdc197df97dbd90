#include "reach/family.hpp"

#include "reach/shortage.hpp"

namespace evenfall::reach {

Outcome<std::array<Member, 4>> family(const document::Document& document) {
    using starter::WantedFall;
    constexpr std::array falls{WantedFall::floats, WantedFall::suspends, WantedFall::slow, WantedFall::fast};
    if (const auto own = evaluate(document); !own) return own.problems();
    std::array<Member, 4> members;
    for (std::size_t k = 0; k < falls.size(); ++k) {
        document::Document d = document;
        for (document::Hole& hole : d.holes) {
            if (hole.use == document::HoleUse::leaded) hole.use = document::HoleUse::drilled;
        }
        starter::LureCard card;
        card.fall = falls[k];
        starter::ask_for_fall(d, card);
        auto plan = plan_lead(cleared(d));
        if (!plan) return plan.problems();
        const auto figures = figures_of(plan->document);
        if (!figures) return figures.problems();
        members[k] = {falls[k], std::move(plan).value(), *figures};
    }
    return members;
}

} // namespace evenfall::reach
