//! Lines of a working in any order (`freely`), each in a sitting of its own, and what they count as.

use crate::corpus::drawn;
use crate::general::opened;
use crate::pinned::drawn_then;
use leverwright::lesson::{built_in, parse_system};
use leverwright::session::{Session, Sign};
use leverwright::text::Words;

/// A boom on a wall: Wb 176.4 N, W1 245 N, T 408.4 N at 28°, Hx 360.6 N to the right, Hy 229.7 N up.
const BOOM: &str = include_str!("boom.json");
/// A ring on two ropes at 50° to the horizontal and 25° to the vertical: 254.8 N of the lamp and
/// 70 N to the right.
const RING: &str = include_str!("ring.json");
/// A counter by its code: Wb 156.8 N, W1 88.2 N, W2 98 N, T = 550.76/1.4 = 393.4 N.
const COUNTER: &str = "counter-6038G-BZM8Y";

pub(crate) fn sitting(problem: &str) -> Session {
    if let Some((id, seed)) = problem.split_once(" --seed ") {
        let lessons = built_in();
        let lesson = lessons.iter().find(|lesson| lesson.id() == id).unwrap();
        let problem = drawn_then(lesson, seed.parse().unwrap()).problem;
        return Session::start(problem, None, Words::english()).unwrap();
    }
    match problem {
        "counter" => drawn(COUNTER),
        "boom" => begun(BOOM),
        "ring" => begun(RING),
        "frame" => begun(include_str!("frame.json")),
        "leaning" => begun(include_str!("leaning.json")),
        code if code.contains("-RQG") => drawn(code),
        board => opened(board),
    }
}

fn begun(system: &str) -> Session {
    Session::start_general(&parse_system(system).unwrap(), Words::english()).unwrap()
}

