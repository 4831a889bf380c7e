//! Statements about forces that are nearly right, or right in other words: what they establish.
//!
//! What people type: common practice, no source. The places and directions are those of seed 7, as
//! told in `forces`.

use super::forces::Kind::{self, AskedOn, Later, NothingLikeThat, Taken, Told, Unclear, Wrong};
use super::forces::{at_the_pivot, kind};
use super::open;
use leverwright::judge::statement::{Fit, Named, Statement, WayFit, place_fits, read, way_fits};
use leverwright::lesson::{built_in, parse_problem};
use leverwright::problem::{Acting, ForceId, Place, Problem};
use leverwright::session::{Session, Sign, Turn};
use leverwright::text::Words;

/// A name and then a bare noun: one force and its place, two forces, or either.
const PLACES_BY_A_NOUN: &[(&str, &str, Kind)] = &[
    // A force that is denied, or left open between two, is not named.
    ("mast", "no weight of the mast, middle, down", AskedOn),
    (
        "mast",
        "there is no weight of the mast, middle, down",
        AskedOn,
    ),
    ("mast", "weight of the mast, middle, down or up", AskedOn),
    ("mast", "weight of the mast, middle or tip, down", AskedOn),
    (
        "mast",
        "weight of the mast, not the tip but the middle, down",
        Taken,
    ),
    ("mast", "hinge, foot, up or down", Taken),
    ("counter", "weight of the onions, hinge, down", Wrong),
    ("counter", "weight of the crate, the hinge, down", Wrong),
    ("counter", "onions hinge down", Wrong),
    ("counter", "weight of the counter, hinge, down", Wrong),
    ("counter", "weight of the counter at the hinge", Wrong),
    ("counter", "weight of the counter on the hinge", Wrong),
    ("counter", "weight of the counter, rope, down", Wrong),
    ("counter", "weight, hinge, down", AskedOn),
    ("counter", "tension in the rope, at the hinge, up", Wrong),
    ("counter", "tension in the rope, hinge, up", Wrong),
    ("counter", "rope, crate, up", Wrong),
    ("counter", "hinge force, at the tip, up", Wrong),
    ("mast", "dummy, hinge, down", Wrong),
    ("mast", "weight of the mast, ground, down", Wrong),
    ("mast", "rope, tower, right", Wrong),
    ("mast", "rope, at the tower, right", Wrong),
    ("walkway", "rope, hide, up and right", Wrong),
    ("mast", "dummy; hinge; down", Wrong),
    ("mast", "dummy/hinge/down", Wrong),
    ("mast", "dummy, by the hinge, down", Wrong),
    ("mast", "down, hinge, weight of the dummy", Wrong),
    ("mast", "friction, hinge, down", NothingLikeThat),
    ("mast", "parcel, hinge, down", AskedOn),
    ("mast", "tower, hinge, right", AskedOn),
    ("mast", "dummy/tip/down", Taken),
    ("mast", "dummy; tip; down", Taken),
    ("mast", "ground, hinge, unknown", AskedOn),
    // A number before a line is an angle.
    (
        "walkway",
        "rope, 2.2 m from the hinge, 65 from the vertical to the right",
        Taken,
    ),
    (
        "walkway",
        "rope, 2.2 m from the hinge, 25 above the horizontal, to the right",
        Taken,
    ),
    (
        "walkway",
        "rope, 2.2 m from the hinge, 25 above the horizontal, to the left",
        Wrong,
    ),
    (
        "walkway",
        "rope, 2.2 m from the hinge, 40 above the horizontal, to the right",
        Wrong,
    ),
    // A side to which a force cannot act is a place.
    (
        "walkway",
        "weight of the watcher, left of the hinge at a distance of 2 m, down",
        Taken,
    ),
    ("walkway", "watcher to the left of the hinge, down", AskedOn),
    ("mast", "rope, 3.8 m up, pulls to the right", Taken),
    (
        "mast",
        "the rope is tied 3.8 m up and pulls to the right",
        Taken,
    ),
    ("mast", "rope, 3.8 m up, pulls to the left", Wrong),
    ("mast", "rope, 3.0 m up, pulls to the right", Wrong),
    // A side is the end there.
    ("walkway", "watcher, 2.2 m from the left, down", Taken),
    ("walkway", "watcher, 2 m from the right side, down", Taken),
    ("walkway", "watcher, 2 m from the left, down", Wrong),
    // A support of something that holds nothing is not the hinge.
    ("walkway", "support from the reeds below, up", AskedOn),
    ("walkway", "support from the reeds, middle, up", AskedOn),
    ("walkway", "support of the water, up", NothingLikeThat),
    ("walkway", "support of the walkway, unknown", Taken),
    ("walkway", "the support pushes up", Taken),
    ("walkway", "support at the hinge, up", Taken),
    ("mast", "reaction of the mast, unknown", Taken),
    (
        "walkway",
        "normal force of the walkway on the watcher, up",
        Wrong,
    ),
    ("walkway", "weight of the walkway on the hinge, down", Wrong),
    // The direction is not that of the first: nobody guesses.
    ("counter", "weight of the onions, hinge, up", Unclear),
    ("counter", "weight of the counter, onions, down", Unclear),
    ("mast", "rope, hinge, left", Unclear),
    // A list.
    ("mast", "weight of the mast, rope, hinge", AskedOn),
    ("mast", "rope, hinge, unknown", AskedOn),
    ("mast", "hinge, rope, right", AskedOn),
    ("mast", "weight of the mast, rope, right", AskedOn),
    (
        "mast",
        "weight of the mast, force of the hinge, unknown",
        AskedOn,
    ),
    ("mast", "weight of the mast, hinge, foot, unknown", AskedOn),
    ("mast", "weight of the dummy and hinge, unknown", AskedOn),
];

