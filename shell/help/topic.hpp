#pragma once

// What the help can explain: figures of the page, and ways of working.

namespace evenfall::shell::help {

enum class Topic {
    none, ///< not explained
    // the lure
    finished,
    in_water,
    fall,
    hang,
    lean,
    righting,
    chance,
    centres,
    segments,
    parts,
    ledger,
    // wood
    wood_density,
    weighed_board,
    woods,
    // joints
    swing,
    wrap,
    turn,
    eye_wire,
    bits,
    play,
    walls,
    strength,
    glue,
    // lead
    plan,
    hole_fill,
    lead_work,
    ways,
    reach_map,
    family,
    metals,
    stock,
    // finish and tail
    coat_in_water,
    coats,
    resin_amount,
    resin_time,
    tail_pull,
    tail_pour,
    // water
    water_density,
    fall_attitude,
    fall_time,
    waterline,
    back_showing,
    metacentre,
    righting_arm,
    righting_moment,
    season,
    segment_alone,
    hinge_load,
    sag,
    swings_from,
    // swim
    swims,
    beats,
    retrieves,
    wave,
    swim_change,
    // bench log
    stages,
    tub,
    tub_seen,
    chance_then,
    spread,
    stage_spread,
    next_reading,
    reading_fit,
    simulation,
    inputs,
    // how to
    weigh_dry,
    weigh_under,
    weigh_hung,
    weigh_board,
    time_fall,
    try_clip,
    read_freeboard,
    read_hang,
    read_caliper,
    count_beats,
    start_lure,
    plan_steps,
    drill,
    lead_safety,
    order_of_work,
    log_slip,
    picture,
    units,
    share,
    save_all,
    print,
    offline,
};
inline constexpr int topic_count = static_cast<int>(Topic::offline) + 1;

} // namespace evenfall::shell::help
