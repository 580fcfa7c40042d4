#!/usr/bin/env python3
"""Tables of docs/trainees.md from the rows that trainees_experiment writes.

Usage: tests/trainees/tables.py [--blind BLIND_CSV] CSV... ; pairwise order over (job, seed) with bootstrap
intervals that draw jobs, each with all its seeds; where no job was lost, the lower bound is the exact one-sided one. With the blind guesses (0 seeds) the order is told for discriminating jobs as well: those where
complaint and display word leave no class of causes above one half."""
import csv
import random
import sys

AREAS = ["safe_work", "evidence", "path", "remedy", "proof", "overall"]
SOUND = ["information per minute", "troubleshooting by symptom", "checklist"]
CLEARLY_WORSE = {
    "information per minute": ["over-tester", "unsafe but fast", "random", "part-swapper", "guesser",
                               "oracle without evidence"],
    "troubleshooting by symptom": ["over-tester", "unsafe but fast", "random", "part-swapper", "guesser",
                                   "oracle without evidence"],
    "checklist": ["random", "part-swapper", "guesser", "oracle without evidence"],
}
BAD = ["part-swapper", "guesser", "guesser with a token", "unsafe but fast", "raises the regulator",
       "warms the cylinder", "bridges the limiter", "hands everything on", "resets and leaves"]
DRAWS = 2000


def rows(files):
    for name in files:
        with open(name, newline="") as source:
            yield from csv.DictReader(source)


def compare(better, worse, value):
    """What the better one won, by job: 1, or a half for a tie, for each seed."""
    wins = {}
    for key in sorted(better.keys() & worse.keys()):
        a, b = value(better[key]), value(worse[key])
        wins.setdefault(key[0], []).append(1.0 if a > b else 0.5 if a == b else 0.0)
    return list(wins.values())


def rate(wins):
    return sum(map(sum, wins)) / sum(map(len, wins))


def interval(wins):
    dice = random.Random(1)
    if rate(wins) == 1.0:  # no draw differs: the exact one-sided bound of so many jobs without a loss
        return 0.05 ** (1.0 / len(wins)), 1.0
    found = sorted(rate([dice.choice(wins) for _ in wins]) for _ in range(DRAWS))
    return found[int(0.025 * DRAWS)], found[int(0.975 * DRAWS)]


def calibration(attempts):
    """Claimed and true share of the likeliest class, by what was claimed."""
    print("\n| claimed | attempts | mean claim | right |")
    print("|---|---|---|---|")
    for low, high in ((0.0, 0.3), (0.3, 0.6), (0.6, 0.9), (0.9, 0.97), (0.97, 1.01)):
        inside = [r for r in attempts if low <= float(r["leading"]) < high]
        if not inside:
            continue
        claim = sum(float(r["leading"]) for r in inside) / len(inside)
        right = sum(r["leading_is_true"] == "1" for r in inside) / len(inside)
        print(f"| {low:.2f} to {min(high, 1.0):.2f} | {len(inside)} | {claim:.2f} | {right:.2f} |")


def reliability(by_policy):
    """Generalisability of the overall score, trainees crossed with (job, seed), by number of jobs."""
    most = max(len(found) for found in by_policy.values())  # who played a part of the runs only is left out
    by_policy = {policy: found for policy, found in by_policy.items() if len(found) >= 0.9 * most}
    common = sorted(set.intersection(*(set(found) for found in by_policy.values())))
    if len(common) < 2 or len(by_policy) < 2:
        return
    score = [[float(found[key]["overall"]) for key in common] for found in by_policy.values()]
    people, jobs = len(score), len(common)
    grand = sum(map(sum, score)) / (people * jobs)
    of_person = [sum(row) / jobs for row in score]
    of_job = [sum(row[j] for row in score) / people for j in range(jobs)]
    between = jobs * sum((m - grand) ** 2 for m in of_person) / (people - 1)
    rest = sum((score[i][j] - of_person[i] - of_job[j] + grand) ** 2
               for i in range(people) for j in range(jobs)) / ((people - 1) * (jobs - 1))
    person = max(0.0, (between - rest) / jobs)
    print("\n| attempts a trainee | share of the variance that is the trainee's |\n|---|---|")
    for n in (1, 4, 8, 12):
        print(f"| {n} | {person / (person + rest / n):.2f} |")


def ranks(values):
    order = sorted(range(len(values)), key=values.__getitem__)
    found = [0.0] * len(values)
    i = 0
    while i < len(order):
        j = i
        while j < len(order) and values[order[j]] == values[order[i]]:
            j += 1
        for k in range(i, j):
            found[order[k]] = (i + j - 1) / 2
        i = j
    return found


