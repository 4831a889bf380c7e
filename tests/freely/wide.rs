//! Lines of a free working whose numbers are worked out on the drawing or in the head, names of her
//! own that a line tells the meaning of, and what follows from her wrong relations. By hand; the
//! walkway is that of `tests/freely.rs`, with W2 at 4.2 m, Wb at 2.1 m, W1 at 2.0 m, T at 2.2 m.

use super::{Row, typed};
use leverwright::session::Sign;

const DOWN: &str = "D is the pull of the hinge down";
/// Upright: 3588·sin 25° = 1516.3 = 1391.6 + 124.7.
const UPRIGHT: &str = "T sin 25 = 352.8 + 803.6 + 235.2 + D";

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // What a name of hers means is told by the first line that holds with it, and by its words.
    ("", &[DOWN, UPRIGHT], Sign::Right, "D is taken as −Hy"),
    ("", &[DOWN, UPRIGHT, "D = 124.7 N"], Sign::Right, ""),
    ("", &[DOWN, UPRIGHT, "D = 1391.6 N"], Sign::Noted, ""),
    ("", &[DOWN, "T sin 25 + D = 352.8 + 803.6 + 235.2"], Sign::Noted, "told in words"),
    // About the knot: 470.4 = 35.28 + 160.72 + 2.2·124.7.
    ("", &[DOWN, "235.2*2.0 = 352.8*0.1 + 803.6*0.2 + D*2.2"], Sign::Right, ""),
    ("", &[DOWN, "235.2*2.0 + 352.8*0.1 = 803.6*0.2 + D*2.2"], Sign::Noted, ""),
    // Another line is not condemned by such a meaning, but for a wrong value that it tells.
    ("", &[DOWN, UPRIGHT, "T sin 25 + D = 1391.6"], Sign::Noted, "not seen to hold"),
    ("", &[DOWN, UPRIGHT, "T = 1391.6/sin 25 - D = 3168 N"], Sign::Wrong, ""),
    ("plank_tips", &["x = distance of the child beyond the right trestle", "30·1 = 45·x"], Sign::Right, "x is taken as"),
    ("plank_tips", &["x = distance of the child beyond the right trestle", "30·2.5 = 45·x"], Sign::Noted, ""),
    // Where the weights together act, 3335.92/1391.6 = 2.397 m, their line meets that of the rope.
    ("", &["tan ψ = (2.397 - 2.2) tan 25/2.397"], Sign::Right, ""),
    ("", &["tan ψ = (2.397 - 2.2) tan 65/2.397"], Sign::Wrong, ""),
    // A share of π is a number.
    ("", &["gamma = 5π/36 rad"], Sign::Right, ""), ("", &["gamma = 5π/18 rad"], Sign::Wrong, ""),
    // A wrong relation gives no value by itself; what follows from it does.
    ("", &["Tperp = T cos 25", "Tperp = 1516.3 N", "T = 1516.3/cos 25 = 1673 N"], Sign::Follows, "your own balance"),
    ("", &["Tperp = T cos 25", "Tperp = 1516.3 N", "T = 1516.3/cos 35 = 1851 N"], Sign::Wrong, ""),
    ("", &["Tperp = T cos 25", "Tperp = 1516.3 N", "T = 1516.3/cos 25 = 1673 N", "Tx = 1673 cos 25 = 1516 N"], Sign::Follows, ""),
    ("sign", &["T1 sin 25 = T2 sin 40", "T1 = 1.52 T2"], Sign::Follows, ""),
    ("sign", &["T1 sin 25 = T2 sin 40", "T1 = 1.32 T2"], Sign::Wrong, ""),
    ("sign", &["T1 sin 25 = T2 sin 40", "T1 sin 40 + T2 sin 25 = 137.2", "T2 = 98.0 N"], Sign::Follows, ""),
    ("sign", &["T1 sin 25 = T2 sin 40", "T1 sin 40 + T2 sin 25 = 137.2", "T2 = 91.0 N"], Sign::Wrong, ""),
    ("sign", &["T1 sin 25 = T2 sin 40", "T1 sin 40 + T2 sin 25 = 137.2", "T1 cos 40 = T2 cos 25", "T2 = 98.0 N"], Sign::Wrong, ""),
    ("sign", &["T1 sin 25 = T2 sin 40", "T1 sin 25 = T2 sin 40"], Sign::Wrong, ""),
    ("a_frame", &["A + B = 800 N", "A = B = 400 N"], Sign::Follows, ""), ("a_frame", &["A + B = 800 N", "A = B = 500 N"], Sign::Wrong, ""),
    // A number that a wrong value of a length makes with another: 3.5 − 2.5.
    ("hinge_gives", &["L/2 = 2.5 m", "196·1.0 + 490·(3.5 − d) = 200·3.5"], Sign::Follows, ""),
    ("hinge_gives", &["L/2 = 2.5 m", "196·1.5 + 490·(3.5 − d) = 200·3.5"], Sign::Wrong, ""),
    // A wrong value told once more follows from itself.
    ("", &["T = 3000 N", "T = 3000 N"], Sign::Noted, "your own value"),
    // Rounded too hard in kilonewtons; an arm of four metres for 3.5 m.
    ("", &["T = 3.336/(2.2*0.4) = 3.79 kN"], Sign::Incomplete, "rounded too far"),
    ("", &["T = 3.336/(2.2*0.2) = 7.58 kN"], Sign::Wrong, ""),
    // A capital G is no g where that does not hold, and a line may break off.
    ("hinge_gives", &["G·3 = B·3.5"], Sign::Noted, "What is G"), ("", &["T·(2.2 sin 25 ="], Sign::Noted, "What is it"),
    // Words with numbers among them are not judged.
    ("", &["65° and 25° between the rope and the posts"], Sign::Noted, "not judged"),
    ("", &["T = -3588 N", "T < Wb + W1"], Sign::Wrong, "Compare"),
    // What is said of a name behind its value.
    ("", &["W1 = 803.6 N is the weight of the bird watcher"], Sign::Right, ""),
    ("", &["W1 = 803.6 N is the weight of the walkway"], Sign::Unclear, ""),
    // The name behind the line that it stands in.
    ("gate", &["A² = B² + Q² with Q = 60*9.8"], Sign::Right, ""), ("gate", &["A² = B² - Q² with Q = 60*9.8"], Sign::Wrong, ""),
];

#[test]
fn a_free_line_is_seen_widely() {
    let mut others = Vec::new();
    for (name, lines, sign, said) in ROWS {
        let (_, turn) = typed(name, lines);
        let message = turn.line.message.to_string();
        if turn.line.sign != *sign || !message.contains(said) {
            others.push(format!("{name} {lines:?}: {:?} {message}", turn.line.sign));
        }
    }
    assert!(others.is_empty(), "{others:#?}");
}