/// Masses, forces on other things, and what stands behind a hinge or a rope.
const NO_FORCE_ON_THE_BODY: &[(&str, &str, Kind)] = &[
    ("mast", "mass of the mast", AskedOn),
    ("mast", "mass of the mast, middle, down", AskedOn),
    ("mast", "the dummy's mass, tip, down", AskedOn),
    ("mast", "m1", AskedOn),
    ("mast", "mb, middle, down", AskedOn),
    ("mast", "m1 g, tip, down", Taken),
    ("mast", "m1*g, tip, down", Taken),
    ("mast", "mb times g, middle, down", Taken),
    ("mast", "mass of the mast times g, middle, down", Taken),
    ("mast", "isn't there a hinge force?", Told),
    ("mast", "weight of the dummy m1, tip, down", Taken),
    ("mast", "weight of the mass m1, tip, down", Taken),
    ("mast", "the mass of the dummy pulls down at the tip", Taken),
    ("counter", "crate of mass 12 kg, 1.9 m, down", Taken),
    ("mast", "force of the hinge on the ground", Wrong),
    (
        "mast",
        "force of the hinge on the ground, foot, down",
        Wrong,
    ),
    ("mast", "force of the mast on the dummy", Wrong),
    ("mast", "force of the mast on the hinge", Wrong),
    ("mast", "the mast pushes on the ground", Wrong),
    ("mast", "the mast pulls the rope", Wrong),
    ("mast", "pull of the dummy on the Earth", Wrong),
    ("mast", "pull of the rope on the tower, 3.8 m, right", Wrong),
    ("mast", "weight of the tower", Wrong),
    ("mast", "force of the hinge on the mast, unknown", Taken),
    (
        "mast",
        "force exerted by the rope on the mast, 3.8 m, right",
        Taken,
    ),
    ("mast", "pull of the Earth on the mast, middle, down", Taken),
    ("mast", "the Earth pulls the mast down at its middle", Taken),
    ("mast", "gravity on the dummy, tip, down", Taken),
    ("mast", "gravity on the dummy, down", AskedOn),
    ("mast", "the dummy pulls the mast down at the tip", Taken),
    (
        "counter",
        "crate pushes down on the counter at 1.9 m",
        Taken,
    ),
    (
        "counter",
        "the rope holds the counter up at the free end",
        Taken,
    ),
    // The mast is hinged to the ground, the counter to the hull, the walkway to the hide.
    ("mast", "reaction of the ground at foot, unknown", Taken),
    ("mast", "reaction of the ground", AskedOn),
    ("mast", "the ground pushes up", AskedOn),
    ("mast", "hinge on the ground, unknown", Taken),
    (
        "counter",
        "force of the hull at the left end, unknown",
        Taken,
    ),
    ("counter", "reaction of the ground", NothingLikeThat),
    ("counter", "the ground pushes up", NothingLikeThat),
    ("walkway", "force of the hide", AskedOn),
    (
        "walkway",
        "force of the hide at the right end, unknown",
        Taken,
    ),
    ("walkway", "reaction of the ground", NothingLikeThat),
    ("mast", "normal reaction at the hinge, unknown", Taken),
    ("mast", "normal force, foot, up", AskedOn),
    ("mast", "ground friction", NothingLikeThat),
];

