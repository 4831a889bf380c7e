//! A working in any order: what stays in force, what is mended in silence, and what is told in
//! names. The values stand in `tests/corpus` and beside the boards; those used here are told below.

#[path = "freely/again.rs"]
mod again;
#[path = "freely/beside.rs"]
mod beside;
#[path = "freely/breaker.rs"]
mod breaker;
#[path = "freely/by_hers.rs"]
mod by_hers;
#[path = "freely/counted.rs"]
mod counted;
#[path = "freely/gone_on.rs"]
mod gone_on;
#[path = "freely/hinted.rs"]
mod hinted;
#[path = "freely/in_one_line.rs"]
mod in_one_line;
#[path = "freely/in_sight.rs"]
mod in_sight;
#[path = "freely/lessons_named.rs"]
mod lessons_named;
#[path = "freely/manners.rs"]
mod manners;
#[path = "freely/named.rs"]
mod named;
#[path = "freely/own_lines.rs"]
mod own_lines;
#[path = "freely/shown.rs"]
mod shown;
#[path = "freely/slipped.rs"]
mod slipped;
#[path = "freely/tried.rs"]
mod tried;
#[path = "freely/ways_told.rs"]
mod ways_told;
#[path = "freely/why.rs"]
mod why;
#[path = "freely/wide.rs"]
mod wide;
#[path = "freely/worded.rs"]
mod worded;

use crate::general::opened;
use leverwright::lesson::parse_problem;
use leverwright::session::{Course, Session, Sign, Turn};
use leverwright::text::Words;

/// The walkway of `tests/lines.rs`: Wb = 352.8 N, W1 = 803.6 N, W2 = 235.2 N, γ = 25°,
/// T = 3588 N, Hx = −3252 N, Hy = −124.7 N. With γ = 65°: T = 1673 N, Hx = −1516 N.
const WALKWAY: &str = include_str!("lines/walkway.json");

/// Types lines into a free working; `name` is a board, or empty for the walkway.
fn typed(name: &str, lines: &[&str]) -> (Session, Turn) {
    let mut session = match name {
        "" => Session::start(parse_problem(WALKWAY).unwrap(), None, Words::english()).unwrap(),
        name => opened(name),
    };
    let mut turn = session.submit("freely");
    for line in lines {
        turn = session.submit(line);
    }
    (session, turn)
}

