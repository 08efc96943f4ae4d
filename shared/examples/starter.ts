/** The file that `halfturn new` writes: a sound drill whose comments teach the language. The title must hold no double quote. */
export function starter(title: string): string {
  return `// A drill is written the way a coach says it, one fact a line. Change a number and draw it again.
drill "${title}" {
  age      U13
  players  6
  tempo    steady  // walk, steady or match
  theme    "Play, follow the pass, be ready for the next ball"

  // The ground: wide x long, in metres. (0, 0) is the bottom left corner, and y runs up the pitch.
  area 16 x 16

  // A length that is used twice gets a name: change it here and both places follow.
  let side = 10

  // Where players wait their turn. Places hang on other places: 10 above Base, between Left and Top, area.centre.
  station Base  at (3, 3) holds 2
  station Left  at side above Base
  station Top   at side right of Left
  station Right at side right of Base holds 2

  // What else stands on the grass.
  pole Post at area.centre
  ball at Base

  // The play, one beat a line. What comes after "while" starts at the same time; "then" comes after it.
  sequence {
    Base passes to Left while Right runs to 2 above Right then shows to Right
    Left passes to Top, in 2 touches while Base follows
    Top passes to Right while Left follows
    Right passes to next Base while Top follows, Right follows
  }

  // Who goes where for the next repetition. Left out, it is read from where everyone ends.
  rotate Base -> Left -> Top -> Right -> Base

  // What to say.
  point technical "Open up before the ball comes: see where it goes next"
  point social    "Call the name of whoever you pass to"
  question "Where do you look before the ball arrives?"

  // The same drill, harder or easier. Only what differs is written, and it is checked like the drill itself.
  progress task "First time at the top" {
    rule "Top plays first time"
  }
  regress space "Shorter passes" {
    let side = 8
  }
}
`;
}