/// Lines before a line in one sitting, the line, and its sign; by hand.
#[rustfmt::skip]
const ROWS: &[(&str, &[&str], &str, Sign)] = &[
    // The value told with its name counts where the way to it is not seen.
    ("jib", &[], "S = (588 + 4410)/(2·3/5) = 4165 N", Sign::Right),
    ("jib", &[], "S = (588 + 4410)/(2·3/5) = 4100 N", Sign::Noted),
    ("jib", &[], "S = (588 + 4410)/(2·3/5) = 6000/1.2 = 4165 N", Sign::Wrong),
    // A right force counted the other way round widens nothing that is made of it.
    ("jib", &["S = 4165 N"], "Sy = 2499 N", Sign::Right),
    ("jib", &["S = 4165 N"], "Sy = 3332 N", Sign::Wrong),
    // Right in another unit.
    ("jib", &[], "S = 4.165 N", Sign::Incomplete),
    ("jib", &[], "S = 4.9 N", Sign::Wrong),
    ("gate", &[], "B = 0.735 N", Sign::Incomplete),
    ("gate", &[], "B = 75 kg", Sign::Incomplete),
    ("gate", &[], "W = 60 N", Sign::Wrong),
    ("plank_tips", &[], "d = 417 mm", Sign::Incomplete),
    // True of what is known.
    ("gate", &["W = 588 N", "B = 735 N"], "735² + 588² = 886 000", Sign::Right),
    ("gate", &["W = 588 N", "B = 735 N"], "735² + 588² = 900 000", Sign::Wrong),
    ("plank_tips", &[], "L/2 = 2.5 m", Sign::Right),
    ("plank_tips", &[], "L/2 = 2.6 m", Sign::Wrong),
    ("ladder_mu", &[], "θ = 65° = 1.134 rad", Sign::Noted),
    ("ladder_mu", &[], "θ = 65° = 1.2 rad", Sign::Wrong),
    ("ladder_mu", &[], "arm of F: 5 sin 65 = 4.53 m", Sign::Noted),
    ("ladder_mu", &[], "arm of F: 5 sin 65 = 4.73 m", Sign::Wrong),
    ("counter", &["T = 393.4 N"], "0.3 T = 118", Sign::Right),
    ("counter", &["T = 393.4 N"], "0.3 T = 128", Sign::Wrong),
    // A colon that divides, kilograms-force with the g of the problem.
    ("counter", &[], "T=550,76:1,4=393,4 N", Sign::Right),
    ("counter", &[], "T=550,76:1,4=353,4 N", Sign::Wrong),
    ("counter", &[], "W1 = 9 kgf; W2 = 10 kgf", Sign::Right),
    ("counter", &[], "W1 = 8 kgf", Sign::Wrong),
    ("counter", &[], "W1 = 9 N", Sign::Wrong),
    // A force counted the other way round: true of her own S.
    ("jib", &["S = 4165 N"], "1.2 S = 4998", Sign::Right),
    ("jib", &["S = 4165 N"], "1.2 S = 4898", Sign::Wrong),
    ("jib", &["S = 4165 N", "beta = 36.87"], "S cos beta = 3332", Sign::Right),
    ("jib", &["S = 4165 N", "beta = 36.87"], "S cos beta = 2499", Sign::Wrong),
    // A word that tells push from pull is no name.
    ("jib", &[], "S = 4165 N push", Sign::Right),
    ("jib", &[], "S = 3165 N, in compression", Sign::Wrong),
    // What follows from a wrong value through parts that nobody wrote, and from a wrong balance.
    ("internal_hinge", &["B = 9 kN up"], "G = 3 kN", Sign::Follows),
    ("internal_hinge", &["B = 9 kN up"], "A = 15 kN up", Sign::Follows),
    ("internal_hinge", &["B = 9 kN up"], "A = 14 kN up", Sign::Wrong),
    ("sign", &["T1 sin 115 = W sin 25"], "T1 = 64 N", Sign::Follows),
    ("sign", &["T1 sin 115 = W sin 25"], "T1 = 70 N", Sign::Wrong),
    ("plank_tips", &["294*1.5 = 441*(d - 3.5)"], "d - 3.5 = 1", Sign::Follows),
    ("plank_tips", &["294*1.5 = 441*(d - 3.5)"], "d - 3.5 = 2", Sign::Wrong),
    // Of two figures: a part in the sense of its sign, a weight as she has it, a part told in
    // numbers and then by its form.
    (COARSE, &["Wb = 22*9.8 = 220 N", "W1 = 98 N", "W2 = 17*9.8 = 170 N", "T = 330 N",
        "H = -220 - 98 - 170 + 330 = -160 N"], "220 + 98 + 170 + H = T", Sign::Right),
    (COARSE, &["W2 = 17*9.8 = 170 N", "H = -216 - 98 - 170 + 330 = -154 N"],
        "T = 216 + 98 + 170 + H", Sign::Right),
    (COARSE, &["W2 = 17*9.8 = 170 N", "H = -216 - 98 - 170 + 330 = -154 N"],
        "T = 216 + 98 - 170 + H", Sign::Wrong),
    ("mast --seed 3100174", &["G1 = 45*9.8 = 440 N", "G2 = 65*9.8 = 640 N", "G3 = 22*9.8 = 220 N",
        "T = (G1*2.6 cos 40 + G2*3.9 cos 40 + G3*5.2 cos 40)/(3.4 sin 60) = 1200 N",
        "Hx = 1200 cos 20 = 1100 N", "Hx = T cos 20",
        "Hy = -G1 - G2 - G3 + 1200 sin 20 = -890 N"], "psi = atan(890/1100) = 39.0°", Sign::Right),
];

