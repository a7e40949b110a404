/**
 * Everyday words that come to the same on a pitch. Each line is a meaning and the words and sayings that stand for
 * it; a word may stand under several. They are compared by stem, so 'leaking' need not stand beside 'leak'.
 * They are general English, not the firm's: what the firm's hirers call its kit belongs in graph/glossary.yaml.
 */
export const KINDRED_WORDS = `
cold: cold, chilly, chill, freezing, frozen, nippy, parky, perishing, brass monkeys, baltic, arctic, icy, shivering, shiver, goosebumps, numb, bitter, see our breath, frigid, brr, brrr, duvet coat, chattering, blue with cold
heat: hot, boiling, scorching, roasting, sweltering, baking, stifling, stuffy, sauna, melting, sweating, muggy, heatwave, scalding, overheated, overheating, greenhouse, thirty degrees
warm: warm, warmth, cosy, toasty, snug, mild, heat up, warm up, take the chill off, thaw
lukewarm: lukewarm, tepid, barely warm, half warm, hardly warm, luke warm, not hot enough, only warm
frost: frost, frosty, frozen, ice, icy, minus, subzero, below zero, snow, freeze, thaw, icicle, hard frost, cold snap
wet: wet, soaked, soaking, sodden, drenched, damp, moist, soggy, puddle, pool, flood, flooded, waterlogged, squelch, squelchy, dripping
damp: condensation, damp, steamed up, steamy, misted, mist, fogged, fog, moisture, mould, mouldy, mildew, musty, clammy, sweating, wet windows, running with water
leak: leak, leaking, drip, dripping, dribble, trickle, seep, weep, weeping, ooze, puddle, escaping, coming out, running out, losing water, spray, squirt, drop
flow: flow, run, pour, gush, come out, stream, trickle, spurt, splutter, cough, spit
blocked: blocked, block, clogged, bunged up, backed up, will not drain, not draining, stands in, slow to empty, gurgle, plugged, choked
empty: empty, drain, run out, ran out, used up, finished, gone, none left, dry, exhausted, all gone, no more, spent, last drop
full: full, brimming, overflowing, overflow, topped, to the top, fill up, chock a block, overfull, rammed
fill: fill, refill, top up, replenish, topping, fetch, load up, put in, pour in
stuck: stuck, jammed, jam, seized, wedged, will not budge, will not move, does not move, will not shift, stiff, refuses, frozen solid, caught, snagged, trapped, budge, tight, rusted, will not turn, fast
broken: broken, broke, bust, busted, kaput, knackered, packed up, packed in, conked out, given up, failed, faulty, duff, gone wrong, snapped, cracked, buggered, goosed, defunct, on the blink, out of order, had it, bent, split, smashed, torn, ripped, come apart, come away, fallen off, fell off, came off, hanging off
dead: dead, lifeless, nothing happens, no response, does nothing, not responding, no sign of life, no life, blank, silent, not a thing, not a peep, nothing at all, no reaction, flat, gone off, stopped, quit, died, cut out, will not come on, not work, does not work, will not start, will not go
weak: weak, feeble, poor, low, slow, pathetic, dribble, puny, faint, dim, sluggish, half strength, barely, hardly, struggling, tired, no pressure, no oomph
dim: dim, faint, yellowish, gloomy, fading, fade, going down, flicker, flickering, half bright, dull, murky, not bright
dark: dark, darkness, pitch black, cannot see, no light, blackout, black
bright: bright, glare, light coming in, keep the light out, sun in my eyes, dazzling
noise: noise, noisy, sound, racket, din, loud, row, hear, heard, listening
hum: hum, humming, buzz, buzzing, whirr, whirring, drone, droning, purr, whine, fan noise, vibrate, vibration
click: click, clicking, tick, ticking, clunk, tap tap, clack, snap, pop
bang: bang, banging, thump, knock, knocking, rattle, rattling, clatter, clang, hammer, machine gun
beep: beep, beeping, bleep, bleeping, chirp, chirping, peep, pip, pips, cheep, ping, alarm, shrill, tweet, beeper, warbling
alarm: alarm, siren, wailing, shrieking, screaming, going off, gone off, screeching, detector, sensor, sounder, ear splitting, deafening, piercing
hiss: hiss, hissing, whistle, whistling, fizz, fizzing, sizzle, ssss, blowing sound, air escaping, sss
smell: smell, smelly, stink, stinking, stench, reek, reeks, pong, pongs, whiff, odour, honk, honking, minging, stinks, niff, hum, aroma, rotten, fumes, smelling, foul, rank, nose
smoke: smoke, smoking, smoky, fumes, haze, smouldering, smoulder, singed, charred
burning: burning, burnt, scorched, scorching, melted, melting, singe, singed, charred, brown mark, hot plastic, blackened, scorch mark, acrid
fire: fire, flames, alight, ablaze, on fire, caught fire, burning, blaze, inferno, gone up
flame: flame, flames, burner, ring, pilot, blue, lit, alight, jet
ignite: light, ignite, ignition, spark, sparker, lighter, match, strike, clicker, get it going, catch, fire up, will not light, lit, catching, take
goes-out: goes out, went out, blows out, dies, cuts out, goes off, stops when, let go, release, let go of the knob, will not stay, does not stay
yellow: yellow, orange, sooty, soot, lazy, tall, black marks, smoky
spark: spark, sparks, sparking, arcing, flash, crackle, crackling, fizzing, blue flash
shock: shock, electrocuted, tingle, tingling, zap, zapped, jolt, belt, electric feel, buzz off, shocks, live, thrown back, pins and needles
burn-hurt: burn, burnt, burned, scald, scalded, blister, hurt, injured, injury, cut, bleeding, blood, hand, finger, arm, wound, sore, skin
ill: headache, dizzy, sick, nausea, nauseous, drowsy, faint, fainted, woozy, poorly, unwell, ill, vomiting, throwing up, confused, sleepy, muzzy, giddy, light headed, groggy, passed out, unconscious, collapsed, headachy, queasy, flushed
danger: danger, dangerous, safe, unsafe, risk, risky, harm, poison, poisoned, emergency, worried, scared
storm: storm, gale, lightning, thunder, gust, gusts, gusty, windy, wind, blowing, howling, hurricane, tempest, blustery, breeze, squall, named storm, blow away, flapping
rain: rain, raining, downpour, shower outside, pouring down, bucketing, chucking it down, tipping down, drizzle, weather
sun: sun, sunny, sunshine, daylight, cloudy, overcast, cloud, shade, shady, sunlight
lean: tilt, tilted, slope, sloping, sloped, lean, leaning, wonky, uneven, lopsided, level, flat, slant, slanting, downhill, uphill, roll off, rolls, rolling, squint, straight, horizontal, bubble, skew, off level, list, angle, degrees
wobble: wobble, wobbly, rock, rocking, sway, swaying, bounce, bouncing, shake, shaking, unsteady, moves when we walk, seasick, boat, rocks, unstable, steady
sway: snaking, snake, sway, swaying, fishtail, fishtailing, weave, weaving, wagging, swerve, swing, swinging, side to side, all over the road, pendulum
soft-ground: mud, muddy, soft, boggy, bog, sinking, sink, sunk, soggy, grass, dig in, spinning, spin, bogged, mire, swamp, ruts, skidding, traction, grip, sand
hard-ground: gravel, hardstanding, hard standing, stony, stones, concrete
open: open, opening, undo, unlatch, unlock, opened, get into, lift, prise, pop, ajar
close: close, shut, closing, shutting, slam, latch, seal, closed, fasten
lock: lock, locked, unlock, key, bolt, secure, latch, catch, deadlock, locking
locked-out: locked out, shut out, cannot get in, keys inside, keys are inside, locked inside, stuck outside, key left inside, standing outside, cannot get back in
trapped: trapped, locked in, stuck inside, shut inside, inside on his own, inside on her own, alone inside, cannot get out
key: key, keys, keyring, fob, bunch, spare key
lose: lost, lose, missing, mislaid, misplaced, dropped, cannot find, disappeared, vanished, gone missing
find: where, whereabouts, find, locate, located, location, kept, hidden, hide, stored, live, lives, look for, looking for, hunting, hunt, which cupboard, which locker, which side, point me, direct me, stashed, tucked, spot, situated, searched, whereabout, seen, track down, turned the place upside down
how: how, method, way to, procedure, steps, show me, explain, talk me through, walk me through, instructions, technique, guide, knack, trick, proper way, right way, correct way, teach
order: order, sequence, first, next, list, checklist, begin, start with, start, before anything, step by step, routine, drill, what comes
allowed: allowed, allow, may we, can we, permitted, permit, ok to, okay to, alright to, acceptable, forbidden, banned, against the rules, rules, rule, permission, objection, mind if, supposed to, is it ok, is it alright, legal
cost: cost, price, charge, pay, paying, fee, fine, deposit, money, refund, compensation, bill, quid, pounds, expensive, cheap, free, claim, reimburse, lose our deposit
how-long: how long, how many minutes, how many hours, what time, when will, till, until, take to, takes, duration, wait, waiting, ready by
last: last, lasts, lasting, stretch, see us through, hold out, do us, keep going, enough, sufficient, suffice, get us through, make it to, eke out
how-much: how much, how many, amount, quantity, capacity, litres, total, figure, sum, calculate, work out, add up
arrive: arrive, arrived, arriving, just got here, pulled in, pulled up, turned up, landed, get there, rocked up, here at last, we are here, parked up, setting up, set up
leave: leave, leaving, going home, depart, departure, pack up, packing up, last morning, last day, checking out, heading off, set off, setting off, move on, moving on, vacate, head home, off tomorrow, pull away, quit
drive: drive, driving, travel, travelling, journey, road, moving, on the move, trip, motor, going along, en route, under way
tow: tow, towing, towed, pull, pulling, behind the car, hitched, trailer
hitch: hitch, hitched, couple, coupling, coupler, towball, ball, tow ball, connect to the car, hook on, join to the car, attach to the car, head, onto the car, hook up to the car, latch onto
unhitch: unhitch, uncouple, detach, disconnect the car, take off the car, unhook, separate, release the car, car off, get the car off
brake: brake, braking, handbrake, parking brake, hand brake, lever
reverse: reverse, back up, backing, manoeuvre, shunt, wiggle, push it, move by hand, position, turn round, park it
mover: mover, remote, remote control, motors, rollers, handset, joystick
wheel: wheel, wheels, tyre, tyres, tire, tires, rim, hub, rubber, tread, pressure, psi, bar
puncture: puncture, flat tyre, burst, blowout, blow out, blew, deflated, gone down, going flat, lost air, nail, shredded, bang from the wheel
front-wheel: jockey, front wheel, little wheel, nose wheel, wheel at the front, small wheel
legs: legs, leg, steadies, steady, corner, corners, feet, foot, stabilisers, jacks, supports, stands, props
chock: chock, chocks, wedge, wedges, block, blocks, ramp, ramps, step
lift: lift, raise, hoist, up, higher, heave, elevate, raising, jack up, lifting
lower: lower, down, drop, bring down, come down, descend, collapse, fold down, dropping
wind-handle: wind, winding, crank, handle, winder, turn, brace, spin, rotate, twist
weight: weight, weigh, heavy, heavier, kilos, kilo, kg, stone, load, overloaded, overload, payload, light, ton, tonne, mass, limit, scales
nose: nose, noseweight, front, drawbar, tongue, hitch weight, downward, pressing on the ball
load: load, pack, packing, stow, luggage, belongings, stuff, boxes, crate, cases, gear, bags
bike: bike, bikes, bicycle, bicycles, cycle, cycles, cycling, rack, carrier
speed: speed, fast, mph, limit, fifty, sixty, motorway, lane, overtake, dual carriageway, slow, seventy
mirror: mirror, mirrors, wing mirror, extension, extenders, number plate, plate, registration, reg
height: height, tall, high, bridge, barrier, low bridge, clearance, headroom, car park, fit under, carpark
fuel: fuel, petrol, diesel, filling station, garage, unleaded, pump, refuel, tank up, forecourt, derv
gas: gas, propane, butane, lpg, bottle, bottles, cylinder, cylinders, canister, flammable
valve: valve, tap, regulator, knob, wheel on top, hand wheel, clip on, shut off, isolate, isolation
swap: swap, change, replace, switch over, exchange, changeover, renew, substitute, fit a new, put a new, spare
electric: electric, electrics, electricity, power, mains, juice, current, volts, 230, 240, leccy, supply, hook up, hookup, plugged in, energy
hookup: hookup, hook up, lead, cable, orange, blue plug, post, bollard, pedestal, pillar, plugged in, plug in, extension, supply point
coil: coil, coiled, rolled up, reel, drum, unroll, unwound, unwind, wound, loop, loops, bundle, spool, uncoiled
trip: trip, trips, tripped, tripping, breaker, rcd, mcb, cuts out, cut out, pops, popped, knocks off, blows, blown, fuse box, flicks off, goes off, reset, keeps going off, clicks off, throws
socket: socket, sockets, outlet, plug, plugs, point, three pin, double socket, wall socket, power point
appliance: kettle, toaster, hairdryer, hair dryer, straighteners, iron, fan heater, slow cooker, air fryer, fryer, coffee machine, heater, microwave, laptop, blender, projector, games console, dryer
same-time: together, same time, at once, both, plus, simultaneously, as well as, while, and the, on top of
amps: amp, amps, watt, watts, kilowatt, kw, sixteen, ten amp, six amp, rating
battery: battery, batteries, charge, charged, charging, leisure, accumulator, cell, twelve volt, 12v, voltage, cells, power pack
charge: charge, charging, charged, recharge, top up, charger, go up, percent, topped up
solar: solar, panel on the roof, sun panel, solar panel, panels, sunshine, photovoltaic
fuse: fuse, fuses, blade fuse, blown, blew, amp fuse
bulb: bulb, bulbs, lamp, led, capsule, globe, light fitting
lights: light, lights, lamp, lamps, lighting, spotlight, reading light, strip light, illumination, torch
switch: switch, button, press, knob, dial, flick, toggle, control, controls, pad, touch, buttons, selector
panel: panel, display, screen, touchscreen, readout, gauge, meter, dashboard, symbols, icons, message, code, needle
on: switch on, turn on, put on, get on, start, start up, power up, fire up, get going, activate, set going, bring on
off: switch off, turn off, shut off, put off, isolate, shut down, disable, kill, off
phone: phone, phones, mobile, tablet, usb, charging cable, device, gadget, gadgets, smartphone, handset
tv: tv, telly, television, channel, channels, picture, screen, film, match, football, programme, programmes, watch, soap
aerial: aerial, antenna, signal, reception, tune, retune, tuning, pixelated, snow, dish, amplifier, booster, mast
radio: radio, music, tunes, speaker, speakers, stereo, station, dab, song, songs
wifi: wifi, internet, online, web, connection, password, router, broadband, data, stream, streaming, video call, network, download, work online
fridge: fridge, refrigerator, freezer, cool, chiller, icebox, ice box, ice cubes, food cold, cold box, milk, chilled
food: food, milk, butter, cheese, meat, sausages, bacon, lettuce, beer, wine, cans, lollies, ice cream, ham, veg, salad, shopping, drinks, yoghurt, eggs, burgers, fish fingers, prosecco, fizz
spoiled: going off, gone off, sour, curdled, soft, melting, melted, spoil, spoiled, spoilt, warm, runny, sweating, rancid, off, soupy
medicine: medicine, medication, insulin, tablets, pills, jab, injection, injections, prescription, vaccine, drops, antibiotics, pen, pens
cook: cook, cooking, fry, frying, boil, boiling, breakfast, dinner, tea, supper, lunch, meal, pasta, bacon, eggs, soup, brew, cuppa, cup of tea, stew, kettle, pan, saucepan, sausages, simmer, coffee, porridge, fry up, spuds
hob: hob, stove, cooker, rings, ring, burner, burners, cooktop, hotplate
oven: oven, bake, baking, roast, roasting, pizza, pie, lasagne, cake, casserole, chips, potatoes, scones, gas mark
grill: grill, toast, toasting, grilled, cheese on toast, muffins, crumpets, brown the top
microwave: microwave, zap, nuke, reheat, popcorn, ready meal, turntable, ping
lid: lid, cover, glass lid, flap, top
vent: vent, vents, ventilation, airflow, fresh air, holes, gap, gaps, draught, grille, grilles, louvre, louvres, air hole, slots, air bricks, flue, exhaust
block-up: block, cover, tape, stuff, seal, plug, stop up, rags, towel, bung, cardboard
water: water, h2o, tap water
tap: tap, taps, faucet, mixer, spout, basin, sink
pump: pump, pumping, submersible, motor, primes, prime
pulse: pulse, pulsing, stutter, stuttering, surging, surge, on and off, comes and goes, judder, spurts, machine gun, intermittent
barrel: barrel, roller, container, drum, rolling, carrier
tank: tank, reservoir, container, level
hose: hose, hosepipe, pipe, tube, tubing, filler hose
waste: waste, grey, gray, dirty water, used water, washing up water, dishwater, sludge, bucket, drain off
taste: taste, tastes, tasting, flavour, drink, drinkable, drinking, metallic, plasticky, chlorine, cloudy, tang, funny, swimming pool, bleach, sip
shower: shower, showering, showers, wash, washed, rinse, hair wash, scrub, soap, suds, shampoo, lather, bath, bathe
washroom: washroom, bathroom, ensuite, cubicle
hot-water: hot water, warm water, hot tap, water heater, boiler, immersion, geyser, wash up, washing up, bath time
heating: heating, heater, radiator, radiators, blower, blown air, warm air, furnace, thermostat, boiler, fire, stove heat, central heating, warm up the van, hot air
thermostat: thermostat, temperature, degrees, setting, dial, celsius, set to
toilet: toilet, loo, bog, lav, lavatory, throne, wc, potty, privy, khazi, netty, dunny, gents, flush, john, crapper, bowl, cassette, pan
poo: poo, pee, wee, number two, number twos, business, crap, turd, poop, pooh, sewage, contents, muck, spend a penny
flush: flush, flushing, flushes, rinse, swirl, bowl water
cassette: cassette, box, holding tank, blade, flap, trapdoor, slide, slider, hatch, drawer, tank underneath
empty-toilet: emptying point, chemical point, disposal, dump, empty the, tip, sluice, pour away, slop
chemical: chemical, fluid, liquid, blue, pink, sachet, additive, dose, stuff you pour in, green
rubbish: rubbish, bin, bins, trash, garbage, recycling, bags, waste bag, litter, black bag, bin bag, recycle, wheelie
clean: clean, cleaning, wipe, mop, sweep, vacuum, scrub, dust, broom, brush, tidy, wash down, polish, mess, dustpan
spill: spill, spilt, spilled, stain, stained, mess, sick on, ketchup, wine on, cushion, carpet, marks, mark, dirty, smear, knocked over
bed: bed, beds, mattress, sleep, sleeping, sleeps, bunk, bunks, berth, double, single, lie down, kip, nap, bedroom, bedtime, snooze, lie
bedding: bedding, sheets, sheet, duvet, duvets, pillow, pillows, blanket, blankets, sleeping bag, quilt, linen, towels, covers, topper
baby: baby, infant, newborn, toddler, cot, crib, little one, tot, months old, month old, nappy, nappies, wean, bairn
child: child, children, kid, kids, son, daughter, boy, girl, lad, grandson, granddaughter, grandchildren, little one, year old, toddler, grandkids, nipper, teenager, bairn, youngster
dog: dog, dogs, puppy, pooch, hound, pet, pets, mutt, labrador, terrier, spaniel, cat, cats, kitten, animal, animals, whippet, collie, rabbit, hamster, parrot
vet: vet, vets, paw, limping, tick, fleas, dog ill, animal doctor, veterinary, sting, lame
pest: ants, ant, wasp, wasps, bee, bees, mice, mouse, rat, rodent, flies, fly, spider, spiders, midges, mosquito, mosquitoes, insect, insects, bug, bugs, beetle, earwigs, droppings, scurrying, scratching, crawling, gnats, moths, nest, creepy crawlies
window: window, windows, pane, glass, acrylic
blind: blind, blinds, curtain, curtains, flyscreen, fly screen, shade, shutter, net, screen, blackout
rooflight: rooflight, roof light, skylight, sky light, hatch, roof window, roof vent, dome, ceiling window, window in the ceiling, window above
roof: roof, ceiling, overhead, above, top
pop-roof: pop roof, pop up, pop top, roof up, roof down, lift up roof, canvas, tent part, upstairs, elevating, roof tent
door: door, doors, doorway, entrance, stable door, sliding door, tailgate, boot lid
locker: locker, lockers, hatch, flap, compartment, outside cupboard, catch, latch, boot, front box
cupboard: cupboard, drawer, drawers, wardrobe, shelf, press, unit, closet, overhead
table: table, seat, seats, cushions, cushion, settee, sofa, couch, lounge, dinette, bench, slats
awning: awning, canopy, porch, annexe, sunshade, tent bit, extension tent, shade
peg: peg, pegs, mallet, hammer, guy, guys, pole, poles, rope, ropes, straps, strap, tie down
belt: belt, belts, seatbelt, seat belt, strapped, child seat, car seat, booster, isofix, travel seat, passenger, passengers
drivers: driver, drivers, insured, insurance, licence, share the driving, behind the wheel, take the wheel, named driver, drive it
guest: guest, guests, visitor, visitors, extra person, extra people, friend, friends, mate, mates, stay over, additional, mother in law, one more, cousin
extend: extend, extra night, extra day, another night, another day, longer, stay on, few more days, keep it, one more night, until, extension
return: return, bring back, brought back, back by, drop off, hand back, hand over, late, running late, traffic, delayed, deadline, overdue, give it back, early
damage: damage, damaged, dent, dented, scratch, scratched, scrape, scraped, bump, bumped, broke, broken, crack, cracked, chipped, knocked, ding, accident, own up, clipped, gouge, snapped, tore, ripped
refund: refund, money back, compensation, complain, complaint, discount, reduction, reimburse, owed, credit, partial, spoiled our holiday
crash: crash, crashed, collision, accident, hit, rear ended, smashed into, went into, prang, overturned, turned over, other driver, ditch, rolled, shunted, rammed, bashed, pile up
breakdown: breakdown, broken down, broke down, stranded, recovery, hard shoulder, roadside, tow truck, rescue, patrol, engine died, smoke from the engine, bonnet, stuck on the road, layby, lay by, conked
engine: engine, starter, ignition, start, crank, turn over, turning over, dash, motor, cranking, bonnet
warning-light: warning light, warning lamp, red light, amber, orange light, lamp on the dash, symbol, came on, lit up, flashing, dashboard light
smoke-rule: smoke, smoking, cigarette, cigarettes, fag, fags, vape, vaping, ciggie, ciggies, pipe, cigar, candle, candles, tea light, tealights, joss stick, incense, nightlight
barbecue: barbecue, bbq, barbie, charcoal, disposable, coals, embers, fire pit, firepit, grill outside, campfire, burgers outside
extinguisher: extinguisher, fire blanket, put out a fire, escape, fire safety
first-aid: first aid, plaster, plasters, bandage, bandages, antiseptic, tweezers, dressing, medical kit, scissors
shop: shop, shops, supermarket, store, groceries, bread, milk, newspaper, bakery, baker, butcher, corner shop, loaf, provisions, buy, shopping, grocer
eat-out: pub, restaurant, cafe, takeaway, chippy, chip shop, fish and chips, curry, pizza place, eat out, bite to eat, meal out, pint, dinner out, pubs, dine, carvery, breakfast place, food tonight, hungry, bar, beer garden, grub
pharmacy: chemist, pharmacy, pharmacist, prescription, paracetamol, ibuprofen, antihistamine, plasters, cough, drugstore, medicine, remedy, tablets
hospital: hospital, a and e, casualty, doctor, doctors, gp, minor injuries, er, stitches, urgent care, broken arm, ambulance, emergency room, x ray, surgery, walk in, emergency department
laundry: laundry, launderette, washing machine, tumble dryer, dry clothes, wash clothes, washer, clothes, dirty clothes, washing, laundromat, muddy clothes, pegs, tumble, smalls
sights: things to do, day out, days out, attractions, walk, walks, beach, castle, museum, trail, rainy day, entertain, outing, visit, sightseeing, explore, places to go, fun, swimming, swim, hike, park, play area, stroll, zoo, bored
transport: bus, buses, train, taxi, cab, station, bus stop, public transport, lift into town, railway, timetable, without the car, without driving, coach
contact: phone number, ring you, call you, office hours, opening hours, contact, get hold of, reach you, number, open, email, on call, hours, out of hours, telephone, who do i call, emergency number
manual: manual, manuals, instruction, instructions, booklet, handbook, guide, paperwork, leaflet, book, folder, pamphlet
inventory: inventory, supplied, provided, provide, included, comes with, bring our own, do you supply, need to bring, equipment, list of what, crockery, cutlery, plates, mugs, pans, do we get, on board
opener: corkscrew, bottle opener, tin opener, can opener, wine open, opener, cork, tin of beans, uncork
clothes: clothes, coat, coats, jumper, jumpers, towel, towels, shoes, boots, hang
night: night, overnight, bedtime, in bed, asleep, evening, all night, through the night, dark, sleeping, midnight, small hours
morning: morning, dawn, woke, wake, woke up, breakfast, got up, waking, overnight
moving: moving, on the move, while driving, driving along, in transit, on the road, when we drive, during the journey, between sites, motorway, travelling, ferry, tunnel, towing
rear: back, rear, behind, tail
front: front, bow, nose end
underneath: under, underneath, below, beneath, underside, chassis, belly, floor
outside: outside, outdoors, exterior, external, on the grass, side of the van, offside, nearside
inside: inside, indoors, interior, within, in here, indoor
breathe: cpap, sleep apnoea, apnoea, apnea, breathing machine, breathing mask, mask, oxygen, snore, nebuliser, sleep machine, sleep mask
inverter: inverter, invertor, off grid, run a laptop, without hookup, mains from the battery, converter
off-grid: off grid, no hookup, without hookup, no hook up, without hook up, wild camping, no mains, no electric, unplugged, not plugged in, without electric, no post, field
neighbour: neighbour, neighbours, next door, other vans, next van, apart, distance, spacing, metres from, space between, close to, near the next, far from, gap between, hedge
pets-rule: dog come, bring the dog, bring our dog, take the dog, dogs allowed, pets allowed, bring a cat, dog on the bed
cool-down: precool, pre cool, night before, how long to get cold, get cold, cool down, chill down, ready for food
somebody: person, people, human, someone, somebody, anybody, anyone, staff, agent, operator, adviser, advisor, manager, representative, customer service, team, colleague, receptionist, boss, owner, man, woman, lady, bloke, real one, proper one, living soul, flesh and blood
talk: talk, speak, chat, call, ring, phone, voice, word with, put me through, transfer, hand me over, connect me, get me, fetch me, call back, ring back, phone me, call me, contact
machine-talk: bot, robot, computer, automated, ai, chatbot, automatic, machine talking, recorded, program, algorithm
greet: hi, hello, hiya, hey, morning, afternoon, evening, howdy, greetings, good day, alright, ey up, ay up, yo, wotcha, heya
part-ways: bye, goodbye, cheerio, see you, see ya, ta ra, night night, goodnight, good night, so long, farewell, laters, toodle pip, take care, signing off, off to bed, all for now, speak soon, over and out
thank: thanks, thank, cheers, much appreciated, appreciate, grateful, thank you, much obliged, bless you
understood: ok, okay, fine, great, got it, understood, will do, cool, noted, perfect, sorted, makes sense, fair enough, gotcha, roger, right then, no worries, no problem, good to know, i see, will try
praise: brilliant, star, lifesaver, legend, helpful, amazing, wonderful, superb, clever, marvellous, ace, top marks, love, fantastic, excellent, genius, best, handy, impressed
how-are-you: how are you, how is it going, you ok, are you well, how do you do, what is up, how are things, good day so far, you alright, you tired
who-are-you: who are you, what are you, your name, are you real, who made you, is this a, do you sleep, what can you do, am i talking, are you there
`;