/// Directions, places and lengths.
const WHERE_AND_WHICH_WAY: &[(&str, &str, Kind)] = &[
    (
        "mast",
        "weight of the mast, middle, perpendicular to the mast",
        Wrong,
    ),
    (
        "mast",
        "weight of the mast, middle, across the mast, down",
        Wrong,
    ),
    (
        "mast",
        "weight of the mast, middle, at right angles to the mast",
        Wrong,
    ),
    ("mast", "weight of the mast, middle, perpendicular", Wrong),
    ("mast", "weight of the mast, middle, along the mast", Wrong),
    (
        "mast",
        "weight of the mast, middle, down along the mast",
        Wrong,
    ),
    ("mast", "weight of the mast, middle, down the mast", Wrong),
    ("mast", "gravity pulls down the mast, middle", Taken),
    ("mast", "weight of the mast, middle, 90° to the mast", Wrong),
    (
        "mast",
        "weight of the mast, middle, perpendicular to the ground",
        AskedOn,
    ),
    ("mast", "rope, 3.8 m, perpendicular to the mast", Wrong),
    ("mast", "rope, 3.8 m, 65° to the mast", Taken),
    ("mast", "rope, 3.8 m, 25° to the mast", Wrong),
    (
        "counter",
        "weight of the counter, middle, perpendicular to the counter",
        AskedOn,
    ),
    (
        "counter",
        "rope, tip, at right angles to the counter, up",
        Taken,
    ),
    ("counter", "rope, tip, along the counter", Wrong),
    ("mast", "hinge, along the mast", AskedOn),
    ("mast", "hinge, foot, up along the mast", AskedOn),
    ("mast", "hinge, across the mast", AskedOn),
    ("mast", "hinge, two components", Taken),
    (
        "mast",
        "weight of the mast, not at the middle, down",
        AskedOn,
    ),
    ("mast", "weight of the mast, middle, not down", AskedOn),
    ("mast", "weight of the dummy, not at the tip, down", AskedOn),
    ("mast", "dummy, tip, doesn't pull down", AskedOn),
    (
        "mast",
        "weight of the mast, not at the tip but in the middle, down",
        Taken,
    ),
    ("mast", "not down", AskedOn),
    ("mast", "rope, 3.8 km, right", Wrong),
    ("mast", "rope, 3.8km, right", Wrong),
    ("mast", "rope, 3.8 ft, right", Wrong),
    ("mast", "rope, 3.8 mm, right", Wrong),
    ("mast", "rope, 38 dm, right", Taken),
    ("mast", "rope, 3.8 N, right", AskedOn),
    ("counter", "onions, 0.4 km, down", Wrong),
    ("mast", "rope, at its knot, right", Taken),
    ("mast", "rope, end of the rope, right", Taken),
    ("mast", "weight of the mast, knot, down", Wrong),
    ("mast", "rope, 3.8 m up the mast, right", Taken),
    ("mast", "rope, 2.8 m down from the tip, right", Taken),
    ("mast", "rope, distance dT along the mast, right", Taken),
    // A place with a side, or with a sign: the counter runs to the right, the walkway to the left.
    (
        "walkway",
        "weight of the walkway, 2.1 m to the left of the hinge, down",
        Taken,
    ),
    (
        "walkway",
        "weight of the walkway, 2.1 m to the right of the hinge, down",
        Wrong,
    ),
    (
        "walkway",
        "weight of the walkway, 2.1 m to the right of the tip, down",
        Taken,
    ),
    (
        "walkway",
        "weight of the walkway, 2.1 m to the left of the tip, down",
        Wrong,
    ),
    (
        "walkway",
        "weight of the walkway, 2.1 m to the left, down",
        Taken,
    ),
    (
        "walkway",
        "weight of the walkway, 2.1 m to the right, down",
        Wrong,
    ),
    ("walkway", "weight of the walkway, -2.1 m, down", Taken),
    (
        "counter",
        "weight of the counter, 1.1 m to the right of the hinge, down",
        Taken,
    ),
    (
        "counter",
        "weight of the counter, 1.1 m to the left of the hinge, down",
        Wrong,
    ),
    ("counter", "weight of the counter, -1.1 m, down", Wrong),
    ("counter", "weight of the counter, at -1.1 m, down", Wrong),
    ("mast", "rope, 3.8 m above the hinge, right", Taken),
    ("mast", "rope, 3.8 m below the hinge, right", Wrong),
    // Two places or two ways in one statement; one place told twice.
    (
        "walkway",
        "weight of the walkway, 2.1 m and 3.0 m, down",
        AskedOn,
    ),
    (
        "walkway",
        "weight of the walkway, middle, tip, down",
        AskedOn,
    ),
    ("walkway", "weight of the walkway, 2.1 m, down, up", AskedOn),
    ("walkway", "hinge, foot, tip, unknown", AskedOn),
    ("walkway", "rope, 2.2 m, up, right, down", AskedOn),
    (
        "walkway",
        "weight of the walkway, middle, 2.1 m from the hinge, 2.1 m from the tip, down",
        Taken,
    ),
    (
        "walkway",
        "rope, 2.2 m from the hinge, 2.0 m from the tip, up and right",
        Taken,
    ),
    (
        "walkway",
        "rope at 2.2 m along the 4.2 m walkway, up and right",
        Taken,
    ),
    // Where somebody stands is where the weight acts.
    (
        "walkway",
        "weight of bird watcher, where he stands, down",
        Taken,
    ),
    (
        "walkway",
        "weight of the bird watcher, at the spot where she is standing, down",
        Taken,
    ),
    (
        "walkway",
        "weight of the walkway, where it is, down",
        AskedOn,
    ),
    (
        "mast",
        "mast weight, halfway between the hinge and the tip, down",
        Taken,
    ),
    ("mast", "weight of the mast, c.o.m., down", Taken),
    ("mast", "weight of the mast → middle → down", Taken),
    ("mast", "weight of mast (Wb) at L/2 pointing down", Taken),
    ("mast", "wieght of mast, midle, downwrds", Taken),
    ("walkway", "person, 2.0 m, down", Taken),
    ("walkway", "the man's weight, 2.0 m, down", Taken),
    ("walkway", "observer 2.1 m down", Wrong),
    ("walkway", "box, tip, down", Taken),
    ("walkway", "lamp, tip, down", AskedOn),
    ("walkway", "chest, hanging point, down", Taken),
    (
        "walkway",
        "rope, hanging point of the chest, up and right",
        Wrong,
    ),
    ("walkway", "rope, 2.2 m, away from the hide", Wrong),
    ("walkway", "rope 2.2 m up and away from the hide", Wrong),
    (
        "walkway",
        "rope, 2.2 m away from the hide, up and right",
        Taken,
    ),
    ("walkway", "rope 2.2 m away from the hide", AskedOn),
    ("walkway", "chest away from the hinge, down", AskedOn),
    ("mast", "doll, tip, down", Taken),
    ("mast", "rope, 3.8 m, away from the tower", Wrong),
    ("mast", "rope, 3.8 m, away from the mast", AskedOn),
    ("mast", "rope, knot, away from mast", AskedOn),
    ("mast", "rope, 3.8 m away from the hinge, right", Taken),
    ("mast", "rope, 3.8 m, back to the practice tower", Taken),
    ("walkway", "rope, 2.2 m, up and back to the hide", Taken),
    ("walkway", "rope, 2.2 m, ↗", Taken),
    ("walkway", "rope, 2.2 m, up to the right", Taken),
    ("counter", "1.1 m, down, weight of the counter", Taken),
    ("mast", "the hinge, because it holds the mast", AskedOn),
    (
        "mast",
        "what makes it: rope, where: 3.8 m, which way: right",
        Taken,
    ),
    ("mast", "tension in direction of the tower, 3.8 m", Taken),
    (
        "mast",
        "weight of the mast, half way up the mast, down",
        Taken,
    ),
    ("mast", "weight of the mast, half way up, down", Taken),
    ("counter", "weight of crate and sack, down", AskedOn),
];