def correlation(a, b):
    n = len(a)
    mean_a, mean_b = sum(a) / n, sum(b) / n
    both = sum((x - mean_a) * (y - mean_b) for x, y in zip(a, b))
    own = (sum((x - mean_a) ** 2 for x in a) * sum((y - mean_b) ** 2 for y in b)) ** 0.5
    return both / own if own > 0.0 else 1.0


def pairs_by(by_policy, key):
    """Mean and lowest share of the clearly different pairs that a scorer's column puts in the right order."""
    found = {}
    for good, worse_ones in CLEARLY_WORSE.items():
        for bad in worse_ones:
            wins = compare(by_policy.get(good, {}), by_policy.get(bad, {}), lambda r: float(r[key]))
            if wins:
                found[f"{good} > {bad}"] = rate(wins)
    if not found:
        return ""
    lowest = min(found, key=found.get)
    return f"{sum(found.values()) / len(found):.3f} | {found[lowest]:.3f} ({lowest})"


def sensitivity(by_policy):
    """The overall score of the same attempts by a scorer who chose otherwise."""
    weighed = {policy: {key: r for key, r in found.items() if r.get("again") not in (None, "")}
               for policy, found in by_policy.items()}
    attempts = [r for found in weighed.values() for r in found.values()]
    if not attempts:
        return
    print(f"\n| scorer ({len(attempts)} attempts) | mean change | 95th percentile | rank correlation | "
          "pairs, mean | lowest pair |")
    print("|---|---|---|---|---|---|")
    ours = [float(r["overall"]) for r in attempts]
    for key in ("again", "priors_x3", "priors_x3_again", "widths_x2", "widths_half"):
        if attempts[0].get(key) in (None, ""):
            continue
        other = [float(r[key]) for r in attempts]
        change = sorted(abs(a - b) for a, b in zip(ours, other))
        print(f"| {key.replace('_', ' ')} | {sum(change) / len(change):.1f} | "
              f"{change[int(0.95 * len(change))]:.1f} | "
              f"{correlation(ranks(ours), ranks(other)):.3f} | {pairs_by(weighed, key)} |")


def order(by_policy, title):
    print(f"\n| better > worse ({title}) | n | ours [95 %] | outcome | outcome + time |")
    print("|---|---|---|---|---|")
    sums, pairs = [0.0, 0.0, 0.0], 0
    for good, worse_ones in CLEARLY_WORSE.items():
        for bad in worse_ones:
            if good not in by_policy or bad not in by_policy:
                continue
            a, b = by_policy[good], by_policy[bad]
            ours = compare(a, b, lambda r: float(r["overall"]))
            outcome = compare(a, b, lambda r: r["fixed"] == "1")
            timed = compare(a, b, lambda r: (r["fixed"] == "1", -float(r["minutes"])))
            if not ours:
                continue
            means = [rate(w) for w in (ours, outcome, timed)]
            low, high = interval(ours)
            sums = [s + m for s, m in zip(sums, means)]
            pairs += 1
            print(f"| {good} > {bad} | {sum(map(len, ours))} | {means[0]:.3f} [{low:.2f}, {high:.2f}] | "
                  f"{means[1]:.3f} | {means[2]:.3f} |")
    if pairs:
        print("| mean of the pairs | | " + " | ".join(f"{s / pairs:.3f}" for s in sums) + " |")


def order_by_seed(by_policy):
    """The pairs that any seed disagreed with, seed by seed; nothing where there is one seed."""
    runs = sorted({(r["seed"], r["severity_share"]) for found in by_policy.values() for r in found.values()})
    if len(runs) < 2:
        return
    print("\n| better > worse | " +
          " | ".join(f"seed {seed}, severity x {share}" for seed, share in runs) + " |")
    print("|---|" + "---|" * len(runs))
    for good, worse_ones in CLEARLY_WORSE.items():
        for bad in worse_ones:
            found = []
            for run in runs:
                mine = [{key: r for key, r in by_policy.get(policy, {}).items()
                         if (r["seed"], r["severity_share"]) == run} for policy in (good, bad)]
                wins = compare(*mine, lambda r: float(r["overall"]))
                found.append(rate(wins) if wins else None)
            if any(share is not None and share < 1.0 for share in found):
                print(f"| {good} > {bad} | " +
                      " | ".join("-" if share is None else f"{share:.3f}" for share in found) + " |")