/// Own names, what is told with an angle, chains with an unknown, and what is no step of its own.
#[rustfmt::skip]
const OTHERS: &[(&str, &[&str], &str, Sign)] = &[
    // π/180 turns degrees into radians, and changes nothing else; elsewhere π is a number.
    (MAST, &[], "Wb = 63*9.8*pi/180", Sign::Wrong),
    (MAST, &[], "alpha = 35*pi/180", Sign::Right),
    (MAST, &[], "k = pi/4 = 0.785", Sign::Noted),
    (MAST, &[], "k = pi/4 = 0.885", Sign::Wrong),
    // A name of her own is no attempt at what is asked, though the weights in it are not found.
    (MAST, &["T = 811 N"], "D = Wb - W1", Sign::Noted),
    (MAST, &["T = 811 N", "D = Wb - W1"], "Hx = 77.2 N", Sign::Wrong),
    (MAST, &["W = Wb + W1 + W2", "Tv = T sin 10"], "Hy = W - Tv", Sign::Right),
    (MAST, &["W = Wb + W1 + W2", "Tv = T sin 10"], "Hy = W + Tv", Sign::Wrong),
    ("two_wires", &["Rx = 171.6", "Ry = -73.7", "Hx = -Rx"], "Hy = -Ry = 73.7", Sign::Right),
    ("mast --seed 4104010", &["x1 = L/2 sin 20", "x2 = L sin 20"],
        "Wb*x1 + W1*x2 = T*dT*cos(theta)", Sign::Right),
    ("mast --seed 4104010", &["x1 = L/2 sin 20", "x2 = L cos 20"],
        "Wb*x1 + W1*x2 = T*dT*cos(theta)", Sign::Wrong),
    // True of weights that were never typed.
    (MAST, &["T = 811 N"], "W1*4.5 = 3131 N m", Sign::Right),
    (MAST, &["T = 811 N"], "W1*4.5 = 3231 N m", Sign::Wrong),
    (MAST, &["T = 811 N", "W1*4.5 = 3231 N m"], "Wb*2.7 = 1667 N m", Sign::Right),
    // Names alone leave no room for rounding.
    ("walkway --seed 6100001", &[], "Wb*(L - L/2) + W1*(L - d1) + W2*(L - d2) - W1*L = 0", Sign::Wrong),
    ("counter --seed 6100012", &[], "W1*L = Wb*L/2 + W1*d1", Sign::Wrong),
    (MAST, &[], "Wb*L = Wb*L", Sign::Right),
    // With its angle a force of known line is compared with that, and the hinge's with both parts.
    (MAST, &[], "H = 1510 N at 20° from the vertical", Sign::Wrong),
    (MAST, &[], "H = 1510 N at 31.9° from the vertical", Sign::Right),
    (MAST, &[], "T = 811 N at 45° to the horizontal", Sign::Wrong),
    (MAST, &[], "T = 811 N at 10° to the horizontal", Sign::Right),
    // Every link of a chain counts, though an unknown stands on both its sides.
    ("jib", &[], "Hx = Sx = S cos(36.87°) = 3332 N", Sign::Right),
    ("jib", &[], "Hx = Sx = S sin(36.87°) = 3332 N", Sign::Wrong),
    ("jib", &[], "Hx = Sx = 2*S = 3332 N", Sign::Wrong),
    // What follows from a wrong value does so though the weights beside it were never typed.
    (MAST, &["T = 1157.8 N"], "Hy = Wb + W1 + W2 - 1157.8 sin 10 = 1220 N", Sign::Follows),
    (MAST, &["T = 1157.8 N"], "Hy = Wb + W1 + W2 - 1157.8 sin 10 = 1320 N", Sign::Wrong),
    // What follows from her right lines is right, though nothing shows where its numbers are from.
    ("ladder", &["196*2*cos62 + 686*d*cos62 = 308.7*4*sin62"], "392 + 686 d = 1234.8 tan 62", Sign::Right),
    ("ladder", &["196*2*cos62 + 686*d*cos62 = 308.7*4*sin62"], "392 + 686 d = 1334.8 tan 62", Sign::Wrong),
    ("ladder", &["196*2*cos62 + 686*d*cos62 = 308.7*4*sin62"], "d = 1930/686", Sign::Rounded),
    ("jib", &["Hy*3 + Wb*1.5 = Sy*1", "Sy = Wb + W1 + Hy"], "3Hy + 588 = 1862 + Hy", Sign::Right),
    ("jib", &["Hy*3 + Wb*1.5 = Sy*1", "Sy = Wb + W1 + Hy"], "3Hy + 588 = 1872 + Hy", Sign::Wrong),
    // A product that vanishes, a form that holds with these numbers alone, a huge term.
    (MAST, &[], "(T-811)*(T-5) = 0", Sign::Noted),
    ("ladder", &[], "(d - 2.81)*(d + 7) = 0", Sign::Noted),
    ("counter --seed 1", &[], "T = Wb/2 + W1/3", Sign::Noted),
    ("counter --seed 1", &[], "T = Wb/2 + W1/4", Sign::Wrong),
    (MAST, &[], "1e12*T = 1e12*T + Wb", Sign::Wrong),
    // What a balance gives of a joint has the sense in which that balance counts it.
    ("internal_hinge", &["B = 6 kN", "right beam: Gy + 6 kN = 12 kN"], "Ay + 6 kN = 12 kN", Sign::Wrong),
    ("internal_hinge", &["B = 6 kN", "right beam: Gy + 6 kN = 12 kN"], "Ay - 6 kN = 12 kN", Sign::Right),
    // A line that followed from what was mended gives the next ones nothing.
    ("gate", &["W = 588", "588*3 = B*1.2", "2.4 B = 3528", "B = 1470 N",
        "instead of line 2: 588*1.5 = B*1.2"], "B = 1471 N", Sign::Wrong),
    // Areas and centroids in centimetres and millimetres; A is the whole area.
    ("plate", &[], "A2 = pi*15^2 = 707 cm^2", Sign::Right),
    ("plate", &[], "A2 = pi*15^2 = 747 cm^2", Sign::Wrong),
    ("plate", &[], "A2 = pi*15*2 = 94.2 cm^2", Sign::Wrong),
    ("plate", &[], "A1 = 800*500 = 400000 mm^2", Sign::Right),
    ("plate", &[], "A = 4000 - 706.9 = 3293 cm^2", Sign::Right),
    ("plate", &[], "A = 4000 + 706.9 = 4707 cm^2", Sign::Wrong),
    ("plate", &[], "(4000*40 - 706.9*60)/3293.1 = 35.7 cm", Sign::Right),
    ("plate", &[], "xbar = (4000*40 - 706.9*60)/3293.1 = 35.7 cm", Sign::Right),
    ("plate", &[], "xbar = (4000*40 + 706.9*60)/4706.9 = 43.0 cm", Sign::Wrong),
    ("plate", &[], "4000*40 - 706.9*60 = 117586 cm^3", Sign::Noted),
    ("plate", &[], "4000*40 - 706.9*60 = 127586 cm^3", Sign::Wrong),
    ("plate", &["A = 0.329 m²"], "A xbar = 0.4*0.4 - 0.0707*0.6", Sign::Right),
    ("plate", &[], "A = 0.429 m²", Sign::Wrong),
    ("centre", &[], "A = 0.27", Sign::Right),
    // The usual name of the one couple or direction that is asked, whether its value is right.
    ("bracket", &[], "M = 154 N m", Sign::Wrong),
    ("bracket", &[], "M = 39.2*0.3 + 118*0.6 + 54.9*0.9 = 132 N m", Sign::Noted),
    ("wheel_at_step", &[], "psi = 57.5°", Sign::Wrong),
    ("wheel_at_step", &[], "tan ψ = 4/5", Sign::Wrong),
    ("wheel_at_step", &["a = 36.87"], "psi = a", Sign::Right),
    ("wheel_at_step", &["a = 30"], "psi = a", Sign::Wrong),
    // What is multiplied by the cosine of a right angle is nothing.
    (MAST, &[], "T cos 90 = 0", Sign::Right),
    (MAST, &["T = 811 N"], "T cos 90 = 0", Sign::Right),
    (MAST, &["T = 811 N"], "T cos 80 = 0", Sign::Wrong),
    // A wrong value typed again as it was refused is no consequence of itself.
    (MAST, &["T = 500 N"], "T = 500 N", Sign::Noted),
    // A number that an earlier line works out wrongly stands for nothing once it is mended.
    ("counter --seed 8", &["Wb = 10*9.8 = 89 N", "Wb = 98 N"], "T = (89*1.1+215.6*0.8)/2.2 = 122.9 N", Sign::Wrong),
    ("counter --seed 3", &["W = 18*9.8 = 167.4 N", "T = (167.4*1.1 + 127.4*2.2+147*1.5)/1.4 = 489.2"], "H = 167.4+127.4+147-489.2 = -47.4 N", Sign::Follows),
    ("counter --seed 3", &["W = 18*9.8 = 167.4 N", "T = (167.4*1.1 + 127.4*2.2+147*1.5)/1.4 = 489.2"], "H = 167.4+127.4+147-489.2 = -57.4 N", Sign::Wrong),
    // What her own balance about another point gives the hinge gives the rope.
    ("walkway --seed 1", &["Hy*3.4 = 411.6*1.7 + 509.6*1.2", "Hy = 385.7 N"], "T sin40 = 921.2 - 385.7", Sign::Follows),
    ("walkway --seed 1", &["Hy*3.4 = 411.6*1.7 + 509.6*1.2", "Hy = 385.7 N"], "T = 833 N", Sign::Follows),
    ("walkway --seed 1", &["Hy*3.4 = 411.6*1.7 + 509.6*1.2", "Hy = 385.7 N"], "T = 933 N", Sign::Wrong),
    ("counter --seed 4", &["H*1.6 = 205.8*0.4 + 166.6*1 + 117.6*0.8", "H = 214.4 N"], "T = 490 - 214.4", Sign::Follows),
    ("counter --seed 4", &["H*1.6 = 205.8*0.4 + 166.6*1 + 117.6*0.8", "H = 214.4 N"], "T = 490 + 214.4", Sign::Wrong),
    ("counter --seed 4", &["H·1.6 + 117.6·0.8 + 205.8·0.4 = 166.6·1.0", "H = -6.125 N"], "T = 490 + 6.125 N", Sign::Follows),
    // π is the number beside bare numbers.
    ("plate", &[], "A = 0.8·0.5 − π·0.15² = 0.3293 m²", Sign::Right),
    ("plate", &[], "A = 0.8·0.5 − π·0.15² = 0.3393 m²", Sign::Wrong),
    ("lamina_props", &[], "ΣA = 0.6 + 0.18 − π·0.2²/2 = 0.7172 m²", Sign::Right),
    // Another accepted g, by its name.
    ("counter --seed 8", &["g = 9.81"], "Wb = 10·g = 98.1 N", Sign::Right),
    ("counter --seed 8", &["g = 9.81"], "W1 = m1·g = 215.8 N", Sign::Right),
    ("counter --seed 8", &["g = 9.81"], "Wb = 10·g = 99.1 N", Sign::Wrong),
    // A unit of another kind behind a form of names.
    ("walkway --seed 4", &[], "Wb + W1 + W2 = 1303.4 kg", Sign::Incomplete),
    ("walkway --seed 4", &[], "Wb + W1 + W2 = 1303.4 N", Sign::Right),
    ("walkway --seed 4", &[], "mb*9.8 = 509.6 kg", Sign::Incomplete),
    ("walkway --seed 4", &[], "Wb*1.9 = 968 kg", Sign::Incomplete),
    ("walkway --seed 4", &[], "Wb*1.9 = 968 N m", Sign::Right),
    ("walkway --seed 4", &[], "W1*2.7 = 1799 N", Sign::Incomplete),
    ("walkway --seed 4", &[], "L/2 = 1.9 N", Sign::Incomplete),
    ("walkway --seed 4", &[], "L/2 = 1.9 m", Sign::Right),
    // Bare numbers of forces that are printed in kN.
    ("internal_hinge", &[], "F + Q = 24", Sign::Right),
    ("internal_hinge", &[], "F + Q = 25", Sign::Wrong),
    ("internal_hinge", &[], "q*L2 = 12", Sign::Right),
    ("internal_hinge", &[], "F = 12", Sign::Noted),
    ("internal_hinge", &[], "q = 4", Sign::Noted),
    ("internal_hinge", &[], "F = 12 N", Sign::Wrong),
];

