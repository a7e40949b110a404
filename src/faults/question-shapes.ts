/*
 * The shapes of the graph's questions that are answered in words of their own: 'all look the same' to 'Is one flatter than
 * the other?'. Each row: what the question asks, what says yes, what says no. The first row that fits and whose words are
 * said decides; 'no' is looked for before 'yes', and a 'not' before what is found turns it round (by-shape.ts).
 *
 * Words stand as in a pattern: alternatives by '|', each a whole word. What stands in pairs of opposites (on and off, wet
 * and dry) is in states.ts, what is counted in amounts.ts, what is set or lit in settings.ts: a row here is for the rest.
 */
export type ShapeRow = readonly [asks: RegExp, yes: string, no: string];

const SAME = 'the same|same|alike|even|equal|identical|no different|no difference';
const FAILS = 'same|no different|no difference|no better|as well|nor|neither|dead|nothing|none|also';
const GOES =
  'works?|worked|working|runs?|ran|fine|goes|went|came on|charges?|charged|charging|has power|ok|okay|on|no problem';
const OFTEN =
  'twice|two|three|four|second|third|fourth|several|many|lots|loads|few times|times|again|keeps|every time|always';

const HOW_IT_STANDS: readonly ShapeRow[] = [
  [/\bturns by hand\b/i, 'spins?|turns?|loose|wobbles?', 'tight|solid|firm|done up'],
  [
    /\bone side of the ball\b/i,
    'left|right|side|tilted|off|not in line',
    'straight|in line|inline|level|square|centred',
  ],
  [/\blighter away\b/i, 'away|far|not near|inch', 'right (?:at|on|up|in)|at the (?:hole|edge)|touching|close'],
  [/\bhandle stay down\b/i, 'stays|stuck|still|whatever|will not', 'comes up|lifts|lifted|springs|pops up'],
  [
    /\bjockey wheel up\b/i,
    'off the ground|in the air|up|barely|hardly|just touching',
    'on the ground|pressing|firm|firmly|hard|weight on it|down',
  ],
  [/\bno weight in it\b/i, 'nothing|light|empty|no weight|easily|no resistance', 'heavy|weight|full|resistance|stiff'],
  [/\bfloat\b.*\bshow full\b/i, 'up|full|top|red', 'down|low|bottom|green|empty'],
  [/\bcap still on\b/i, 'cap (?:is |was )?(?:still )?on|full', 'cap (?:is |was )?off|empty|emptied'],
  [/\bone outlet cold\b/i, '(?:rest|others) (?:are |is )?(?:hot|warm|fine|ok)', 'all|both|none|every'],
  [
    /\b(?:barrel|tank|container|cassette|cylinder|waste)\b.*\b(?:full|low|empty|heavy|light to lift)\b/i,
    '',
    'half(?: full| empty| way)?|(?:two )?thirds?',
  ],
  [
    /\blevel card off\b/i,
    'not (?:\\w+ )?(?:level|flat)|unlevel|sloping|slopes?|tilted|leaning|leans|nose (?:up|down)|way off|outside|downhill|uphill',
    'level|flat|fine|middle|centre|center|central|within',
  ],
  [
    /\bshort of its\b/i,
    'half ?way|part ?way|half turned|not (?:all the way|fully|quite)|short',
    'to (?:the|its) (?:stop|end)|all the way|as far as it goes|fully',
  ],
  [
    /\bsticks? out\b/i,
    'proud|pokes?|poking|sticking|sticks|stuck out|out',
    'flush|level with|tucked|inside|gone in|goes in|is in|pushed in|nothing',
  ],
  [
    /\b(?:push|twist|turn|screw|press)\w*\b.*\bfurther\b|\bfurther (?:open|down|in)\b|\bin further\b/i,
    'not (?:\\w+ )?(?:in|home|right|fully|properly|tight)|budged?|moved?|moves|shift(?:s|ed)?|gave|went|goes?(?: in)?|going|another|more|turns?|turned|bit|cm|mm|inch|clicks?|clicked|further|twisted|tightened',
    'solid|snug|tight|firm|rock|already|as far as|max|maximum|fully (?:in|home|open|down)|all the way|can not|no more|no further|right (?:in|home)',
  ],
  [/\b(?:near the floor|low one)\b/i, 'floor|bottom|low|lower|down', 'ceiling|roof|high|upper|top|smoke'],
  [/\bhandbrake off\b/i, 'off|down|released|forgot', 'on|up|pulled|tight|applied'],
  [
    /\bkink\b/i,
    'loops?|looped|bent|uphill|goes up|up over|sags?|knot|coiled',
    'straight|downhill|falls|downwards|down',
  ],
  [
    /\b(?:tap|drain)s?\b.*\bopen\b/i,
    'was on|left on|running a bit|dripping',
    '(?:all|everything|they are|are all|is) (?:off|shut|closed)',
  ],
  [
    /\ba small breaker down\b/i,
    '(?:one|first|second|third|last|middle|left|right|(?:number |breaker )?\\d)(?: (?:is|one|has|looks|dropped|tripped|went|from)\\b.*)?$|lower than|out of line',
    '(?:all|none|every|they are|both) (?:\\w+ )*up',
  ],
  [
    /\bon its side\b/i,
    'tipped|toppled|lying|floating|fell over|fallen over|on its side',
    'upright|standing|stands|at the bottom',
  ],
  [/\bflatter than\b/i, 'flat|flatter|squashed|soft|softer|low|bulging|saggy|lower', `${SAME}|round|hard|fine`],
  [
    /\bsunk in\b/i,
    'sunk|sinking|mud|tilted|gone into|swallowed|deep|lopsided|hole',
    'flat|level|straight|upright|solid|on top|boards?|firm|dry',
  ],
  [/\bhalves (?:of the door )?apart\b/i, 'apart|separate|separated|undone|not joined', 'together|joined|clipped'],
  [/\bhandle turn while\b/i, 'turns?|spins?|slips?|round and round|freely', 'stuck|stiff|solid|jammed|moves too'],
  [/\bbut stiffly\b/i, 'stiff|stiffly|slow|hard|force|a bit|sticky', 'not at all|solid|freely|easily|stuck fast'],
  [/\bbed drop\b/i, 'heavy|drops?|falls?|slams?|force|hard', 'stays|easily|light|fine|holds'],
  [/\bcatch spring back\b/i, 'springs?|pops?|snaps?|jumps?|does not stay', 'stays|holds|held'],
  [/\bdoes it close (?:better|with)\b/i, 'clicks?|clicked|better|took|shut|stays|holds?|held', FAILS],
  [/\bdoes a lamp go dark\b/i, 'dark|out|off|dies?|died|all go', 'stays?|stayed|still|on|nothing'],
  [
    /\bdial at 0\b|\bdials? both at 0\b|\bring low\b|\bdial low\b|\bknob at 0\b/i,
    '0|zero|nought|min|minimum|turned down',
    'half ?way|middle|max|maximum|full|high|up|halfway round|[3-9]',
  ],
  [
    /\bfoot off the brake\b/i,
    'in (?:drive|neutral|reverse|gear)|neutral|foot off|not on the brake|fob|key warning',
    'in park|foot on|p',
  ],
  [/\bturn over but not run\b/i, 'turns?|cranks?|coughs?|churns?|spins?', 'clicks?|nothing|silent|dead'],
];