def release(attempts):
    """Jobs that would be refused, and why, as `emberpath rate` judges them."""
    lines = []
    for job in sorted({r["job"] for r in attempts}):
        mine = [r for r in attempts if r["job"] == job]
        by = {}
        for r in mine:
            by.setdefault(r["policy"], []).append(r)
        mean = lambda policy, key: sum(float(r[key]) for r in by[policy]) / len(by[policy])
        why = []
        best = {}
        for policy in [*SOUND, "over-tester"]:
            for r in by.get(policy, []):
                key = (r["seed"], r["severity_share"])
                best[key] = max(best.get(key, 0.0), float(r["true_class"]))
        if best and sum(best.values()) / len(best) < 0.8:
            why.append(f"whoever reads best gives the true cause {sum(best.values()) / len(best):.2f}")
        sound = [r for policy in SOUND if policy in by for r in by[policy]]
        if not any(r["unopposed"] == "1" and r["gates"] == "1" for r in sound):
            why.append("no sound way leads through without an objection")
        best = max(mean(policy, "overall") for policy in SOUND if policy in by)
        for policy in BAD:
            if policy not in by or (policy == "unsafe but fast" and mean(policy, "safe_work") >= 100.0):
                continue
            if any(r["unopposed"] == "1" for r in by[policy]):
                why.append(f"{policy} is left without objection")
            if mean(policy, "overall") > best - 1.0:
                why.append(f"{policy} scores {mean(policy, 'overall'):.0f}, the best sound way {best:.0f}")
        if why:
            lines.append(f"| {job} | {'; '.join(why)} |")
    print("\n| would be refused | because |\n|---|---|")
    print("\n".join(lines) if lines else "| none | |")


def difficulty(blind_rows, attempts):
    """The jobs from easy to hard, with what the sound ways took and lost there."""
    rank = {"easy": 0, "middling": 1, "hard": 2}
    print("\n| job | | against the true cause | reference path | sound ways: minutes, overall | at random: overall |")
    print("|---|---|---|---|---|---|")
    for row in sorted(blind_rows, key=lambda r: (rank[r["difficulty"]], r["job"])):
        mine = [r for r in attempts if r["job"] == row["job"]]
        mean = lambda key, who: (lambda v: f"{sum(v) / len(v):.0f}" if v else "-")(
            [float(r[key]) for r in mine if r["policy"] in who])
        print(f"| {row['job']} | {row['difficulty']} | {float(row['surprise_bits']):.1f} bits | "
              f"{float(row['reference_minutes']):.0f} min | {mean('minutes', SOUND)} min, {mean('overall', SOUND)} | "
              f"{mean('overall', ['random'])} |")


def main():
    files, blind = sys.argv[1:], {}
    if files[:1] == ["--blind"]:
        blind_rows = list(rows(files[1:2]))
        blind = {row["job"]: float(row["blind_guess"]) for row in blind_rows}
        files = files[2:]
    by_policy, attempts = {}, []
    unscored = {}
    for row in rows(files):
        if row["scored"] == "0":  # said by the scorer: the model cannot carry a score on this job
            unscored.setdefault((row["job"], row["severity_share"]), []).append(row["policy"])
            continue
        attempts.append(row)
        key = (row["job"], row["seed"], row["severity_share"])
        if key in by_policy.setdefault(row["policy"], {}):
            sys.exit(f"{row['policy']} played {key} twice: these files are not of one experiment")
        by_policy[row["policy"]][key] = row
    print("| trainee | n | S | E | P | R | V | overall | fixed | critical | unopposed | minutes |")
    print("|---|---|---|---|---|---|---|---|---|---|---|---|")
    for policy, found in by_policy.items():
        n = len(found)
        mean = lambda key: sum(float(r[key]) for r in found.values()) / n
        count = lambda key, wanted: sum(r[key] == wanted for r in found.values())
        print(f"| {policy} | {n} | " + " | ".join(f"{mean(a):.0f}" for a in AREAS) +
              f" | {count('fixed', '1')} | {count('gates', '0')} | {count('unopposed', '1')} | "
              f"{mean('minutes'):.0f} |")
    if unscored:
        print("\nNot scored: " + "; ".join(
            f"{job} at severity x {share}: {len(who)} attempts, {sum(w in SOUND for w in who)} of them sound"
            for (job, share), who in sorted(unscored.items())) + ".")
    order(by_policy, "all jobs")
    order_by_seed(by_policy)
    if blind:
        difficulty(blind_rows, attempts)
    if blind:
        open_ones = {p: {k: r for k, r in found.items() if blind.get(k[0], 1.0) <= 0.5}
                     for p, found in by_policy.items()}
        order(open_ones, "discriminating jobs")
    broke = {p: {k: r for k, r in found.items() if r["gates"] == ("0" if p == "unsafe but fast" else r["gates"])}
             for p, found in by_policy.items()}
    for policy in SOUND:
        if policy in broke:
            broke[policy] = {k: r for k, r in broke[policy].items() if r["gates"] == "1"}
    order(broke, "the better one broke no gate, the unsafe one did")
    release(attempts)
    calibration(attempts)
    sensitivity(by_policy)
    reliability(by_policy)


if __name__ == "__main__":
    main()
