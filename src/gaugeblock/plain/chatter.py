"""Words that say nothing about a number: a question keeps its meaning without them.

No word stands here that any vocabulary knows, and none that turns, narrows or doubts what another word says: ``not``,
``without``, ``used``, ``or``, ``stainless``. A test holds both.
"""

from __future__ import annotations

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
that that'll that's thats the their them then there there's theres these they they're thing things think this those
though thought time to today told tomorrow tonight too truck trunk try trying type types typical typically u uh uhh um
umm up upto ur us use using usual usually vehicle very wanna want wanted wants was we we'd we'll we're we've well were
what what'd what'll what're what's whatever whats when where where's wheres which while who will with wondered wondering
work working works would write y'all ya yeah yep yes you you'd you'll you're your yours
"""
_TURNING = """
aren't can't cant didn't doesn't don't dont except instead isn't isnt neither never no non none nor not or rather un
unless versus vs w/o wasn't without won't wont
"""
# Where a thing sits, what is done with it and whose it is: where no answer reads such a word, it is left out, and said.
# None names a metal, a finish, a lubricant, a state or a service: those change a figure, and refuse a line.
_ASIDE = """
aftermarket another antique book bought bracket brackets broke broken brother buddy's budget bumper buy buying classic
comes coming convert converted converting corner correctly coupe cowl crawling crossmember cruise cruising custom
dad's daily dash dashboard decent difference different difficult drive driver driver's drives driveway driving easy
eighties electric engine entire expensive fab fabbed fabricate fabricated fabricating fender fifties finally firewall
floor gearbox gloves gone hang homemade hood hotrod hung inspector install installation installed installing keeps kit
later lose loses losing loud middle modified modify motor mount mounted mounting neighbor neighbour nice nineties
noise noisy one's order ordered ordering other others particular passenger passenger's person pickup planned plus
positioned positive pretty pulled pulling pulls push pushing quiet ratchet rattle rattled rattles rattling rebuild
rebuilding replace replaced replacing restomod restoration restoring road roadster roof safely sedan sell selling
setup seventies shake shakes shaking similar simple sixties smell smells snap snapped soon squeak street stuck
subframe suv swap swapped swapping system tranny trans transmission tried uncle underneath underside until upgrade
upgraded upgrading van vintage wagon weekend went whole wife wobble wobbles yesterday
"""
CHATTER = frozenset(_CHATTER.split())
ASIDE = frozenset(_ASIDE.split())
# What turns or doubts another word; never left out.
TURNING = frozenset(_TURNING.split())
