"""Words that say nothing about a number: a question keeps its meaning without them.

No word stands here that any vocabulary knows, and none that turns, narrows or doubts what another word says: ``not``,
``without``, ``used``, ``or``, ``stainless``. A test holds both.
"""

from __future__ import annotations

from gaugeblock.plain.everyday import is_everyday
from gaugeblock.plain.passing import is_in_passing

_CHATTER = """
a about actual actually advise again ahead all already also am amount an and answer any anybody anyone anything anyway
appropriate approx approximately are around as ask asking at away back ballpark basically be been before being bench
best bit bloody boss bother bro bud buddy build building built but by call called came can car cars certain chap chart
check checking cheers com come cooked correct could curious currently customer damn day dear did do does doing done
down dude each em er erm even everyday exact exactly fancy far fella figure figured figures find folks following for
forget forgot forgotten friend from front garage general generally get gets getting give given gives go goes going
gonna good got gotta guess guessing guy guys had handy happen happens happy has have having he hello help her here hey
hi him his hmm hold honestly hope hoping how howdy i i'd i'll i'm i've idea ideally if im in info into is it it'd
it'll it's its ive job joining just keep keeping kept kind kinda kindly know leave leaves leaving let let's like
likely list listen literally little look looked looking lookup lot m ma'am made make makes making man many mate may
maybe me mean means mind mister morning moving mr much must my myself name need needed needs normal normally now
number numbers obviously of off offhand oh ok okay on once one ones onto ordinary our out own per plan planning please
pls print probably problem project proper properly pull put puts putting question quick quickly quite quote real
really reckon recommend recommendation recommended remember remind require required requirement requirements right
roughly run running s said same sat say saying says see seems shall shop should show side simply sir sit sits sitting
so some somebody someone something somewhere sorry sort spanner spec specced specification specifications specs spot
standard start still stuff suggest suggested suppose supposed sure ta table take takes talking tell tells thank thanks
that that'll that's thats the their them then there there's theres these they they're theyre thing things think this
those
though thought time to today told tomorrow tonight too truck trunk try trying type types typical typically u uh uhh um
umm up upto ur us use using usual usually vehicle very wanna want wanted wants was we we'd we'll we're we've well were
what what'd what'll what're what's whatever whats when where where's wheres which while who will with wondered wondering
work working works would write y'all ya yeah yep yes you you'd you'll you're your yours
"""
_TURNING = """
aren't arent can't cannot cant couldn't couldnt didn't didnt doesn't doesnt don't dont except hadn't hasn't hasnt
haven't havent instead isn't isnt neither never no non none nor not or rather un unless versus vs w/o wasn't wasnt
weren't werent without won't wont wouldn't wouldnt
"""
# What a thing belongs to or sits on: where no answer reads such a word, it is left out, and said; beside a part it
# names
# another part, and the line is refused. None names a metal, a finish, a lubricant, a state or a service: those change a
# figure.
_PLACE = """
aftermarket another antique attachment auger backyard badge bag baler bay bays beds bicycle bike bodies booth bracket
brackets bucket buckets buggy bullbar bumper cabinet camera camper canopy caravan carriage ceiling chair coach
components console container conveyor corner cowl crate crossmember cruise cupboard dash dashboard desk different
digger doors drawer driver driver's drivetrain dumpster edge electric elevator engine entry estate excavator fence
fender fenders field firewall floor floorboard floors footwell forklift fourby frame framerail gate gearbox gokart
grain grass grille guns gutter handmade harvester helmet homemade hood hoods hut implement inboard instrument intake
interior kart kit lathe lawnmower loader located location locations lorries lorry machinery mailbox marker mating
middle mirrors mixer modified motor motorbike motorcycle motors mount mounted mounting mower mudflap mudguard noise
office other others outboard panels particular passenger passenger's patio pen pillar pit platform plough plow plowing
plus pocket porch portion positive powerplant powertrain pto quad racks rail railing rails ramp ramps ratchet rear
restomod road robot roof rug scooter shelf shelves sidecar sled sofa spade sprayer stairs stool stringer stuck
subframe system tent timing toolbox tower tractor tractors tranny trans transaxle transmission tree trolley tub
undercarriage underneath underside vice vise visor wheelbarrow wheelwell window windows windscreen windshield woods
"""
# Whom it is for, when, how one came to ask and what is done: left out and said, beside a part too, for no part is
# called
# by one.
_STORY = """

bakkie bakkies boet caravan coursework freezer fridge gday g'day he's helper howzit highway itll ja lekker lorry
motorhome mrs nobody recce scrutineer scrutineers shes she's theyll
they'll theyve they've tipper tourer youll youve you've he'd she'd they'd

'bout 'cause 'em 'til 1920s 1930s 1940s 1950s 1960s 1970s 1980s 1990s absolutely accelerate accelerating accept
accepted according achieve act acting adapt adapted adapting adjust adjusted admit admitted adventure afford afraid
afternoon afternoons afterward afterwards agree agreed aim aiming aka alas align aligning aligns allow allowed along
alright amateur amazed amazing angry announce annoyed annoying anxious anyhow apparently appear appeared appears
appreciate appreciated april arrangement arrive arrived asap asked asks assume assumed assuming assumption attach
attached attaches attaching attempt attempted attempting aunt auntie australian autumn await aware awesome awful baby
badly barn basic beast beater beautiful began begin beginner beginning begins begun believe believed bender's beneath
bet better bid bigger blame blew blowing bodyshop book books bored borrow borrowed bothered bothering bought bounce
bouncing bout boys bring bringing brings broke broken brother brothers brought browse browsed btw buddies buddy's
budget builds bump bumps bunch business busy buy buyer buying buys cabriolet cafe canadian car's care careful
carefully catching cause cautious century certainly chance chances cheap cheaper cheapest children choice choices
choose choosing chopper chose chosen christmas clank classic clearly clever client clients club clue clunk clunking
colleague comes comfortable comfy coming comment comments commute commuter commuting complain complaining complains
complete completed completely concern concerned confidence confident confirm confirmed confused confusing connected
connects consider considered considering convert converted convertible converting convinced cop cops copy correctly
cos coulda coupe coupes course cousin cousins coworker coz craft crap crawl crawling crawls crazy creak
creaking create cruiser cruisers cruises cruising custom cute cuz dad's daddy dads daft daily damned dare darn dates
daughter dealer dealership decade decades december decent decide decided deciding decision decisions definitely demand
depend depending depends describe described deserve design designed designing desperate details determine determined
diagnose diagnosed difference differently difficult dim disagree disaster discover discovered discuss discussed
discussion dismantle dismantled drawing drivable drive driveable drives driveway driving drove due dumb eager earlier
early easier easiest easily easter easy eat eats edition educated eighties elder email embarrassed ending engineer
engineers enjoy enough enter entire entirely equally escape especially essentially estimate estimates etc eternal
evening event eventual eventually evidence evidently examiner excellent excited excuse exist exists expect expected
expensive experience expert experts explain explained export extremely eyeball eyeballed fab fabbed fabricate
fabricated fabricating fabrication fabricator facebook facing failed failing fails fair fairly fall fallen falling
falls farm fastback fastened fastening father father's fathers favorite favourite fear february feed feeds feeling
feelings feels fellas felt fifties fill filled filling finalise finalize finally finding finds finicky finishing
fitment fix fixes fixing flatbed fleet folk follow followed followers follows fool fooling foolish foreign forever
forgetting forgive forth forties fortunately forum forum's forums fought found frankly freely friday friend's friends
frustrated frustrating fun funds funny further future fyi g'day gal gals garages gather gave gentleman gentlemen
genuine genuinely gimme girl girlfriend giving glad gloves goal goals gone goodness gosh gossip gotcha grab grabbed
grabbing grandad granddad grandfather grandma grandpa grandson grateful greatly grind grinding grinds group guards
guessed guesses guidance guideline guidelines guru guy's habit handed happened happening hardtop hassle hatch
hatchback hate hated headache heap hear heard hearing heck hell helped helpful helping helps hesitate hint history
hiya hobby hobbyist hoist holiday home homework homie honest hook hooked hooking hooning hop hoped hopefully hopeless
horrible horsing hotrod hotrods hour's house hubby huge hurry hurting husband i4 i6 ie ignorant imagine imagined imho
imo import important importantly imported imports impressed impression include included includes including incredible
indeed indicate indicated individually information initially innit insane insist insists inspector inspector's install
installation installed installing instance instruct instructed instruction instructions insurance intend intended
intending intention interest interested interesting internet introduce invest invoice involve involved involves issue
issued issues jalopy jeez jobs joined joke journey judge judging july jumped june justify keeps kick kid kidding kids
kitcar knew knocking knocks knowing knowledge known knows lad ladies lads lady landlord language lately later latest
laugh laughing lawn laying lazy leaked leaking learn learned learning learnt left-hand legend legit lemme lent lesson
letter library licence license liked likewise limo listed listening lists lives living loan local locally logic lol
looks lose loses losing lotta loud lousy love loved lovely lowered lowrider luck luckily lucky lunch machinist
magazine mail manage managed management manager march mates matey meaning meant meanwhile measured mechanic mechanic's
mechanics members mention mentioned mentions mentor mercifully mess message messed messing messy miserable misplaced
mock mocked mockup modding modification modifications modify mom moments monday money month months mot mother motorway
moved moves movie mum muppet muppets muscle musclecar
myth nasty neat neatly necessarily necessary needing neighbor neighbors
neighbour neighbours nephew nerve nervous newbie nice niece night nightmare nights nineties noises noisy notes notice
noticed noticing november novice nowadays object obvious occasionally occur occurred october oddly offer offered
offers oi oldie oldtimer omg one's online opinion opinions opportunity optimum option options order ordered ordering
ought ourselves outta overhaul overhauled overhauling overkill overthinking owe owner owners owning owns page pages
paid pal pals paperwork parade paranoid parents participate particularly path patience pavement pay paying pays people
perhaps permission person personally persons phone photo photos phrase pic pick picked picking picks pickup pickups
picky pics picture pictures piece pieces pity planned plans played playing pleasant pleased plenty pointed police
polite pony poor popped popping pops popular positioned positioning possible possibly posted posts potential
potentially practical practice precise precisely predict prefer preferably prepare prepared preparing presently
presumably pretty previous prewar pricey pride prior pro problems procedure proceed produce professional
progress project's projects promise promised proud provide provided pulled pulling pulls purchase purchased purchasing
purposes push pushing puzzled quandary quest questions quickest quiet quoted quotes random randomly rare rarely ratrod
rattle rattled rattles rattling reaction read realise realised realize realized reason reasonable reasonably reasons
rebuild rebuilding recall receive recent recently reckoned reckons refer reference references referring regard
regarding regardless registration regret regularly relevant reliable reliably rely relying remembered reminder repeat
repeated replace replaced replacing reply report reported reports request requested reroute rerouted rerouting rescue
research researched researching resolve resource respect respond response responsible rest resto restomods restoration
restore restored restores restoring result results review reviewed rides rig rigged rip risk risks risky roadside
roadster roadtrip roadworthy rookie ropey rotates route routed routes routine routing rub rubbed rubbing rubbish rubs
runabout rush rushed rushing sad safe safely sake saloon salvage sanity satisfied saturday saturdays saved saves
saving saw scared scary scenario school scrape scrapes scraping search searched searching season secondly secretly
secured securing sedan sedans seeing seek seeking seem seemed seemingly seen seldom selection sell seller selling send
sends sensible sent september serious seriously session setup seventies shake shakes shaking shame shared she shed
shop's shopping shops shortly shoulda shoved showcar showed showing shown showroom signs silly similar simple sister
situation sixties skeptical skids skill skills sleep sleeper slowly smaller smart smell smells snapped sold solve
solved somehow sometime sometimes son sons soon sooner sounds sourced sources speak speaking spend spending spent
spirited spoken spooked sports spots squeak squeaks squeal squealing squeals stages stand stay stays stepdad story
straightforward strange stranger strategy street streetable streets struggle struggled struggling student students
studied study studying stupid succeed success such suck sucks suggestion suggestions suggests suits sunday sundays
supposedly supposing surely surging surprise surprised surprisingly suv swap swapped swapping swaps swaying swear
sweet syncing talked task tasks taught teach teacher team teardown tearing technician techs telling tempted tempting
terrible terribly tester thankfully thanking theory therefore thirties thorough thoroughly thoughts throw throwing
thursday thx tia tip title tolerate tomorrow's topic totally toward towards trading traffic trained training transport
trick tricks tricky tried trip trouble troubles troubleshoot troubleshooting truck's truly trust trusted trusting
truth tuesday turning tutorial twenties ty typed typing ugly ultimately uncle uncle's understand understanding
understood unfortunately unhappy unlucky until update updated upgrade upgraded upgrading upset urgent useful useless
user users ute utes utterly v10 v12 v6 v8 van vans verify version vibrate vibrated vibrates vibrations video videos
view vin vintage visit voice wacky wagon wagons wait waited waiting wake walk walked wandering wanting wassup wasted
wasting watch watched watching web website websites wednesday week weekend weekends weekly weird welder's welding went
whatsoever wherever whether whichever whine whines whining whirr whoever whole wife wife's wiggle wiggles willing win
wired wise wisely wish wives wobble wobbles wobbly woman women wonder wonders woody words workbench workshop world
worried worries worry worrying worse worst worth woulda wow writing written wrote y'know ya'll yank yard yards yearly
yell yesterday yet yo youtube yuck yup
"""
# Words of everyday speech that may say more of a thing: never taken for a slip of the keys, and never left out.
_PLAIN = """
above across after against alone along always around away back bad bare base before behind below best better between
big both bottom break bring broad broken burn cause change clean clear close cold color colour common cool cover cross
cut dark dead deep dirty double down dry each early edge else empty end equal even ever every extra fail fall far fast
few final fine first flat fresh full further great half hard heavy high hold hole hot hottest huge inner inside large
last late least left length less light little long loose lost lot low lower main many middle more most moving much near
neat new next nothing old once only open other outer outside over pair part past perfect place plain possible
quarter quick quiet rare raw ready real rear right rough round same second set several shallow sharp short side single
slight slow small smooth soft solid some sort spare special stiff still stop straight strong such sure tall thick thin
third tight tiny top total touch tough true twice under unlike upper useful usual warm weak wet whole wide wild within
worn worse worst wrong young
"""
PLAIN = frozenset(_PLAIN.split())
# What is said of a car or a tool that nothing is asked of: an old wagon, my new bender.
OF_A_THING = frozenset(["old", "new", "heavy", "little", "big", "small", "light", "fast", "low"])
CHATTER = frozenset(_CHATTER.split())
STORY = frozenset(_STORY.split())
PLACE = frozenset(_PLACE.split())
_THINGS = frozenset(
    ["car", "cars", "truck", "vehicle", "bench", "build", "project", "spec", "figure", "chart", "garage"]
)


def is_story(word: str) -> bool:
    """Whether a word says whom it is for, when, how one came to ask: left out and said, beside a part too."""
    return word in STORY or is_everyday(word) or is_in_passing(word)


def is_aside(word: str) -> bool:
    """Whether a word is left out and said where no part is asked for: of the story, or a place."""
    return word in PLACE or is_story(word)


def is_thing(word: str) -> bool:
    """Whether a word is what an old or a new thing may be, of which nothing is asked."""
    return word in _THINGS or word in PLACE or word in STORY


# What turns or doubts another word; never left out.
TURNING = frozenset(_TURNING.split())