const WHAT_LIES_THERE: readonly ShapeRow[] = [
  [
    /\b(?:over the charger|cover its air slots|covered|behind a bag|touch(?:es)? the)\b/i,
    'bags?|duvets?|cushions?|bedding|clothes|coats?|jumpers?|towels?|cases?|suitcases?|box(?:es)?|blankets?|pillows?|pans?|saucepans?|leaning|covered|piled|(?:on|over|against|touching|behind|in front of) (?:it|them|the)',
    'nothing|clear|free|bare|uncovered|none|empty|space|room',
  ],
  [
    /\bchock, a ramp\b|\bchock or a ramp\b/i,
    'chocks?|ramps?|rollers?|blocks?',
    'nothing|clear|none|free|all out|removed',
  ],
  [
    /\bagainst grass, snow\b/i,
    'snow|drift|grass|mud|buried|blocked|covered|stuck|bank|hedge|leaves',
    'clear|clean|free|open|nothing',
  ],
  [
    /\blie on the panel\b/i,
    'leaves|leaf|snow|dirt|dirty|bird|muck|poo|covered|dust|dusty',
    'clean|clear|nothing|washed',
  ],
  [
    /\bpacked tight\b/i,
    'full|packed|jammed|stuffed|crammed|lots|ajar|gap|not (?:\\w+ )?(?:shut|closed?)|open',
    'half|room|space|few|little|empty|shut|closed',
  ],
  [/\bwater in the lamp\b/i, 'mist|misty|fog|foggy|condensation|steam|steamed|drops|water|wet', 'dry|clear'],
  [
    /\b(?:is it|was it) soapy\b/i,
    'suds|sudsy|soap|soapy|foam|foamy|bubbl\\w+|greasy|washing up|grey',
    'clean|clear|plain',
  ],
  [
    /\bwater clean\b/i,
    'clean|clear|fresh',
    'soapy|suds|dirty|brown|grey|smelly|smells|yellow|carries on|keeps|does not stop|goes on',
  ],
  [
    /\bis there water (?:in|on|under)\b|\bfloor by it wet\b/i,
    'wet|damp|puddles?|pool|drips?|dripping|drops|soaked|trickle|water|stain|stained|stains|mark',
    'dry|nothing|not a drop|none',
  ],
  [/\bnothing at all come\b/i, 'nothing|not a drop|none', 'trickle|some|little|dribble|spits?'],
  [
    /^is it wet (?:by|round|in|at|where)\b/i,
    'wet|damp|drips?|dripping|soaked|puddle',
    'middle|nowhere near|somewhere else|elsewhere|other (?:side|end)',
  ],
  [/\bby a window or the roof\b/i, 'windows?|roof|ceiling|rooflight|skylight', 'sink|toilet|door|shower|pipe'],
  [/\bstrongest over\b/i, 'sink|plug ?hole|drain|shower', 'toilet|loo|everywhere|bathroom'],
  [
    /\bonly a trickle\b|\bflow from that tap weak\b/i,
    'trickle|weak|slow|drips?|poor|feeble|hardly|little',
    'nothing|strong|good|normal|none|full',
  ],
  [
    /\bpump rattle\b/i,
    'rattl\\w+|rough|weak|grinding|tractor|noisy',
    'smooth|quiet|good flow|normal|as always|as ever|as usual|strong',
  ],
  [
    /\bhot side alone\b/i,
    '(?:just|only) (?:the )?(?:hot|rinse hose)|hot only|cold (?:\\w+ )?(?:fine|ok|okay|works?|good|runs?|normal)',
    'both|neither|cold (?:\\w+ )?(?:too|as well|dry|nothing)',
  ],
  [
    /\bonly the hot side\b/i,
    'cold (?:\\w+ )?(?:fine|ok|okay|works?|good|runs?|normal)|hot (?:\\w+ )?(?:nothing|dry|dead|none)|(?:just|only) (?:the )?hot|hot only',
    'both|neither|cold (?:\\w+ )?(?:too|as well|dry|nothing)|hot (?:\\w+ )?(?:runs|fine|works|ok|flows)',
  ],
  [
    /\bhot tap spit\b|\bdoes the tap spit\b/i,
    'spits?|spitting|spat|dry|air|bubbles?|bubbly',
    'steady|normal|normally|runs|flows|fine|smooth|clear',
  ],
  [/\bflush tank\b.*\b(?:low|empty)\b/i, 'inch|at the bottom|in the bottom|drop|dregs', 'half|full|to the top'],
  [
    /\b(?:taps|other taps) dry too\b/i,
    'nothing|dry|same|also|neither|as well|too',
    '(?:have|got|has|is) water|runs?|running|fine|ok|works?|water (?:at|from|in)',
  ],
  [
    /\bclock show, but\b/i,
    '(?:clock|light|display|time) (?:\\w+ ){0,2}(?:shows?|there|on|lit|fine|ok)|shows? the (?:clock|time)',
    'blank|dark|dead|no (?:clock|light|display)',
  ],
  [
    /\bfuse\b.*\b(?:broken|blown)\b/i,
    'gone|gap|black|burnt|blew|blown|melted|separated|pieces|missing|hole',
    'whole|intact|connected|joined|continuous|complete|shiny|new',
  ],
];

