"""What the rules say of a line, as its Answer: of all its words, of the first of two questions, of most of it; and who
has what no table is about.
"""

from __future__ import annotations

from gaugeblock.answer.wing import loaded
from gaugeblock.plain.given import Answer

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.found import Found
    from gaugeblock.plain.reading import Reading
    from gaugeblock.tables.load import Refdata


# A module of subjects, and the pieces of which one stands in every line of its subjects, so that no pattern of one is
# made in vain; in this order.
_MODULES: tuple[tuple[str, str], ...] = (
    (
        "axles",
        "spread heating heat_a heat_the heat_my oven warm_ 8620 9310 en36 en_36 1018 1020 pattern marking "
        "contact phase phasing which_way clocked line_up lined_up lining_up in_line crush collapsible "
        "quarter_turn cord string rope spring_balance scale seal gears gear_set gearset old_r used_r same_r "
        "old_crown same_crown yoke slip 0_deg zero no_angle no_working nought straight"
        " weak root_or or_root body_or or_body splined_"
        " phased clocking yokes front_wheel front_hub front_taper taper_roller",
    ),
    (
        "general",
        "thin setback springback rocks nitrile nbr buna epdm fkm fpm fluor silicone chang clip clamp braid o2 oxygen"
        " lambda band hot temp glow dot mix top weld washer sleeve spacer slip whit bsw bsf 0ba 1ba 2ba 3ba 4ba 5ba"
        " 6ba 7ba 8ba 9ba torch flame heat red wrap hose clutch r0 r1 r2 r3 r4 r5 r6 r7 r8 r9 primar coolant freeze"
        " brak tank drum cca copper_clad copper-clad key rivet relay what_tap which_tap taps_what what_thread_for",
    ),
    (
        "tubes",
        "setback springback thins thinner rocks sleeve slip lead boot set_back spring_back springs_back bend_thin"
        " thin_the thin_out bolted_up cage roll_bar rollbar roll_hoop shoe pipe_die"
        " pipe_former pipe_bender bent_again bent_it rebend re-bend straighten bend_it_again",
    ),
    (
        "shop",
        "coarse nut_or or_nut or_the_nut threadlock locking_c what_grade which_grade what_class which_class grade_bolt"
        " grade_of grade_for what_bolts which_bolts"
        " bolts_for equiv same_as nearest closest metric clr radius kink wrinkl collaps"
        " plate gusset bracket tab_ hole spacing apart thread melt hose engine_bay bonnet hood exhaust muffler silencer"
        " tail_pipe tailpipe mix ratio pressure psi bar",
    ),
    (
        "lines",
        "37 bubble ring seal 3/8-24 e85 e-85 e_85 ethanol methanol flex_fuel"
        " clip clamp support secur fasten fixing saddle bracket alumin ally alloy",
    ),
    (
        "wiring",
        "clip clamp tie support secur relay solder crimp fus batter alternator dynamo charg crank start terminal cca"
        " idl zip volt drop connector colour color british english bs_au how_many how_much what_amp what_current"
        " current_draw"
        " amps_do house mains solid domestic extension_cord lamp_cord tinned",
    ),
    (
        "bolts",
        "crow nyl tap_ change_t change_the alter affect lowers lower_the reduces reduce_the matter"
        " plug flange red_or blue_or ng_washer split_washer lock_washer lockwasher star_washer recheck re-check retorq"
        " re-torq retight re-tight over_the_wheel over_the_lug check_the_wheel check_wheel seized seizes seizing"
        " seize_up gall stretch tty to-yield to_yield goes_below go_below in_its_place in_their_place a2- a4-"
        " stainless use_it big_torque the_big of_its_range of_the_range closer closest accura scatter proof spanner"
        " which_socket what_socket which_wrench what_wrench wrench_what wrench_which flats snap break yield shear fail"
        " lets_go jam_nut"
        " size_socket size_wrench socket_size wrench_size"
        " past_a past_the past_nut showing stick_out sticking"
        " thin_nut thin_jam half_nut castle cotter split_pin wheel_nut lug_nut wheel_bolt wheel_stud plastic nylon"
        " acetal fibreglass fiberglass bsp",
    ),
)


