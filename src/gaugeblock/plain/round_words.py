"""Words of a shop as they stand round a question: those that may be left out, and those that never are."""

from __future__ import annotations

# Parts, cars, tools and doings: where nothing reads such a word, and the question is whole without it, it tells what
# the question is for.
_ROUND = """
accessories airbox alternator amplifier analyser apex apron arch arches arm arms assembly backplate ball balljoint
balancer barrel bars bearings bellhousing bell belts blade blades bleeder blower boot bonnet bottle bracing
brake brakes breather bulkhead bushes bushing bushings cab cables caliper calipers cam cams camshaft canister carb
carbs carburettor carburetor carrier casing chassis chain clutch collector column compressor conrod conrods console
converter coolers crank cranks crankcase crankshaft crossways cylinders dampers decklid demister dial differential
discs dizzy distributor downpipe downpipes driveline driveshaft driveshafts drums dyno ecu elbow extractors fan
fans filter fitting fittings flange flanges flywheel forks fuselage gauge gauges gearbox gearboxes glovebox
governor halfshaft halfshafts handbrake harness header headers headlamp headlamps headlight
headlights heater hinge hinges hitch hoses housing hub hubs hump hydraulics ignition indicator injector injectors
intercooler jack jacks jig joints keyway knuckle ladder lamp lamps latch leads lever lifter lifters light lights
linkage loom looms lug lugs manifold manifolds mast mirror muffler mufflers neck nose paddock pads
patch pedal pedals pickup pipes pipework piston pistons plumbing pod press pulley pulleys pump pumps punch pushrod
radiator radio rear regulator relays rim rims rings rivets rocker rockers rod rods rollcage rotor rotors saddle
seats sedan sender sensor sensors servo shafts shackle shackles shell shims shock shocks silencer silencers
sill sills skid skin solenoid spindle spring springs sprocket stand starter steering stereo strainer stripe strut
struts stub sump supplier suspension switches tachometer tailgate tailpipe tailpipes tailshaft tank tanks tappets
tee thermostat throttle throttles thermometer tiller tooling torch track trailer trailers transfer trim trolley
truss tunnel turbo turbos tyre tyres valve valves vent wagon welder welds wheel wheels wheelbase winch
wing wings wiper wipers wishbone wishbones workshop yoke yokes paper plumbing puking silencer spewing supplier

ache aching bend broke cracking cracked crossing crosses dripping driving fitted fits flex flung
grinding leaks leaking lifted lost measured mending moved moving overhaul overhauled passes passing pulled
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
# A metal, a finish, a form, a standard, a state, a count: of the thing itself. The line is refused.
_CHANGING = """
acetal acme aeroplane aircraft airplane alcohol alloy aluminium aluminum american annealed anodised anodized
aviation ba bent billet biodiesel blued boat boosted booster both braided brass british bronze bsc bsf bspp bspt
bsw burst buttress cadmium carbide carbon cast castellated cei ceramic chased chinese chrome chromed coated
composite continuous copper corroded damaged damp dampened diesel dipped double doubled dozen drawn drilled dual
duals e85 each electric erw ethanol european external extruded fiberglass fibre fibreglass flanged forged french
frosty galled galvanised galvanized german graphite grease greased ground half hardened heaviest helical hex
hexagonal hollow honed horizontal hybrid hydrogen icy imperial inconel industrial inner innermost inrush inside
insulated intermittent internal iron italian japanese kerosene knurled lacquered lead least lefthand lightest lined
lithium loosest lubed lubricant lubricated machining magnesium maraging marine max maximum methanol metric military
min minimum moist moly momentary monel most muddy necked nickel nitronic nitrous normalised normalized nylon
octagonal outer outermost outside oval painted pair pairs parallel peak peened phosphated pitted plastic plated
polished polyester powdercoated pressurised pressurized proof ptfe quad race racing railway rectangular recut
reduced reground retapped reused reverse reversed rolled rubber russian rust rusted rusty safest sandy sealant
sealed sealer seamed seamless secondhand seized several sheathed shield shielded shouldered silicone silver slotted
soaked soaped softened splined split square steel sticky stretched stripped supercharged surge swedish tacky
tapered tempered thickwall thinwall threadlocked thrice tightest tin titanium trapezoidal triple triples tungsten
turbocharged twice twin twins ultimate unlined unvented vented ventilated vertical waisted water waxed welded
wetted whitworth wood wooden working worn wrapped zinc
"""
CHANGING = frozenset(_CHANGING.split())
# With what a figure is asked: of a second one nothing is left out.
_ASKED = """
angle backlash boil boils boiling bore burn deep depth diameter drill drop emissivity engagement flare force freeze
freezes fuse gap hanger hangers hardness heat height length mass melt pitch preload pressure radius ratio revs rpm
spacing speed strength swell temperature thick thickness thread threads tight tighten torque volts voltage wall
weigh weighs weight wide width wire yield yields
"""
ASKED = frozenset(_ASKED.split())
