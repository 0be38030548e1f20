"""Words of a shop as they stand round a question: those that may be left out, and those that never are."""

from __future__ import annotations

# Parts, cars, tools and doings: where nothing reads such a word, and the question is whole without it, it tells what
# the question is for.
_ROUND = """
accessories airbox cart carts combine drawbar
alternator amplifier analyser apex apron arch arches arm arms assembly backplate ball balljoint
balancer barrel bars bearings bellhousing bell belts blade blades bleeder blower boot bonnet bottle bracing
brake brakes breather bulkhead bushes bushing bushings cab cables caliper calipers cam cams camshaft canister carb
carbs carburettor carburetor carrier casing chassis chain clutch collector column compressor conrod conrods console
converter coolers crank cranks crankcase crankshaft crossways cylinders dampers decklid demister dial differential
discs dizzy distributor downpipe downpipes driveline driveshaft driveshafts drums dyno ecu elbow extractors fan
fans filter fitting fittings flange flanges flywheel forks fuselage gauge gauges gearbox gearboxes glovebox
governor halfshaft halfshafts handbrake harness header headers headlamp headlamps headlight
headlights heater hinge hinges hitch hoses housing hub hubs hump hydraulics ignition indicator injector injectors
intercooler jack jacks jig joints knuckle ladder lamp lamps latch leads lever lifter lifters light lights
linkage loom looms lug lugs manifold manifolds mast mirror muffler mufflers neck nose paddock pads
patch pedal pedals pickup pipes pipework piston pistons plumbing pod press pulley pulleys pump pumps punch pushrod
radiator radio rear regulator relays rim rims rings rivets rocker rockers rod rods rollcage rotor rotors saddle
seats sedan sender sensor sensors shafts shackle shackles shell shims shock shocks silencer silencers
sill sills skid skin solenoid spindle spring springs sprocket stand starter steering stereo strainer stripe strut
struts stub sump supplier suspension switches tachometer tailgate tailpipe tailpipes tailshaft tank tanks tappets
tee thermostat throttle throttles thermometer tiller tooling torch track trailer trailers transfer trim trolley
truss tunnel turbo turbos tyre tyres valve valves vent wagon welder welds wheel wheels wheelbase winch
wing wings wiper wipers wishbone wishbones workshop yoke yokes paper plumbing puking silencer spewing supplier

ache aching bend broke cracking cracked crossing crosses dripping driving fitted fits flex flung
grinding leaks leaking lifted lost measure measured measures measuring
mending moved moving overhaul overhauled passes passing pulled
pushing pushed quoted rattles reach reaches reaching rebuilt refit refitted removing repair repaired repairing
replace replaced replacing rocking rocks routed routing runs running scraping scrapped sheared shook
shortened snapped snapping spinning spins swapped swapping taking towing tows turned turns twisted upgrade
weeping worried
"""
ROUND = frozenset(_ROUND.split())
# Where a thing is or how one came by it; before a number a limit.
_PLACES = """
above across apart along always around away before behind below beside between down even ever every first
front last left lost near once only over place possible rear right same some sort top under upper lower
very up way
young great true wild useful usual early final fresh rare wrong worse nice set special together after below
"""
PLACES = frozenset(_PLACES.split())
# Of a bolt they say how it is; of other things nothing.
OF_A_BOLT = frozenset(["old", "plain", "big", "little", "wet", "new"])
# What a word may change of a figure, by its kind: of a question whose answer a kind can move, such a word is never
# left out, and the line is refused. ``Topic.unmoved`` names the kinds that cannot move an answer.
_CHANGING = {
    "metal": """
acetal alloy aluminium aluminum brass bronze carbide carbon ceramic composite copper fiberglass fibre fibreglass
inconel iron lead lithium magnesium maraging monel nickel nitronic nylon plastic polyester ptfe rubber silicone
silver steel tin titanium tungsten wood wooden zinc
""",
    "finish": """
anodised anodized blued cadmium chrome chromed coated damp dampened dipped frosty galvanised galvanized graphite
grease greased icy lacquered lubed lubricant lubricated moist moly muddy painted phosphated plated polished
powdercoated sandy sealant sealed sealer soaked soaped sticky tacky threadlocked water waxed wetted
""",
    "state": """
annealed burst chased corroded damaged galled hardened honed loosest machining normalised normalized peened pitted
recut reduced reground retapped reused rust rusted rusty secondhand seized softened stretched stripped tempered
tightest worn
""",
    "form": """
acme bent billet braided buttress cast castellated continuous drawn drilled erw extruded flanged forged ground
helical hex hexagonal hollow horizontal insulated knurled lined necked octagonal oval rectangular rolled seamed
seamless sheathed shield shielded shouldered slotted solid splined split square stepped tapered thickwall thinwall
keyed keyway keyways notch notched grooved
trapezoidal unlined unvented vented ventilated vertical waisted welded wrapped
""",
    "side": """
slope slopes sloping sloped slant slants tipped tips tilted tilts
external inner innermost inside internal lefthand outer outermost outside range reverse reversed
""",
    "standard": """
american ba british bsc bsf bspp bspt bsw cei chinese european french german imperial italian japanese metric
russian swedish whitworth
""",
    "count": """
both double doubled dozen dual duals each half heaviest highest inrush intermittent least lightest max maximum min
minimum momentary most pair pairs parallel peak proof quad safest several surge thrice triple triples twice twin
twins ultimate
""",
    "service": """
aeroplane aircraft airplane alcohol aviation biodiesel boat boosted booster diesel e85 electric ethanol hybrid
cyclic fatigue impact loading
hydrogen industrial kerosene marine methanol military nitrous pressurised pressurized race racing railway
supercharged turbocharged working
""",
}
BY_KIND = {kind: frozenset(words.split()) for kind, words in _CHANGING.items()}
METALS = BY_KIND["metal"] | {"stainless", "mild", "cast", "alu", "ally"}
CHANGING = frozenset[str]().union(*BY_KIND.values())
# The kind of the words of everyday speech that say how a thing is: hard, short, soft. Those that count are of none.
QUALITY = "quality"
_COUNTING = """
both cold double each empty equal even every extra few first full half high hot last least less level low lower many
more most once only open pair quarter same second several single third top total twice upper whole
"""
COUNTING = frozenset(_COUNTING.split())
# They multiply a figure, or share it out.
_MANY = """
both couple double doubled dozen dual duals each equal every extra half least less lots more most pair pairs per
quarter quad several share shared single third thrice total triple triples twice twin twins
"""
MULTIPLE = frozenset(_MANY.split())
# With what a figure is asked: of a second one nothing is left out.
_ASKED = """
angle backlash boil boils boiling bore burn deep depth diameter drill drop emissivity engagement flare force freeze
freezes fuse gap hanger hangers hardness heat height length mass melt pitch preload pressure radius ratio revs rpm
spacing speed strength swell temperature thick thickness thread threads tight tighten torque volts voltage wall
weigh weighs weight wide width wire yield yields
compare compared comparing comparison difference
area camber caster circumference conductivity density ductility elongation endurance expansion flash freezing
melting modulus rating resistance stiffness toe viscosity
fail rupture shear shears snap stretch strip
"""
# How a thing fails is a question of its own, and of two that are told apart neither is left out.
NEVER_LEFT = frozenset(
    ["buckle", "buckles", "buckled", "buckling", "collapse", "collapses", "deflect", "deflects", "deflection", "than"]
)
ASKED = frozenset(_ASKED.split()) | NEVER_LEFT
