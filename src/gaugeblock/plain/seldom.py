"""Sayings that are read where a line has a piece of one: what is seldom said costs the other lines no time."""

from __future__ import annotations

from gaugeblock.answer.patterns import compiled
from gaugeblock.answer.wing import loaded

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    Sayings = tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...]

# A module of sayings and the cues of all of them: those that go before the others, and those behind them.
FIRST: dict[str, str] = {
    "taken": " no |sorry|i mean|nope| nah|make that|make it|or rather|correction|scrub that|hang on|hold on",
    "compared": (
        "way round|way around|way about|dot|six o|six zero|five o|five zero|tee|one |two |says|marked|stamped|reads|"
        "die|former|clr|radius|and a half by |and a half x |gallon|kilo something|"
        "dont |don't |do not |before|sooner than|earlier than|later than"
    ),
    "bolted": (
        " mill|four forty|six thirty two|eight thirty two|ten twenty four|ten thirty two|twelve twenty four|"
        "inch eight|inch twelve|inch fourteen|inch 8|inch 12|inch 14|two |four |six |eight |ten |twelve |"
        "sixteen |coarse |fine | off|nuts are|nut is|unions are|union is|fittings are|fitting is|doing |"
        "first | rounded|one of the |two of the |three of the |four of the |some of the |couple of the |pull|"
        "rip|strip|tear|a2|a4|a2-|a4-|bearing cap|one inch|last job| coarse | fine | pitch|fine pitch|"
        "coarse pitch|zinc|mag|mags|imperial |fractional |only |grade|strength class| marks| markings| heads|"
        " head | numbers| lines|go in|goes in|fit|screw in|screws in|same|interchang|close|near|"
        "the same size|nearest|closest|equivalent|can i use|coil| year|finer|coarser|half u|quarter u"
    ),
    "sized": (
        "tpi|an inch|per inch|to the inch|same|not coarse|not a coarse|not fine|not a fine|not the coarse|not the fine"
        "|fine |coarse |found | in iron| in cast| in al| in mild|"
        " in steel| in brass|stick|fine thread|coarse thread| newtons|wheel speed"
    ),
    "fasteners": (
        "and a half|and half|and a quarter|and three quarter|in inch|in mm|in metric|in imperial|in millim"
        "|to mm|to inch|to metric|to imperial|to millim| - "
        "| m10| m12| m14| m16| m20| m5| m6| m8| pitch"
        "|-nine|10.9s|12.9s|as strong as|beats|"
        "better than|between |british |brittle|clamp|clutch cover|coarse |eight |eight-eight|eights|"
        "equal|equivalent|fine |five |four |get in|half an inch|how hard|in place of|instead of|line|"
        "line nut|locker|m10s|m12s|m14s|m16s|m20s|m5s|m6s|m8s|metric |nines|no |no room|no torque wrench|"
        "not npt|not the|nylo|opening|pipe nut|pommy|pressure plate|rather than|replac|same as|set|six |"
        "still |stronger than|swap|ten |three |through |to replace|tube nut|twelve |two |unmarked|"
        "way around|way round|weaker than|wet or dry|dry or wet"
        "|two and a half|tapped |hot side|retorque|re-torque|retighten|re-tighten|on the wall"
    ),
    "piped": (
        " eighty three | forty nine | h1| ninety five | one eighty eight | one fifty six |"
        " one thirty four | one twenty | seamless| sixty five | thirty five | twenty eight | two fifty |'|"
        "' |affected|an inch|an-10|an-12|an-16|an-3|an-4|an-5|an-6|an-8|an10|an12|an16|an3|an4|an5|an6|an8|"
        "by eighty three|by forty nine|by ninety five|by one eighty eight|by one fifty six|"
        "by one thirty four|by one twenty|by sixty five|by thirty five|by twenty eight|by two fifty|feet |"
        "foot |ft |haz|in place of|instead of|mouth|mtr|rather than|same |swap|the crank|the engine|"
        "the fly|weld|x eighty three|x forty nine|x ninety five|x one eighty eight|x one fifty six|"
        "x one thirty four|x one twenty|x sixty five|x thirty five|x twenty eight|x two fifty"
    ),
    "tubed": (
        " wall| rad|one ten|one eleven|one twe|one thir|one fort|one fourt|one fift|one sixt|one seven|"
        "one eight|one ninet|vee| alum| stainless| ally|etre by|etre x|eter by|eter x|mandrel|minus |inch n |"
        "inch 'n|inch n'|inch half|inch quarter|inch three|inch five|inch seven|inch one eighth|inch eighth|"
        "eighth inside|eighth internal|eighth inner|eighth bend|eighth rad|eighths inside|eighths internal|"
        "eighths inner|eighths bend|eighths rad|quarter inside|quarter internal|quarter inner|quarter bend|"
        "quarter rad|sixteenth inside|sixteenth internal|sixteenth inner|sixteenth bend|sixteenth rad|"
        "sixteenths inside|sixteenths internal|sixteenths inner|sixteenths bend|sixteenths rad|4130n|4130 n |"
        "4130-n| 120| 134| 156| 188| seven five| two five| six two five| three seven five| eight seven five|"
        "one three four|one two zero|one two oh|one five six|one eight eight|@|zorst|or not|inch and a|"
        "inches and a|inch and "
    ),
    "tubing": (
        " alum| as big as| as free as| as good as| as much as| cylinders| galv| or | plate| short|"
        " stainless| steel and al| swg|-plate|0x|1x|2x|3x|4x|5x|6x|7x|8x|9x|an inch|bigger|"
        "boot|boots|cope|curve|dodge|dodging|er and a half|er than|fives|foot and a half|from |heavier|"
        "inch and |left over|length of|mouth|n bend|nb|no room to |not enough|notch|pin b|re and a half|right|"
        "saddle|same|shield|side at|side is|side of|side one|side three|side two|square bend|thicker|"
        "thinning|though |ties|turbo|u bend|u-bend|x.|x0."
    ),
    "numbers": (
        " a piece| apiece| axle| diff| each| final| five | gear| oh | pitch| ratio| rear| ring| ten|-oh |-ten|"
        "0 w |0s|0w |1 w |1s|1w |2 w |2s|2w |3 w |3s|3w |4 w |4s|4w |5 w |5s|5w |6 w |6s|6w |7 w |7s|7w |8 w |8s|"
        "8w |9 w |9s|9w |by one|celsius|centigrade|degree|een|eight point eight|eighth|eighty five|eighty seven|"
        "eighty six|eleven|fahrenheit|fifteen |four oh nine|grade eight |grade five |grade two |half a |pair |"
        "pair of|r 1|r 2|r1|r2|sixteenth|three oh four|three sixteen|three twenty one|twelve|ty|ty |ty-|v |w x|"
        "watt|watt x|watts x"
        "|piston|5/3|5/4|5/5|5/6|5/7|5/8|0/3|0/4|0/5"
    ),
}
LAST: dict[str, str] = {
    "paired": (
        "drill and |drill n |hole and |hole n |bit and |bit n |size and |size n |torque and |torque n |"
        "torques and |torques n |figure and |figure n |setting and |setting n |spec and |spec n |tight and |"
        "tight n |spanner and |spanner n |spanners and |spanners n |socket and |socket n |sockets and |"
        "sockets n |wrench and |wrench n |deep and |deep n |thread and |thread n |engagement and |"
        "engagement n |far in and |far in n |depth and |depth n |and how much thread|what spanner|"
        "what socket|what wrench|which spanner|which socket|which wrench"
    ),
    "geared": (
        "en8|en16|en19|en24|en 8|en 16|en 19|en 24|m40|m36|compound| thou| 1000| 1,000| 1k|four one three oh|"
        "four one three zero|four one four oh|four one four zero|four three four oh|four three four zero|"
        "eight six two oh|eight six two zero|nine three one oh|nine three one zero|three hundred m|300 m|"
        "metre and|meter and|uni|and half|one ten|one fifteen|one twenty|one thirty|one forty|one fifty|"
        "one sixty|one seventy|one eighty|one ninety|vickers |brinell |hv |bhn |hb |diff|axle|rear end|"
        "final drive|threes|fours|fives|sixes|sevens|eights|nines| k | ratio| diff| axle| cwp| crown|"
        " rear end| final drive|ring and| first| second| third| 1st| 2nd| 3rd| low gear|grand|ten fifty|"
        "eleven fifty|twelve fifty|thirteen fifty|.50 |.5 |.50-|.50/|.5-|.5/|prop|shaft|rpm |speedo|"
        "third being|clicks|x.|x0.| set|n't |nt whirl|nt whip|nt vib| not |n't twist|worth|seal|how much |"
        "cert|nothing about|i count on|weld|thin wall|cheapo|call that what|or out|or is it|plus |minus |"
        "ing a "
    ),
    "fits": "through|clearance|ninety|one forty",
    "turned": " 4 | or |how much stronger|how much weaker|"
    " instead|in mil|not |mic|nb| k |k's|hour|kays|half thousand|rubber|hottest",
    "wired": (
        "ught| or |mil square|mils square|mill square|mil-square|mm square|mm-square|sq mil|sq. mil|sqmil|"
        " square|twin |dual |hundred |cranking amps|keeps |everything |pair of |two |both |three |four |"
        "between |combined|all up|light|lamp|bulb|globe|tre of |tres of |ter of |ters of |m of | cranking|"
        "spotties|b&s|b & s|b and s|b n s|starter |winch "
        "|start|inrush|surge|turn on|turn-on|switch on|switch-on|not sure|unsure|know|no idea|no clue"
        "| twin|pair|x2|x 2|twin"
    ),
    "lines": (
        "pivot| aren't | in bump| in droop| in full bump| is it going to | is not | isn't | isnt | mill |"
        " will not | won't | wont |ain|before it |droop|eighths twenty four|hills|lock|master cylinders|"
        "masters|mushroom|not metric|same size|silicone |ten by one|ylene"
        "|a mil|a mm|of a mil|of a mm|ty forty|ty sixty|ty thirty"
        "|ty seventy|ty-forty|ty/forty|ty/sixty|ty-sixty| wrong|how hot |slave travel|slave movement|slave throw"
        "|crank h|flywheel h|engine h|brake h|crank k|flywheel k|engine k"
        "|i set |set them |set mine |gapped "
        "|not 5.1|not dot 5.1|not dot5.1|yes/no|y/n|yes or no|pedal "
    ),
}


def seldom_said(text: str, modules: dict[str, str]) -> str:
    """A line with the sayings of those modules of which it has a piece."""
    for name, pieces in modules.items():
        if any(piece in text for piece in pieces.split("|")):
            text = said(text, sayings_of(name))
    return text


def said(text: str, sayings: Sayings) -> str:
    """A line with what these sayings write for it."""
    padded = f"{text} "  # so that a cue may end where a word does
    for cue, pattern, shown in sayings:
        if cue in padded:
            text = compiled(pattern).sub(shown, text)
            padded = f"{text} "
    return text


def sayings_of(name: str) -> Sayings:
    """The sayings of a module that is read where they are needed."""
    module = loaded(f"gaugeblock.plain.said.{name}")
    return module.SAID  # type: ignore[no-any-return]
