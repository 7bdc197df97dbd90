#include "reach/family.hpp"

#include "reach/shortage.hpp"

#include <utility>

namespace evenfall::reach {

Outcome<Member> family_member(const document::Document& document, starter::WantedFall fall) {
    document::Document d = document;
    for (document::Hole& hole : d.holes) {
        if (hole.use == document::HoleUse::leaded) hole.use = document::HoleUse::drilled;
    }
    starter::LureCard card;
    card.fall = fall;
    starter::ask_for_fall(d, card);
    auto plan = plan_lead(cleared(d));
    if (!plan) return plan.problems();
    const auto figures = figures_of(plan->document);
    if (!figures) return figures.problems();
    return Member{fall, std::move(plan).value(), *figures};
}

Outcome<std::vector<Member>> family(const document::Document& document) {
    std::vector<Member> members;
    for (const starter::WantedFall fall : family_falls) {
        auto member = family_member(document, fall);
        if (!member) return member.problems();
        members.push_back(std::move(member).value());
    }
    return members;
}

} // namespace evenfall::reach
