"""Finds the ways of conductors a second time, in another language, and writes the answers into oracle-ways.json.
It follows the page library/analysis/placement/method.md alone; the numbers in brackets are those of that page.

Run it when the method is meant to change:  python3 tests/published/oracle-ways.py
Standard library only. The layouts are drawn with a fixed seed: the same file, byte for byte.
"""

import heapq
import json
import math
import random
from pathlib import Path

HERE = Path(__file__).parent
USUAL = 450
INFINITE = float("inf")


def through_inside(a, b, rect):
    """Whether a level or upright stretch passes through the inside of a rectangle."""
    x, y, w, h = rect
    return max(a[0], b[0]) > x and min(a[0], b[0]) < x + w and max(a[1], b[1]) > y and min(a[1], b[1]) < y + h


def open_length(start, end, obstacles, size):
    """[2] Dijkstra on the lines through all edges and both points."""
    xs = sorted({v for v in [start[0], end[0], *(e for r in obstacles for e in (r[0], r[0] + r[2]))] if 0 <= v <= size[0]})
    ys = sorted({v for v in [start[1], end[1], *(e for r in obstacles for e in (r[1], r[1] + r[3]))] if 0 <= v <= size[1]})
    first = (xs.index(start[0]), ys.index(start[1]))
    last = (xs.index(end[0]), ys.index(end[1]))
    best = {first: 0.0}
    heap = [(0.0, first)]
    while heap:
        length, node = heapq.heappop(heap)
        if length > best[node]:
            continue
        if node == last:
            return length
        column, row = node
        here = (xs[column], ys[row])
        for there in ((column - 1, row), (column + 1, row), (column, row - 1), (column, row + 1)):
            if not (0 <= there[0] < len(xs) and 0 <= there[1] < len(ys)):
                continue
            point = (xs[there[0]], ys[there[1]])
            if any(through_inside(here, point, rect) for rect in obstacles):
                continue
            total = length + abs(point[0] - here[0]) + abs(point[1] - here[1])
            if total < best.get(there, INFINITE):
                best[there] = total
                heapq.heappush(heap, (total, there))
    return INFINITE