/// Lines, the sign of the last, and a stretch of what is said (after `!`, of what is not).
type Row = (&'static str, &'static [&'static str], Sign, &'static str);

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // Other names for what the problem has stay told, though a line before them is mended.
    ("sign", &["let a = T1 and b = T2", "a sin 40 + b sin 25 = 137.2"], Sign::Right, ""), ("sign", &["let a = T1 and b = T2", "-a cos 40 + b cos 25 = 0"], Sign::Right, ""),
    ("sign", &["let a = T1 and b = T2", "-a sin 40 + b sin 25 = 0"], Sign::Wrong, ""), ("sign", &["let a = T1", "a = 147 N"], Sign::Wrong, ""),
    ("rod_on_peg", &["friction = 20.7 N"], Sign::Right, ""), ("rod_on_peg", &["friction = 24 N"], Sign::Wrong, ""),
    ("rod_on_peg", &["P = 24 N", "f = friction", "P = 32.2 N", "f = 20.7 N"], Sign::Right, ""), ("rod_on_peg", &["f = friction", "f = P cos 40"], Sign::Wrong, ""),
    // Once f was the friction it stays that, whatever it was kept as before.
    ("rod_on_peg", &["f = 24 N", "f = 20.7 N", "f = P sin 40"], Sign::Right, ""), ("rod_on_peg", &["f = 24 N", "f = 20.7 N", "f = P cos 40"], Sign::Wrong, ""),
    // A factor of one metre is seldom written; among names no length may be missing.
    ("rod_on_peg", &["58.8 cos 40 = 1.4 P"], Sign::Right, ""), ("rod_on_peg", &["N = 58.8(1 − cos 40^2/1.4)"], Sign::Right, ""), ("rod_on_peg", &["58.8 sin 40 = 1.4 P"], Sign::Wrong, ""), ("rod_on_peg", &["58.8 = 1.4 P"], Sign::Wrong, ""),
    ("rod_on_peg", &["Wb cos θ = P dP"], Sign::Wrong, ""), ("rod_on_peg", &["P = Wb cos θ/dP"], Sign::Incomplete, ""),
    // Several relations of known numbers; a sum among words; a comparison.
    ("", &["k = sin 65 = 0.906", "arms: 3.3 k = 2.99, 6.6 k = 5.98"], Sign::Noted, "true of these numbers"), ("", &["k = sin 65 = 0.906", "arms: 3.3 k = 2.99, 6.6 k = 5.78"], Sign::Wrong, ""),
    ("wheel_at_step", &["r = 0.50 m, h = 0.20 m", "arm of P = r − h = 0.30 m"], Sign::Noted, "true of these numbers"), ("wheel_at_step", &["r = 0.50 m, h = 0.20 m", "arm of P = r − h = 0.40 m"], Sign::Unclear, ""),
    ("", &["T > Wb + W1"], Sign::Noted, "This holds"), ("", &["T < Wb + W1"], Sign::Wrong, ""),
    // What is told of a name of her own changes no value.
    ("", &["c = 2*3 = 6 m, the rope above the horizontal"], Sign::Noted, ""), ("", &["T = 3588 N, the rope above the horizontal"], Sign::Unclear, ""),
    // A size told with its way leaves open how the part will be counted; a relation with a way does not.
    ("", &["Hx = 3252 N left", "T cos 25 - Hx = 0"], Sign::Right, ""), ("", &["Hx = 3252 N left", "T cos 25 + Hx = 0"], Sign::Right, ""),
    ("", &["Hx = T cos 25, to the left", "T cos 25 - Hx = 0"], Sign::Right, ""),
    // To count a part along its axis is never a change of sense.
    ("", &["Hx = T cos 25", "Hx + T cos 25 = 0"], Sign::Right, ""), ("jib", &["Hx = S cos β", "Hx + S cos β = 0"], Sign::Right, ""),
    // A relation in names settles nothing before all that stands in it is found.
    ("ladder_mu", &["mu = FN/N"], Sign::Right, "still unknown"),
    ("forearm", &["E = sqrt(Ex^2+Ey^2)"], Sign::Right, "Ex, Ey still unknown"),
    ("", &["H = sqrt(Hx^2+Hy^2)"], Sign::Right, "Hx, Hy still unknown"),
    ("gate", &["W = 588 N", "B = 735 N", "A = sqrt(W^2+B^2)"], Sign::Right, "!unknown"),
    // By a part of itself nothing is told.
    ("forearm", &["M = My/sin 80"], Sign::Noted, "M itself stands"),
    // A number behind a relation with unknowns in it is held against it.
    ("gate", &["Ax = B = 900 N"], Sign::Wrong, "not its value"),
    ("a_frame", &["A = B = 500 N"], Sign::Wrong, ""), ("a_frame", &["A = B = 588 N"], Sign::Right, ""),
    ("ladder", &["F = FN = 0.35*882 = 400 N"], Sign::Wrong, ""),
    ("back", &["Sx = M cos 18 = 3000 N"], Sign::Wrong, ""),
    ("", &["T cos 25 = -Hx = 4000 N"], Sign::Wrong, ""), ("", &["T = -Hx/sin 65 = 4100 N"], Sign::Wrong, ""),
    // A balance of several unknowns may be counted in kilonewtons or centimetres throughout.
    ("pulley_beam", &["Hx*1.5 + 0.245*1.299 = Hy*2.598"], Sign::Right, "Hx, Hy still unknown"),
    ("pulley_beam", &["Hx*150 + 245*129.9 = Hy*259.8"], Sign::Right, ""),
    ("pulley_beam", &["Hx*1.5 + 0.245*1.5 = Hy*2.598"], Sign::Wrong, ""),
    ("pulley_beam", &["Hx*1.5 + 245*129.9 = Hy*2.598"], Sign::Wrong, ""),
    // A sense that a balance tells is kept; to count a part the way it acts is never wrong.
    ("rod_on_peg", &["N sin 40 + FN cos 40 = 58.8 sin 40"], Sign::Right, "FN counts to the right"),
    ("rod_on_peg", &["N sin 40 + FN cos 40 = 58.8 sin 40", "N sin 40 = FN cos 40 + 58.8 sin 40"], Sign::Wrong, "Since line 1 FN counts to the right"),
    ("rod_on_peg", &["N sin 40 = FN cos 40 + 58.8 sin 40", "N sin 40 + FN cos 40 = 58.8 sin 40"], Sign::Right, ""),
    ("jib", &["Hy*3 = 392*1.5 + Sy*1", "Hy*3 + 392*1.5 = Sy*1"], Sign::Right, "Hy counts downwards"),
    ("jib", &["392*1.5 + 1470*3 = S*2*sin β", "Hx = S cos β"], Sign::Right, ""),
    ("jib", &["Hy = Sy - Wb - W1"], Sign::Right, ""), ("jib", &["Hy = Sy + Wb - W1"], Sign::Wrong, ""),
    ("", &["Hx + T cos 25 = 0", "Hx = +3252 N"], Sign::Wrong, "Since line 1 Hx counts to the right"),
    ("", &["Hx + T cos 25 = 0", "Hx = 3252 N"], Sign::Right, "to the left"),
    ("", &["Hx + T cos 25 = 0", "Hx = -3252 N"], Sign::Right, ""), ("", &["Hx = 3252 N", "Hx = -T cos 25"], Sign::Right, ""),
    ("", &["Hx = -3252 N", "Hy = -124.7 N", "cos ψ = Hx/H"], Sign::Right, ""), ("", &["Hx = -3252 N", "Hy = -124.7 N", "sin ψ = Hx/H"], Sign::Wrong, ""),
    ("", &["Hx = -3252 N", "Hy = -124.7 N", "tan ψ = Hy/Hx"], Sign::Right, ""), ("", &["Hx = -3252 N", "Hy = -124.7 N", "H² = Hx² - Hy²"], Sign::Noted, ""),
    ("forearm", &["Ey + 15.68 + 49 = M sin 80", "Ey + M sin 80 = 64.68"], Sign::Wrong, "Since line 1 Ey counts downwards"),
    ("forearm", &["Ey + 15.68 + 49 = M sin 80", "Ey = -423 N", "Ey + M sin 80 = 64.68"], Sign::Right, ""),
    // A sum of numbers that is true claims nothing.
    ("", &["352.8 + 803.6 + 235.2 = 1391.6"], Sign::Noted, "true of these numbers"),
    ("", &["352.8 + 803.6 + 235.2 = 1450"], Sign::Wrong, ""),
    // A capital M is no mass.
    ("gate", &["M = 882 N m"], Sign::Noted, "M = 882"), ("gate", &["M = 61 kg"], Sign::Wrong, "The problem gives"),
    ("internal_hinge", &["M = 42 kN m"], Sign::Right, ""), ("internal_hinge", &["M = 18 kN m"], Sign::Noted, ""),
    ("internal_hinge", &["M + 7 B = 12*1.5 + 12*5.5"], Sign::Right, ""), ("internal_hinge", &["M + 7 B = 12*1.5 + 12*5"], Sign::Wrong, ""),
    ("", &["M = 803.6*3"], Sign::Noted, "M = 2410"), ("", &["M = 80 kg"], Sign::Wrong, "The problem gives"), ("", &["M = 2*40 = 80 kg"], Sign::Wrong, "The problem gives"),
    // A number that she worked out wrongly, used again in the right way, and only so.
    ("sign", &["40 + 25 = 75", "T2 = 137.2 cos 40/sin 75 = 108.8 N"], Sign::Follows, "line 1"), ("sign", &["T2 = 137.2 cos 40/sin 75 = 108.8 N"], Sign::Wrong, ""),
    ("sign", &["40 + 25 = 75", "T2 = 137.2 cos 40/sin 75 = 118.8 N"], Sign::Wrong, ""), ("sign", &["40 + 25 = 75", "T2 = 137.2 sin 40/sin 75 = 91.3 N"], Sign::Wrong, ""),
    ("sign", &["40 + 25 = 75", "T2 = 137.2 cos 40/sin 65 = 116 N"], Sign::Right, ""), ("ladder_mu", &["90 − 65 = 35", "Wb⊥ = 215.6 sin 35 = 123.7 N"], Sign::Follows, "line 1"),
    // The root of a wrong balance in bare numbers is one in the printed unit.
    ("internal_hinge", &["about the hinge, right beam: 12·3 = B·3", "B = 12 kN"], Sign::Follows, "line 1"), ("internal_hinge", &["about the hinge, right beam: 12·3 = B·3", "B = 12 N"], Sign::Wrong, ""),
    ("internal_hinge", &["B = 12 kN", "M_A = 84 − 7·12 = 2"], Sign::Wrong, ""),
    // The way is compared where the size is only roughly right, too.
    ("bracket", &["ME = 11 N m clockwise"], Sign::Wrong, ""), ("bracket", &["ME = 11 N m anticlockwise"], Sign::Incomplete, ""),
    ("bracket", &["Ey = 40 N down"], Sign::Wrong, ""), ("bracket", &["Ey = 40 N up"], Sign::Incomplete, ""),
    // The right way with numbers rounded too hard.
    ("gate", &["B = 600*1.5/1.2 = 750 N"], Sign::Incomplete, "rounded too far"), ("gate", &["B = 600*3/1.2 = 1500 N"], Sign::Wrong, ""),
    ("gate", &["B = 600*1.5/1.1 = 818 N"], Sign::Wrong, ""),
    // What another balance gives with her own value, a part counted in either sense.
    ("gate", &["Ax = 1470 N", "B = 1470 N"], Sign::Follows, "line 1"), ("gate", &["Ax = 1470 N", "B = 1764 N"], Sign::Wrong, ""),
    ("internal_hinge", &["Gy = 12 kN", "Ay = 12 + 12 = 24 kN"], Sign::Follows, "line 1"),
    ("internal_hinge", &["Gy = 12 kN", "Ay = 30 kN"], Sign::Wrong, ""),
    // A force that is sought has its way; a minus and a conclusion on the way say the same.
    ("wheel_at_step", &["P = 392 N to the left"], Sign::Wrong, "not the way"), ("wheel_at_step", &["P = 392 N to the right"], Sign::Right, ""),
    ("", &["T = 3590 N", "Hy = 1391.6 - 1517 = -125 N so it acts down"], Sign::Right, ""),
    ("", &["T = 3590 N", "Hy = 353 + 804 + 235 - 1520 = -128 N, so down"], Sign::Rounded, ""),
    ("", &["T = 3590 N", "Hy = 353 + 804 + 235 - 1520 = -128 N, so up"], Sign::Wrong, ""),
    ("", &["T = 3590 N", "Hy = 353 + 804 + 235 - 1520 = -108 N, so down"], Sign::Wrong, ""),
    // By hand: half of 4.2 m, though 2 stands for the 2.0 m of a distance, too.
    ("", &["T = (36*9.8*4.2/2 + 82*9.8*2.0 + 24*9.8*4.2)/(2.2*sin(25))"], Sign::Right, ""),
    ("", &["T = (36*9.8*4.2/2 + 82*9.8*2.0 + 24*9.8*4.2)/(2.2*cos(25))"], Sign::Wrong, ""),
    // What rests on a value of hers that points the wrong way follows from it, in degrees too.
    ("gate", &["B = 735 N", "Ax = 735 N to the left", "A = 941 N at 141.3°"], Sign::Follows, "line 2"),
    // The sense of a value that her own balance gives is no matter of choice.
    ("gate", &["B*1.2 = 588*3", "B = 1470 N", "A = 1583 N at 21.8° above the horizontal, to the left"], Sign::Wrong, ""),
    ("gate", &["B*1.2 = 588*3", "B = 1470 N", "A = 1583 N at 21.8° above the horizontal, to the right"], Sign::Follows, "line 2"),
    // One digit that was cut says nothing; the sine of an angle beyond a right one is that of Lami's rule.
    ("ladder_angle", &["cos theta = 0.5"], Sign::Wrong, ""), ("ladder_angle", &["cos theta = 0.574"], Sign::Right, ""),
    ("sign", &["T1/sin 115 = T2/sin 130"], Sign::Right, ""), ("sign", &["T1/sin 130 = T2/sin 115"], Sign::Wrong, ""),
    ("sign", &["T1/sin 115 = 137.2/sin 115"], Sign::Right, ""), ("sign", &["T2/sin 130 = 137.2/sin 115"], Sign::Right, ""),
    ("sign", &["T2/sin 115 = 137.2/sin 130"], Sign::Wrong, ""),
    // An angle with its line behind it needs no sign of degrees.
    ("gate", &["A = 941 N at 38.7 above the horizontal, to the right"], Sign::Right, ""),
    ("gate", &["A = 941 N at 51.3 from the vertical, up to the right"], Sign::Right, ""),
    ("gate", &["A = 941 N at 38.7 below the horizontal, to the right"], Sign::Wrong, ""),
    // Her wrong angle has the number of a given one, and both stand in the line.
    ("ladder_mu", &["α = 65", "Wb*sin 65*2.5 = F*sin 65*5"], Sign::Follows, "line 1"),
    ("ladder_mu", &["Wb*sin 65*2.5 = F*sin 65*5"], Sign::Wrong, ""),
    // A later equation gives anew what stands wrong.
    ("wheel_at_step", &["P = 40 N", "294*0.50 = P*0.30", "P = 490 N"], Sign::Follows, "line 2"),
    // A name set to a number may be any of the quantities that have it.
    ("wheel_at_step", &["r = 0.50 m, h = 0.20 m", "P (r - h) = m g sqrt(r^2 - (r - h)^2)"], Sign::Right, ""),
    ("wheel_at_step", &["r = 0.50 m, h = 0.20 m", "P (r - h) = m g r"], Sign::Wrong, ""),
    ("jib", &["y = 1.5 m", "tan β = y/dS"], Sign::Right, ""), ("jib", &["y = 1.5 m", "tan β = dS/y"], Sign::Wrong, ""),
    // A direction told in words keeps its name.
    ("wheel_at_step", &["let ψ be the angle of E above the horizontal", "sin ψ = 0.4/0.5 = 0.8"], Sign::Wrong, ""),
    ("wheel_at_step", &["let ψ be the angle of E above the horizontal", "E sin ψ = W"], Sign::Right, ""),
    // A bare wrong value with its name stays in force: 650·1.5/1.2 = 812.5.
    ("gate", &["W = 650 N", "B = 812.5 N"], Sign::Follows, "line 1"),
    ("gate", &["B = 800 N", "Ax = 800 N"], Sign::Follows, "line 1"),
    ("gate", &["B = 800 N", "Ax = 735 N"], Sign::Right, ""),
    // Mended in silence, what followed from it does no longer.
    ("", &["gamma = 65", "T = 1673 N"], Sign::Follows, "line 1"),
    ("", &["T = 3000 N", "Hx = 2719 N left", "T = 3590 N"], Sign::Right, "Line 2 is judged anew: does not hold"),
    ("", &["T = 3000 N", "Hx = 2719 N left", "instead of line 1: T = 3590 N"], Sign::Right, "Line 2 is judged anew: does not hold"),
    ("", &["instead of line 4: T = 3590 N"], Sign::Right, "none of this free working"),
    // An expression by itself is asked about; a value is known by what it is.
    ("", &["803.6*3"], Sign::Noted, "What is it?"), ("", &["3588 N"], Sign::Right, ""), ("", &["803.6 N"], Sign::Right, ""),
    // A value under a name that nobody knows settles nothing.
    ("", &["Q = 3588 N"], Sign::Noted, ""),
    // The value of another quantity is wrong under this name.
    ("", &["T = 352.8 N"], Sign::Wrong, "weight of the walkway"),
    // A part told by its force is counted in the sense of the force: 4167·0.6 − 1862 = 640 down.
    ("jib", &["S = 4167 N", "Sy = S sin 36.9", "Hy = Sy - Wb - W1"], Sign::Right, ""), ("jib", &["S = 4167 N", "Sy = S sin 36.9", "Wb + W1 = Sy - Hy"], Sign::Right, ""),
    // Two figures all the way: each line is the right way with her own numbers. 352.8 + 803.6 + 235.2
    // N; 350·3 + 800·3 … are carried as typed.
    ("gate", &["W = 60*9.8 = 590 N", "B = 590*1.5/1.2 = 740 N"], Sign::Incomplete, "three figures"),
    ("gate", &["W = 60*9.8 = 590 N", "Ay = 590 N"], Sign::Rounded, ""),
    ("", &["T = 3600 N", "Hx = 3600 cos 25 = 3300 N"], Sign::Incomplete, ""),
    ("", &["T = 3600 N", "Hx = 3600 cos 25 = 3263 N"], Sign::Right, ""),
    ("", &["G1 = 36*9.8 = 350 N", "G2 = 82*9.8 = 800 N"], Sign::Noted, ""), ("", &["G1 = 36*9.8 = 360 N"], Sign::Wrong, ""),
    // A wrong pull told by its name is a pull: 352.8 + 803.6 + 235.2 − 3000·sin 25° = 123.8 N.
    ("", &["Wb = 352.8 N", "W1 = 803.6 N", "W2 = 235.2 N", "T = 3000 N", "Hy = 352.8 + 803.6 + 235.2 - 3000 sin 25 = 123.8 N"], Sign::Follows, "line 4"),
    ("", &["Wb = 352.8 N", "W1 = 803.6 N", "W2 = 235.2 N", "T = 3000 N", "T sin 25 + Hy = Wb + W1 + W2"], Sign::Right, ""),
    ("", &["Wb = 352.8 N", "W1 = 803.6 N", "W2 = 235.2 N", "T = 3000 N", "T = 3588 N"], Sign::Right, ""),
    // Who mends a value mends what stood wrong for it, and all that followed: her balance (line 1), and
    // each line to the end of the chain.
    ("gate", &["B*h = W*b", "B = 1470 N", "Ax = 1470 N", "Ay = 588 N", "A = 1583 N", "B = 735 N"], Sign::Right, "Line 5 is judged anew: does not hold"),
    ("gate", &["B*h = W*b", "B = 1470 N", "Ax = 1470 N", "Ay = 588 N", "A = 1583 N", "B = 735 N", "done"], Sign::Talk, "Still to be found: A "),
    ("", &["T*3*sin 25 = 352.8*2 + 803.6*3 + 235.2*3", "T = 3000 N", "T = 3588 N", "Hx = 2719 N left"], Sign::Wrong, ""),
    ("pulley_beam", &["T = 1485 N", "Hx = 1485 cos 10", "Hx = 1462.6 N", "Hy = 1457 N", "H = 2064 N", "Hx = 2310.8 N"], Sign::Rounded, "Line 5 is judged anew: does not hold"),
    // She may go on with the old value all the same.
    ("gate", &["W = 650 N", "B = 812.5 N", "W = 588 N", "Ax = 812.5 N"], Sign::Follows, "line 2"),
    // A slip that happens on the value of another quantity is carried under its name.
    ("bracket", &["Ex = 50 N", "Ey = 29.4 N", "E = 58 N"], Sign::Follows, "line 2"),
    ("gate", &["B = 588 N", "Ax = 588 N"], Sign::Follows, "line 1"),
    ("gate", &["B = 588 N", "Ax = 735 N"], Sign::Right, ""), ("gate", &["B = 588 N", "B = 735 N"], Sign::Right, ""),
    // A sense once taken is kept.
    ("", &["Hy + T sin 25 = Wb + W1 + W2", "T sin 25 - Hy = Wb + W1 + W2"], Sign::Wrong, ""),
];

