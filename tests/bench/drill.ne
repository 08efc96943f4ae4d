# The part of the language that the benchmark's drill is written in, for an Earley parser. The lexer joins continued lines.
@lexer lexer
@{%
const whole = (d) => {
  const flat = d.flat(Infinity).filter(Boolean);
  return { from: first(flat[0]), to: last(flat[flat.length - 1]) };
};
const first = (each) => each.offset ?? each.from ?? each.span.from;
const last = (each) => (each.offset === undefined ? each.to ?? each.span.to : each.offset + each.text.length);
const word = ([token]) => ({ text: token.value, from: token.offset, to: token.offset + token.text.length });
const node = (kind, make) => (d) => ({ kind, span: whole(d), ...make(d) });
%}

file -> lines {% ([items]) => ({ kind: 'file', items }) %}
lines -> null {% () => [] %} | lines %newline {% ([lines]) => lines %} | lines statement %newline {% ([lines, line]) => [...lines, line] %}
block -> "{" lines "}" {% (d) => ({ span: whole(d), lines: d[1] }) %}
beats -> "{" beatLines "}" {% (d) => ({ span: whole(d), lines: d[1] }) %}
beatLines -> null {% () => [] %} | beatLines %newline {% ([lines]) => lines %} | beatLines beat %newline {% ([lines, line]) => [...lines, line] %}

statement -> "drill" string block {% node('drill', (d) => ({ name: d[1], body: d[2] })) %}
  | ("age" | "tempo") name {% (d) => ({ kind: d[0][0].value, span: whole(d), value: d[1] }) %}
  | "units" unit {% node('units', (d) => ({ value: d[1] })) %}
  | "players" sum {% node('players', (d) => ({ count: d[1] })) %}
  | ("theme" | "question" | "safety") string {% (d) => ({ kind: d[0][0].value, span: whole(d), text: d[1] }) %}
  | "area" size ("marked" "every" sum):? {% node('area', (d) => ({ size: d[1], marked: d[2] && d[2][2] })) %}
  | "let" name "=" sum {% node('let', (d) => ({ name: d[1], value: d[3] })) %}
  | ("cone" | "disc" | "pole" | "mannequin") name:? "at" place {% (d) => ({ kind: d[0][0].value, span: whole(d), name: d[1], at: d[3] }) %}
  | "station" name "at" place ("holds" sum):? {% node('station', (d) => ({ name: d[1], at: d[3], holds: d[4] && d[4][1] })) %}
  | "ball" "at" place {% node('ball', (d) => ({ at: d[2] })) %}
  | "sequence" string:? beats {% node('sequence', (d) => ({ name: d[1], body: d[2] })) %}
  | "rotate" name ("->" name):+ {% node('rotate', (d) => ({ chains: [[d[1], ...d[2].map((each) => each[1])]] })) %}
  | "point" name string {% node('point', (d) => ({ corner: d[1], text: d[2] })) %}
  | "bouts" sum "x" sum ("rest" sum):? {% node('bouts', (d) => ({ count: d[1], length: d[3], rest: d[4] && d[4][1] })) %}
  | "rule" "touches" sum ("for" name):? {% node('rule', (d) => ({ count: d[2], who: d[3] && d[3][1] })) %}
  | "rule" string {% node('rule', (d) => ({ text: d[1] })) %}
  | ("progress" | "regress") name string block {% (d) => ({ kind: d[0][0].value, span: whole(d), lever: d[1], name: d[2], body: d[3] }) %}

beat -> part ("while" part ("," part):*):* {% node('beat', (d) => ({ lead: d[0], meanwhile: d[1].flatMap((each) => [each[1], ...each[2].map((more) => more[1])]) })) %}
part -> subject action ("then" action):* {% (d) => ({ span: whole(d), subject: d[0], chain: [d[1], ...d[2].map((each) => each[1])] }) %}
subject -> "next":? name {% (d) => ({ span: whole(d), name: d[1], next: d[0] !== null }) %}