const ONE_AGAINST_ANOTHER: readonly ShapeRow[] = [
  [/\bhotter at\b/i, 'hotter|warmer|better|boiling|hot there|much', SAME],
  [/\bthan the other\b|\bwider at\b|\banother way than\b/i, 'wider|bigger|different|other way', SAME],
  [
    /\bdo the other\b|\bdoes something else\b|\bother adaptor charge\b/i,
    `(?:all|every ?(?:one|thing)?)(?: of them)? (?:but|except|apart)|(?:the )?(?:rest|others|other one|other) (?:is|are|do|does|work|works|come|charges?|fine|ok|lit|no problem)`,
    'all (?:out|dead|off|dark)|none|neither|nor',
  ],
  [
    /\bdoes the other tap start\b|\bbut not at the other\b/i,
    'other (?:one|tap) (?:starts?|works?|does|is (?:fine|ok)|runs?)',
    'neither|nor|both|same',
  ],
  [
    /\bneighbours on this post lose\b|\bneighbours without\b/i,
    'same|also|too|as well|neither|nor|either|whole|everyone|everybody|all (?:out|off|dead)|nobody',
    'fine|ok|okay|right|good|on|only us|just us|only ones?|only ours|just ours|(?:has|have|got|still) power|power|works?|picture|channels',
  ],
  [
    /\bworks?\b.*\bneighbour|\bworks? for a neighbour|\bworks? in another\b|\bworks? in that\b|\bcharges? (?:there|this phone)\b/i,
    GOES,
    FAILS,
  ],
  [
    /\bcold on gas, but not\b/i,
    '(?:on )?gas (?:it )?(?:is |gets |works |runs )?(?:cold|fine|ok|good|works?)|cold on gas',
    '(?:neither|nor|either|both)|gas (?:it )?(?:is |stays )?warm|not on gas',
  ],
  [/\bweakly on a full cylinder\b/i, 'same|weak|still|too|small|as well', 'better|strong|fine|good|big'],
  [/\bpoint to the cylinder\b/i, 'light one|empty one|empty', 'heavy|full|other'],
  [/\bhose on the empty\b/i, 'empty', 'full|heavy|other'],
  [
    /\bonly one\b|\bone \w+ only\b|\bone tap only\b|\bthe cold one only\b|\bone place only\b/i,
    '(?:rest|others?) (?:is |are )?(?:ok|okay|fine|work|works|good|lit|on)|(?:one|single) (?:corner|place|spot|lamp|light|tap|sink)|^(?:just|only) (?:the|that|this|one).*',
    'both|all(?! shut| closed)|every|everywhere|each|several|two|three|lots|many',
  ],
  [
    /\bone (?:sink|plughole) alone\b/i,
    'kitchen|bathroom|washroom|shower|sink|basin|just|only|one',
    'both|all|everything|everywhere|each',
  ],
  [/\ball the windows\b/i, 'all|every|everywhere|both|each', 'just|only|one|single|corner|patch'],
  [
    /\b(?:dead|weak|dry|gone|out) (?:too|as well)\b|\btoo\?$/i,
    'same|neither|nor|also|as well|too|dead|either',
    '^(?!.*\\bnot\\b).*\\b(?:runs?|works?|fine|ok|okay|good|strong|lights?|lit|burns?)',
  ],
  [/\bwithout gas\b/i, '', '(?:have|got) both|both (?:are |is )?(?:work|fine|ok|on|there)'],
  [
    /\bbreaker of the\b|\b(?:heater|boiler)'s breaker\b/i,
    'heater|heating|boiler|water|charger',
    'sockets?|lights|fridge|kettle|microwave',
  ],
  [/\bgreen surround\b/i, 'green', 'white|black|grey|normal|ordinary|other|cream'],
  [/\banother knob than\b/i, 'front|right|different|wrong|another|middle', 'rear left|back left|that one|the rear'],
];

