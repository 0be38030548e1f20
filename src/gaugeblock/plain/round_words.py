"""Words of a shop as they stand round a question: those that may be left out, and those that never are."""

from __future__ import annotations

# Parts, cars, tools and doings: where nothing reads such a word, and the question is whole without it, it tells what
# the question is for.
_ROUND = """
accessories airbox alternator amplifier analyser apex apron arch arches arm arms assembly backplate ball balljoint
balancer barrel bars bearings bellhousing bell belts blade blades bleeder blower boot bonnet booster bottle bracing
brake brakes breather bulkhead bushes bushing bushings cab cables caliper calipers cam cams camshaft canister carb
carbs carburettor carburetor carrier casing chassis chain clutch collector column compressor conrod conrods console
converter coolers crank cranks crankcase crankshaft crossways cylinders dampers decklid demister dial differential
discs dizzy distributor downpipe downpipes driveline driveshaft driveshafts drums dyno ecu elbow extractors fan
fans filter fitting fittings flange flanges flywheel forks fuselage gauge gauges gearbox gearboxes glovebox
governor grease greasy halfshaft halfshafts handbrake harness header headers headlamp headlamps headlight
headlights heater hinge hinges hitch hoses housing hub hubs hump hydraulics ignition indicator injector injectors
intercooler jack jacks jig joints keyway knuckle ladder lamp lamps latch leads lever lifter lifters light lights
linkage loom looms lug lugs manifold manifolds mast mirror muffler mufflers neck nose paddock pads paint painted
patch pedal pedals pickup pipes pipework piston pistons plumbing pod press pulley pulleys pump pumps punch pushrod
radiator radio rear regulator relays rim rims rings rivets rocker rockers rod rods rollcage rotor rotors saddle
seats sedan sender sensor sensors servo shafts shackle shackles shell shield shims shock shocks silencer silencers
sill sills skid skin solenoid spindle spring springs sprocket stand starter steering stereo strainer stripe strut
struts stub sump supplier suspension switches tachometer tailgate tailpipe tailpipes tailshaft tank tanks tappets
tee thermostat throttle throttles thermometer tiller tooling torch track trailer trailers transfer trim trolley
truss tunnel turbo turbos tyre tyres valve valves vent wagon water welded welder welds wheel wheels wheelbase winch
wing wings wiper wipers wishbone wishbones workshop yoke yokes paper plumbing puking race silencer spewing supplier

ache aching bend bends broke cracking cracked crossing crosses dripping driving fitted fits flex flung greased
grinding leaks leaking lifted lost machined measured mending moved moving overhaul overhauled passes passing pulled
pushing pushed quoted rattles reach reaches reaching rebuilt refit refitted removing repair repaired repairing
replace replaced replacing rocking rocks routed routing runs running rust rusty scraping scrapped sheared shook
shortened snapped snapping spinning spins stripped swapped swapping taking towing tows turned turns twisted upgrade
weeping worried wrapped
"""
ROUND = frozenset(_ROUND.split())
# Where a thing is or how one came by it; before a number a limit.
_PLACES = """
above across apart along always around away before behind below beside between down each even ever every first
front last left lost near new once only over place possible rear right same several some sort top under upper lower
very up way
young great true wild total useful usual early final fresh rare wrong worse nice set special together after below
"""
PLACES = frozenset(_PLACES.split())
# Of a bolt they say how it is; of other things nothing.
OF_A_BOLT = frozenset(["old", "plain", "big", "little", "wet", "new"])
# A metal, a finish, a form, a standard, a state, a count: of the thing itself. The line is refused.
_CHANGING = """
ba bsf bsw bspp bspt bsc cei whitworth british imperial metric american european japanese german chinese swedish
italian french russian acme buttress trapezoidal helical tapered parallel lefthand reverse reversed titanium
magnesium zinc tin lead cadmium chrome chromed nickel copper brass bronze iron steel aluminium aluminum alloy
inconel monel nitronic maraging tungsten carbide silver plastic nylon wood wooden carbon fibre fiberglass
fibreglass ceramic rubber silicone kevlar composite acetal delrin bakelite polyester plated galvanised galvanized
coated lacquered phosphated blued anodised anodized powdercoated waxed soaped damp moist frosty icy muddy sandy
sticky tacky lubed lubricated lubricant soaked dipped dampened wetted moly graphite lithium ptfe teflon loctite
sealant sealer hardened softened annealed tempered normalised normalized forged cast billet machining rolled ground
polished honed hollow drilled waisted necked shouldered flanged castellated slotted splined split knurled reduced
stretched reused secondhand damaged bent worn corroded pitted stretched reground recut chased retapped helicoiled
double doubled twin twins dual duals pair pairs triple triples quad both twice half thrice dozen braided sheathed
insulated shielded lined unlined vented unvented ventilated sealed pressurised pressurized boosted supercharged
turbocharged nitrous methanol ethanol e85 alcohol diesel kerosene biodiesel hydrogen electric hybrid marine
aircraft aviation aeroplane airplane boat military railway industrial peak burst proof ultimate working
intermittent continuous momentary surge inrush vertical horizontal inside outside inner outer innermost
outermost external internal maximum minimum max min lightest heaviest safest tightest loosest least most thickwall
thinwall seamless seamed erw drawn extruded square rectangular oval octagonal hexagonal hex
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
