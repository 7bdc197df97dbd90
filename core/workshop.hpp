#pragma once

// What the workshop needs: swing of joints, glue, resin, ballast stock, casting a tail.

#include "workshop/chain.hpp"
#include "workshop/coat_schedule.hpp"
#include "workshop/glue.hpp"
#include "workshop/joint_answers.hpp"
#include "workshop/resin_mix.hpp"
#include "workshop/stock.hpp"
#include "workshop/swim_chain.hpp"
#include "workshop/tail_pour.hpp"
#include "workshop/tail_pull.hpp"