const WHEN_AND_HOW_OFTEN: readonly ShapeRow[] = [
  [
    /\bonce only\b|\bonly once\b/i,
    '^(?:just |only )?(?:the )?once|(?:up|held|stayed) (?:ever )?since|first time',
    'twice|second|third|fourth|\\d(?:nd|rd|th)|several|few|many|times|again|keeps',
  ],
  [
    /\bone chirp a minute\b/i,
    '(?:one|once|chirps?|beeps?|peeps?|every) (?:a |each |per |every |about |an? |or |one )*(?:minutes?|so often)|^(?:one|a) (?:chirp|beep)',
    'constant|constantly|continuous|continuously|non ?stop|all the time|screaming|loud|all of them|both',
  ],
  [/\btries\b.*\bfailed\b|\bfailed twice\b|\b(?:start|hot) twice\b/i, OFTEN, 'once|first|one try|one time'],
  [/\bcome back after one reset\b/i, 'back|same|returned|again|still', 'gone|cleared|away|has not|no message'],
  [
    /\bfor a moment\b/i,
    'moment|second|blink|briefly|short|brief',
    'all the time|always|constant|constantly|stay|whole time|evening|dim',
  ],
  [
    /\bchanged today\b/i,
    'today|this (?:morning|afternoon|evening)|just (?:now|changed)|an? (?:hour|minute)|hours? ago|earlier',
    'yesterday|last|days? ago|days|week|never|not since|before we',
  ],
  [
    /\bover two days since\b/i,
    '(?:three|3|four|4|five|5|six|6|week|days) ?(?:days?|ago)?|hot|boiling|warm|scorching|heatwave|2\\d|3\\d',
    'today|this (?:morn|morning|afternoon)|yesterday|last night|just|earlier|hours? ago|before (?:breakfast|lunch|dinner|tea)',
  ],
  [
    /\bstood for days\b/i,
    'days|week|weeks|fortnight|since (?:mon|tues|wednes|thurs|fri|satur|sun)day',
    'today|this (?:morning|afternoon)|last night|hours?|yesterday|just|dry',
  ],
  [
    /\bswitched on only shortly\b/i,
    'just before|right before|as we left|minutes|an hour|half an hour|same morning|shortly',
    'day before|night before|8 hours|yesterday|long before|days',
  ],
  [
    /\b(?:boiled over or been cleaned|cooking, a spray|someone showered|filled with warm)\b/i,
    'boiled|spilt|spilled|went everywhere|all over|cleaned|wiped|washed|scrubbed|cooking|cooked|frying|fried|toast|bacon|spray|knocked|shower\\w*|warm|shopping|just',
    '',
  ],
  [/\bheld in for less\b/i, 'straight away|quickly|quick|briefly|let go', 'ages|long|minute|easily|forever'],
  [
    /\bopened quickly\b/i,
    'quick|quickly|fast|spun|whipped|yanked|in one go',
    'slow|slowly|gently|not touched|bit by bit',
  ],
  [
    /\bthe moment\b/i,
    'soon as|the (?:second|minute|instant)|straight away|immediately|instantly|right away|when (?:\\w+ )?(?:\\w+ )?(?:put|switched|turned|plugged|used|started)|when i|when we|every time|the moment|at once',
    'later|after a while|minutes after|hours|not straight',
  ],
  [
    /\bdid it start when\b/i,
    'after|when (?:i|we)|as soon as|since (?:i|we)|once (?:i|we)',
    'before|days|always|all along|long',
  ],
  [/\bflicker before\b/i, 'flickered|flicker|on and off|blinked', 'suddenly|just went|bang|straight out|pop'],
  [/\bflicker on hook-up\b/i, 'flicker|still|same|also|as well|too', 'steady|fine|only on battery|stops?|ok|solid'],
  [
    /\bstay low after\b|\bstay as low\b/i,
    'low|same|stays|stuck|no change|not (?:moved|gone up|risen)',
    'rises|rose|climbs?|climbing|up|charging|full|higher|better',
  ],
  [/\bflat by morning\b/i, 'dead|flat|every morning|empty|gone', 'fine|full|lasts|lasted|still'],
  [/\brun all night\b/i, '8 hours|all night|ran|on|running', 'off|never'],
  [
    /\bstill start now and then\b/i,
    'every|now and then|sometimes|few minutes|by itself|on its own|starts?|kicks in|comes on',
    'never|quiet|silent|stays off|not once',
  ],
  [/\bpulse with a tap fully open\b/i, 'still|even|pulses|pulsing', 'smooth|steady|stops|constant|fine'],
  [
    /\bstops?\b(?! condition)(?!\.)/i,
    'stops|stopped|stop|goes quiet|went quiet|shuts up|quiet|smooth',
    'keeps|carries on|goes on|going on|carried on|still (?:going|on|pulsing|running|beeping)|does not stop|never stops|whatever|regardless|no difference|no matter|worse|same|no better',
  ],
];

