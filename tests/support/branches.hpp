#pragma once
/// The branches of the work and which shipped jobs stand in them: each job in one.

#include <algorithm>
#include <string>
#include <vector>

namespace emberpath {

struct Branch {
    std::string name;
    std::vector<std::string> jobs;
};

inline const std::vector<Branch>& branches_of_the_work() {
    static const std::vector<Branch> branches{
        {"gas", {"sorrel", "heron", "nettle", "yarrow"}},
        {"gas from cylinders", {"quarry", "sedge", "hornbeam", "kestrel"}},
        {"air and flue", {"linnet", "harrier", "larch", "mallow"}},
        {"ignition and flame", {"bramble", "orchard", "saltmarsh", "basalt", "sundew"}},
        {"water", {"teasel", "pumice", "vetch"}},
        {"sensors", {"tanager", "fennel", "avocet"}},
        {"controller and settings", {"marigold", "lupin", "plover", "curlew", "gentian"}},
        {"electricity", {"wren", "willow", "flint", "thistle", "zinnia"}},
        {"use and expectation", {"juniper", "osier", "tansy"}},
        // Two causes, or one that makes another part look like the fault.
        {"combined", {"clover", "rowan"}}};
    return branches;
}

/// Empty where no branch has the job.
inline std::string branch_of(const std::string& job) {
    for (const Branch& branch : branches_of_the_work())
        if (std::find(branch.jobs.begin(), branch.jobs.end(), job) != branch.jobs.end())
            return branch.name;
    return {};
}

}  // namespace emberpath