/// Wb 617.4 N, W1 695.8 N, W2 107.8 N, T 810.7 N at 10°, H 1509 N at 58.1°, by hand.
const MAST: &str = "mast --seed 3";

/// A counter whose learner carries two figures.
const COARSE: &str = "counter --seed 3101199";

#[test]
fn a_line_of_a_free_working_counts_for_what_it_says() {
    let mut others = Vec::new();
    for (problem, before, line, sign) in ROWS.iter().chain(OTHERS) {
        let mut session = sitting(problem);
        session.submit("freely");
        for line in *before {
            session.submit(line);
        }
        let told = session.submit(line).line;
        if told.sign != *sign {
            others.push(format!(
                "{problem}: {line}: {:?}: {}",
                told.sign, told.message
            ));
        }
    }
    assert!(others.is_empty(), "{others:#?}");
}

#[test]
fn a_way_that_is_not_seen_is_only_noted_where_steps_are_asked() {
    let mut session = opened("jib");
    let line = "S = (588 + 4410)/(2·3/5) = 4165 N";
    let turn = session.submit(line);
    assert_ne!(turn.line.sign, Sign::Right, "{}", turn.line.message);
    assert!(turn.kept.progress.is_empty());
}

/// Lines before a line, the line, and what its answer and its reading say (after `!`, do not say).
#[rustfmt::skip]
const SAID: &[(&str, &[&str], &str, &str)] = &[
    // The number is held against a relation only where that is true.
    ("internal_hinge", &[], "Ay = B = 7 kN", "!The expression is right"),
    ("gate", &[], "Ax = B = 900 N", "The expression is right"),
    ("boom", &["T = 408.4 N"], "Hx = Tx = T sin 28 = 191.7 N", "!The expression is right"),
    ("boom", &["T = 408.4 N"], "Hx = Tx = 2*T = 361 N", "!The expression is right"),
    // A line is shown as it was typed, whatever unit would be right.
    (MAST, &["T = 811 N", "Hx = 798 N"], "Hy = 1.280 N", "!1.280 kN"),
    ("wheel_at_step", &[], "tan ψ = 4/5", "tan(ψE)"),
    // What was made of a value that is told anew falls with it.
    ("counter --seed 8", &["W1 = 22*9.8 = 251.6 N", "T = (98*1.1+251.6*0.8)/2.2 = 140.5 N", "H = 98 + 251.6 - 140.5 = 209.1 N"], "T = (98*1.1+215.6*0.8)/2.2 = 127.4 N", "Line 3 is judged anew"),
    ("counter --seed 8", &["W1 = 22*9.8 = 251.6 N", "T = (98*1.1+251.6*0.8)/2.2 = 140.5 N", "H = 98 + 251.6 - 140.5 = 209.1 N"], "Wb = 98 N", "!judged anew"),
];