const WHAT_WAS_DONE: readonly ShapeRow[] = [
  [/\bstill to be done\b/i, 'not|never|no', 'done|did|already|searched|scanned|scan'],
  [
    /\btwo or more\b|\bboth on\b|\bseveral things\b|\bwere both\b|\bsomething else big\b/i,
    '\\w+ (?:and|plus|with|both) \\w+|^both',
    '(?:only|just) (?:one|the|a|1|my|our|\\w+$)|one (?:thing )?at a time',
  ],
  [
    /\bwas the (?:electric|water) heater on\b|\bwas electric heating\b/i,
    'shower\\w*|heating|heater|hot water',
    '^(?:only|just) .*',
  ],
  [
    /\bleft on when\b|\bleave one on\b|\bon at night\b/i,
    'leave|left|always|8 hours|standby|forgot|forget|running|stays on',
    '(?:turn|switch|turned|switched|all|everything|always) (?:\\w+ )?off',
  ],
  [
    /\bgo off with all\b|\bdid it drop with\b/i,
    'still|even|anyway|everything (?:was |is )?(?:off|out|unplugged)|nothing (?:was )?(?:on|in|plugged)|all (?:was )?off',
    'stays|stayed|holds|held|(?:was|were) (?:\\w+ )?(?:on|running|plugged)|fine',
  ],
  [
    /\bno drive\b/i,
    'parked|not (?:driven|moved)|stood|wild',
    'drove|driven|driving|moved|arrived (?:today|this)|plugged in|on hook ?-?up',
  ],
  [
    /\boff hook-up\b/i,
    'off hook ?-?up|(?:not|never) (?:plugged|hook ?-?up|electric)|no (?:hook ?-?up|electric|power)|unplugged',
    '(?<!not )(?<!never )(?:plugged in|on hook ?-?up|hooked up|on electric)',
  ],
  [
    /\b(?:still plugged|plug still in)\b/i,
    'still (?:in|plugged|connected|attached)|plugged in|connected',
    'unplugged|disconnected|out|unhitched|took it out|nothing',
  ],
  [
    /\bkettle, dryer\b/i,
    'kettle|dryer|drier|hairdryer|iron|toaster|straighteners|heater',
    '^(?:only|just) .*|laptop|phone|nothing',
  ],
];