def nearest(a, b, p):
    """The place of the stretch from a to b that is nearest to p."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    squared = dx * dx + dy * dy
    share = 0.0 if squared == 0 else ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / squared
    if share <= 0:
        return a
    if share >= 1:
        return b
    return (a[0] + share * dx, a[1] + share * dy)


def distance(a, b):
    return math.hypot(b[0] - a[0], b[1] - a[1])


def path_length(path):
    return sum(distance(a, b) for a, b in zip(path, path[1:]))


def crossing(a, b, c, d):
    """[5] Where two stretches cross or touch; None if they are parallel or apart."""
    ax, ay, bx, by = b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]
    cross = ax * by - ay * bx
    if cross == 0:
        return None
    dx, dy = c[0] - a[0], c[1] - a[1]
    one, other = (dx * by - dy * bx) / cross, (dx * ay - dy * ax) / cross
    if not (0 <= one <= 1 and 0 <= other <= 1):
        return None
    return (a[0] + one * ax, a[1] + one * ay)


class Layout:
    def __init__(self, plan):
        self.surfaces, self.channels = plan["surfaces"], plan["channels"]
        self.parts, self.runs = plan["parts"], plan["runs"]

    def obstacles(self, surface, but=()):
        rects = [tuple(r) for r in self.surfaces[surface]["keepFree"]]
        for index, part in enumerate(self.parts):
            if "at" in part and part["at"]["surface"] == surface and index not in but:
                rects.append((*part["at"]["point"], *part["size"]))
        return rects

    def end_of(self, part):
        """[1] surface, point, length on the way out, parts that are no obstacle, corners."""
        index, part = part, self.parts[part]
        x, y = part["at"]["point"]
        w, h = part["size"]
        spot = part.get("terminal")
        if spot is None:
            return part["at"]["surface"], (x + w / 2, y + h / 2), 0.0, (index,), []
        point = (x + spot["point"][0], y + spot["point"][1])
        side = spot.get("leaves")
        if side is None or side == "front":
            return part["at"]["surface"], point, 0.0, (index,), []
        leaving = {"left": (x, point[1]), "right": (x + w, point[1]), "up": (point[0], y), "down": (point[0], y + h)}[side]
        corners = [(across, down) for across in (x, x + w) for down in (y, y + h)]
        return part["at"]["surface"], leaving, distance(point, leaving), (), corners

    def feet(self, surface, point, corners, own):
        """[3] (least length, channel, distance along it, place), in the order of [4]."""
        found = []

        def add(channel, along, place):
            found.append((abs(place[0] - point[0]) + abs(place[1] - point[1]), channel, along, place))

        for index, channel in enumerate(self.channels):
            if index == own:
                continue
            if "path" not in channel:
                if channel["from"]["surface"] == surface:
                    add(index, 0.0, tuple(channel["from"]["point"]))
                if channel.get("to", {}).get("surface") == surface:
                    add(index, channel["length"], tuple(channel["to"]["point"]))
                continue
            if channel["surface"] != surface:
                continue
            before = 0.0
            path = [tuple(p) for p in channel["path"]]
            for a, b in zip(path, path[1:]):
                places = []
                for p in [point, *corners]:
                    place = nearest(a, b, p)
                    if place not in places:
                        places.append(place)
                for place in places:
                    add(index, before + distance(a, place), place)
                before += distance(a, b)
        return sorted(found, key=lambda foot: foot[:2])

    def graph(self, complete):
        """Edges between nodes: ("channel", index, along) and ("part", index)."""
        edges, on = {}, [set() for _ in self.channels]

        def join(a, b, length, channel=None):
            edges.setdefault(a, []).append((b, length, channel))
            edges.setdefault(b, []).append((a, length, channel))

        def node(channel, along):
            for known in on[channel]:
                if known == along:
                    return ("channel", channel, known)
            on[channel].add(along)
            return ("channel", channel, along)

        def connect(start, surface, point, out, but, corners, own=None):
            """[4]"""
            obstacles, size = self.obstacles(surface, but), self.surfaces[surface]["size"]
            reached = []
            for least, channel, along, place in self.feet(surface, point, corners, own):
                length = out + open_length(point, place, obstacles, size)
                if length < INFINITE:
                    reached.append((length, channel, along))
            usual = reached if complete else [foot for foot in reached if foot[0] <= USUAL]
            if not usual and reached:
                usual = [min(reached, key=lambda foot: foot[0])]
            for length, channel, along in usual:
                join(start, node(channel, along), length)

        ends = []
        for index, channel in enumerate(self.channels):
            if "path" in channel:
                path = [tuple(p) for p in channel["path"]]
                sides = [(0.0, channel["surface"], path[0]), (path_length(path), channel["surface"], path[-1])]
            else:
                sides = [(0.0, channel["from"]["surface"], tuple(channel["from"]["point"]))]
                if "to" in channel:
                    sides.append((channel["length"], channel["to"]["surface"], tuple(channel["to"]["point"])))
                else:
                    on[index].add(channel["length"])
            for along, surface, point in sides:
                on[index].add(along)
                ends.append((("channel", index, along), surface, point, index))
        for one, first in enumerate(self.channels):
            for other in range(one + 1, len(self.channels)):
                second = self.channels[other]
                if "path" not in first or "path" not in second or first["surface"] != second["surface"]:
                    continue
                before = 0.0
                for a, b in zip(first["path"], first["path"][1:]):
                    beside = 0.0
                    for c, d in zip(second["path"], second["path"][1:]):
                        point = crossing(a, b, c, d)
                        if point:
                            join(node(one, before + distance(a, point)), node(other, beside + distance(c, point)), 0.0)
                        beside += distance(c, d)
                    before += distance(a, b)
        for start, surface, point, own in ends:
            connect(start, surface, point, 0.0, (), [], own)
        for index, part in enumerate(self.parts):
            if "endOf" in part:
                channel = self.channels[part["endOf"]]
                far = path_length(channel["path"]) if "path" in channel else channel["length"]
                join(("part", index), ("channel", part["endOf"], far), part["beyond"])
            else:
                surface, point, out, but, corners = self.end_of(index)
                connect(("part", index), surface, point, out, but, corners)
        for index, places in enumerate(on):
            along = sorted(places)
            for a, b in zip(along, along[1:]):
                join(("channel", index, a), ("channel", index, b), b - a, index)
        return edges

    def shortest(self, edges, start, end, only=None):
        """[6] Dijkstra's algorithm; other terminals are not passed."""
        best, heap, order = {start: 0.0}, [(0.0, 0, start)], 0
        while heap:
            length, _, node = heapq.heappop(heap)
            if length > best[node]:
                continue
            if node == end:
                return length
            if node[0] == "part" and node != start:
                continue
            for there, step, channel in edges.get(node, []):
                if only is not None and channel is not None and channel not in only:
                    continue
                if length + step < best.get(there, INFINITE):
                    best[there] = length + step
                    order += 1
                    heapq.heappush(heap, (length + step, order, there))
        return INFINITE

    def in_the_open(self, a, b):
        if "endOf" in self.parts[a] or "endOf" in self.parts[b]:
            return INFINITE
        one, other = self.end_of(a), self.end_of(b)
        if one[0] != other[0]:
            return INFINITE
        obstacles = self.obstacles(one[0], (*one[3], *other[3]))
        return one[2] + open_length(one[1], other[1], obstacles, self.surfaces[one[0]]["size"]) + other[2]

    def ways(self):
        usual, complete = self.graph(False), self.graph(True)
        answers = []
        for run in self.runs:
            a, b = run["from"], run["to"]
            straight = self.in_the_open(a, b)
            start, end = ("part", a), ("part", b)
            if "through" in run:
                named = set(run["through"])
                length = self.shortest(usual, start, end, named) if named else straight
                if named and length == INFINITE:
                    length = self.shortest(complete, start, end, named)
            else:
                length = min(self.shortest(usual, start, end), straight if straight <= USUAL else INFINITE)
                if length == INFINITE:
                    length = min(self.shortest(complete, start, end), straight)
            answers.append(None if length == INFINITE else length)
        return answers