# The same of what is explained; of these a line has a thing too.
_EXPLAINED = (
    "_15 _16 _20 _spin _tag _ton -15 -16 2-piece 3s_ 5s_ 7s_ best_steel best_tub big_ bigger_ "
    "carrier_bearing center_bearing centre_bearing clutch constant core cover cv depth differs do_for "
    "double_cardan double-cardan drive_gear driven_gear enough fifteen file find flex gps h_900 h1025 "
    "h1100 h6 h7 h8 h9 halve hanger_bearing how_bent how_true hub huge_ in_place_of inch_tires inch_tyres "
    "instead_of interference larger_ limited_slip locked_diff locker locking long_axle long_one long_shaft "
    "longer lsd one_side open_diff order oversize_ pay_for pinion_height plung power_take press pto r15 "
    "r16 r20 run_out run-out runout same_side sat_nav satnav sequence short_ shorter shrink shrunk sixteen "
    "skin speedo_gear speedometer_gear spool spring spun stand_in_for steady_b step_by_step stiff straight "
    "stub_axle substitut taller_ taper teeth thread_lock threadlock tonnage tooth_drive tripod twist "
    "two-piece uneven variation varies vary what_material what_steel what_steps what_tub what_way "
    "wheel_bearing which_material which_side which_steel which_tub which_way wind worth"
)
_THINGS = (
    "shaft axle prop diff pinion gear spline ring tyre tire crown joint lash file hous ratio cv wheel r16 "
    "r15 hub press collar h7 h6 h8 crawler bearing dash gps 17-4 630 tall"
)


def subject_of(question: str, words: tuple[str, ...], data: Refdata) -> Answer | None:
    """The rules that say all of what a line is about; InputError for a line that is refused by name."""
    line = " ".join(words)
    if _has(line, _EXPLAINED) and _has(line, _THINGS):
        from gaugeblock.plain.explained.reading import explained

        found = explained(words, data)
        if found is not None:
            return Answer(f"a question of {found[0].title}{found[1]}", found[0])
    for name, pieces in _MODULES:
        if _has(line, pieces):
            told: Found | None = loaded(f"gaugeblock.plain.subjects.{name}").told(question, words, data)
            if told is not None:
                return Answer(f"a look through the rules for: {told.asked}", told)
    return None


def _has(line: str, pieces: str) -> bool:
    """Whether a line has one of the pieces; a blank of a piece is written as a line below."""
    return any(piece.replace("_", " ") in line for piece in pieces.split())


def rules_of(words: tuple[str, ...], data: Refdata, *, whole: bool = False) -> Answer | None:
    """The rules that have every word of a line; unless it has to be ``whole``, all but a place or a doing."""
    from gaugeblock.plain.ruled import ruled

    rules = ruled(words, data, whole=whole)
    return None if rules is None else Answer(f"a look through the rules for: {rules.asked}", rules)


def asked_for(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """The rules that answer a line which asks for no figure."""
    if "where" not in words and words[1:2] not in (("i",), ("you",), ("we",), ("it",)):
        return None  # without opening the rules
    from gaugeblock.plain.ruled import asks_no_figure

    return rules_of(words, data) if asks_no_figure(words) else None


def first_of_two(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """The rules that answer the first of two questions."""
    from gaugeblock.plain.beside import questions

    for head, rest in questions(words):
        rules = rules_of(head, data)
        if rules is not None:
            return rules.replace(read_as=f"{rules.read_as}; not answered: {' '.join(rest)}")
    return None


def nearly(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """The rules that have most of a line."""
    from gaugeblock.plain.ruled import nearest

    rules = nearest(words, data)
    return None if rules is None else Answer(f"a look through the rules for: {rules.asked}", rules)


def outside_of(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """Who has what is asked, where it is of a subject that no table is about; of some a rule says something."""
    from gaugeblock.plain.outside import by_rule, not_looked_at, outside

    found = outside(words, data)
    if found is None:
        return None
    sheet, known = found
    about = by_rule(words, sheet.title)
    rules = rules_of(about, data) if about else None
    if rules is None and about:  # of the first metal, and no rod that somebody has
        numbers = [word for word in about if word.isdigit()]
        about = ("filler", *(word for word in about if word != "filler" and word not in numbers[1:]))
        rules = rules_of(about, data)
    if rules is not None:
        more = not_looked_at(words, " ".join((known, *about)))
        return rules.replace(read_as=f"{rules.read_as}{more}")
    return Answer(f"a question of {sheet.title}{not_looked_at(words, known)}", sheet)


def with_guess(reading: Reading, got: Answer, data: Refdata) -> Answer:
    """A thread that was identified; with it the rule of the series that it was taken for, where rules alone have it:
    BSF, or what stands on an old British machine.
    """
    series = "bsf" if "bsf" in reading.values.get("guess", "") else ""
    if not series and "origin" in reading.values and "diameter" in reading.values:
        from gaugeblock import units

        across = units.parse_measure(reading.values["diameter"], "length", "diameter").to("mm")
        series = "ba" if across <= _MOST_BA_MM else "bsf"
    if not series:
        return got
    of = ("threads", "per", "inch") if series == "bsf" else ("tap", "drill")
    rules = rules_of(("british", series, *of), data)
    return got if rules is None else got.replace(more=(*got.more, rules))


_MOST_BA_MM = 6.1  # 0BA, the thickest