#[test]
fn what_is_said_of_a_line_is_true() {
    let mut others = Vec::new();
    for (problem, before, line, said) in SAID {
        let mut session = sitting(problem);
        session.submit("freely");
        for line in *before {
            session.submit(line);
        }
        let told = session.submit(line).line;
        let reading = told.reading.clone().unwrap_or_default();
        let all = format!("{reading} {}", told.message);
        let (wanted, said) = match said.strip_prefix('!') {
            Some(said) => (false, said),
            None => (true, *said),
        };
        if all.contains(said) != wanted {
            others.push(format!("{problem}: {line}: {all}"));
        }
    }
    assert!(others.is_empty(), "{others:#?}");
}

#[test]
fn every_name_of_a_chain_is_found() {
    for (before, line) in [("", "A = B = 588 N"), ("W1 = 1176 N", "A = B = W1/2")] {
        let mut session = opened("a_frame");
        session.submit("freely");
        session.submit(before);
        let turn = session.submit(line);
        assert_eq!(turn.line.sign, Sign::Right, "{line}: {}", turn.line.message);
        let found = |name: &str| turn.kept.progress.iter().any(|step| step == name);
        assert!(found("push:A") && found("push:B"), "{line}");
    }
    let mut session = opened("a_frame");
    session.submit("freely");
    let turn = session.submit("A = B = 500 N");
    assert!(turn.kept.progress.is_empty());
}
