"""
Writes the computed rows' numbers to the screen: probabilities of tastings by counting cases in whole numbers and fractions, by
no formula that the code uses. Needs Python 3.9 or newer; scipy, where it is there, is asked for the same.

    python3 tests/reference/taste/count_cases.py
"""
from fractions import Fraction
from itertools import permutations, product


def right_answers(right, answers, glasses):
    """Every way in which so many tasters can point at glasses, of which the first is the right one, one taster after the other."""
    ways = {0: 1}
    for _ in range(answers):
        after = {}
        for had, count in ways.items():
            after[had] = after.get(had, 0) + count * (glasses - 1)
            after[had + 1] = after.get(had + 1, 0) + count
        ways = after
    return Fraction(sum(count for had, count in ways.items() if had >= right), glasses**answers)


def places(row):
    """Places from the best score down; equal scores share theirs."""
    order = sorted(row, reverse=True)
    return [Fraction(sum(place for place, score in enumerate(order, 1) if score == own), order.count(own)) for own in row]


def variance_between(rows):
    sums = [sum(column) for column in zip(*rows)]
    mean = Fraction(sum(sums), len(sums))
    return sum((one - mean) ** 2 for one in sums)


def orders_as_far_apart(scores):
    """Of all ways to hand every taster's places to the beers: the share that lie as far apart or further. All of them, one by one."""
    rows = [places(row) for row in scores]
    seen = variance_between(rows)
    all_ways = like = 0
    for shuffled in product(*(list(permutations(row)) for row in rows)):
        all_ways += 1
        like += variance_between(shuffled) >= seen
    return Fraction(like, all_ways)


def all_orders_beer_by_beer(scores):
    """The same share where there are too many ways to list: rank sums built up taster by taster, each beer keeping its own."""
    rows = [places(row) for row in scores]
    seen = variance_between(rows)
    ways = {tuple(Fraction(0) for _ in rows[0]): 1}
    for row in rows:
        after = {}
        for sums, count in ways.items():
            for shuffled in permutations(row):
                key = tuple(map(sum, zip(sums, shuffled)))
                after[key] = after.get(key, 0) + count
        ways = after
    return Fraction(sum(count for sums, count in ways.items() if variance_between([sums]) >= seen), sum(ways.values()))


rounding_times = [float(time) for time in """
5.40 5.50 5.55 5.85 5.70 5.75 5.20 5.60 5.50 5.55 5.50 5.40 5.90 5.85 5.70 5.45 5.55 5.60 5.40 5.40 5.35 5.45 5.50 5.35 5.25 5.15 5.00
5.85 5.80 5.70 5.25 5.20 5.10 5.65 5.55 5.45 5.60 5.35 5.45 5.05 5.00 4.95 5.50 5.50 5.40 5.45 5.55 5.50 5.55 5.55 5.35 5.45 5.50 5.55
5.50 5.45 5.25 5.65 5.60 5.40 5.70 5.65 5.55 6.30 6.30 6.25
""".split()]
rounding_times = [rounding_times[at : at + 3] for at in range(0, 66, 3)]

tastings = {
    "four tasters, three beers": [[5, 4, 2], [4, 3, 1], [3, 4, 2], [5, 4, 3]],
    "four tasters, three beers, ties": [[5, 4, 4], [4, 2, 3], [5, 3, 3], [4, 4, 2]],
    "five tasters, three beers": [[5, 4, 2], [4, 5, 3], [5, 3, 1], [4, 3, 2], [3, 4, 2]],
    "three tasters, four beers, ties": [[5, 3, 3, 1], [4, 4, 2, 1], [5, 2, 3, 3]],
    "three tasters, five beers": [[5, 4, 3, 2, 1], [4, 5, 3, 1, 2], [5, 3, 4, 2, 1]],
    "seven tasters, two beers, ties": [[5, 4], [4, 3], [3, 3], [5, 2], [4, 5], [3, 2], [4, 1]],
}

if __name__ == "__main__":
    for right, answers, glasses in ((13, 24, 3), (8, 12, 3), (40, 100, 3), (17, 24, 2), (62, 100, 2), (15, 20, 2), (21, 30, 2), (61, 100, 2)):
        print(f"{right} of {answers}, 1 glass of {glasses}: {float(100 * right_answers(right, answers, glasses)):.10g} %")
    for name, scores in tastings.items():
        share = orders_as_far_apart(scores)
        sums = [float(sum(column)) for column in zip(*map(places, scores))]
        print(f"{name}: {float(100 * share):.10g} %, rank sums {sums}")
        try:
            from scipy.stats import friedmanchisquare
            if len(scores[0]) > 2:
                print("   scipy:", friedmanchisquare(*zip(*scores)).statistic)
        except ImportError:
            pass
    print(f"rounding first base: {float(100 * all_orders_beer_by_beer(rounding_times)):.10g} %, rank sums", [float(sum(c)) for c in zip(*map(places, rounding_times))])
    try:
        from scipy.stats import friedmanchisquare
        long = [[(i * 7 + j * 3 + i * j) % 5 + 1 + (j == 2) for j in range(6)] for i in range(12)]
        print("twelve tasters, six beers:", long, friedmanchisquare(*zip(*long)))
    except ImportError:
        pass