fn faults(rows: &[(&str, &str, Kind)], at: fn(&str) -> Session) -> String {
    let mut faults = Vec::new();
    for (lesson, line, wanted) in rows {
        let turn = at(lesson).submit(line);
        if kind(&turn) != *wanted {
            let message = &turn.line.message;
            faults.push(format!("{lesson}: {line}: {:?}, {message}", kind(&turn)));
        }
    }
    faults.join("\n")
}

fn at_the_forces(lesson: &str) -> Session {
    open(lesson, 7)
}

#[test]
fn a_noun_between_a_name_and_a_direction_is_its_place() {
    assert_eq!(faults(PLACES_BY_A_NOUN, at_the_forces), "");
}

#[test]
fn what_is_no_force_on_the_body_is_not_taken_for_one() {
    assert_eq!(faults(NO_FORCE_ON_THE_BODY, at_the_forces), "");
}

#[test]
fn places_and_directions_count_as_they_were_said() {
    assert_eq!(faults(WHERE_AND_WHICH_WAY, at_the_forces), "");
}

/// Of a list, what is complete is taken: here the hinge, whose direction is unknown.
#[test]
fn the_hinge_of_a_list_is_taken() {
    for line in [
        "rope, hinge, unknown",
        "weight of the mast, force of the hinge, unknown",
        "weight of the mast, hinge, foot, unknown",
        "weight of the dummy and hinge, unknown",
    ] {
        let mut session = open("mast", 7);
        session.submit(line);
        assert_eq!(taken(&session), ["H"], "{line}");
    }
}

