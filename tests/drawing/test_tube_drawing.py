"""Drawings of tubes: what a person must find on them, and nothing off the page."""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ET

import pytest

from gaugeblock.calc import path, shapes, stick
from gaugeblock.drawing import obstacle, order_sheet, stick_drawing, svg, tube_drawing
from gaugeblock.drawing.lengths import inches

INCH = 0.0254


def words_of(text):
    return [e.text for e in ET.fromstring(text).iter() if e.tag.endswith("text")]


def assert_prints(text):
    """Well formed, black on white, no script or link, every line and text on the page."""
    root = ET.fromstring(text)
    width, height = map(float, root.get("viewBox").split()[2:])
    assert {e.tag.split("}")[1] for e in root.iter()} <= {"svg", "title", "rect", "path", "circle", "text"}
    assert set(re.findall(r"#[0-9a-f]{3,6}", text)) <= {"#000", "#fff", "#ddd"}
    assert "href" not in text
    for e in root.iter():
        if e.tag.endswith("path"):
            numbers = [float(x) for x in re.findall(r"-?[\d.]+", e.get("d"))]
            assert all(-0.5 <= x <= width + 0.5 for x in numbers[::2])
            assert all(-0.5 <= y <= height + 0.5 for y in numbers[1::2])
        if e.tag.endswith("text") and not e.get("transform") and e.text:
            wide = svg.text_width(e.text, float(e.get("font-size")), bool(e.get("font-weight"))) * 0.95
            shift = {"start": 0.0, "middle": wide / 2, "end": wide}[e.get("text-anchor")]
            assert float(e.get("x")) - shift >= 0
            assert float(e.get("x")) - shift + wide <= width


def _kick_up():
    pipe = shapes.Beneath(width=0, height=4 * INCH, place=15 * INCH, round_radius=1.5 * INCH)
    got = shapes.clear_over(
        pipe,
        span=36 * INCH,
        gap=0.75 * INCH,
        od=1.75 * INCH,
        angle=math.pi / 4,
        radius=5 * INCH,
    )
    made, pose = path.from_points(shapes.place(got.points, (0, -15 * INCH, 0), (0, 1, 0), (0, 0, 1)), 5 * INCH)
    return made, path.path(made, pose)


def test_the_finished_tube_shows_its_bends_its_rise_and_the_gap():
    made, line = _kick_up()
    pipe = obstacle.Obstacle("exhaust", (0, 0, 4 * INCH), (1.5 * INCH, 1.5 * INCH), 0.2, round=True)
    text = tube_drawing.finished(
        line, 1.75 * INCH, title="crossmember", obstacles=[pipe], turns=[b.turn for b in made.bends], notes=["a note"]
    )
    assert_prints(text)
    words = words_of(text)
    for expected in ("gap 3/4 in", "36 in", "7 1/8 in", "45 deg", "FROM THE REAR", "FROM ABOVE", "exhaust", "a note"):
        assert expected in words
    assert words.count("A") == 3  # in the obstacle, in the list, and in the legend
    for number in "1234":
        assert words.count(number) == 2 + (number == "1")  # on the tube, and in the list; the legend shows a 1
    assert words.count("45 deg, R 5 in") == 4
    assert f"along the centre line {inches(32, decimals=False)(line.length)}" in words


def test_the_stick_says_for_each_mark_where_which_way_and_what_to_set():
    made, line = _kick_up()
    datum = line.on_plane((0, 0, 0), (0, 1, 0))[0]
    got = stick.lay_out(made, stick.Die(5 * INCH, 0.5 * INCH), trims=(INCH, INCH), datum=datum, step=INCH / 32)
    text = stick_drawing.stick(
        got,
        1.75 * INCH,
        title="marks",
        set_to=["47 deg", "48 deg", "49 deg", "50 deg"],
        datum="CENTRE",
        seam=math.pi / 2,
    )
    assert_prints(text)
    words = words_of(text)
    for m in got.marks:
        way = "START" if m.rounded < 0 else "END"
        assert f"{inches(32)(abs(m.position))} towards {way}" in words
    order = [w for w in words if re.fullmatch(r"4[789] deg|50 deg", w)]
    assert order == [f"{46 + n} deg" for n in got.order]
    assert words.count("to END") == words.count("to START") == 2
    assert words.count("swap ends in the die;") == 1
    assert "Weld seam: 90 deg clockwise from the inside of bend 1." in words
    assert "MEASURE FROM HERE: CENTRE" in words


