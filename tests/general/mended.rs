//! What a tester of problem files found, line by line.

use super::talk::faults_after;
use leverwright::lesson::{ProblemFile, parse_problem_file};
use leverwright::session::{Session, Sign};
use leverwright::text::Words;

/// A chain between two points of one height pulls level whatever rounding leaves of its slope: its
/// level part is the pull itself, and an upright part is a name of one's own, judged where it stands.
#[test]
fn a_level_rope_has_no_upright_part() {
    let file = parse_problem_file(include_str!("level_chain.json")).unwrap();
    let ProblemFile::General(system) = file else {
        panic!("a problem of bodies in general");
    };
    let start = || Session::start_general(&system, Words::english()).unwrap();
    for (line, sign) in [("Ty = 0", Sign::Noted), ("Ty = 3 N", Sign::Noted)] {
        let mut session = start();
        assert_eq!(session.submit(line).line.sign, sign, "{line}");
        let key = session.key();
        assert!(key.steps.iter().all(|step| step.symbol.shown() != "Ty"));
    }
}

/// By hand: the friction is P sin θ and the push of the floor W − P cos θ.
#[test]
fn the_later_meaning_of_an_own_name_counts() {
    let weight = "weight of the rod";
    let later: &[&str] = &["f = P cos 40", "f = P sin 40", "P = 32.17 N"];
    let earlier: &[&str] = &["f = P sin 40", "f = P cos 40", "P = 32.17 N"];
    let rows = [
        ("rod_on_peg", weight, later, "FN = f", Sign::Right),
        ("rod_on_peg", weight, later, "N = 58.8 - f", Sign::Wrong),
        ("rod_on_peg", weight, earlier, "FN = f", Sign::Wrong),
        ("rod_on_peg", weight, earlier, "N = 58.8 - f", Sign::Right),
    ];
    assert_eq!(faults_after(&rows), Vec::<String>::new());
}

/// By hand: the wall carries 12 kN and the 6 kN of the hinge, 18 kN; their difference is no
/// rounding of that.
#[test]
fn a_value_far_away_is_not_near() {
    let title = "level part of the force of the hinge";
    let found: &[&str] = &["12000*1.5 = 6000*3", "Gy = 6000 N"];
    let rows = [
        (
            "internal_hinge",
            title,
            found,
            "Ay = 12000 - 6000",
            Sign::Wrong,
        ),
        (
            "internal_hinge",
            title,
            found,
            "Ay = 12000 + 6000",
            Sign::Right,
        ),
    ];
    assert_eq!(faults_after(&rows), Vec::<String>::new());
}