/// Two sides in one word, and a verb that is one; the words of an end stay a place. The rope of
/// walkway 3101 runs from its right end up and to the left; that of 3107, its mirror, from its left
/// end up and to the right; that of mast 3301 pulls level to the left, at 3.7 m.
#[rustfmt::skip]
const DIAGONALS: &[(&str, u64, &[&str], Kind)] = &[
    ("walkway", 3101, &["rope at the free end pulls to the upper left"], Taken),
    ("walkway", 3101, &["rope, free end, upper left"], Taken),
    ("walkway", 3101, &["rope at the free end, upper-left"], Taken),
    ("walkway", 3101, &["rope, free end, towards upper left"], Taken),
    ("walkway", 3101, &["rope, free end, top left"], Taken),
    ("walkway", 3101, &["rope at the free end, to the top left"], Taken),
    ("walkway", 3101, &["rope, free end, northwest"], Taken),
    ("walkway", 3101, &["rope, free end, north-west"], Taken),
    ("walkway", 3101, &["rope, free end, upper right"], Wrong),
    ("walkway", 3101, &["rope, free end, lower left"], Wrong),
    ("walkway", 3101, &["rope, free end, southwest"], Wrong),
    ("walkway", 3101, &["rope, free end", "upper left"], Taken),
    ("walkway", 3101, &["rope, free end", "to the upper left"], Taken),
    ("walkway", 3101, &["rope, upper left", "free end"], Taken),
    ("walkway", 3101, &["rope, upper left end, up and left"], Wrong),
    ("walkway", 3101, &["rope at the top end, up and left"], Taken),
    ("walkway", 3101, &["rope at the top, left"], AskedOn),
    ("walkway", 3101, &["rope at the top left"], AskedOn),
    ("walkway", 3101, &["weight of the walkway, middle, lower right"], Wrong),
    ("walkway", 3101, &["rope lifts the walkway at the free end"], AskedOn),
    ("walkway", 3101, &["rope lifts the walkway at the free end", "left"], Taken),
    ("walkway", 3101, &["weight of the walkway lifts it in the middle"], Wrong),
    ("walkway", 3107, &["rope at the free end pulls to the upper right"], Taken),
    ("walkway", 3107, &["rope, free end, upper right"], Taken),
    ("walkway", 3107, &["rope, free end, to the top right"], Taken),
    ("walkway", 3107, &["rope, free end, northeast"], Taken),
    ("walkway", 3107, &["rope, free end, upper left"], Wrong),
    ("walkway", 3107, &["rope, upper left end, up and right"], Taken),
    ("walkway", 3101, &["hinge, bottom left, unknown"], Taken),
    ("walkway", 3101, &["hinge at the lower left end, unknown"], Taken),
    ("mast", 3301, &["rope, 3.7 m, left"], Taken),
    ("mast", 3301, &["rope, 3.7 m, upper left"], Wrong),
    ("mast", 3301, &["rope lifts the mast at 3.7 m"], AskedOn),
    ("mast", 3301, &["rope lifts the mast at 3.7 m to the left"], Taken),
    ("mast", 3301, &["weight of the mast, upper end, down"], Wrong),
    ("counter", 7, &["rope lifts the counter at the tip"], Taken),
    ("counter", 7, &["rope, tip, upper right"], Wrong),
    // A hinge said to act elsewhere is asked where.
    ("walkway", 3101, &["hinge, tip, up", "unknown"], AskedOn),
    ("walkway", 3101, &["hinge, tip, up", "unknown", "foot"], Taken),
    ("walkway", 3101, &["hinge, tip, unknown", "foot"], Taken),
    ("walkway", 3101, &["hinge, tip, up", "hinge, foot, unknown"], Taken),
    ("walkway", 3101, &["hinge, up"], Taken),
    ("walkway", 3101, &["hinge lifts the walkway"], Taken),
    ("walkway", 3101, &["hinge, unknown"], Taken),
];