#[test]
fn a_free_line_gets_the_verdict_of_a_teacher() {
    for (name, lines, sign, said) in ROWS {
        let (_, turn) = typed(name, lines);
        let message = turn.line.message.to_string();
        let told = match said.strip_prefix('!') {
            Some(unsaid) => !message.contains(unsaid),
            None => message.contains(said),
        };
        assert!(
            turn.line.sign == *sign && told,
            "{lines:?}: {:?} {message}",
            turn.line.sign
        );
    }
}

/// No value of a step that was told in names alone stands anywhere that a learner sees.
#[test]
fn what_is_told_in_names_shows_no_value() {
    let (session, _) = typed("", &["Hx = -T", "Hx = -T cos 25", "H = sqrt(Hx^2+Hy^2)"]);
    let view = session.view();
    let known = ["mb", "m1", "m2", "L", "g"];
    for name in &view.names {
        let unknown = name.typed.starts_with(['T', 'H']);
        assert!(
            !unknown || name.value.is_none() || known.contains(&name.typed.as_str()),
            "{name:?}"
        );
    }
    assert!(
        view.steps.iter().all(|step| step.result.is_none()),
        "{:?}",
        view.steps
    );
}

/// A working all in names ends when everything asked for is told by what is told before.
#[test]
fn a_working_in_names_may_end() {
    let (_, early) = typed("gate", &["done"]);
    assert!(
        early
            .line
            .message
            .to_string()
            .starts_with("Still to be found")
    );
    let (_, ended) = typed(
        "ladder_mu",
        &[
            "N = Wb",
            "F = Wb/(2 tan theta)",
            "FN = F",
            "mu = FN/N",
            "done",
        ],
    );
    assert_eq!(ended.course, Course::Finished, "{}", ended.line.message);
}

/// Entering the same lines again rebuilds a free working: that is how a journal resumes it.
#[test]
fn the_same_lines_rebuild_a_free_working() {
    let lines = [
        "T = 3000 N",
        "Hx = 2719 N left",
        "back",
        "instead of line 1: T = 3590 N",
        "Hx = T cos 25",
    ];
    let (one, _) = typed("", &lines);
    let (other, _) = typed("", &lines);
    assert_eq!(one.view(), other.view());
    let (mut guided, _) = typed("", &["guided"]);
    let turn = guided.submit("352.8 N");
    assert_eq!(turn.line.sign, Sign::Right, "{}", turn.line.message);
}
