//! Sentences on which way a force acts: true ones are never wrong, false ones are, and what may be
//! meant in two ways is only noted. The ways and angles stand in the workings of `tests/boards`.

use super::{Row, typed};
use leverwright::session::Sign;

const HOLDS: &str = "That holds";
const WORDS: &str = "Noted as words";

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // A = 941 N at 38.7° above the horizontal, to the right; B to the left.
    ("gate", &["the upper hinge pushes the gate up"], Sign::Wrong, "way of B"), ("gate", &["the upper hinge pulls the gate to the left"], Sign::Noted, HOLDS),
    ("gate", &["A points right and down"], Sign::Wrong, "way of A"), ("gate", &["so A points up and to the right"], Sign::Noted, HOLDS), ("gate", &["The lower hinge pushes the gate up."], Sign::Noted, HOLDS),
    ("gate", &["A points 51.3° above the horizontal"], Sign::Wrong, "angle"), ("gate", &["A points 38.7° above the horizontal"], Sign::Right, ""), ("gate", &["A acts at 51.3° to the vertical"], Sign::Right, ""),
    ("gate", &["the gate pushes the lower hinge down"], Sign::Noted, HOLDS), ("gate", &["the gate pushes the lower hinge up"], Sign::Wrong, ""), ("gate", &["the force on the lower hinge points down"], Sign::Noted, WORDS),
    // The pin pulls the jib to the left and down: 10.8° below the horizontal.
    ("jib", &["the pin pushes the jib up"], Sign::Wrong, "way of H"), ("jib", &["the pin pulls the jib down"], Sign::Noted, HOLDS), ("jib", &["the jib pulls the pin up"], Sign::Noted, HOLDS),
    ("jib", &["H points to the lower left"], Sign::Noted, HOLDS), ("jib", &["H points to the upper left"], Sign::Wrong, ""), ("jib", &["the force of the pin acts down"], Sign::Noted, HOLDS),
    // By her own value the pin pushes up.
    ("jib", &["S = −1000 N", "the pin pushes the jib up"], Sign::Noted, WORDS),
    // What acts between two legs acts both ways.
    ("a_frame", &["the tie is pressed"], Sign::Wrong, ""), ("a_frame", &["the tie is in tension"], Sign::Noted, HOLDS), ("a_frame", &["the pin pushes the left leg down"], Sign::Wrong, ""),
    ("a_frame", &["the pin pushes the right leg down"], Sign::Noted, HOLDS), ("a_frame", &["the pin pushes down"], Sign::Noted, WORDS), ("a_frame", &["the tie pulls to the left"], Sign::Noted, WORDS),
    ("a_frame", &["J points 65.5° from the vertical"], Sign::Wrong, ""), ("a_frame", &["J points 24.5° from the vertical"], Sign::Right, ""),
    // The peg pushes across the rod, 40° from the vertical.
    ("rod_on_peg", &["the peg pushes straight up"], Sign::Wrong, "way of P"), ("rod_on_peg", &["the peg pushes up"], Sign::Noted, HOLDS), ("rod_on_peg", &["P acts 50° above the horizontal"], Sign::Noted, HOLDS),
    ("rod_on_peg", &["the peg pushes at 90 - 40 = 50° to the horizontal"], Sign::Noted, HOLDS), ("rod_on_peg", &["P acts at 40° to the horizontal"], Sign::Wrong, ""),
    ("rod_on_peg", &["the floor is smooth"], Sign::Wrong, "floor"), ("rod_on_peg", &["the peg is smooth"], Sign::Noted, WORDS), ("rod_on_peg", &["the floor is rough"], Sign::Noted, WORDS),
    // The floor's push is upright, its friction to the right: of "the floor" either may be meant.
    ("ladder", &["the friction acts to the right"], Sign::Noted, HOLDS), ("ladder", &["the friction acts to the left"], Sign::Wrong, ""), ("ladder", &["the floor pushes the ladder down"], Sign::Wrong, ""),
    ("ladder", &["the floor pushes straight up"], Sign::Noted, WORDS), ("ladder", &["the wall pushes the ladder to the right"], Sign::Wrong, ""), ("ladder", &["the ladder pushes the wall to the right"], Sign::Noted, HOLDS),
    ("ladder", &["the ladder makes 62° with the ground"], Sign::Unclear, ""), ("ladder", &["the ladder lies at 28° to the vertical"], Sign::Unclear, ""),
    // The foot pushes at 69.8° above the horizontal; the stay pulls at 50° below it.
    ("pole", &["H points 69.8° above the horizontal"], Sign::Right, ""), ("pole", &["it points up at 69.8° to the ground"], Sign::Right, ""), ("pole", &["H points 20.2° above the horizontal"], Sign::Wrong, ""),
    ("pole", &["the foot pulls the pole down"], Sign::Wrong, ""), ("pole", &["T makes 50° with the horizontal"], Sign::Noted, HOLDS), ("pole", &["T makes 40° with the horizontal"], Sign::Wrong, ""), ("pole", &["the stay makes 40° with the vertical"], Sign::Noted, HOLDS),
    // The elbow pushes down, the biceps pulls up and a little to the left.
    ("forearm", &["the elbow pushes the forearm down"], Sign::Noted, HOLDS), ("forearm", &["the elbow pushes the forearm up"], Sign::Wrong, ""), ("forearm", &["the forearm pushes the elbow up"], Sign::Noted, HOLDS), ("forearm", &["M pulls to the right"], Sign::Wrong, ""),
    // The bolt pulls to the left and up, 23.2° above the horizontal.
    ("two_wires", &["the bolt pulls the hook to the right"], Sign::Wrong, ""), ("two_wires", &["H acts up and left"], Sign::Noted, HOLDS), ("two_wires", &["H acts at 23.2° to the vertical"], Sign::Wrong, ""),
    ("cord_slanting", &["the cord is compressed"], Sign::Wrong, ""), ("cord_slanting", &["the cord is taut"], Sign::Noted, HOLDS),
    // The pin may act up or down: the cart stands at two places.
    ("hinge_gives", &["the pin pulls the beam down"], Sign::Noted, WORDS),
    // The hinge pulls the walkway to the left and a little down; the rope is 25° above the horizontal.
    ("", &["the hinge pushes the walkway up"], Sign::Wrong, ""), ("", &["the hinge pulls the walkway left and down"], Sign::Noted, HOLDS), ("", &["the rope makes 90 - 65 = 25° with the horizontal"], Sign::Noted, HOLDS), ("", &["the rope makes 65° with the horizontal"], Sign::Wrong, ""),
    // The only direction under its usual name, with its side.
    ("pulley_beam", &["ψ = 57.7° above the horizontal"], Sign::Wrong, ""), ("pulley_beam", &["ψ = tan⁻¹(2312/1457) = 57.8° above the horizontal"], Sign::Wrong, ""), ("pulley_beam", &["ψ = 32.2° above the horizontal"], Sign::Right, ""), ("pulley_beam", &["ψ = 57.7° from the vertical"], Sign::Right, ""),
    // Units of another kind.
    ("ladder_mu", &["N = 215.6 J"], Sign::Incomplete, "another kind"), ("ladder_mu", &["N = 225 J"], Sign::Unclear, ""), ("pulley_beam", &["ψ = 32.2 N"], Sign::Incomplete, "another kind"), ("pulley_beam", &["ψ = 42 N"], Sign::Noted, ""),
];

#[test]
fn verif_a_sentence_is_wrong_only_where_it_is_false() {
    let mut faults = Vec::new();
    for (name, lines, sign, said) in ROWS {
        let (_, turn) = typed(name, lines);
        let message = turn.line.message.to_string();
        if turn.line.sign != *sign || !message.contains(said) {
            faults.push(format!("{name} {lines:?}: {:?} {message}", turn.line.sign));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