#[test]
fn two_sides_in_one_word_are_a_way_and_the_words_of_an_end_a_place() {
    let mut faults = Vec::new();
    for (lesson, seed, lines, wanted) in DIAGONALS {
        let mut session = open(lesson, *seed);
        let last = lines.iter().map(|line| session.submit(line)).last();
        let turn = last.expect("every row has a line");
        if kind(&turn) != *wanted {
            let message = &turn.line.message;
            faults.push(format!(
                "{lesson} {seed} {lines:?}: {:?}, {message}",
                kind(&turn)
            ));
        }
    }
    assert_eq!(faults.join("\n"), "");
}

#[test]
fn a_hinge_said_to_act_elsewhere_is_asked_where() {
    let mut session = open("walkway", 3101);
    session.submit("hinge, tip, up");
    let question = session.view().question.to_string();
    assert!(question.contains("Where"), "{question}");
}

/// The symbols of the forces drawn, which are those that are fully said.
fn taken(session: &Session) -> Vec<String> {
    let marks = session.view().marks.forces;
    marks.into_iter().map(|mark| mark.label).collect()
}

/// Names, places and directions put together in every way: a force is taken exactly where place and
/// direction are its own, and never another force with it.
#[test]
fn verif_a_force_is_taken_only_at_its_place_and_its_way() {
    for (lesson, seed) in [("mast", 7), ("counter", 7), ("walkway", 7), ("mast", 3)] {
        let session = open(lesson, seed);
        let problem = session.problem();
        let values = problem.values();
        let metres = |at: Place| problem.distance(at, &values);
        let mut places = vec![
            ("the middle".to_owned(), metres(Place::Middle)),
            ("the tip".to_owned(), metres(Place::Tip)),
            ("the foot".to_owned(), 0.0),
            ("0.3 km".to_owned(), 300.0),
        ];
        for force in problem.forces() {
            let at = metres(force.at);
            places.push((format!("{at:.3} m"), at));
            if force.id != ForceId::OwnWeight {
                places.push((format!("the {}", force.noun), at));
            }
        }
        for force in problem.forces() {
            let Acting::Along(direction) = force.acting else {
                continue;
            };
            let unit = direction.unit(problem.body(), &values);
            let name = match force.id {
                ForceId::Rope(_) => format!("pull of the {}", force.noun),
                _ => format!("weight of the {}", force.noun),
            };
            let own = format!("the {}", force.noun);
            for (place, at) in places.iter().filter(|(place, _)| *place != own) {
                for (way, x, y) in WAYS {
                    let way = way.replace("{body}", &problem.body().noun);
                    let own_way = sign(unit.x) == *x && sign(unit.y) == *y;
                    let right = own_way && (at - metres(force.at)).abs() < 1e-9;
                    for line in [
                        format!("{name}, {place}, {way}"),
                        format!("{name} at {place}, {way}"),
                        format!("{name}: {way}, at {place}"),
                        format!("{way}, at {place}, {name}"),
                    ] {
                        let wanted: Vec<ForceId> = right.then_some(force.id).into_iter().collect();
                        let (taken, asked) = read_as(problem, &line);
                        // A noun may be a force as well as a place: it may be asked which.
                        let fits = taken == wanted || taken.is_empty() && asked;
                        assert!(fits, "{lesson}: {line}: {taken:?}");
                    }
                }
            }
        }
    }
}

/// The forces that a first line says fully and rightly; and whether it is asked if one or two are
/// meant.
fn read_as(problem: &Problem, line: &str) -> (Vec<ForceId>, bool) {
    let Statement::Says(said) = read(problem, &Words::english(), line) else {
        return (Vec::new(), false);
    };
    let full = said.iter().filter_map(|said| match said.named {
        Named::Force(force) => {
            let place = place_fits(problem, force, said.place) == Fit::Right;
            let way = way_fits(problem, force, said.way) == WayFit::Right;
            (place && way).then_some(force)
        }
        _ => None,
    });
    let asked = said
        .iter()
        .any(|said| matches!(said.named, Named::OneOrTwo(_)));
    (full.collect(), asked)
}