@pytest.mark.parametrize("count", [1, 10])
def test_many_bends_stay_on_the_page(count):
    made = path.Stick([path.Bend(0.12, 0.7 * i, 0.6, 0.1) for i in range(count)], 0.3)
    got = stick.lay_out(made, stick.Die(0.1), datum="end")
    assert_prints(tube_drawing.finished(path.path(made), 0.038, title="t", turns=[b.turn for b in made.bends]))
    text = stick_drawing.stick(got, 0.038, title="t", set_to=["30 deg"] * count, datum="END")
    assert_prints(text)
    assert sum(w == "to START" for w in words_of(text)) == count


def test_turns_are_told_from_the_bend_made_before_as_seen_from_the_start():
    made = path.Stick([path.Bend(0.2, t, 0.5, 0.1) for t in (0.0, 0.5, math.pi, -1.0, 0.0)], 0.2)
    forward = words_of(stick_drawing.stick(stick.lay_out(made, stick.Die(0.1)), 0.03, title="t", set_to=["x"] * 5))
    told = [
        w
        for w in forward
        if "turn" in w or "clockwise" in w.split() or w.endswith("counter-clockwise") or w == "start here"
    ]
    labels, told = told[:-5], told[-5:]  # those over the stick, then the table
    assert sorted(labels) == ["no turn", "start here", "turn 180 deg", "turn 28.5 deg cw", "turn 57.5 deg ccw"]
    assert told == ["start here", "28.5 deg clockwise", "half a turn, 180 deg", "57.5 deg counter-clockwise", "no turn"]


def test_a_flat_tube_shows_its_true_shape_in_its_own_plane():
    points = [(0, 0, 0), (0.3, 0.3, 0.1), (0.9, 0.3, 0.5)]
    made, pose = path.from_points(points, 0.05)
    right, up = tube_drawing.true_plane(path.path(made, pose))
    assert path.dot(right, up) == pytest.approx(0, abs=1e-12)
    across = path.cross(right, up)
    for p in points:
        assert path.dot(p, across) == pytest.approx(0, abs=1e-12)


def test_each_obstacle_has_its_letter_and_its_gap_in_the_list():
    _, line = _kick_up()
    things = [
        obstacle.Obstacle("exhaust", (0, 0, 4 * INCH), (1.5 * INCH, 1.5 * INCH), 0.2, round=True),
        obstacle.Obstacle(
            "tray", (0, 8 * INCH, 12 * INCH), (2 * INCH, 1 * INCH), 0.1, gap="gap 2 in; 1 in after movement"
        ),
    ]
    text = tube_drawing.finished(line, 1.75 * INCH, title="t", obstacles=things)
    assert_prints(text)
    words = words_of(text)
    assert words.index("exhaust") < words.index("gap 3/4 in") < words.index("tray") < words.index("gap 2 in")
    assert "1 in after movement" in words
    assert (words.count("A"), words.count("B")) == (3, 2)  # the legend shows an A too


def test_a_mark_is_labelled_over_the_stick_with_what_to_set_and_how_to_turn():
    made, _ = _kick_up()
    got = stick.lay_out(made, stick.Die(5 * INCH), datum="start", step=INCH / 32)
    words = words_of(stick_drawing.stick(got, 0.04, title="t", set_to=["47 deg", "48 deg", "49 deg", "50 deg"]))
    for angle in ("47", "48", "49", "50"):
        assert f"set {angle} deg" in words
    assert words.count("turn 180 deg") == 2
    assert words.count("start here") == 2  # over the stick and in the table


def test_the_number_of_a_bend_and_the_order_of_the_work_are_told_apart():
    """Bends in circles, the order as 1st, 2nd, over the stick and in the table; the legend says which is which."""
    made, _ = _kick_up()
    got = stick.lay_out(made, stick.Die(5 * INCH), datum="centre", step=INCH / 32)
    text = stick_drawing.stick(got, 0.04, title="t", set_to=["47 deg"] * 4, datum="CENTRE LINE")
    words = words_of(text)
    assert [words.count(w) for w in ("1st", "2nd", "3rd", "4th")] == [3, 2, 2, 2]
    for number in range(1, 5):
        assert words.count(str(number)) == (3 if number == 1 else 2)  # the legend shows a 1 too
    for said in ("bend, numbered from the START", "order of bending", "where the tube bends"):
        assert words.count(said) == 1
    assert "trim: cut off after bending" not in words
    # the table's rows: first, second ... each beside the bend that the layout does then
    root = list(ET.fromstring(text).iter())
    rows = [[e.get("x"), float(e.get("y")), e.text] for e in root if e.tag.endswith("text")]
    firsts = sorted((y, t) for x, y, t in rows if x == "10" and t.endswith(("st", "nd", "rd", "th")))
    bends = sorted((y, t) for x, y, t in rows if x == "31")
    assert [t for _, t in firsts] == ["1st", "2nd", "3rd", "4th"]
    assert [int(t) for _, t in bends] == list(got.order)
    assert [y for y, _ in firsts] == [y for y, _ in bends]


