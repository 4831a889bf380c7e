//! Lines of a working in any order (`freely`), each in a sitting of its own, and what they count as.

use crate::corpus::drawn;
use crate::general::opened;
use leverwright::draw::draw;
use leverwright::lesson::built_in;
use leverwright::session::{Session, Sign};
use leverwright::text::Words;

/// A counter by its code: Wb 156.8 N, W1 88.2 N, W2 98 N, T = 550.76/1.4 = 393.4 N.
const COUNTER: &str = "counter-6038G-BZM8Y";

fn sitting(problem: &str) -> Session {
    if let Some((id, seed)) = problem.split_once(" --seed ") {
        let lessons = built_in();
        let lesson = lessons.iter().find(|lesson| lesson.id() == id).unwrap();
        let problem = draw(lesson, seed.parse().unwrap(), "en").unwrap().problem;
        return Session::start(problem, None, Words::english()).unwrap();
    }
    match problem {
        "counter" => drawn(COUNTER),
        board => opened(board),
    }
}

/// Lines before a line in one sitting, the line, and its sign; by hand.
#[rustfmt::skip]
const ROWS: &[(&str, &[&str], &str, Sign)] = &[
    // The value told with its name counts where the way to it is not seen.
    ("jib", &[], "S = (588 + 4410)/(2·3/5) = 4165 N", Sign::Right),
    ("jib", &[], "S = (588 + 4410)/(2·3/5) = 4100 N", Sign::Noted),
    ("jib", &[], "S = (588 + 4410)/(2·3/5) = 6000/1.2 = 4165 N", Sign::Noted),
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

/// A counter whose learner carries two figures.
const COARSE: &str = "counter --seed 3101199";

#[test]
fn a_line_of_a_free_working_counts_for_what_it_says() {
    let mut others = Vec::new();
    for (problem, before, line, sign) in ROWS {
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