const WEATHER: readonly ShapeRow[] = [
  [
    /\bbelow 0 °C\b|\bis it freezing\b/i,
    'frost|frosty|frozen|freezing|ice|icy|iced|minus',
    'above (?:freezing|zero)|mild|warm|hot|no frost|not a frost|not freezing',
  ],
  [
    /\bbelow (?:5|10) °C\b/i,
    'frost|frosty|frozen|freezing|ice|icy|minus|snow|snowing|bitter|baltic|perishing',
    'warm|hot|mild|summer|sunny|sunshine|heatwave|roasting|boiling|baking',
  ],
  [/\bgale\b/i, 'gale|windy|blowing|storm|howling', 'calm|no wind|still'],
  [
    /\bsunny noon\b/i,
    '(?:sun|sunny|blazing) .*(?:zero|nothing|none)',
    'evening|morning|night|cloud|cloudy|dark|shade|raining|dull|overcast|full',
  ],
  [
    /\bin shade\b|\bdark, raining\b/i,
    'dark|rain\\w*|drizzl\\w+|cloudy|clouds?|overcast|gr[ae]y|gloomy|dull|foggy|shade|shaded|shady|trees?|oaks?|woods?|forest|hedge|under|night|evening|winter|dirty|snow',
    'sun|sunny|sunshine|blazing|bright|blue|clear|open field|summer',
  ],
  [
    /\bsun on its side\b/i,
    'sun|sunny|baking|full sun|covered|blocked',
    'shade|shady|shaded|cloudy|overcast|clear|raining|night',
  ],
  [/\bquarter or less on the gauge\b/i, 'red|reserve|fumes|warning|empty|low', 'full|half|plenty|loads'],
  [/\bcome up a hill\b/i, 'hot|hill|hills|mountains?|pass|warm|up', 'cold|flat|cool'],
];

export const SHAPES: readonly ShapeRow[] = [
  ...HOW_IT_STANDS,
  ...WHAT_LIES_THERE,
  ...ONE_AGAINST_ANOTHER,
  ...WHEN_AND_HOW_OFTEN,
  ...WHAT_WAS_DONE,
  ...WEATHER,
];