/// Directions, and the signs of their parts; 9 where no force of these lessons acts so.
const WAYS: &[(&str, i8, i8)] = &[
    ("down", 0, -1),
    ("straight up", 0, 1),
    ("to the left", -1, 0),
    ("to the right", 1, 0),
    ("up and to the right", 1, 1),
    ("up and to the left", -1, 1),
    ("to the upper right", 1, 1),
    ("to the upper left", -1, 1),
    ("to the lower left", -1, -1),
    ("not down", 9, 9),
    ("along the {body}", 9, 9),
];

fn sign(part: f64) -> i8 {
    match part {
        part if part > 1e-9 => 1,
        part if part < -1e-9 => -1,
        _ => 0,
    }
}

/// At the pivot.
const PIVOT: &[(&str, &str, Kind)] = &[
    ("mast", "the ground", Taken),
    ("mast", "the tower", Unclear),
    ("mast", "the knot", AskedOn),
    ("mast", "3.8 km", AskedOn),
    ("mast", "0 km", Taken),
    ("mast", "anywhere but the hinge", Unclear),
    ("mast", "not the tip but the hinge", Taken),
    ("mast", "not the hinge, the tip", AskedOn),
    ("mast", "where the hinge force acts", Taken),
    ("mast", "T = 50 N", Later),
    ("mast", "why the hinge?", Told),
];

#[test]
fn the_pivot_is_the_point_that_was_said() {
    assert_eq!(faults(PIVOT, at_the_pivot), "");
}

/// Where the place of a force is asked, a bare noun with that force's direction is no new force.
#[test]
fn a_place_asked_for_establishes_no_other_force() {
    for (first, second, wanted) in [
        ("weight of the mast", "hinge, down", Unclear),
        ("weight", "hinge, down", Unclear),
        ("mass of the mast", "hinge, down", Unclear),
        ("weight of the mast", "at the hinge, down", Wrong),
        ("weight of the mast", "hinge, unknown", Taken),
        ("weight of the mast", "rope, right", AskedOn),
        ("weight, down", "rope, 3.8 m", AskedOn),
        ("hinge", "rope, 3.8 m, right", Taken),
        ("mass of the mast, middle, down", "its weight", Taken),
        ("mass of the dummy, tip, down", "weight", Taken),
        ("the ground pushes up", "hinge", Taken),
        ("reaction of the ground", "dummy, tip", AskedOn),
        ("rope", "3.8 km", Wrong),
        ("hinge, along the mast", "unknown", Taken),
    ] {
        let mut session = open("mast", 7);
        session.submit(first);
        let turn = session.submit(second);
        let message = &turn.line.message;
        assert_eq!(kind(&turn), wanted, "{first}: {second}: {message}");
    }
}

/// A place that only the problem's wording names: the distances told beside the ring and the hook.
#[test]
fn places_and_walls_are_known_from_the_wording() {
    let text = r#"{
        "leverwright": 1,
        "g": "9.8 m/s^2",
        "model": {
            "body": {"noun": "shelf", "length": "2.4 m", "mass": "12 kg", "tilt": "level", "towards": "right"},
            "supports": [{"noun": "bracket", "at": "foot", "kind": "hinge"}],
            "ropes": [{"noun": "chain", "at": "1.6 m", "direction": "up"}],
            "loads": [{"noun": "flower pot", "mass": "4 kg", "at": "2.0 m"}]
        },
        "text": {
            "title": "The shelf",
            "statement": "A uniform shelf of length {L=} and mass {m_b=} is hinged to the wall by a bracket at its left end. A chain, whose own weight does not count, runs straight up from a ring to a joist of the roof; the ring is {d_T=} from the bracket. A flower pot of mass {m_1=} hangs from a hook, {d_1=} from the bracket. Find T, then H.",
            "caution": "For learning only.",
            "meanings": {"L": "length", "m_b": "mass", "d_T": "place of the ring", "m_1": "mass of the pot", "d_1": "place of the hook"}
        }
    }"#;
    for (line, wanted) in [
        ("chain, ring, up", Taken),
        ("chain, ring, towards the roof", Taken),
        ("chain, ring, to the joist", Taken),
        ("chain, roof, up", Wrong),
        ("flower pot, hook, down", Taken),
        ("flower pot, ring, down", Wrong),
        ("weight of the shelf, hook, down", Wrong),
        ("bracket, wall, unknown", Taken),
        ("wall, left end, unknown", Taken),
        ("force of the wall", AskedOn),
        ("bracket, up", Taken),
        ("flower pot, bracket, down", Wrong),
    ] {
        let mut session =
            Session::start(parse_problem(text).unwrap(), None, Words::english()).unwrap();
        let turn = session.submit(line);
        assert_eq!(kind(&turn), wanted, "{line}: {}", turn.line.message);
    }
}

