#pragma once
/// All readings that it is reasonable to take in a house, whatever they show.

#include "sim/trainees/hands.hpp"

namespace emberpath::trainees {

/// The whole checklist; then each reading that it left out and of which the shadows, at arrival, expect different
/// things, once, in the operating state in which it can be expected to tell most; a look round; and what
/// somebody who weighs all that would still read, until nothing can be expected to tell more.
/// Every reading in every operating state, as the over-tester has it, takes six hours in which a house
/// changes; and what one reader wants stops as soon as that one is sure, which another house would not make
/// him.
void read_all_reasonable(Hands& hands);

}  // namespace emberpath::trainees