def test_the_legend_of_a_finished_tube_names_only_what_is_drawn():
    _, line = _kick_up()
    pipe = obstacle.Obstacle("exhaust", (0, 0, 4 * INCH), (1.5 * INCH, 1.5 * INCH), 0.2, round=True)
    bare, full = (words_of(tube_drawing.finished(line, 1.75 * INCH, title="t", obstacles=o)) for o in ((), (pipe,)))
    assert "bend, numbered from the START" in bare
    assert "must clear; arrows show the gap" not in bare
    assert {"must clear; arrows show the gap", "pipe, cut across"} <= set(full)


@pytest.mark.parametrize("count", [1, 4, 12])
def test_the_order_sheet_has_every_step_and_its_drawing_on_one_page(count):
    made = path.Stick([path.Bend(0.12, 0.7 * i, 0.6, 0.1) for i in range(count)], 0.3)
    line = path.path(made)

    def drawing(width, height):
        frame = tube_drawing.Frame(width, height, width, 4.0)
        return tube_drawing.finished(line, 0.038, title="part", frame=frame)

    rows = [("STEP", "STRAIGHT", "TURN", "BEND"), *[(f"step {n}", "a", "b", "c") for n in range(count + 1)]]
    text = order_sheet.order_sheet("part", [("tube", "x"), ("date", "")], rows, drawing, ["note one", "note two"])
    root = ET.fromstring(text)
    assert (root.get("width"), root.get("height")) == ("190mm", "259mm")
    words = words_of(text)
    assert all(f"step {n}" in words for n in range(count + 1))
    assert "FROM THE REAR" in words
    sizes = [float(s) for s in re.findall(r'font-size="([0-9.]+)"', text)]
    assert min(sizes) >= svg.LEAST
    (nested,) = [e for e in root if e.tag.endswith("svg")]
    top = float(nested.get("y"))
    assert nested.get("viewBox").split()[2:] == [nested.get("width"), nested.get("height")]  # not made smaller
    last = max(float(e.get("y")) for e in root if e.tag.endswith("text") and (e.text or "").startswith("step"))
    notes = min(float(e.get("y")) for e in root if e.tag.endswith("text") and (e.text or "").startswith("note"))
    assert last < top
    assert top + float(nested.get("height")) < notes


def overprinted(text):
    """Pairs of upright texts whose places overlap."""
    boxes = []
    for e in ET.fromstring(text).iter():
        if not e.tag.endswith("text") or e.get("transform") or not e.text:
            continue
        size = float(e.get("font-size"))
        wide = svg.text_width(e.text, size, bool(e.get("font-weight"))) * 0.9
        left = float(e.get("x")) - {"start": 0.0, "middle": wide / 2, "end": wide}[e.get("text-anchor")]
        boxes.append((left, left + wide, float(e.get("y")) - 0.7 * size, float(e.get("y")), e.text))
    return [
        (a[4], b[4])
        for i, a in enumerate(boxes)
        for b in boxes[:i]
        if a[0] < b[1] and b[0] < a[1] and a[2] < b[3] and b[2] < a[3]
    ]


@pytest.mark.parametrize("count", [1, 2, 4, 8, 12])
@pytest.mark.parametrize("datum", ["start", "centre"])
def test_no_text_of_the_stick_stands_on_another_and_none_is_too_small(count, datum):
    bends = [path.Bend(0.11, 2.155 * n, 0.7955, 0.1) for n in range(count)]
    made = path.Stick(bends, 0.2)
    layout = stick.lay_out(made, stick.Die(0.1), trims=(0.0254, 0.0254), datum=datum, step=INCH / 32)
    text = stick_drawing.stick(layout, 0.0445, title="hoop " * 30, set_to=["45.5 to 46.5 deg?"] * count)
    assert overprinted(text) == []
    sizes = [float(s) for s in re.findall(r'font-size="([0-9.]+)"', text)]
    assert min(sizes) >= svg.LEAST
    assert_prints(text)


def test_a_long_text_is_made_to_fit_and_never_too_small():
    page = svg.Page(100, 50, "t")
    page.fit((10, 10), "word " * 60, 5, 80)
    (text,) = (e for e in ET.fromstring(page.svg()).iter() if e.tag.endswith("text"))
    assert float(text.get("font-size")) == svg.LEAST
    assert svg.text_width(text.text, svg.LEAST) <= 80
    assert_prints(page.svg())