def draw(seed):
    """A random layout: parts do not overlap, and lie within their surfaces."""
    pick = random.Random(seed)
    surfaces, channels, parts, runs = [], [], [], []
    for _ in range(pick.randint(1, 3)):
        width, height = pick.randrange(600, 2400, 10), pick.randrange(500, 1600, 10)
        free = [[pick.randrange(0, width - 200, 10), pick.randrange(0, height - 100, 10), 200, 60]] if pick.random() < 0.3 else []
        surfaces.append({"size": [width, height], "keepFree": free})

    def place(surface):
        width, height = surfaces[surface]["size"]
        return [pick.randrange(0, width + 1, 10), pick.randrange(0, height + 1, 10)]

    for _ in range(pick.randint(0, 4)):
        surface = pick.randrange(len(surfaces))
        path = [place(surface)]
        for _ in range(pick.randint(1, 3)):
            corner = list(path[-1])
            axis = pick.randrange(2)
            corner[axis] = place(surface)[axis]
            if corner != path[-1]:
                path.append(corner)
        if len(path) > 1:
            channels.append({"surface": surface, "path": path})
    for _ in range(pick.randint(0, 3)):
        one, other = pick.randrange(len(surfaces)), pick.randrange(len(surfaces))
        channel = {"from": {"surface": one, "point": place(one)}, "length": pick.randrange(10, 4000, 10)}
        if pick.random() < 0.75:
            channel["to"] = {"surface": other, "point": place(other)}
        channels.append(channel)
    taken = [[] for _ in surfaces]
    for _ in range(pick.randint(3, 9)):
        free_ends = [index for index, channel in enumerate(channels) if "path" in channel or "to" not in channel]
        if free_ends and pick.random() < 0.15:
            parts.append({"endOf": pick.choice(free_ends), "beyond": pick.randrange(0, 900, 10)})
            continue
        surface = pick.randrange(len(surfaces))
        width, height = surfaces[surface]["size"]
        w, h = pick.randrange(40, 320, 20), pick.randrange(40, 320, 20)
        x, y = pick.randrange(0, width - w + 1, 10), pick.randrange(0, height - h + 1, 10)
        kept = [*taken[surface], *surfaces[surface]["keepFree"]]
        if any(x < r[0] + r[2] + 10 and r[0] < x + w + 10 and y < r[1] + r[3] + 10 and r[1] < y + h + 10 for r in kept):
            continue
        taken[surface].append([x, y, w, h])
        part = {"at": {"surface": surface, "point": [x, y]}, "size": [w, h]}
        if pick.random() < 0.5:
            part["terminal"] = {"point": [pick.randrange(0, w + 1, 10), pick.randrange(0, h + 1, 10)]}
            if pick.random() < 0.6:
                part["terminal"]["leaves"] = pick.choice(["left", "right", "up", "down", "front"])
        parts.append(part)
    for _ in range(pick.randint(2, 7)):
        if len(parts) < 2:
            break
        one, other = pick.sample(range(len(parts)), 2)
        run = {"from": one, "to": other}
        if pick.random() < 0.2:
            run["through"] = sorted(pick.sample(range(len(channels)), pick.randint(0, len(channels))))
        runs.append(run)
    return {"surfaces": surfaces, "channels": channels, "parts": parts, "runs": runs}


def main():
    cases = []
    for seed in range(200):
        plan = draw(seed)
        cases.append({"seed": seed, **plan, "waysMm": Layout(plan).ways()})
    lines = ",\n".join(json.dumps(case) for case in cases)
    (HERE / "oracle-ways.json").write_text('{ "cases": [\n' + lines + "\n] }\n", encoding="utf-8")
    ways = [way for case in cases for way in case["waysMm"]]
    print(f"{len(cases)} layouts, {len(ways)} conductors, {sum(way is None for way in ways)} without a way")


if __name__ == "__main__":
    main()