action -> core (",":? modifier):* {% (d) => ({ ...d[0], span: whole(d), modifiers: d[1].map((each) => each[1]) }) %}
core -> ("passes" | "sets" | "touches" | "dribbles" | "crosses" | "runs" | "shows" | "drops") "to" place {% (d) => ({ span: whole(d), verb: `${d[0][0].value} to`, target: d[2], about: null, receiver: null }) %}
  | "passes" "into" place ("for" subject):? {% (d) => ({ span: whole(d), verb: 'passes into', target: d[2], about: null, receiver: d[3] && d[3][1] }) %}
  | "shoots" "at" place {% (d) => ({ span: whole(d), verb: 'shoots at', target: d[2], about: null, receiver: null }) %}
  | "spins" "around" subject ("to" place):? {% (d) => ({ span: whole(d), verb: 'spins around', target: d[3] && d[3][1], about: d[2], receiver: null }) %}
  | ("overlaps" | "underlaps") subject ("to" place):? {% (d) => ({ span: whole(d), verb: d[0][0].value, target: d[2] && d[2][1], about: d[1], receiver: null }) %}
  | ("presses" | "marks") subject {% (d) => ({ span: whole(d), verb: d[0][0].value, target: null, about: d[1], receiver: null }) %}
  | "wins" "the" "ball" "from" subject {% (d) => ({ span: whole(d), verb: 'wins the ball from', target: null, about: d[4], receiver: null }) %}
  | ("turns" | "follows" | "holds") {% (d) => ({ span: whole(d), verb: d[0][0].value, target: null, about: null, receiver: null }) %}
  | "waits" sum {% (d) => ({ span: whole(d), verb: 'waits', target: null, about: null, receiver: null, length: d[1] }) %}

modifier -> ("first" "time" | "in" "stride" | "soft" | "firm" | "driven" | "lofted") {% (d) => ({ kind: d[0].map((each) => each.value).join(' '), span: whole(d) }) %}
  | "in" sum "touches" {% node('touches', (d) => ({ count: d[1] })) %}
  | "via" place {% node('via', (d) => ({ at: d[1] })) %}
  | "around" subject {% node('around', (d) => ({ about: d[1] })) %}
  | "at" ("walk" | "jog" | "run" | "sprint") {% node('gait', (d) => ({ gait: d[1][0].value })) %}
  | "after" sum {% node('after', (d) => ({ delay: d[1] })) %}

place -> spot {% id %}
  | spot "+" "(" sum "," sum ")" {% node('offset', (d) => ({ from: d[0], dx: d[3], dy: d[5] })) %}
spot -> "(" sum "," sum ")" {% node('at', (d) => ({ x: d[1], y: d[3] })) %}
  | "between" spot "and" spot {% node('between', (d) => ({ a: d[1], b: d[3] })) %}
  | "mirror" "of" spot "across" ("width" | "length") {% node('mirror', (d) => ({ of: d[2], across: d[4][0].value })) %}
  | noun "." side {% node('anchor', (d) => ({ of: d[0], anchor: d[2] })) %}
  | sum ("left" "of" | "right" "of" | "above" | "below") spot {% node('beside', (d) => ({ distance: d[0], side: d[1].map((each) => each.value).join(' '), of: d[2] })) %}
  | sum "from" spot "to" spot {% node('along', (d) => ({ fraction: d[0], start: d[2], end: d[4] })) %}
  | "next":? name {% node('name', (d) => ({ name: d[1], next: d[0] !== null })) %}

size -> sum "x" sum {% (d) => ({ span: whole(d), width: d[0], length: d[2] }) %}
sum -> product {% id %}
  | product (("+" | "-") product):+ {% node('sum', (d) => ({ terms: [{ sign: '+', of: d[0] }, ...d[1].map(([[sign], of]) => ({ sign: sign.value, of }))] })) %}
product -> factor {% id %}
  | factor (("*" | "/") factor):+ {% node('product', (d) => ({ factors: [{ by: '*', of: d[0] }, ...d[1].map(([[by], of]) => ({ by: by.value, of }))] })) %}
factor -> %number unit:? {% node('number', (d) => ({ value: Number(d[0].value), unit: d[1] })) %}
  | "-" factor {% node('negative', (d) => ({ of: d[1] })) %}
  | "(" sum ")" {% node('group', (d) => ({ inner: d[1] })) %}
  | noun "." side {% node('measure', (d) => ({ of: d[0], side: d[2] })) %}
  | name {% node('name', (d) => ({ name: d[0] })) %}

unit -> %unit {% word %}
name -> %name {% word %}
noun -> (%name | "area") {% ([each]) => word(each) %}
side -> (%name | "left" | "right" | "width" | "length") {% ([each]) => word(each) %}
string -> %string {% word %}
