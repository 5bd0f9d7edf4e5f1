/**
 * A first rig file, with every key that matters and how to measure it. All its values are guesses (`~`), so that
 * whoever leaves one in sees it marked as a guess with a wide tolerance. Invented, like the rig that they add up to.
 */
export function starterRig(): string {
  return STARTER;
}

const STARTER = `# A rig file. Measure at ride height: driver and fuel aboard, tyres at the pressure you drive with,
# rolled a car length and bounced, never just lowered off the jack. Level floor.
#
# Units: 4 1/8 in, 1'6", 105 mm, 980 lb, 445 kg, 180 lb/in, 31.5 N/mm, 14 psi, 95 kPa, 30 mph. Never without one.
# Tolerance: "4 1/8 in ± 1/16" (95 % interval). Left out, the usual one of the tool is taken and marked.
# "~" marks a guess. Every value below is one: replace it, and take the "~" away, when you have measured.
# A key without a value, or left out, is filled by a marked assumption where a sound one exists; else it is asked for.
schema: 1

rig:
  name: My rig
  notes:

measured:
  # Axle centre to axle centre, mean of left and right.
  wheelbase: ~ 100 in
  # One scale under each tyre, all level. Read three times; the spread is your tolerance.
  weights:
    frontLeft: ~ 1000 lb
    frontRight: ~ 1000 lb
    rearLeft: ~ 900 lb
    rearRight: ~ 900 lb
  # Raising one axle on rated lifting gear gives it; never get under or beside the rig while it is up.
  cgHeight:

front:
  axle:
    kind: solid
    # Tyre centre to tyre centre.
    track: ~ 60 in
    # Whole axle with wheels, half of links and shocks. Weighed under the hubs, springs and shocks off.
    unsprungMass:
  # Everything that could touch on the way up, one name each: gap along the motion of the point that touches,
  # and how far that point moves for each inch of axle travel. The smallest gap is often not the first to touch.
  contacts:
    sump:
      name: differential to sump
      gap: ~ 4 1/2 in
      ratio:
  # What frame, brackets and bushes give on the worst hit.
  flex:
  spring:
    # From a press, at the length it works at.
    rate: ~ 160 lb/in
    # Off the rig, on the rig, and with all coils touching.
    freeLength:
    rideLength:
    solidLength:
  shock:
    # Eye to eye: on the rig, fully closed, fully open.
    rideLength:
    collapsedLength:
    extendedLength:
    # Cosine of its lean.
    ratio:
    # A bench curve goes here, compression positive: settings: { trail: [[-10 in/s, -250 lb], [10 in/s, 120 lb]] }
    # Or one push by hand on a scale, known to that speed only: settings: { trail: { handPush: { speed: 2 in/s, push: 90 lb } } }
  stop:
    # Tip of the stop to its strike pad.
    gap: ~ 2 in
    # How long it is off the rig. Needed to say what another stop does in the same mount.
    freeLength:
    # How far it can be crushed before it is too stiff or is damaged. Never its length: press it, or ask who made it.
    usableCrush: ~ 3/4 in
    # Press test, crush and force: curve: [[0 in, 0 lb], [1/4 in, 300 lb], [1/2 in, 1100 lb], [3/4 in, 2700 lb]]
    # Share of that press which does not come back: hysteresis: 25 %
  tyre:
    pressure:

rear:
  axle:
    kind: solid
    track: ~ 60 in
    unsprungMass:
  contacts:
    tube-frame:
      name: axle tube to frame
      gap: ~ 4 3/4 in
      ratio:
  flex:
  spring:
    rate: ~ 150 lb/in
    freeLength:
    rideLength:
    solidLength:
  shock:
    rideLength:
    collapsedLength:
    extendedLength:
    ratio:
  stop:
    gap: ~ 2 in
    freeLength:
    usableCrush: ~ 3/4 in
  tyre:
    pressure:

# Links, mounts, shaft, hose and steering can be measured too, under front and rear: docs/guide/measuring-links.md.
#   links: { kind: triangulated, lower: { axle: { ahead: 1 in, spread: 42 in, aboveFloor: 14 in }, frame: { … } }, … }

# Who drives. He is aboard in the weights; this says what the seat does with him. Left out, he is bolted to the body.
driver:
  # In clothes and helmet.
  mass:
  seat:
    # From the front axle back to the hips, and from the middle of the rig to them (right negative).
    behindFrontAxle:
    left:
    # How far the seat squashes when he sits down.
    sag:

# Parts on the shelf, for setups to name.
parts:
  stops: {}
  springs: {}

# A setup is a named set of changes: other stop, stopSpacer, seatAndStopDrop, springSpacer, spring, notch, …
setups:
  with-a-stop-spacer:
    notes: A solid half inch behind the front stops.
    front:
      stopSpacer: 1/2 in

# The ground you drive on: flat, whoops, irregular-whoops, ledge, ditch, half-round, rocks, washboard, waves,
# road-class, ramp-landing, crest, drop, or profile: measured, in a CSV file of distance, left, right.
courses:
  whoops:
    kind: whoops
    height: 6 in
    spacing: 20 ft
    count: 8
    speed: 20 mph

# What you accept.
limits:
  # Clearance that must be left on the worst hit.
  reserve: 3/8 in
`;