fn hint(session: &mut Session) -> Turn {
    let turn = session.submit("hint");
    assert_eq!(turn.line.sign, Sign::Talk);
    turn
}

/// At seed 1501 the crate hangs at the counter's tip in the sister problem as well; the rope of the
/// mast is tied to its tip, and every hinge is at the foot.
#[test]
fn the_third_hint_at_a_force_is_never_its_line() {
    let mut ways = 0;
    for lesson in ["counter", "walkway", "mast"] {
        for seed in [7, 1501, 1503, 1504, 1505] {
            let mut session = open(lesson, seed);
            for _ in 0..session.problem().forces().len() {
                let told: Vec<String> = (0..4)
                    .map(|_| hint(&mut session).line.hints[0].to_string())
                    .collect();
                let line = told[3]
                    .trim_start_matches("The line: ")
                    .trim_end_matches('.');
                assert!(!told[2].contains(line), "{lesson} {seed}: {told:?}");
                ways += usize::from(told[2].contains("Where on the"));
            }
        }
    }
    assert!(ways > 20, "{ways}");
    let mut session = open("counter", 1501);
    session.submit("crate weight");
    let told: Vec<String> = (0..4)
        .map(|_| hint(&mut session).line.hints[0].to_string())
        .collect();
    assert!(
        told[2].contains("straight down") && !told[2].contains("tip"),
        "{told:?}"
    );
    assert!(told[3].contains("at its tip, straight down"), "{told:?}");
}

/// Four hints tell one force; nothing tells all of them.
#[test]
fn hints_at_the_forces_tell_one_force_at_a_time() {
    for lesson in ["counter", "walkway", "mast"] {
        let mut session = open(lesson, 7);
        let symbols: Vec<String> = session
            .problem()
            .forces()
            .iter()
            .map(|force| force.symbol.shown())
            .collect();
        for (index, symbol) in symbols.iter().enumerate() {
            for stage in 1..=4 {
                let turn = hint(&mut session);
                assert_eq!(turn.kept.hint, Some(stage), "{lesson} {symbol}");
                let told = turn.line.hints[0].to_string();
                let others = symbols.iter().filter(|other| *other != symbol);
                for other in others {
                    let starts = format!("{other} acts");
                    assert!(!told.contains(&starts), "{lesson} {symbol}: {told}");
                }
                assert_eq!(told.contains("The line"), stage == 4, "{told}");
                if stage == 4 {
                    assert!(told.contains(&format!("{symbol} acts")), "{told}");
                }
                assert_eq!(turn.moved_on, stage == 4 && index + 1 == symbols.len());
            }
        }
    }
}

#[test]
fn a_hint_speaks_of_the_force_still_to_be_placed_and_then_of_the_next() {
    let mut session = open("mast", 7);
    session.submit("rope");
    for _ in 0..3 {
        hint(&mut session);
    }
    let told = hint(&mut session).line.hints[0].to_string();
    assert!(told.contains("T acts 3.8 m"), "{told}");
    session.submit("weight of the mast, middle, down");
    let told = hint(&mut session).line.hints[0].to_string();
    assert!(told.contains("carry"), "{told}");
    // Named by the learner, so the count of hints begins anew.
    session.submit("dummy, tip, down");
    assert_eq!(hint(&mut session).kept.hint, Some(1));
    assert_eq!(kind(&session.submit("back")), Told);
    assert_eq!(hint(&mut session).kept.hint, Some(1));
}

/// The third hint is a sister problem's, with its own numbers, and the fourth alone names the point.
#[test]
fn hints_at_the_pivot_go_in_stages() {
    for lesson in built_in() {
        let mut session = at_the_pivot(lesson.id());
        let mut told = Vec::new();
        for stage in 1..=4 {
            let turn = hint(&mut session);
            assert_eq!(turn.kept.hint, Some(stage));
            told.push(turn.line.hints[0].to_string());
        }
        assert!(
            told[..3].iter().all(|hint| !hint.contains("hinge")),
            "{told:?}"
        );
        assert!(told[3].contains("hinge"), "{told:?}");
        let mut once = told.clone();
        once.dedup();
        assert_eq!(once, told, "no hint is given twice");
    }
}
